#include "kiosk/shop/trending/terms.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::trending {
namespace {

template <class Row>
std::optional<FactIndex> placeOf(const std::vector<Row>& rows, const std::optional<std::string>& id) {
    if (!id) {
        return std::nullopt;
    }
    const auto at = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.id == *id; });
    return at == rows.end() ? kNoFact : static_cast<FactIndex>(at - rows.begin());
}

} // namespace

Refusal refusalOf(analytics::statistics::StatisticsFault fault, std::int64_t have, std::int64_t need) noexcept {
    using analytics::statistics::StatisticsFault;
    switch (fault) {
    case StatisticsFault::NoValues:
        return {NoFigure::noReadings, have, need};
    case StatisticsFault::TooFewValues:
        return {NoFigure::tooFewEpisodes, have, need};
    case StatisticsFault::NotFinite:
        return {NoFigure::notFinite, have, need};
    case StatisticsFault::NoSpread:
        return {NoFigure::allEqual, have, need};
    case StatisticsFault::TooManyOpen:
        return {NoFigure::tooManyOpen, have, need};
    case StatisticsFault::TooFewEvents:
        return {NoFigure::tooFewFailures, have, need};
    case StatisticsFault::Separated:
        return {NoFigure::separated, have, need};
    case StatisticsFault::OutOfDomain:
    case StatisticsFault::UnequalLengths:
    case StatisticsFault::NoConvergence:
    case StatisticsFault::Collinear:
    case StatisticsFault::OutOfOrder:
        break;
    }
    return {NoFigure::notFitted, have, need};
}

Filtered::Filtered(const TrendFacts& facts, const TrendFilter& filter)
    : m_facts{facts}, m_filter{filter}, m_dryer{placeOf(facts.dryers, filter.dryer)},
      m_instrument{placeOf(facts.instruments, filter.instrument)}, m_runs(facts.runs.size(), 1) {
    if (filter.bucket) {
        const auto at = std::find_if(facts.buckets.begin(), facts.buckets.end(),
                                     [&](const auto& bucket) { return bucket.number == *filter.bucket; });
        m_bucket = at == facts.buckets.end() ? kNoFact : static_cast<FactIndex>(at - facts.buckets.begin());
    }
    for (std::size_t i = 0; i < facts.runs.size(); ++i) {
        const auto& run = facts.runs[i];
        const bool family =
            !filter.family || std::find(run.families.begin(), run.families.end(), *filter.family) != run.families.end();
        m_runs[i] = family && (!filter.fabric || run.fabric == *filter.fabric) ? 1 : 0;
    }
}

bool Filtered::holds(const records::TrendLot& lot) const {
    if (!holdsTime(lot.openedAt) || !holdsDryer(lot.dryer)) {
        return false;
    }
    if (m_bucket && !std::binary_search(lot.buckets.begin(), lot.buckets.end(), *m_bucket)) {
        return false;
    }
    return lot.run == kNoFact ? !m_filter.family && !m_filter.fabric : m_runs[static_cast<std::size_t>(lot.run)] != 0;
}

bool Filtered::holds(const records::TrendReading& reading) const {
    return holdsTime(reading.at) && holdsDryer(reading.dryer) &&
           (!m_filter.position || reading.position == *m_filter.position) &&
           (!m_instrument || reading.instrument == *m_instrument);
}

bool Filtered::holdsTime(std::int64_t at) const noexcept {
    return (!m_filter.from || at >= *m_filter.from) && (!m_filter.to || at < *m_filter.to);
}

bool Filtered::holdsDryer(FactIndex dryer) const noexcept {
    return !m_dryer || (*m_dryer != kNoFact && dryer == *m_dryer);
}

std::int64_t weekOf(std::int64_t at, int utcOffsetMinutes) noexcept {
    constexpr std::int64_t kMondayMs = -3 * kDayMs; // 1970-01-01 was a Thursday: the Monday before it
    const std::int64_t local = at + static_cast<std::int64_t>(utcOffsetMinutes) * 60'000;
    std::int64_t weeks = (local - kMondayMs) / kWeekMs;
    if ((local - kMondayMs) % kWeekMs < 0) {
        --weeks;
    }
    return kMondayMs + weeks * kWeekMs - static_cast<std::int64_t>(utcOffsetMinutes) * 60'000;
}

} // namespace holdfast::kiosk::shop::trending
