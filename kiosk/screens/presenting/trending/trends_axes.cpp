#include "kiosk/screens/presenting/trending/trends_axes.hpp"

#include "kiosk/screens/presenting/shown.hpp"

#include <array>
#include <chrono>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

using std::chrono::day;
using std::chrono::days;
using std::chrono::months;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr double kMonthsFrom = 60.0; // days: shorter axes are told in weeks
constexpr double kWeeksFrom = 9.0;   // shorter ones in days
constexpr double kAir = 0.5;

/// 1, 2 or 5 times a power of ten, so that `span` has at most `most` steps.
double stepFor(double span, int most) {
    const double raw = span / most;
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= raw * (1.0 - 1e-9)) {
            return times * power;
        }
    }
    return 10.0 * power;
}

int decimalsOf(double step) {
    return step < 0.1 ? 2 : step < 1.0 ? 1 : 0;
}

void addMonths(TrendAxis& axis, const TrendsHow& how) {
    const sys_days first{days{static_cast<int>(std::floor(axis.from))}};
    const year_month_day from{first};
    for (auto month = year_month_day{from.year(), from.month(), day{1}};
         static_cast<double>(sys_days{month}.time_since_epoch().count()) <= axis.to; month += months{1}) {
        const auto number = static_cast<unsigned>(month.month());
        auto text = how.text("tests.month." + std::to_string(number));
        if (number == 1) {
            text += " " + std::to_string(static_cast<int>(month.year()));
        }
        const auto at = static_cast<double>(sys_days{month}.time_since_epoch().count());
        if (at >= axis.from) {
            axis.ticks.append({at, toQString(text), false});
        }
    }
}

void addDays(TrendAxis& axis, int every, const TrendsHow& how) {
    constexpr int kMonday = 4; // 1970-01-05
    auto first = static_cast<int>(std::ceil(axis.from));
    while (every > 1 && (first - kMonday) % every != 0) {
        ++first;
    }
    for (int at = first; at <= axis.to; at += every) {
        const year_month_day date{sys_days{days{at}}};
        const auto text = how.text(
            "tests.day", {{"day", std::to_string(static_cast<unsigned>(date.day()))},
                          {"month", how.text("tests.month." + std::to_string(static_cast<unsigned>(date.month())))}});
        axis.ticks.append({static_cast<double>(at), toQString(text), false});
    }
}

} // namespace

TrendAxis dayAxis(std::int64_t from, std::int64_t to, const TrendsHow& how) {
    TrendAxis axis;
    axis.days = true;
    axis.from = how.axisDay(from) - kAir;
    axis.to = how.axisDay(to) + kAir;
    const double span = axis.to - axis.from;
    if (span >= kMonthsFrom) {
        addMonths(axis, how);
    } else {
        addDays(axis, span >= kWeeksFrom ? 7 : 1, how);
    }
    return axis;
}

TrendAxis marginAxis(double from, double to, const TrendsHow& how) {
    constexpr int kMost = 4;
    TrendAxis axis;
    if (!std::isfinite(from) || !std::isfinite(to) || from >= to) {
        return axis;
    }
    axis.from = from;
    axis.to = to;
    const double step = stepFor(to - from, kMost);
    for (auto i = static_cast<long>(std::ceil(from / step)); static_cast<double>(i) * step <= to; ++i) {
        const double at = static_cast<double>(i) * step;
        auto text = wording::numberText(at, decimalsOf(step));
        if (i > 0) {
            text.insert(0, "+");
        }
        axis.ticks.append({at, toQString(i == 0 ? "0\xC2\xA0" + how.speech.figures.unitSign() : text), i == 0});
    }
    return axis;
}

TrendAxis shareAxis(double to, const TrendsHow& how) {
    constexpr int kMost = 2;
    TrendAxis axis;
    axis.from = 0.0;
    axis.to = std::max(1.0, to) * 1.08;
    const double step = stepFor(axis.to, kMost);
    axis.ticks.append({0.0, QStringLiteral("0"), false});
    for (int i = 1; i * step <= axis.to; ++i) {
        axis.ticks.append({i * step,
                           toQString(how.text("trends.page.percent", {{"share", wording::numberText(i * step, 0)}})),
                           false});
    }
    return axis;
}

} // namespace holdfast::kiosk::screens
