#include "kiosk/wording/figures.hpp"

#include <cmath>
#include <cstdint>
#include <cstdio>

namespace holdfast::kiosk::wording {

using analytics::Temperature;
using analytics::TemperatureDifference;
using analytics::TemperatureUnit;

namespace {

constexpr const char* kMinus = "\xE2\x88\x92";    // U+2212
constexpr const char* kNoBreakSpace = "\xC2\xA0"; // U+00A0
constexpr const char* kNoFigure = "\xE2\x80\x93"; // U+2013

double rounded(double value, int decimals) {
    const double scale = std::pow(10.0, decimals);
    return std::round(value * scale) / scale;
}

} // namespace

std::string numberText(double value, int decimals) {
    if (!std::isfinite(value)) {
        return kNoFigure;
    }
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.*f", decimals, std::fabs(rounded(value, decimals)));
    const bool negative = rounded(value, decimals) < 0.0;
    return (negative ? kMinus : "") + std::string{buffer};
}

std::string Figures::unitSign() const {
    return unit == TemperatureUnit::celsius ? "°C" : "°F";
}

std::string Figures::bare(Temperature t) const {
    return numberText(t.in(unit), decimals);
}

std::string Figures::temperature(Temperature t) const {
    return bare(t) + kNoBreakSpace + unitSign();
}

std::string Figures::difference(TemperatureDifference d) const {
    return numberText(std::fabs(d.in(unit)), decimals) + kNoBreakSpace + unitSign();
}

std::string Figures::bareDifference(TemperatureDifference d) const {
    return numberText(std::fabs(d.in(unit)), decimals);
}

std::string Figures::signedDifference(TemperatureDifference d) const {
    const bool positive = rounded(d.in(unit), decimals) > 0.0;
    return (positive ? "+" : "") + numberText(d.in(unit), decimals) + kNoBreakSpace + unitSign();
}

namespace {

constexpr int kMostDecimals = 3;

int decimalsToTellApart(double value, double limit, int decimals) {
    if (value == limit || !std::isfinite(value) || !std::isfinite(limit)) {
        return decimals;
    }
    while (decimals < kMostDecimals && rounded(value, decimals) == rounded(limit, decimals)) {
        ++decimals;
    }
    return decimals;
}

} // namespace

Figures Figures::tellingApart(Temperature value, Temperature limit) const {
    return {unit, decimalsToTellApart(value.in(unit), limit.in(unit), decimals)};
}

Figures Figures::tellingApart(TemperatureDifference value, TemperatureDifference limit) const {
    return {unit, decimalsToTellApart(value.in(unit), limit.in(unit), decimals)};
}

std::string durationText(analytics::Duration duration) {
    const double seconds = std::isfinite(duration.count()) ? std::max(0.0, duration.count()) : 0.0;
    if (seconds < 10.0) {
        const double tenth = rounded(seconds, 1);
        return numberText(tenth, tenth == std::floor(tenth) ? 0 : 1) + kNoBreakSpace + "s";
    }
    const auto whole = static_cast<std::int64_t>(std::llround(seconds));
    if (whole < 120) {
        return std::to_string(whole) + kNoBreakSpace + "s";
    }
    if (whole < 7200) {
        const auto rest = whole % 60;
        const auto minutes = std::to_string(whole / 60) + kNoBreakSpace + "min";
        return rest == 0 ? minutes : minutes + " " + std::to_string(rest) + kNoBreakSpace + "s";
    }
    return std::to_string(whole / 3600) + kNoBreakSpace + "h";
}

std::string waitText(analytics::Duration duration) {
    constexpr double kMinute = 60.0;
    const double seconds = duration.count();
    const bool whole = std::isfinite(seconds) && seconds > 2 * kMinute;
    return durationText(whole ? analytics::Duration{std::ceil(seconds / kMinute) * kMinute} : duration);
}

std::string clockText(std::int64_t millisecondsSinceEpoch, int utcOffsetMinutes) {
    constexpr std::int64_t kDay = 24 * 60;
    std::int64_t minutes = millisecondsSinceEpoch / 60000 + utcOffsetMinutes;
    minutes = ((minutes % kDay) + kDay) % kDay;
    char buffer[16];
    std::snprintf(buffer, sizeof buffer, "%02d:%02d", static_cast<int>(minutes / 60), static_cast<int>(minutes % 60));
    return buffer;
}

} // namespace holdfast::kiosk::wording
