#include "analytics/fastness/grade.hpp"

#include "analytics/fastness/same.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numeric>
#include <vector>

namespace holdfast::analytics {
namespace {

constexpr std::string_view kLongDash = "–";

std::string_view trimmed(std::string_view text) noexcept {
    constexpr std::string_view kBlank = " \t\r\n";
    const auto first = text.find_first_not_of(kBlank);
    if (first == std::string_view::npos)
        return {};
    return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::optional<double> numberIn(std::string_view text) {
    std::string plain{trimmed(text)};
    std::replace(plain.begin(), plain.end(), ',', '.');
    double number = 0.0;
    const char* end = plain.data() + plain.size();
    const auto read = std::from_chars(plain.data(), end, number, std::chars_format::fixed);
    if (plain.empty() || read.ec != std::errc{} || read.ptr != end || !std::isfinite(number))
        return std::nullopt;
    return number;
}

/// Where a half step is parted; a sign in front parts nothing.
struct Parting {
    std::size_t at;
    std::size_t width;
};

std::optional<Parting> partingOf(std::string_view text) noexcept {
    if (const auto at = text.find(kLongDash); at != std::string_view::npos)
        return Parting{at, kLongDash.size()};
    if (const auto at = text.find_first_of("-/", 1); at != std::string_view::npos)
        return Parting{at, 1};
    return std::nullopt;
}

tl::expected<Grade, GradeFault> halfStep(std::string_view lower, std::string_view upper) {
    const auto low = numberIn(lower);
    const auto high = numberIn(upper);
    if (!low || !high)
        return tl::unexpected(GradeFault::notANumber);
    for (const double number : {*low, *high})
        if (const auto grade = Grade::fromNumber(number); !grade)
            return grade;
    const bool whole = *low == std::floor(*low) && *high == std::floor(*high);
    if (!whole || *high - *low != 1.0)
        return tl::unexpected(GradeFault::notNeighbours);
    return Grade::fromNumber(*low + 0.5);
}

} // namespace

tl::expected<Grade, GradeFault> Grade::fromNumber(double number) noexcept {
    if (!std::isfinite(number))
        return tl::unexpected(GradeFault::notANumber);
    if (number < worst().number() - kSame)
        return tl::unexpected(GradeFault::belowScale);
    if (number > best().number() + kSame)
        return tl::unexpected(GradeFault::aboveScale);
    const double step = std::round((number - 1.0) * 2.0);
    if (std::abs(1.0 + step / 2.0 - number) > kSame)
        return tl::unexpected(GradeFault::offHalfSteps);
    return Grade{static_cast<std::size_t>(step)};
}

tl::expected<Grade, GradeFault> Grade::fromText(std::string_view text) {
    const auto typed = trimmed(text);
    if (typed.empty())
        return tl::unexpected(GradeFault::empty);
    if (const auto parting = partingOf(typed))
        return halfStep(typed.substr(0, parting->at), typed.substr(parting->at + parting->width));
    const auto number = numberIn(typed);
    if (!number)
        return tl::unexpected(GradeFault::notANumber);
    return fromNumber(*number);
}

std::string Grade::text() const {
    const auto whole = 1 + m_step / 2;
    if (m_step % 2 == 0)
        return std::to_string(whole);
    return std::to_string(whole) + "-" + std::to_string(whole + 1);
}

std::optional<Grade> medianGrade(std::span<const Grade> grades) {
    if (grades.empty())
        return std::nullopt;
    std::vector<Grade> sorted(grades.begin(), grades.end());
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>((sorted.size() - 1) / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    return *middle;
}

std::size_t GradeCounts::total() const noexcept {
    return std::accumulate(perStep.begin(), perStep.end(), std::size_t{0});
}

std::size_t GradeCounts::atLeast(Grade grade) const noexcept {
    return std::accumulate(perStep.begin() + static_cast<std::ptrdiff_t>(grade.step()), perStep.end(), std::size_t{0});
}

GradeCounts countGrades(std::span<const Grade> grades) noexcept {
    GradeCounts counts;
    for (const auto grade : grades)
        ++counts.perStep.at(grade.step());
    return counts;
}

} // namespace holdfast::analytics
