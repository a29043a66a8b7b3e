#include "kiosk/shop/trending/since_when.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using records::TrendEventKind;

constexpr int kChangeOrders = 1'999; ///< so that p can fall well below kChangeRisk

Figure<SinceWhen> saidOf(const TrendFacts& facts, const TrendFilter& filter, std::span<const std::int64_t> times,
                         const tl::expected<st::ChangePoint, st::StatisticsFault>& change) {
    const auto count = static_cast<std::int64_t>(times.size());
    if (!change) {
        return tl::unexpected(refusalOf(change.error(), count, static_cast<std::int64_t>(kLeastChange)));
    }
    if (change->p >= kChangeRisk || change->possible.empty()) {
        return tl::unexpected(Refusal{NoFigure::noChange, count, static_cast<std::int64_t>(kLeastChange)});
    }
    SinceWhen since;
    since.position = change->position;
    since.likely = times[change->position];
    since.p = change->p;
    since.before = change->before;
    since.after = change->after;
    for (const auto position : change->possible) {
        const TimeSpan span{times[position - 1], times[position]};
        if (!since.possible.empty() && since.possible.back().to >= span.from) {
            since.possible.back().to = span.to;
        } else {
            since.possible.push_back(span);
        }
    }
    since.events = eventsIn(facts, filter, since.possible);
    return since;
}

bool concerns(const TrendFacts& facts, const TrendFilter& filter, const Filtered& filtered,
              const records::TrendEvent& event) {
    switch (event.kind) {
    case TrendEventKind::beltSpeed:
    case TrendEventKind::setPoint:
    case TrendEventKind::problem:
    case TrendEventKind::newDryer:
        return filtered.holdsDryer(event.dryer);
    case TrendEventKind::familyRevised:
        return !filter.family || *filter.family == event.name;
    case TrendEventKind::fabricRevised:
        return !filter.fabric || *filter.fabric == event.name;
    case TrendEventKind::bucketOpened:
        if (filter.bucket && event.bucket != kNoFact) {
            return facts.buckets[static_cast<std::size_t>(event.bucket)].number == *filter.bucket;
        }
        return !filter.family || (event.bucket != kNoFact &&
                                  facts.buckets[static_cast<std::size_t>(event.bucket)].name == *filter.family);
    case TrendEventKind::certificate:
    case TrendEventKind::checkPassed:
    case TrendEventKind::checkFailed:
        return !filter.instrument ||
               (event.instrument != kNoFact &&
                facts.instruments[static_cast<std::size_t>(event.instrument)].id == *filter.instrument);
    }
    return false;
}

} // namespace

Figure<SinceWhen> changeIn(const TrendFacts& facts, const TrendFilter& filter, std::span<const std::int64_t> times,
                           const std::vector<double>& margins, std::uint64_t seed) {
    if (times.size() < kLeastChange || times.size() != margins.size()) {
        return tl::unexpected(Refusal{NoFigure::tooFewEpisodes, static_cast<std::int64_t>(times.size()),
                                      static_cast<std::int64_t>(kLeastChange)});
    }
    return saidOf(facts, filter, times, st::changeInMean(margins, {0.95, kChangeOrders, seed}));
}

Figure<SinceWhen> changeIn(const TrendFacts& facts, const TrendFilter& filter, std::span<const std::int64_t> times,
                           const std::vector<st::FailedOfTotal>& weeks, std::uint64_t seed) {
    if (times.size() < kLeastChange || times.size() != weeks.size()) {
        return tl::unexpected(Refusal{NoFigure::tooFewWeeks, static_cast<std::int64_t>(times.size()),
                                      static_cast<std::int64_t>(kLeastChange)});
    }
    std::int64_t failed = 0;
    std::int64_t total = 0;
    for (const auto& week : weeks) {
        failed += week.failed;
        total += week.total;
    }
    if (failed == 0 || failed == total) {
        return tl::unexpected(
            Refusal{failed == 0 ? NoFigure::nothingFailed : NoFigure::everythingFailed, failed, total});
    }
    return saidOf(facts, filter, times, st::changeInShare(weeks, {0.95, kChangeOrders, seed}));
}

std::vector<FactIndex> eventsIn(const TrendFacts& facts, const TrendFilter& filter,
                                const std::vector<TimeSpan>& spans) {
    const Filtered filtered{facts, filter};
    std::vector<FactIndex> found;
    for (std::size_t i = 0; i < facts.events.size(); ++i) {
        const auto& event = facts.events[i];
        const bool inside = std::any_of(spans.begin(), spans.end(), [&](const TimeSpan& span) {
            return event.at >= span.from && event.at <= span.to;
        });
        if (inside && concerns(facts, filter, filtered, event)) {
            found.push_back(static_cast<FactIndex>(i));
        }
    }
    std::map<std::pair<TrendEventKind, FactIndex>, int> often;
    const auto kindOf = [&](FactIndex index) {
        const auto& event = facts.events[static_cast<std::size_t>(index)];
        return std::pair{event.kind, event.dryer};
    };
    for (std::size_t i = 0; i < facts.events.size(); ++i) {
        ++often[kindOf(static_cast<FactIndex>(i))];
    }
    std::stable_sort(found.begin(), found.end(),
                     [&](FactIndex a, FactIndex b) { return often[kindOf(a)] < often[kindOf(b)]; });
    return found;
}

} // namespace holdfast::kiosk::shop::trending
