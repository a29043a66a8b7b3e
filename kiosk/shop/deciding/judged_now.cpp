#include "kiosk/shop/deciding/judged_now.hpp"

#include "drivers/clock/clock.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "kiosk/shop/deciding/doubt_query.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::shop::deciding {
namespace {

using ledger::Result;
using records::ReadingTaken;
using SQLite::Database;

/// 0: none in the tree.
std::int64_t mislabelledIn(const records::BucketTree& tree) {
    if (tree.bucket.closed == records::BucketEnd::mislabelled) {
        return tree.bucket.number;
    }
    for (const auto& part : tree.parts) {
        const auto found = part.share > 0.0 ? mislabelledIn(part) : 0;
        if (found != 0) {
            return found;
        }
    }
    return 0;
}

Result<std::int64_t> mislabelledOf(const Database& database, const records::RunPlanned& plan) {
    for (const auto& layer : plan.layers) {
        for (const auto number : layer.buckets) {
            const auto tree = records::ancestry(database, number);
            if (!tree) {
                return tl::unexpected(tree.error());
            }
            const auto found = *tree ? mislabelledIn(**tree) : 0;
            if (found != 0) {
                return found;
            }
        }
    }
    return 0;
}

/// The first family or cloth that has a newer revision by now; empty: none has.
std::string revisedSince(const records::RevisionsUsed& then, const records::RevisionsUsed& now) {
    for (const auto& used : now.families) {
        const auto before = std::find_if(then.families.begin(), then.families.end(),
                                         [&](const auto& one) { return one.name == used.name; });
        if (before != then.families.end() && before->revision != used.revision) {
            return used.name;
        }
    }
    const bool cloth = then.fabric.name == now.fabric.name && then.fabric.revision != now.fabric.revision;
    return cloth ? now.fabric.name : std::string{};
}

std::optional<std::size_t> stepAt(const analytics::StripSteps& strip,
                                  const std::optional<analytics::AuthoredTemperature>& value) {
    constexpr double kSameStep = 0.01; // °C
    for (std::size_t i = 0; value && i < strip.steps.size(); ++i) {
        if (std::abs(strip.steps[i].celsius() - value->temperature().celsius()) < kSameStep) {
            return i;
        }
    }
    return std::nullopt;
}

std::optional<analytics::SeenEvidence> seenBy(const ledger::Book& book, const ReadingTaken& taken,
                                              const analytics::Instrument& instrument) {
    const auto* seen = std::get_if<records::StripSeen>(&taken.evidence);
    if (seen == nullptr) {
        return evidenceThen(book, taken, instrument);
    }
    if (!instrument.strip) {
        return std::nullopt;
    }
    analytics::StripReading strip;
    strip.lastDark = stepAt(*instrument.strip, seen->lastDark);
    strip.firstLight = stepAt(*instrument.strip, seen->firstLight);
    if (strip.lastDark.has_value() != seen->lastDark.has_value() ||
        strip.firstLight.has_value() != seen->firstLight.has_value()) {
        return std::nullopt; // it was described anew with other steps
    }
    strip.usedBefore = seen->usedBefore;
    strip.allLightBefore = seen->allLightBefore;
    return strip;
}

/// By the plan as it stands today, with the instrument as it stood on the day of the reading.
std::optional<analytics::Verdict> judgedBy(const ledger::Book& book, const analytics::RunPlan& plan,
                                           const ReadingTaken& taken, const records::ReadingRow& row) {
    const auto onFile = records::instrumentById(book.reader(), taken.instrument);
    if (!onFile || !*onFile || plan.layers.size() != taken.guards.layers.size() || !analytics::windowOf(plan)) {
        return std::nullopt;
    }
    auto instrument = (*onFile)->instrument;
    instrument.placement = taken.placement;
    auto evidence = seenBy(book, taken, instrument);
    if (!evidence) {
        return std::nullopt;
    }
    const auto* trace = std::get_if<records::TraceSeen>(&taken.evidence);
    const analytics::ReadingInDoubt reading{
        plan, std::move(*evidence), trace != nullptr ? trace->pass : 1, std::nullopt, {}};
    const analytics::Calibration calibration{instrument, drivers::localDay({row.takenAt, row.utcOffsetMinutes})};
    analytics::GuardSetting guard;
    if (taken.calibration) {
        guard.risk = taken.calibration->risk;
    }
    auto again = analytics::recompute(reading, {}, calibration, guard);
    return again ? std::optional{std::move(again->verdict)} : std::nullopt;
}

/// It is not known what this ink needs.
analytics::Verdict unknown() {
    analytics::Verdict verdict;
    verdict.word = analytics::Word::notProven;
    return verdict;
}

/// Of the run as it stands: what it is printed with, and by which revisions.
Result<void> judgeByRun(const ledger::Book& book, const ReadingTaken& taken, const records::ReadingRow& row,
                        ThenAndNow& shown) {
    const auto run = records::runById(book.reader(), *taken.run);
    if (!run) {
        return tl::unexpected(run.error());
    }
    if (!*run) {
        return {};
    }
    const auto mislabelled = mislabelledOf(book.reader(), (*run)->plan);
    if (!mislabelled) {
        return tl::unexpected(mislabelled.error());
    }
    if (*mislabelled != 0) {
        shown.why = JudgedNow::mislabelled;
        shown.bucket = *mislabelled;
        shown.now = unknown();
        return {};
    }
    shown.revised = taken.revisions ? revisedSince(*taken.revisions, (*run)->revisions) : std::string{};
    if (shown.revised.empty() || shown.why == JudgedNow::instrument) {
        return {}; // the error of the instrument stands in the verdict alone, and is not found a second time
    }
    auto again = (*run)->usable ? judgedBy(book, (*run)->layers, taken, row) : std::nullopt;
    shown.why = again ? JudgedNow::revised : JudgedNow::cannotBeJudged;
    shown.now = again ? std::move(*again) : unknown();
    return {};
}

int rankOf(analytics::Word word) noexcept {
    switch (word) {
    case analytics::Word::underCured:
        return 0;
    case analytics::Word::overheated:
        return 1;
    case analytics::Word::notProven:
    case analytics::Word::refused:
        return 2;
    case analytics::Word::cured:
        break;
    }
    return 3;
}

double lowestOf(const records::ReadingRow& row) {
    const auto& margin = row.marginLow ? row.marginLow : row.marginHigh;
    return margin ? margin->celsius() : HUGE_VAL;
}

} // namespace

