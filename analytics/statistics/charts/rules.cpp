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

constexpr void push(std::uint32_t& bits, bool bit) {
    bits = (bits << 1U) | static_cast<std::uint32_t>(bit);
}

std::uint32_t onMask(RuleSet rules) {
    std::uint32_t on = 0;
    for (unsigned rule = 1; rule <= 8; ++rule) {
        on |= when(rules.has(static_cast<NelsonRule>(rule)), static_cast<NelsonRule>(rule));
    }
    return on | (on << kBelow);
}

} // namespace

RuleReader::RuleReader(RuleSet rules, std::size_t expectedPoints)
    : m_on{onMask(rules)}, m_runMask{(1U << static_cast<unsigned>(rules.oneSideRun())) - 1U}, m_open(16, 0) {
    m_findings.marks.reserve(expectedPoints);
}

std::uint32_t RuleReader::hitsOf(double value, double z) {
    using enum NelsonRule;
    const std::uint32_t roseBefore = m_rise & 1U;
    const std::uint32_t fellBefore = m_fall & 1U;
    const bool rises = m_count > 0 && value > m_before;
    const bool falls = m_count > 0 && value < m_before;
    m_before = value;
    push(m_rise, rises);
    push(m_fall, falls);
    push(m_turn, (rises && fellBefore != 0) || (falls && roseBefore != 0));
    push(m_above, z > 0.0);
    push(m_below, z < 0.0);
    push(m_up1, z > 1.0);
    push(m_down1, z < -1.0);
    push(m_up2, z > 2.0);
    push(m_down2, z < -2.0);
    push(m_within, std::abs(z) < 1.0);

    std::uint32_t hits = 0;
    if (std::abs(z) > 1.0) {
        hits |= when(z > 3.0, BeyondThreeSigma) | when(z < -3.0, BeyondThreeSigma, kBelow);
        hits |= when(z > 2.0 && std::popcount(m_up2 & 0x7U) >= 2, TwoOfThree);
        hits |= when(z < -2.0 && std::popcount(m_down2 & 0x7U) >= 2, TwoOfThree, kBelow);
        hits |= when(z > 1.0 && std::popcount(m_up1 & 0x1fU) >= 4, FourOfFive);
        hits |= when(z < -1.0 && std::popcount(m_down1 & 0x1fU) >= 4, FourOfFive, kBelow);
        hits |= when(allSet(m_up1 | m_down1, 0xffU) && (m_above & 0xffU) != 0 && (m_below & 0xffU) != 0, EightBeyond);
    }
    hits |= when(allSet(m_above, m_runMask), OneSide) | when(allSet(m_below, m_runMask), OneSide, kBelow);
    hits |= when(allSet(m_rise, 0x1fU), Trend) | when(allSet(m_fall, 0x1fU), Trend, kBelow);
    hits |= when(allSet(m_turn, 0xfffU), Alternating);
    hits |= when(allSet(m_within, 0x7fffU), FifteenWithin);
    return hits & m_on;
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
        return (below ? m_down2 : m_up2) & 0x7U;
    case NelsonRule::FourOfFive:
        return (below ? m_down1 : m_up1) & 0x1fU;
    case NelsonRule::FifteenWithin:
        return 0x7fffU;
    case NelsonRule::EightBeyond:
        return 0xffU;
    }
    return 1U;
}

void RuleReader::record(std::uint32_t hits) {
    const std::size_t now = m_count;
    for (; hits != 0; hits &= hits - 1U) {
        const auto bit = static_cast<unsigned>(std::countr_zero(hits));
        const std::uint32_t back = pointsBack(bit);
        for (std::uint32_t rest = back; rest != 0; rest &= rest - 1U) {
            m_findings.marks[now - static_cast<std::size_t>(std::countr_zero(rest))] |=
                static_cast<std::uint16_t>(1U << bit);
        }
        const std::size_t first = now - static_cast<std::size_t>(31 - std::countl_zero(back));
        auto& open = m_open[bit];
        if (open > 0 && m_findings.signals[open - 1].last >= first) {
            m_findings.signals[open - 1].last = now;
            continue;
        }
        const auto rule = static_cast<NelsonRule>(bit % kBelow + 1U);
        const bool twoSided =
            rule == NelsonRule::Alternating || rule == NelsonRule::FifteenWithin || rule == NelsonRule::EightBeyond;
        const auto side = twoSided ? SignalSide::Both : bit >= kBelow ? SignalSide::Below : SignalSide::Above;
        m_findings.signals.push_back({rule, side, first, now, now});
        open = m_findings.signals.size();
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
