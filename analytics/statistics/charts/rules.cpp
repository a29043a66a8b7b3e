#include "analytics/statistics/charts/rules.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

constexpr unsigned kBelow = 8; ///< what is added to a bit for a signal below

constexpr std::uint32_t bitOf(NelsonRule rule) {
    return 1U << (static_cast<unsigned>(rule) - 1U);
}

constexpr std::uint32_t when(bool met, NelsonRule rule, unsigned shift = 0) {
    return met ? bitOf(rule) << shift : 0U;
}

constexpr bool allSet(std::uint32_t bits, std::uint32_t mask) {
    return (bits & mask) == mask;
}

std::uint32_t onMask(RuleSet rules) {
    std::uint32_t on = 0;
    for (unsigned rule = 1; rule <= 8; ++rule) {
        on |= when(rules.has(static_cast<NelsonRule>(rule)), static_cast<NelsonRule>(rule));
    }
    return on | (on << kBelow);
}

} // namespace

RuleReader::RuleReader(RuleSet rules, std::size_t mostPoints)
    : m_on{onMask(rules)}, m_runMask{(1U << static_cast<unsigned>(rules.oneSideRun())) - 1U}, m_open(16, 0) {
    m_findings.marks.resize(mostPoints, 0);
}

RuleFindings RuleReader::finish() && {
    m_findings.marks.resize(m_count);
    return std::move(m_findings);
}

std::uint32_t RuleReader::hits(double z) const {
    using enum NelsonRule;
    const auto lane = [](std::uint64_t word, unsigned which) {
        return static_cast<std::uint32_t>(word >> (16U * which)) & 0xffffU;
    };
    const auto above = static_cast<std::uint32_t>(m_history.sides);
    const auto below = static_cast<std::uint32_t>(m_history.sides >> 32U);
    const std::uint32_t up1 = lane(m_history.beyond, 0);
    const std::uint32_t down1 = lane(m_history.beyond, 1);
    std::uint32_t met = when(z > 3.0, BeyondThreeSigma) | when(z < -3.0, BeyondThreeSigma, kBelow);
    met |= when(allSet(above, m_runMask), OneSide) | when(allSet(below, m_runMask), OneSide, kBelow);
    met |= when(allSet(lane(m_history.runs, 2), 0x1fU), Trend) |
           when(allSet(lane(m_history.runs, 3), 0x1fU), Trend, kBelow);
    met |= when(allSet(lane(m_history.runs, 1), 0xfffU), Alternating);
    met |= when(allSet(lane(m_history.runs, 0), 0x7fffU), FifteenWithin);
    met |= when(z > 2.0 && std::popcount(lane(m_history.beyond, 2) & 0x7U) >= 2, TwoOfThree);
    met |= when(z < -2.0 && std::popcount(lane(m_history.beyond, 3) & 0x7U) >= 2, TwoOfThree, kBelow);
    met |= when(z > 1.0 && std::popcount(up1 & 0x1fU) >= 4, FourOfFive);
    met |= when(z < -1.0 && std::popcount(down1 & 0x1fU) >= 4, FourOfFive, kBelow);
    met |= when(allSet(up1 | down1, 0xffU) && (up1 & 0xffU) != 0 && (down1 & 0xffU) != 0, EightBeyond);
    return met & m_on;
}

/// The points the rule speaks of that is met now, one bit a point, the latest lowest.
std::uint32_t RuleReader::pointsBack(unsigned bit) const {
    const bool below = bit >= kBelow;
    switch (static_cast<NelsonRule>(bit % kBelow + 1U)) {
    case NelsonRule::BeyondThreeSigma:
        return 1U;
    case NelsonRule::OneSide:
        return m_runMask;
    case NelsonRule::Trend:
        return 0x3fU;
    case NelsonRule::Alternating:
        return 0x3fffU;
    case NelsonRule::TwoOfThree:
        return static_cast<std::uint32_t>(m_history.beyond >> (below ? 48U : 32U)) & 0x7U;
    case NelsonRule::FourOfFive:
        return static_cast<std::uint32_t>(m_history.beyond >> (below ? 16U : 0U)) & 0x1fU;
    case NelsonRule::FifteenWithin:
        return 0x7fffU;
    case NelsonRule::EightBeyond:
        return 0xffU;
    }
    return 1U;
}

void RuleReader::record(double z) {
    const std::size_t now = m_count;
    for (std::uint32_t met = hits(z); met != 0; met &= met - 1U) {
        const auto bit = static_cast<unsigned>(std::countr_zero(met));
        const std::uint32_t back = pointsBack(bit);
        for (std::uint32_t rest = back; rest != 0; rest &= rest - 1U) {
            m_findings.marks[now - static_cast<std::size_t>(std::countr_zero(rest))] |=
                static_cast<std::uint16_t>(1U << bit);
        }
        const std::size_t first = now - static_cast<std::size_t>(31 - std::countl_zero(back));
        auto& open = m_open[bit];
        if (open > 0 && m_findings.alarms[open - 1].last >= first) {
            m_findings.alarms[open - 1].last = now;
            continue;
        }
        const auto rule = static_cast<NelsonRule>(bit % kBelow + 1U);
        const bool twoSided =
            rule == NelsonRule::Alternating || rule == NelsonRule::FifteenWithin || rule == NelsonRule::EightBeyond;
        const auto side = twoSided ? SignalSide::Both : bit >= kBelow ? SignalSide::Below : SignalSide::Above;
        m_findings.alarms.push_back({rule, side, first, now, now});
        open = m_findings.alarms.size();
    }
}

std::vector<std::size_t> RuleFindings::pointsOf(const Signal& signal) const {
    const unsigned bit = static_cast<unsigned>(signal.rule) - 1U + (signal.side == SignalSide::Below ? kBelow : 0U);
    std::vector<std::size_t> points;
    for (std::size_t i = signal.first; i <= signal.last && i < marks.size(); ++i) {
        if ((marks[i] >> bit & 1U) != 0) {
            points.push_back(i);
        }
    }
    return points;
}

tl::expected<RuleFindings, StatisticsFault> findSignals(std::span<const double> z, RuleSet rules) {
    if (z.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    RuleReader reader{rules, z.size()};
    for (const double value : z) {
        if (!std::isfinite(value)) {
            return tl::unexpected{StatisticsFault::NotFinite};
        }
        reader.take(value, value);
    }
    return std::move(reader).finish();
}

} // namespace holdfast::analytics::statistics
