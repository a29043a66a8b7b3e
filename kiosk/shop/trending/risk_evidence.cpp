#include "kiosk/shop/trending/risk_evidence.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::trending {
namespace {

using analytics::TemperatureDifference;
using analytics::Word;
using records::TestOutcome;
using records::TrendEventKind;

Evidence of(EvidenceKind kind, bool speaksFor, std::int64_t count, std::int64_t all) {
    Evidence evidence;
    evidence.kind = kind;
    evidence.speaksFor = speaksFor;
    evidence.count = count;
    evidence.of = all;
    return evidence;
}

void addReadings(const TrendFacts& facts, FactIndex lot, std::vector<Evidence>& all) {
    std::int64_t drawn = 0;
    std::int64_t bad = 0;
    std::int64_t cured = 0;
    std::optional<TemperatureDifference> lowest;
    for (const auto& reading : facts.readings) {
        if (reading.lot != lot || reading.reason == records::ReadingReason::setUp) {
            continue;
        }
        ++drawn;
        bad += reading.word == Word::underCured || reading.word == Word::overheated ? 1 : 0;
        cured += reading.word == Word::cured ? 1 : 0;
        const auto& low = reading.margin.low ? reading.margin.low : reading.margin.high;
        if (low && low->isFinite() && (!lowest || *low < *lowest)) {
            lowest = low;
        }
    }
    int missed = 0;
    for (const auto& one : facts.missed) {
        missed += one.lot == lot ? 1 : 0;
    }
    if (bad > 0) {
        all.push_back(of(EvidenceKind::itsReadingsUnderCured, true, bad, drawn));
    } else if (drawn > 0 && cured == drawn && missed == 0) {
        all.push_back(of(EvidenceKind::itsReadingsCured, false, cured, drawn));
    } else if (drawn > 0 || missed > 0) {
        all.push_back(of(EvidenceKind::itsReadingsUnproven, true, drawn - cured, drawn));
    }
    if (drawn > 0 || missed > 0) {
        all.back().missed = missed;
        all.back().margin = lowest;
    }
}

void addTests(const TrendFacts& facts, FactIndex lot, std::vector<Evidence>& all) {
    std::int64_t failed = 0;
    std::int64_t passed = 0;
    for (const auto& test : facts.tests) {
        if (test.lot == lot) {
            failed += test.counts == TestOutcome::failed ? 1 : 0;
            passed += test.counts == TestOutcome::passed ? 1 : 0;
        }
    }
    if (failed > 0) {
        all.push_back(of(EvidenceKind::itsTestsFailed, true, failed, failed + passed));
    }
    if (passed > 0) {
        all.push_back(of(EvidenceKind::itsTestsPassed, false, passed, failed + passed));
    }
}

void addComplaints(const TrendFacts& facts, FactIndex lot, const std::optional<std::string>& own,
                   std::vector<Evidence>& all) {
    const auto run = facts.lots[static_cast<std::size_t>(lot)].run;
    std::int64_t others = 0;
    std::int64_t pieces = 0;
    for (const auto& complaint : facts.complaints) {
        const bool same = complaint.lot == lot || (complaint.lot == kNoFact && run != kNoFact && complaint.run == run);
        if (!same || !records::isPrintFailure(complaint.what)) {
            continue;
        }
        others += own && complaint.id == *own ? 0 : 1;
        pieces += complaint.pieces.value_or(0);
    }
    if (others > 0) {
        all.push_back(of(EvidenceKind::otherComplaints, true, others, others));
    }
    const auto shipped = facts.lots[static_cast<std::size_t>(lot)].shipped;
    constexpr std::int64_t kFewOfTen = 10; // fewer than one piece in ten came back
    if (pieces > 0 && shipped > 0 && pieces * kFewOfTen < shipped) {
        all.push_back(of(EvidenceKind::fewCameBack, false, pieces, shipped));
    }
}

void addShared(const std::vector<LotOutcome>& outcomes, const Suspect& suspect, const std::vector<FactIndex>& with,
               std::vector<Evidence>& all) {
    std::int64_t failed = 0;
    std::int64_t failedWith = 0;
    std::int64_t goodWith = 0;
    for (const auto& outcome : outcomes) {
        const bool has = std::binary_search(with.begin(), with.end(), outcome.lot);
        failed += outcome.inRates ? 1 : 0;
        failedWith += outcome.inRates && has ? 1 : 0;
        goodWith += !outcome.inRates && has ? 1 : 0;
    }
    if (failedWith > 0 && suspect.strength != Strength::byChance) {
        all.push_back(of(EvidenceKind::suspectShared, true, failedWith, failed));
        all.back().level = suspect.level;
    }
    if (goodWith > 0) {
        all.push_back(of(EvidenceKind::suspectAlsoGood, false, goodWith, goodWith + failedWith));
        all.back().level = suspect.level;
    }
}

void addRecords(const TrendFacts& facts, FactIndex lot, std::vector<Evidence>& all) {
    for (const auto bucket : facts.lots[static_cast<std::size_t>(lot)].buckets) {
        const auto& of_ = facts.buckets[static_cast<std::size_t>(bucket)];
        if (of_.closed == records::BucketEnd::mislabelled) {
            FactorLevel level;
            level.kind = FactorKind::bucket;
            level.name = of_.name;
            level.number = of_.number;
            level.key = std::to_string(of_.number);
            level.isMix = of_.isMix;
            all.push_back(of(EvidenceKind::bucketMislabelled, true, 1, 1));
            all.back().level = level;
        }
    }
    std::vector<FactIndex> seen;
    for (const auto& reading : facts.readings) {
        if (reading.lot != lot || reading.instrument == kNoFact ||
            std::find(seen.begin(), seen.end(), reading.instrument) != seen.end()) {
            continue;
        }
        seen.push_back(reading.instrument);
        const auto next = std::find_if(facts.events.begin(), facts.events.end(), [&](const auto& event) {
            return event.at > reading.at && event.instrument == reading.instrument &&
                   (event.kind == TrendEventKind::checkFailed || event.kind == TrendEventKind::checkPassed);
        });
        if (next != facts.events.end() && next->kind == TrendEventKind::checkFailed) {
            const auto& instrument = facts.instruments[static_cast<std::size_t>(reading.instrument)];
            FactorLevel level;
            level.kind = FactorKind::instrument;
            level.name = instrument.name;
            level.key = instrument.id;
            all.push_back(of(EvidenceKind::instrumentFailedCheck, true, 1, 1));
            all.back().level = level;
        }
    }
}

} // namespace