Result<std::optional<ThenAndNow>> thenAndNow(const ledger::Book& book, const records::ReadingRow& row) {
    const auto versions = records::versionsOfReading(book.reader(), row.id);
    if (!versions) {
        return tl::unexpected(versions.error());
    }
    if (versions->empty() || !versions->front().taken.verdict || !versions->back().taken.verdict ||
        !versions->back().taken.run) {
        return std::nullopt;
    }
    ThenAndNow shown;
    shown.reading = row.id;
    shown.takenAt = row.takenAt;
    shown.instrument = row.instrumentName;
    shown.then = *versions->front().taken.verdict;
    shown.now = *versions->back().taken.verdict;
    const bool byCheck =
        std::any_of(versions->begin(), versions->end(), [](const auto& one) { return !one.check.empty(); });
    shown.why = byCheck ? JudgedNow::instrument : JudgedNow::same;
    const auto judged = judgeByRun(book, versions->back().taken, row, shown);
    if (!judged) {
        return tl::unexpected(judged.error());
    }
    return shown;
}

const records::ReadingRow* weightiest(const std::vector<records::ReadingRow>& readings) {
    const records::ReadingRow* found = nullptr;
    for (const auto& row : readings) {
        if (row.refused || row.struck || !row.word || row.reason == records::ReadingReason::setUp) {
            continue;
        }
        const bool worse = found == nullptr || rankOf(*row.word) < rankOf(*found->word) ||
                           (rankOf(*row.word) == rankOf(*found->word) && lowestOf(row) < lowestOf(*found));
        found = worse ? &row : found;
    }
    return found;
}

} // namespace holdfast::kiosk::shop::deciding
