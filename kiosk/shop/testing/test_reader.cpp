#include "kiosk/shop/testing/test_reader.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <charconv>
#include <cmath>

namespace holdfast::kiosk::shop {
namespace {

constexpr std::int64_t kMinute = 60'000;
constexpr std::int64_t kDay = 24 * 60 * kMinute;
constexpr std::int64_t kHour = 60 * kMinute;
constexpr std::size_t kClockLength = 5; ///< "14:05"

std::optional<int> digits(std::string_view text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() && value >= 0 ? std::optional{value} : std::nullopt;
}

/// Milliseconds since midnight of "14:05", "9:05".
std::optional<std::int64_t> clockFrom(std::string_view text) {
    const auto colon = text.find(':');
    if (colon == std::string_view::npos || text.size() > kClockLength || text.size() - colon != 3) {
        return std::nullopt;
    }
    const auto hours = digits(text.substr(0, colon));
    const auto minutes = digits(text.substr(colon + 1));
    if (!hours || !minutes || *hours > 23 || *minutes > 59) {
        return std::nullopt;
    }
    return *hours * kHour + *minutes * kMinute;
}

std::int64_t floorDay(std::int64_t localMilliseconds) {
    const auto rest = localMilliseconds % kDay;
    return localMilliseconds - (rest < 0 ? rest + kDay : rest);
}

} // namespace

std::string TestReader::text(const std::string& typed, const std::string& field) {
    auto text = trimmed(typed);
    const auto fault = textFault(text);
    if (fault == TextFault::tooLong) {
        m_faults.push_back({TestFaultCause::textTooLong, field, firstSigns(text)});
    } else if (fault == TextFault::controlSign) {
        m_faults.push_back({TestFaultCause::controlSign, field});
    }
    return text;
}

std::string TestReader::name(const std::string& typed, const std::string& field, TestFaultCause missing) {
    auto name = text(typed, field);
    if (name.empty()) {
        m_faults.push_back({missing, field});
    }
    return name;
}

std::optional<double> TestReader::number(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto value = numberFrom(text);
    if (!value) {
        m_faults.push_back({TestFaultCause::notANumber, field, firstSigns(text)});
    }
    return value;
}

std::optional<int> TestReader::whole(const std::string& typed, const std::string& field) {
    constexpr double kMost = 1e6;
    const auto value = number(typed, field);
    if (!value) {
        return std::nullopt;
    }
    if (std::floor(*value) != *value || std::abs(*value) > kMost) {
        m_faults.push_back({TestFaultCause::notWhole, field, firstSigns(trimmed(typed))});
        return std::nullopt;
    }
    return static_cast<int>(*value);
}

std::optional<analytics::Date> TestReader::date(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto date = records::dateFrom(text);
    if (!date) {
        m_faults.push_back({TestFaultCause::notADate, field, firstSigns(text)});
    }
    return date;
}

std::optional<std::int64_t> TestReader::time(const std::string& typed, const std::string& field, std::int64_t now,
                                             int utcOffsetMinutes) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto blank = text.find_first_of(" T");
    const auto clock = clockFrom(std::string_view{text}.substr(blank == std::string::npos ? 0 : blank + 1));
    auto day = floorDay(now + utcOffsetMinutes * kMinute);
    bool known = clock.has_value();
    if (blank != std::string::npos) {
        const auto date = records::dateFrom(std::string_view{text}.substr(0, blank));
        known = known && date.has_value();
        day = date ? date->time_since_epoch().count() * kDay : 0;
    }
    if (!known) {
        m_faults.push_back({TestFaultCause::notATime, field, firstSigns(text)});
        return std::nullopt;
    }
    return day + *clock - utcOffsetMinutes * kMinute;
}

std::optional<analytics::Grade> TestReader::grade(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto grade = analytics::Grade::fromText(text);
    if (grade) {
        return *grade;
    }
    using Fault = analytics::GradeFault;
    const auto why = grade.error();
    m_faults.push_back({why == Fault::belowScale || why == Fault::aboveScale        ? TestFaultCause::gradeOffScale
                        : why == Fault::offHalfSteps || why == Fault::notNeighbours ? TestFaultCause::gradeOffHalfSteps
                                                                                    : TestFaultCause::gradeUnreadable,
                        field, firstSigns(text)});
    return std::nullopt;
}

std::vector<double> TestReader::rising(const std::string& typed, const std::string& field, double least,
                                       TestFaultCause otherwise) {
    std::vector<double> values;
    std::size_t at = 0;
    const auto text = trimmed(typed);
    while (at < text.size()) {
        const auto end = std::min(text.find_first_of(", ;", at), text.size());
        if (end > at) {
            const auto part = text.substr(at, end - at);
            const auto value = numberFrom(part);
            if (!value || *value < least || (!values.empty() && *value <= values.back())) {
                m_faults.push_back({otherwise, field, firstSigns(text)});
                return {};
            }
            values.push_back(*value);
        }
        at = end + 1;
    }
    return values;
}

} // namespace holdfast::kiosk::shop