std::vector<Evidence> evidenceOf(const TrendFacts& facts, FactIndex lot, const std::vector<LotOutcome>& outcomes,
                                 const std::optional<Suspect>& suspect, const std::vector<FactIndex>& with,
                                 const std::optional<std::string>& complaint) {
    std::vector<Evidence> all;
    addReadings(facts, lot, all);
    addTests(facts, lot, all);
    if (all.empty()) {
        all.push_back(of(EvidenceKind::noEvidence, false, 0, 0));
    }
    addRecords(facts, lot, all);
    addComplaints(facts, lot, complaint, all);
    if (suspect) {
        addShared(outcomes, *suspect, with, all);
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.speaksFor && !b.speaksFor; });
    return all;
}

IsItOurs judgeEvidence(const std::vector<Evidence>& evidence, const std::optional<Suspect>& suspect) {
    const auto has = [&](EvidenceKind kind) {
        return std::any_of(evidence.begin(), evidence.end(), [kind](const auto& one) { return one.kind == kind; });
    };
    const bool strong = suspect && suspect->strength == Strength::strong;
    if (has(EvidenceKind::itsReadingsUnderCured) || has(EvidenceKind::itsTestsFailed) ||
        has(EvidenceKind::bucketMislabelled) || strong) {
        return IsItOurs::likely;
    }
    const bool weak = suspect && suspect->strength == Strength::weak;
    if (has(EvidenceKind::itsReadingsUnproven) || has(EvidenceKind::instrumentFailedCheck) ||
        has(EvidenceKind::otherComplaints) || weak) {
        return IsItOurs::possible;
    }
    if (has(EvidenceKind::noEvidence)) {
        return IsItOurs::unknown;
    }
    // Good readings speak of the label's heat only: what the bucket holds, a washed piece tells.
    return has(EvidenceKind::itsTestsPassed) ? IsItOurs::unlikely : IsItOurs::possible;
}

} // namespace holdfast::kiosk::shop::trending
