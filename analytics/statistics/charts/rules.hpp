#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::analytics::statistics {

/// Lloyd S. Nelson, "The Shewhart control chart: tests for special causes", Journal of Quality Technology 16 (1984),
/// numbered as there; also ISO 7870-2:2013, annex. "Beyond" and "within" exclude the line itself, a value on the centre
/// line is on neither side, equal neighbours neither rise nor fall.
enum class NelsonRule : std::uint8_t {
    BeyondThreeSigma = 1, ///< one point beyond 3σ
    OneSide,              ///< nine in a row on one side of the centre line (Western Electric 1956: eight)
    Trend,                ///< six in a row steadily rising or falling
    Alternating,          ///< fourteen in a row alternating up and down
    TwoOfThree,           ///< two of three in a row beyond 2σ on the same side
    FourOfFive,           ///< four of five in a row beyond 1σ on the same side
    FifteenWithin,        ///< fifteen in a row within 1σ
    EightBeyond,          ///< eight in a row beyond 1σ, some on each side
};

/// Which rules are on.
class RuleSet final {
public:
    [[nodiscard]] static constexpr RuleSet all() noexcept { return RuleSet{0xff, 9}; }
    [[nodiscard]] static constexpr RuleSet none() noexcept { return RuleSet{0, 9}; }
    /// Western Electric, Statistical Quality Control Handbook (1956): rules 1, 5, 6, and eight in a row on one side.
    [[nodiscard]] static constexpr RuleSet westernElectric() noexcept {
        return none()
            .with(NelsonRule::BeyondThreeSigma)
            .with(NelsonRule::TwoOfThree)
            .with(NelsonRule::FourOfFive)
            .with(NelsonRule::OneSide)
            .withOneSideRun(8);
    }
    [[nodiscard]] constexpr RuleSet with(NelsonRule rule) const noexcept {
        return RuleSet{static_cast<std::uint8_t>(m_bits | bitOf(rule)), m_oneSideRun};
    }
    [[nodiscard]] constexpr RuleSet without(NelsonRule rule) const noexcept {
        return RuleSet{static_cast<std::uint8_t>(m_bits & ~bitOf(rule)), m_oneSideRun};
    }
    /// How many in a row rule 2 asks for; held within 2 … 30.
    [[nodiscard]] constexpr RuleSet withOneSideRun(int run) const noexcept {
        return RuleSet{m_bits, run < 2 ? 2 : run > 30 ? 30 : run};
    }
    [[nodiscard]] constexpr bool has(NelsonRule rule) const noexcept { return (m_bits & bitOf(rule)) != 0; }
    [[nodiscard]] constexpr int oneSideRun() const noexcept { return m_oneSideRun; }

private:
    constexpr RuleSet(std::uint8_t bits, int run) noexcept : m_bits{bits}, m_oneSideRun{run} {}
    static constexpr std::uint8_t bitOf(NelsonRule rule) noexcept {
        return static_cast<std::uint8_t>(1U << (static_cast<unsigned>(rule) - 1U));
    }
    std::uint8_t m_bits;
    int m_oneSideRun;
};

enum class SignalSide : std::uint8_t {
    Above, ///< above the centre line; a trend that rises
    Below, ///< below it; a trend that falls
    Both,  ///< rules 4, 7 and 8
};

/// One signal of one rule. Signals of the same rule and side whose points overlap are one: a run of twelve on one side
/// is told once, with its twelve points.
struct Signal final {
    NelsonRule rule = NelsonRule::BeyondThreeSigma;
    SignalSide side = SignalSide::Above;
    std::size_t first = 0; ///< first point it speaks of
    std::size_t at = 0;    ///< the point at which the rule was first met
    std::size_t last = 0;  ///< last point it speaks of
};

struct RuleFindings final {
    std::vector<Signal> alarms; ///< in the order of `at`
    /// By point, which rules speak of it: bit (rule − 1), + 8 for a signal below.
    std::vector<std::uint16_t> marks;

    /// Every point the signal speaks of: for two of three and four of five, those beyond the line and not the rest.
    [[nodiscard]] std::vector<std::size_t> pointsOf(const Signal& signal) const;
};

