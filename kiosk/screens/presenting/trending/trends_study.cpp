#include "kiosk/screens/presenting/trending/trends_study.hpp"

#include <algorithm>
#include <limits>
#include <set>

namespace holdfast::kiosk::screens {
namespace {

using trending::FactIndex;
using trending::kNoFact;
using trending::TrendFacts;

constexpr std::uint64_t kSeed = 1; // the same figures whenever the same is asked

template <class T>
FactIndex placeOf(const std::vector<T>& list, const std::string& id) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id == id; });
    return found == list.end() ? kNoFact : static_cast<FactIndex>(found - list.begin());
}

/// The one with most lots; of equals the first.
FactIndex busiest(const TrendFacts& facts) {
    std::vector<int> lots(facts.dryers.size(), 0);
    for (const auto& lot : facts.lots) {
        if (lot.dryer != kNoFact) {
            ++lots[static_cast<std::size_t>(lot.dryer)];
        }
    }
    const auto most = std::max_element(lots.begin(), lots.end());
    return most == lots.end() ? kNoFact : static_cast<FactIndex>(most - lots.begin());
}

FactIndex dryerOf(const TrendsStudy& study, const TrendFacts& facts) {
    if (study.question.dryer) {
        return study.question.dryer->empty() ? kNoFact : placeOf(facts.dryers, *study.question.dryer);
    }
    const auto home = placeOf(facts.dryers, study.home);
    const bool hasLots = home != kNoFact && std::any_of(facts.lots.begin(), facts.lots.end(),
                                                        [&](const auto& lot) { return lot.dryer == home; });
    return hasLots ? home : busiest(facts);
}

/// What is asked of the whole shop: that a dryer, a place on the belt or an instrument is shared is itself looked for.
trending::TrendFilter shopFilter(const TrendsFound& found) {
    auto filter = found.filter;
    filter.dryer.reset();
    filter.position.reset();
    filter.instrument.reset();
    if (found.question.span != TrendsSpan::all) {
        filter.from = beginOf(TrendsSpan::year, found.askedAt);
    }
    return filter;
}

void addLots(TrendsFound& found) {
    const auto& facts = *found.facts;
    found.outcomes = trending::lotOutcomes(facts, found.filter);
    std::set<FactIndex> runs;
    for (const auto& outcome : found.outcomes) {
        const auto& lot = facts.lots[static_cast<std::size_t>(outcome.lot)];
        found.firstAt = found.firstAt == 0 ? lot.openedAt : std::min(found.firstAt, lot.openedAt);
        found.lastAt = std::max(found.lastAt, lot.openedAt);
        runs.insert(lot.run);
    }
    found.runs = static_cast<int>(runs.size());
    found.failed.assign(facts.lots.size(), 0);
    for (const auto& outcome : trending::lotOutcomes(facts, shopFilter(found))) {
        found.failed[static_cast<std::size_t>(outcome.lot)] = outcome.failed ? 1 : 0;
    }
}

void addSuspects(TrendsFound& found, const std::stop_token& stop) {
    const auto& facts = *found.facts;
    const auto filter = shopFilter(found);
    trending::SuspectQuestion question;
    question.filter = filter;
    question.seed = kSeed;
    found.suspects = trending::suspects(facts, question);
    if (!found.suspects) {
        return;
    }
    const trending::Filtered filtered{facts, filter};
    for (const auto& suspect : found.suspects->ranked) {
        if (stop.stop_requested() || found.named.size() == kSuspectsShown) {
            return;
        }
        TrendsSuspect named{suspect, tl::unexpected(trending::Refusal{}), {}};
        if (suspect.strength != trending::Strength::byChance) {
            named.since = trending::sinceWhen(facts, filter, suspect.level, kSeed);
        }
        for (const auto lot : trending::lotsWith(facts, suspect.level)) {
            if (filtered.holds(facts.lots[static_cast<std::size_t>(lot)])) {
                named.lots.push_back(lot);
            }
        }
        std::reverse(named.lots.begin(), named.lots.end());
        found.named.push_back(std::move(named));
    }
}

} // namespace

std::int64_t beginOf(TrendsSpan span, std::int64_t now) noexcept {
    constexpr int kQuarter = 13;
    switch (span) {
    case TrendsSpan::quarter:
        return now - kQuarter * trending::kWeekMs;
    case TrendsSpan::halfYear:
        return now - 2 * kQuarter * trending::kWeekMs;
    case TrendsSpan::year:
        return now - 4 * kQuarter * trending::kWeekMs;
    case TrendsSpan::all:
        break;
    }
    return std::numeric_limits<std::int64_t>::min();
}

ledger::Result<std::shared_ptr<const TrendsFound>> studyTrends(const SQLite::Database& reader, const TrendsStudy& study,
                                                               const std::stop_token& stop) {
    auto found = std::make_shared<TrendsFound>();
    found->question = study.question;
    found->sequence = study.sequence;
    found->askedAt = study.now;
    found->facts = study.facts;
    if (!found->facts) {
        auto read = records::trendFacts(reader);
        if (!read) {
            return tl::unexpected(read.error());
        }
        found->facts = std::make_shared<const TrendFacts>(std::move(*read));
    }
    const auto& facts = *found->facts;
    found->dryer = dryerOf(study, facts);
    auto& filter = found->filter;
    if (found->dryer != kNoFact) {
        filter.dryer = facts.dryers[static_cast<std::size_t>(found->dryer)].id;
    }
    filter.family = study.question.family;
    filter.bucket = study.question.bucket;
    filter.position = study.question.position;
    filter.instrument = study.question.instrument;
    if (study.question.span != TrendsSpan::all) {
        filter.from = beginOf(study.question.span, study.now);
    }
    using Part = void (*)(TrendsFound&, const std::stop_token&);
    constexpr Part kParts[] = {
        [](TrendsFound& of, const std::stop_token&) { addLots(of); },
        [](TrendsFound& of, const std::stop_token&) {
            trending::MarginQuestion question;
            question.filter = of.filter;
            question.seed = kSeed;
            of.margin = trending::marginTrend(*of.facts, question);
        },
        [](TrendsFound& of, const std::stop_token&) {
            of.failures = trending::failureTrend(*of.facts, {of.filter, {}, kSeed});
        },
        addSuspects,
        [](TrendsFound& of, const std::stop_token&) { of.wash = trending::washMargin(*of.facts, shopFilter(of)); },
        [](TrendsFound& of, const std::stop_token&) {
            of.instruments = trending::compareInstruments(*of.facts, shopFilter(of), kSeed);
        },
    };
    for (const auto part : kParts) {
        if (stop.stop_requested()) {
            return std::shared_ptr<const TrendsFound>{};
        }
        part(*found, stop);
    }
    return std::shared_ptr<const TrendsFound>{std::move(found)};
}

} // namespace holdfast::kiosk::screens
