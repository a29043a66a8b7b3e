#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kGolden = 0.6180339887498949; // its multiples fill an interval evenly (H. Weyl, 1916)
constexpr double kPad = 0.07;                  // of the range, over and under what is drawn

/// Beyond it the difference of two figures is more than a double holds; nothing is measured there.
constexpr double kFarthest = std::numeric_limits<double>::max() / 8.0;

/// The hull of figures; what is no number does not widen it.
struct Hull {
    double from = std::numeric_limits<double>::infinity();
    double to = -std::numeric_limits<double>::infinity();

    void add(double figure) {
        if (std::abs(figure) < kFarthest) {
            from = std::min(from, figure);
            to = std::max(to, figure);
        }
    }
    [[nodiscard]] bool isEmpty() const { return from > to; }
};

/// 0 to 1 for nothing; what is one figure alone stands in the middle.
Hull opened(Hull hull, double pad) {
    if (hull.isEmpty()) {
        return {0.0, 1.0};
    }
    const double half = hull.to / 2.0 - hull.from / 2.0;
    const double least = std::max(std::abs(hull.from), std::abs(hull.to)) * 1e-9;
    const double air = half > least ? half * 2.0 * pad : std::max(1.0, std::abs(hull.from) * 0.01);
    return {hull.from - air, hull.to + air};
}

Hull hullOfX(const TrendChartState& state) {
    Hull hull;
    for (const TrendPoint& point : state.points) {
        if (isDrawn(point)) {
            hull.add(point.x);
        }
    }
    const double half = halfBar(state);
    for (const TrendBar& bar : state.bars) {
        hull.add(bar.x - half * 1.8);
        hull.add(bar.x + half * 1.8);
    }
    for (const TrendLine& line : state.lines) {
        for (const QPointF& point : line.points) {
            hull.add(line.points.size() > 1 ? point.x() : std::numeric_limits<double>::quiet_NaN());
        }
    }
    for (const TrendBand& band : state.bands) {
        for (const TrendLimits& limits : band.limits) {
            hull.add(limits.x);
        }
    }
    for (const TrendStretch& stretch : state.stretches) {
        hull.add(stretch.from);
        hull.add(stretch.to);
    }
    return hull;
}

void addPoints(const TrendChartState& state, Hull& hull) {
    for (const TrendPoint& point : state.points) {
        if (!isDrawn(point)) {
            continue;
        }
        if (!point.span) {
            hull.add(point.y);
            continue;
        }
        if (!point.span->openLow) {
            hull.add(point.span->low);
        }
        if (!point.span->openHigh) {
            hull.add(point.span->high);
        }
    }
    if (!hull.isEmpty()) {
        hull.add(hull.from - std::abs(state.jitter) / 2.0);
        hull.add(hull.to + std::abs(state.jitter) / 2.0);
    }
}

Hull hullOfY(const TrendChartState& state) {
    Hull hull;
    addPoints(state, hull);
    for (const TrendLine& line : state.lines) {
        for (const QPointF& point : line.points) {
            hull.add(point.y());
        }
    }
    for (const TrendBand& band : state.bands) {
        for (const TrendLimits& limits : band.limits) {
            hull.add(limits.low);
            hull.add(limits.high);
        }
    }
    for (const TrendBar& bar : state.bars) {
        hull.add(bar.value);
        hull.add(bar.upTo.value_or(bar.value));
    }
    for (const TrendStretch& stretch : state.stretches) {
        hull.add(stretch.y.value_or(std::numeric_limits<double>::quiet_NaN()));
    }
    return hull;
}

bool isGiven(const TrendAxis& axis) {
    return std::abs(axis.from) < kFarthest && std::abs(axis.to) < kFarthest && axis.from < axis.to;
}

} // namespace

bool isDrawn(const TrendPoint& point) {
    if (!std::isfinite(point.x)) {
        return false;
    }
    if (!point.span) {
        return std::isfinite(point.y);
    }
    const TrendSpan& span = *point.span;
    const bool low = !span.openLow && std::isfinite(span.low);
    const bool high = !span.openHigh && std::isfinite(span.high);
    return (low || span.openLow) && (high || span.openHigh) && (low || high) && !(low && high && span.low > span.high);
}

bool isDrawn(const TrendBar& bar) {
    return std::isfinite(bar.x) && std::isfinite(bar.value);
}

int leftOut(const TrendChartState& state) {
    const auto points =
        std::count_if(state.points.begin(), state.points.end(), [](const auto& point) { return !isDrawn(point); });
    const auto bars =
        std::count_if(state.bars.begin(), state.bars.end(), [](const auto& bar) { return !isDrawn(bar); });
    return static_cast<int>(points + bars);
}

double jitterOf(int group) {
    const double turns = static_cast<double>(group) * kGolden;
    return turns - std::floor(turns) - 0.5;
}

double halfBar(const TrendChartState& state) {
    QList<double> places;
    for (const TrendBar& bar : state.bars) {
        if (std::isfinite(bar.x)) {
            places.append(bar.x);
        }
    }
    std::sort(places.begin(), places.end());
    double least = std::numeric_limits<double>::infinity();
    for (qsizetype i = 1; i < places.size(); ++i) {
        const double step = places[i] - places[i - 1];
        least = step > 0.0 ? std::min(least, step) : least;
    }
    return places.isEmpty() ? 0.0 : 0.28 * (std::isfinite(least) ? least : 1.0);
}

void placeRanges(const TrendDraft& draft) {
    const TrendChartState& state = draft.state;
    TrendScale& scale = draft.layout.scale;
    const Hull x = isGiven(state.x) ? Hull{state.x.from, state.x.to} : opened(hullOfX(state), 0.0);
    scale.x0 = x.from;
    scale.x1 = x.to;
    Hull y{state.y.from, state.y.to};
    if (!isGiven(state.y)) {
        Hull drawn = hullOfY(state);
        if (!state.bars.isEmpty()) {
            drawn.add(0.0);
        }
        y = opened(drawn, kPad);
        if (!state.bars.isEmpty() && drawn.from == 0.0) {
            y.from = 0.0; // bars stand on the axis
        }
    }
    scale.y0 = y.from;
    scale.y1 = y.to;
}

} // namespace holdfast::kiosk::screens
