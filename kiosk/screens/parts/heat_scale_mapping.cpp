#include "kiosk/screens/parts/heat_scale_mapping.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

// look.md, "Heat scale", in °F.
constexpr double kKneeBelowGel = 8.0;
constexpr double kKneeBelowCure = 40.0;
constexpr double kListKneeBelowCure = 18.0;
constexpr double kTopAbove = 8.0;
constexpr double kLowShare = 0.2;
constexpr double kListLowShare = 0.1;
constexpr double kFarAbove = 100.0; // a sample this far over every line is a fault, not a picture
constexpr double kLeastSpan = 16.0; // between knee and top, if the lines say nothing

double shownDegrees(const HeatScaleState& state, double fahrenheit) {
    return state.celsius ? fahrenheit * 5.0 / 9.0 : fahrenheit;
}

double highestLine(const HeatScaleState& state, double least) {
    double highest = least;
    const auto take = [&](double value) {
        if (std::isfinite(value)) {
            highest = std::max(highest, value);
        }
    };
    for (const CureLine& cure : state.cures) {
        take(cure.atShown);
    }
    if (state.hardCeiling) {
        take(state.hardCeiling->atShown);
    }
    if (state.bleedCeiling) {
        take(state.bleedCeiling->atShown);
    }
    if (state.gel) {
        take(state.gel->atShown);
    }
    return highest;
}

double highestOfAll(const HeatScaleState& state, double line) {
    const double far = line + shownDegrees(state, kFarAbove);
    double highest = line;
    const auto take = [&](double value) {
        if (std::isfinite(value)) {
            highest = std::max(highest, std::min(value, far));
        }
    };
    for (const TracePoint& point : state.trace) {
        take(point.atShown);
    }
    if (state.peak) {
        take(state.peak->atShown);
    }
    if (state.gun) {
        take(state.gun->atShown);
    }
    if (state.strip && state.strip->highShown) {
        take(*state.strip->highShown);
    }
    return highest;
}

double kneeOf(const HeatScaleState& state, HeatScaleForm form) {
    const std::optional<CureLine> cure = lowerLimit(state);
    if (form == HeatScaleForm::List && cure) {
        return cure->atShown - shownDegrees(state, kListKneeBelowCure);
    }
    if (state.gel) {
        return state.gel->atShown - shownDegrees(state, kKneeBelowGel);
    }
    return cure ? cure->atShown - shownDegrees(state, kKneeBelowCure)
                : state.room.atShown + shownDegrees(state, kKneeBelowCure);
}

double spanOf(const HeatScaleState& state) {
    double span = std::isfinite(state.expectedSeconds) ? state.expectedSeconds : 0.0;
    for (const TracePoint& point : state.trace) {
        if (std::isfinite(point.seconds)) {
            span = std::max(span, point.seconds);
        }
    }
    return std::max(span, 1.0);
}

} // namespace

double HeatScaleMapping::y(double shown) const {
    if (!std::isfinite(shown)) {
        return plot.bottom();
    }
    if (shown < kneeShown) {
        const double share = std::clamp((shown - footShown) / (kneeShown - footShown), 0.0, 1.0);
        return plot.bottom() - share * (plot.bottom() - kneeY);
    }
    const double share = std::clamp((shown - kneeShown) / (topShown - kneeShown), 0.0, 1.0);
    return kneeY - share * (kneeY - plot.top());
}

double HeatScaleMapping::x(double seconds) const {
    const double share = std::isfinite(seconds) ? std::clamp(seconds / spanSeconds, 0.0, 1.0) : 0.0;
    return plot.left() + share * plot.width();
}

std::optional<CureLine> lowerLimit(const HeatScaleState& state) {
    const auto highest = std::max_element(state.cures.begin(), state.cures.end(),
                                          [](const CureLine& a, const CureLine& b) { return a.atShown < b.atShown; });
    return highest == state.cures.end() ? std::nullopt : std::optional<CureLine>(*highest);
}

std::optional<CeilingLine> upperLimit(const HeatScaleState& state) {
    if (!state.hardCeiling || !state.bleedCeiling) {
        return state.hardCeiling ? state.hardCeiling : state.bleedCeiling;
    }
    return state.bleedCeiling->atShown < state.hardCeiling->atShown ? state.bleedCeiling : state.hardCeiling;
}

HeatScaleMapping mapHeatScale(const HeatScaleState& state, const QRectF& plot, HeatScaleForm form) {
    HeatScaleMapping mapping;
    mapping.plot = plot;
    mapping.footShown = state.room.atShown;
    mapping.kneeShown = std::max(kneeOf(state, form), mapping.footShown + 1.0);
    const double line = highestLine(state, mapping.kneeShown + shownDegrees(state, kLeastSpan));
    mapping.topShown = highestOfAll(state, line) + shownDegrees(state, kTopAbove);
    const double low = form == HeatScaleForm::List ? kListLowShare : kLowShare;
    mapping.kneeY = plot.bottom() - low * plot.height();
    mapping.spanSeconds = spanOf(state);
    return mapping;
}

} // namespace holdfast::kiosk::screens