/// What the rules remember of the points so far: one bit a point, the latest lowest.
struct RuleHistory final {
    std::uint64_t sides = 0;  ///< above the centre line in the lower half, below in the upper
    std::uint64_t runs = 0;   ///< by 16 bits: within 1σ, alternating, rising, falling
    std::uint64_t beyond = 0; ///< by 16 bits: above 1σ, below −1σ, above 2σ, below −2σ
    double before = 0.0;

    static constexpr std::uint64_t kLanes = 0x0001'0001'0001'0001ULL; ///< the lowest bit of each lane of 16

    void take(double value, double z, bool first) noexcept {
        const auto rises = static_cast<std::uint64_t>(!first & (value > before));
        const auto falls = static_cast<std::uint64_t>(!first & (value < before));
        before = value;
        const auto turns = (rises & (runs >> 48U)) | (falls & (runs >> 32U));
        const auto within = static_cast<std::uint64_t>((z < 1.0) & (z > -1.0));
        sides = (sides << 1U & ~(1ULL << 32U)) | static_cast<std::uint64_t>(z > 0.0) |
                static_cast<std::uint64_t>(z < 0.0) << 32U;
        runs = (runs << 1U & ~kLanes) | within | (turns & 1U) << 16U | rises << 32U | falls << 48U;
        beyond = (beyond << 1U & ~kLanes) | static_cast<std::uint64_t>(z > 1.0) |
                 static_cast<std::uint64_t>(z < -1.0) << 16U | static_cast<std::uint64_t>(z > 2.0) << 32U |
                 static_cast<std::uint64_t>(z < -2.0) << 48U;
    }

    /// Whether any rule may be met now; which, is looked at only then.
    [[nodiscard]] bool mayMeet(double z, std::uint32_t oneSideRun) const noexcept {
        const std::uint64_t run = oneSideRun;
        const bool longRun = ((sides & run) == run) | ((sides >> 32U & run) == run);
        const bool steady = ((runs & 0x7fffU) == 0x7fffU) | ((runs >> 16U & 0xfffU) == 0xfffU) |
                            ((runs >> 32U & 0x1fU) == 0x1fU) | ((runs >> 48U & 0x1fU) == 0x1fU);
        const auto fourMay = [](std::uint64_t side) {
            return static_cast<bool>((side & 1U) & ((side >> 1U) | (side >> 2U)) & ((side >> 3U) | (side >> 4U)));
        };
        const bool far = (z > 2.0) | (z < -2.0) | fourMay(beyond) | fourMay(beyond >> 16U) |
                         (((beyond | beyond >> 16U) & 0xffU) == 0xffU);
        return longRun | steady | far;
    }
};

/// Takes the points of a chart one by one; constant work and no allocation for a point without a signal.
class RuleReader final {
public:
    RuleReader(RuleSet rules, std::size_t mostPoints);
    /// The next point, of `mostPoints` at most: its plotted value, for trends, and its distance from the centre line in
    /// standard deviations of the plotted statistic at that point.
    void take(double value, double z) {
        m_history.take(value, z, m_count == 0);
        if (m_history.mayMeet(z, m_runMask)) {
            record(z);
        }
        ++m_count;
    }
    [[nodiscard]] RuleFindings finish() &&;

private:
    [[nodiscard]] std::uint32_t hits(double z) const;
    void record(double z);
    [[nodiscard]] std::uint32_t pointsBack(unsigned bit) const;

    RuleFindings m_findings;
    RuleHistory m_history;
    std::uint32_t m_on;
    std::uint32_t m_runMask;
    std::size_t m_count = 0;
    std::vector<std::size_t> m_open; ///< by bit of a hit, the latest signal plus one
};

/// The rules over standardised values, as for a chart whose limits vary by point. Linear. Faults: NoValues; NotFinite.
[[nodiscard]] tl::expected<RuleFindings, StatisticsFault> findSignals(std::span<const double> z,
                                                                      RuleSet rules = RuleSet::all());

} // namespace holdfast::analytics::statistics
