#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace holdfast::analytics::statistics {

/// Two doubles that the processor works on at once; every machine gives the same figures.
using Lanes = double __attribute__((vector_size(16)));
inline constexpr std::size_t kLanes = 2;

[[nodiscard]] inline Lanes loadLanes(const double* from) noexcept {
    Lanes lanes;
    std::memcpy(&lanes, from, sizeof lanes);
    return lanes;
}

inline void storeLanes(double* to, const Lanes& lanes) noexcept {
    std::memcpy(to, &lanes, sizeof lanes);
}

[[nodiscard]] inline double sumOfLanes(const Lanes& lanes) noexcept {
    return lanes[0] + lanes[1];
}

/// constant + first·x + second·x² + …, by Horner, without a loop.
template <class... Rest>
[[nodiscard]] inline Lanes polynomial(const Lanes& x, double constant, Rest... rest) noexcept {
    if constexpr (sizeof...(rest) == 0) {
        return Lanes{} + constant;
    } else {
        return polynomial(x, rest...) * x + constant;
    }
}

/// 1/(1 + e⁻ˣ) and the rest to 1.
struct LogisticPair final {
    Lanes smaller; ///< 0 below −708
    Lanes larger;
};

/// For x ≤ 0, within four units of the last place. x = n·ln 2 + r; eʳ = (Q + r·P)/(Q − r·P) with P and Q in r²
/// (Moshier, Methods and Programs for Mathematical Functions, 1989, exp), so that one division does for both.
[[nodiscard]] inline LogisticPair logisticOfNegative(const Lanes& x) noexcept {
    using Bits = std::int64_t __attribute__((vector_size(16)));
    constexpr double kLowest = -708.0;
    constexpr double kToWhole = 0x1.8p52; // adding it leaves a rounded whole number in the last bits
    constexpr double kLog2High = 0x1.62e42fee00000p-1;
    constexpr double kLog2Low = 0x1.a39ef35793c76p-33;
    const Lanes lowest = Lanes{} + kLowest;
    const Lanes inside = x < lowest ? lowest : x;
    const Lanes shifted = inside * 0x1.71547652b82fep0 + kToWhole;
    const Lanes whole = shifted - kToWhole;
    const Lanes r = (inside - whole * kLog2High) - whole * kLog2Low;
    const Lanes square = r * r;
    const Lanes odd =
        r * polynomial(square, 9.99999999999999999910e-1, 3.02994407707441961300e-2, 1.26177193074810590878e-4);
    const Lanes even = polynomial(square, 2.00000000000000000009, 2.27265548208155028766e-1, 2.52448340349684104192e-3,
                                  3.00198505138664455042e-6);
    const Lanes above = even + odd;
    Bits exponent;
    Bits scaled;
    std::memcpy(&exponent, &shifted, sizeof exponent);
    std::memcpy(&scaled, &above, sizeof scaled);
    scaled += exponent << 52;
    Lanes power; // 2ⁿ(Q + r·P)
    std::memcpy(&power, &scaled, sizeof power);
    const Lanes below = even - odd;
    const Lanes share = 1.0 / (below + power);
    return {x < lowest ? Lanes{} : power * share, below * share};
}

/// log(1 + x) for 0 ≤ x ≤ 1 within two units of the last place: 2·artanh(s) by its series, the argument halved above
/// √2 so that |s| < 0.172 (Abramowitz and Stegun, 4.1.27).
[[nodiscard]] inline Lanes logOfOneAnd(const Lanes& x) noexcept {
    constexpr double kSqrt2Less1 = 0.41421356237309505;
    constexpr double kLog2 = 0.69314718055994531;
    const auto large = x > Lanes{} + kSqrt2Less1;
    const Lanes s = (large ? x - 1.0 : x) / (large ? x + 3.0 : x + 2.0);
    const Lanes square = s * s;
    const Lanes series = polynomial(square, 1.0 / 3.0, 1.0 / 5.0, 1.0 / 7.0, 1.0 / 9.0, 1.0 / 11.0, 1.0 / 13.0,
                                    1.0 / 15.0, 1.0 / 17.0, 1.0 / 19.0, 1.0 / 21.0);
    const Lanes log = 2.0 * s + 2.0 * s * square * series;
    return large ? log + kLog2 : log;
}

/// Kahan's sum: what one addition rounds away goes into the next. Plain sums of many equal terms all round alike.
class LaneSum final {
public:
    void add(const Lanes& term) noexcept {
        const Lanes owed = term - m_excess;
        const Lanes next = m_sum + owed;
        m_excess = (next - m_sum) - owed;
        m_sum = next;
    }
    [[nodiscard]] double total() const noexcept { return sumOfLanes(m_sum); }

private:
    Lanes m_sum{};
    Lanes m_excess{};
};

} // namespace holdfast::analytics::statistics
