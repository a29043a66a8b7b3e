#include "kiosk/reports/page/heat_window.hpp"

#include "kiosk/reports/page/placed_page.hpp"
#include "kiosk/reports/page/typesetting.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kTint = 0.08;
constexpr double kHatchStep = 2.2; ///< mm along the edge
constexpr double kHatchWidth = 0.2;
constexpr double kEdge = 0.5;
constexpr double kBelow = 22.0; ///< kelvin shown under the lowest line, about 40 °F
constexpr double kAbove = 8.0;  ///< kelvin shown over the highest
constexpr double kOpenAbove = 30.0;
constexpr double kPeakWidth = 1.2; ///< mm
constexpr double kFigures = 18.0;
constexpr double kWords = 62.0;

/// Celsius inside: only proportions count.
struct Scale final {
    double low = 0;
    double high = 1;
    Box plot;

    [[nodiscard]] double y(double celsius) const {
        const double share = (std::clamp(celsius, low, high) - low) / (high - low);
        return plot.bottom() - share * plot.height;
    }
};

bool usable(const HeatPeak& peak) {
    return (peak.low || peak.high) && (!peak.low || peak.low->isFinite()) && (!peak.high || peak.high->isFinite());
}

Scale scaleOf(const HeatWindow& window, const Box& plot) {
    Scale scale{window.lower.celsius(), window.lower.celsius(), plot};
    bool ceiling = false;
    const auto reach = [&](double celsius) {
        scale.low = std::min(scale.low, celsius);
        scale.high = std::max(scale.high, celsius);
    };
    for (const auto& line : window.lines) {
        reach(line.at.celsius());
        ceiling = ceiling || line.at > window.lower;
    }
    scale.low -= kBelow;
    scale.high += ceiling ? 0.0 : kOpenAbove;
    for (const auto& peak : window.peaks) {
        if (usable(peak)) {
            reach(peak.low.value_or(*(peak.high ? peak.high : peak.low)).celsius());
            reach(peak.high.value_or(*(peak.low ? peak.low : peak.high)).celsius());
        }
    }
    scale.high += kAbove;
    return scale;
}

void fill(PlacedPage& page, const Box& box, double strength) {
    QPainterPath path;
    path.addRect(box.x, box.y, box.width, box.height);
    page.shapes.push_back({path, strength});
}

void hatch(PlacedPage& page, const Box& box) {
    QPainterPath lines;
    for (double x = box.x - box.height; x < box.right(); x += kHatchStep) {
        QPainterPath line(QPointF(x, box.bottom()));
        line.lineTo(x + kHatchWidth, box.bottom());
        line.lineTo(x + kHatchWidth + box.height, box.y);
        line.lineTo(x + box.height, box.y);
        line.closeSubpath();
        lines.addPath(line);
    }
    QPainterPath clip;
    clip.addRect(box.x, box.y, box.width, box.height);
    page.shapes.push_back({lines.intersected(clip), 1.0});
}

void drawPeaks(PlacedPage& page, const HeatWindow& window, const Scale& scale) {
    std::vector<HeatPeak> peaks;
    std::copy_if(window.peaks.begin(), window.peaks.end(), std::back_inserter(peaks), usable);
    const double step = scale.plot.width / static_cast<double>(peaks.size() + 1);
    const double width = std::min(kPeakWidth, 0.7 * step);
    double x = scale.plot.x + step - width / 2;
    for (const auto& peak : peaks) {
        const double top = peak.high ? scale.y(peak.high->celsius()) : scale.plot.y;
        const double bottom = peak.low ? scale.y(peak.low->celsius()) : scale.plot.bottom();
        if (bottom - top < width) { // one figure: a dot
            const double middle =
                std::clamp((top + bottom) / 2, scale.plot.y + width / 2, scale.plot.bottom() - width / 2);
            QPainterPath dot;
            dot.addEllipse(QPointF(x + width / 2, middle), width / 2, width / 2);
            page.shapes.push_back({dot, 1.0});
        } else { // an interval: an I-beam
            page.ink.push_back({x + width / 2 - kHair, top, 2 * kHair, bottom - top});
            for (const double end : {top, bottom - kHair}) {
                page.ink.push_back({x, end, width, kHair});
            }
        }
        x += step;
    }
}

void drawLines(PlacedPage& page, const HeatWindow& window, const Scale& scale, double em, const Box& box) {
    auto lines = window.lines;
    std::stable_sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.at > b.at; });
    const Type type{em, false};
    const Type strong{em, true};
    const double high = lineHeight(type);
    std::vector<double> tops;
    for (const auto& line : lines) {
        const double y = scale.y(line.at.celsius());
        page.ink.push_back({scale.plot.x, std::min(y, scale.plot.bottom() - kEdge), scale.plot.width, kEdge});
        const double wished = y - high / 2;
        tops.push_back(tops.empty() ? std::max(box.y, wished) : std::max(wished, tops.back() + high));
    }
    double lowest = box.bottom() - high;
    for (std::size_t i = tops.size(); i-- > 0;) {
        tops[i] = std::min(tops[i], lowest);
        lowest = tops[i] - high;
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (tops[i] < box.y - 1e-6) {
            continue; // more lines than the drawing is high: the table of layers has them all
        }
        putRight(page, scale.plot.x - 1.5, tops[i], fitted(lines[i].figure, kFigures - 1.5, strong), strong);
        put(page, scale.plot.right() + 1.5, tops[i], fitted(lines[i].word, kWords - 1.5, type), type);
    }
}

} // namespace

void drawHeatWindow(PlacedPage& page, const HeatWindow& window, const Box& box, double em) {
    const Box plot{box.x + kFigures, box.y, std::max(10.0, box.width - kFigures - kWords), box.height};
    const auto scale = scaleOf(window, plot);
    const double lower = scale.y(window.lower.celsius());
    fill(page, {plot.x, lower, plot.width, plot.bottom() - lower}, kTint);
    if (window.upper) {
        const double upper = scale.y(window.upper->celsius());
        fill(page, {plot.x, plot.y, plot.width, upper - plot.y}, kTint);
        hatch(page, {plot.x, plot.y, plot.width, upper - plot.y});
    }
    putFrame(page, plot, kHair);
    drawLines(page, window, scale, em, box);
    drawPeaks(page, window, scale);
}

} // namespace holdfast::kiosk::reports
