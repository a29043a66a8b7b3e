#pragma once

#include "analytics/quantity/length.hpp"

#include <tl/expected.hpp>

#include <cmath>
#include <compare>
#include <cstddef>
#include <span>

/// What pulling and washing do to a marked length.
namespace holdfast::analytics {

/// A change of length as a share of the original one; negative is shorter.
class RelativeLength final {
public:
    constexpr RelativeLength() noexcept = default;
    [[nodiscard]] static constexpr RelativeLength fromFraction(double fraction) noexcept {
        return RelativeLength{fraction};
    }
    [[nodiscard]] static constexpr RelativeLength fromPercent(double percent) noexcept {
        return RelativeLength{percent / 100.0};
    }
    [[nodiscard]] constexpr double fraction() const noexcept { return m_fraction; }
    [[nodiscard]] constexpr double percent() const noexcept { return m_fraction * 100.0; }
    [[nodiscard]] bool isFinite() const noexcept { return std::isfinite(m_fraction); }
    constexpr auto operator<=>(const RelativeLength&) const noexcept = default;

private:
    constexpr explicit RelativeLength(double fraction) noexcept : m_fraction{fraction} {}
    double m_fraction = 0.0;
};

/// A length as rulers on the bench say it.
[[nodiscard]] constexpr Length millimetres(double value) noexcept {
    return Length::fromMetres(value / 1000.0);
}
[[nodiscard]] constexpr double inMillimetres(Length length) noexcept {
    return length.metres() * 1000.0;
}

enum class ExtensionFault {
    notFinite,
    gaugeNotPositive,       ///< the original length is zero or negative
    lengthNotPositive,      ///< a later length is zero or negative
    stretchedBelowOriginal, ///< the pulled length is shorter than the original
    relaxedAboveStretched,  ///< longer after letting go than while pulled
    nothingStretched,       ///< recovery of a pull that stretched nothing
    noMarks                 ///< a mean of no pairs of marks
};

/// (L1 − L0)/L0, L0 the gauge length at rest, L1 while pulled. Equal lengths are 0 %.
[[nodiscard]] tl::expected<RelativeLength, ExtensionFault> elongation(Length original, Length stretched) noexcept;

/// (C − A)/A, C the length after relaxation (terms of ASTM D3107). Negative if it came back shorter.
[[nodiscard]] tl::expected<RelativeLength, ExtensionFault> growth(Length original, Length relaxed) noexcept;

/// (B − C)/(B − A), A original, B stretched, C after relaxation (terms of ASTM D3107): 100 % is all of it, above it if
/// it came back shorter than it was.
[[nodiscard]] tl::expected<RelativeLength, ExtensionFault> recovery(Length original, Length stretched,
                                                                    Length relaxed) noexcept;

/// (x_t − x_0)/x_0, ISO 5077:2007; negative is shrinkage.
[[nodiscard]] tl::expected<RelativeLength, ExtensionFault> dimensionalChange(Length original, Length treated) noexcept;

/// A pair of marks before and after treatment.
struct MarkPair final {
    Length original;
    Length treated;
};

struct MarkFault final {
    std::size_t index = 0; ///< of the pair; 0 if there are none
    ExtensionFault fault = ExtensionFault::noMarks;
    bool operator==(const MarkFault&) const = default;
};

/// Mean of the changes of all pairs of one direction (ISO 5077: length and width are never joined). n = 1 is that
/// pair's; none is refused; the first bad pair is named. Not rounded.
[[nodiscard]] tl::expected<RelativeLength, MarkFault>
meanDimensionalChange(std::span<const MarkPair> direction) noexcept;

} // namespace holdfast::analytics
