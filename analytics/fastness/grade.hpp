#pragma once

#include <tl/expected.hpp>

#include <array>
#include <cassert>
#include <compare>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

/// Grades of fastness: an ordinal scale.
namespace holdfast::analytics {

enum class GradeFault {
    empty,
    notANumber,
    belowScale, ///< under 1
    aboveScale, ///< over 5
    offHalfSteps,
    notNeighbours ///< "4-2", "5-4": a half step is written lower grade first, upper grade one above it
};

/// 1 worst to 5 best in half steps, the nine steps of ISO 105-A02 and A03. Ordinal: the steps are not equally far apart
/// (A02: 5 to 4 is 1.7 CIELAB units, 2 to 1 is 6.8), so grades are compared, counted and given a median, never added or
/// averaged. Greater is better.
class Grade final {
public:
    static constexpr std::size_t kSteps = 9;

    /// 1, 1.5 … 5, within 1e-9.
    [[nodiscard]] static tl::expected<Grade, GradeFault> fromNumber(double number) noexcept;
    /// "4", "4.5", "4,5" or "4-5" (also with a dash or a slash), spaces round it ignored.
    [[nodiscard]] static tl::expected<Grade, GradeFault> fromText(std::string_view text);
    /// Step 0 is grade 1, step 8 grade 5; a step above 8 is a bug.
    [[nodiscard]] static constexpr Grade fromStep(std::size_t step) noexcept { return Grade{step}; }
    [[nodiscard]] static constexpr Grade worst() noexcept { return Grade{0}; }
    [[nodiscard]] static constexpr Grade best() noexcept { return Grade{kSteps - 1}; }

    [[nodiscard]] constexpr std::size_t step() const noexcept { return m_step; }
    /// 4.5 for 4-5: for storing and for limits, not for arithmetic.
    [[nodiscard]] constexpr double number() const noexcept { return 1.0 + static_cast<double>(m_step) / 2.0; }
    /// As the standards write it: "4", "4-5".
    [[nodiscard]] std::string text() const;

    constexpr auto operator<=>(const Grade&) const noexcept = default;

private:
    constexpr explicit Grade(std::size_t step) noexcept : m_step{step} { assert(step < kSteps); }
    std::size_t m_step;
};

/// The middle grade; of an even number the lower of the two in the middle, because between two classes of an ordinal
/// scale there is no half way, and the lower one is a grade somebody gave and never makes a print look better than half
/// of its assessors saw it. Absent for none; n = 1 is that grade.
[[nodiscard]] std::optional<Grade> medianGrade(std::span<const Grade> grades);

/// How often each step was given.
struct GradeCounts final {
    std::array<std::size_t, Grade::kSteps> perStep{};
    [[nodiscard]] std::size_t of(Grade grade) const noexcept { return perStep.at(grade.step()); }
    [[nodiscard]] std::size_t total() const noexcept;
    /// How many at or above it.
    [[nodiscard]] std::size_t atLeast(Grade grade) const noexcept;
};

[[nodiscard]] GradeCounts countGrades(std::span<const Grade> grades) noexcept;

} // namespace holdfast::analytics
