#include "kiosk/screens/presenting/deciding/complaint_study.hpp"

#include "kiosk/records/lot_queries.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using records::FactIndex;
using records::kNoFact;
using records::TrendFacts;
using SQLite::Database;

ledger::Result<std::shared_ptr<const TrendFacts>> readFacts(const Database& reader, const std::string& run) {
    const auto lots = records::lotsOfRun(reader, run);
    if (!lots) {
        return tl::unexpected(lots.error());
    }
    records::TrendRange range;
    for (const auto& lot : *lots) {
        const auto from = lot.openedAt - kLookBackWeeks * shop::trending::kWeekMs;
        range.from = range.from == INT64_MIN ? from : std::min(range.from, from);
    }
    auto facts = records::trendFacts(reader, range);
    if (!facts) {
        return tl::unexpected(facts.error());
    }
    return std::make_shared<const TrendFacts>(std::move(*facts));
}

bool carries(const TrendFacts& facts, FactIndex lot, const shop::trending::FactorLevel& level) {
    const auto levels = shop::trending::levelsOfLot(facts, lot);
    return std::find(levels.begin(), levels.end(), level) != levels.end();
}

/// What the complaint's own finding says was done, else the newest that was done about a lot which shares the suspect.
const records::TrendFinding* actionOf(const TrendFacts& facts, const std::string& complaint,
                                      const std::optional<shop::trending::FactorLevel>& level) {
    const records::TrendFinding* newest = nullptr;
    for (const auto& finding : facts.findings) {
        if (finding.action.empty()) {
            continue;
        }
        const auto* about =
            finding.complaint == kNoFact ? nullptr : &facts.complaints[static_cast<std::size_t>(finding.complaint)];
        if (about != nullptr && about->id == complaint) {
            return &finding;
        }
        const auto lot = finding.lot != kNoFact ? finding.lot : about != nullptr ? about->lot : kNoFact;
        if (level && lot != kNoFact && carries(facts, lot, *level)) {
            newest = &finding; // by time
        }
    }
    return newest;
}

std::optional<FixSeen> fixOf(const RiskFound& found, const RiskAsked& asked) {
    std::optional<shop::trending::FactorLevel> level;
    if (found.risk && found.risk->suspect) {
        level = found.risk->suspect->level;
    }
    const auto* finding = actionOf(*found.facts, asked.complaint, level);
    if (finding == nullptr) {
        return std::nullopt;
    }
    FixSeen seen{finding->at, finding->action};
    seen.verdict = shop::trending::fixWorked(*found.facts, {finding->at, asked.now, level, kLookBackWeeks});
    return seen;
}

} // namespace

ledger::Result<std::shared_ptr<const RiskFound>> studyRisk(const Database& reader, const RiskAsked& asked,
                                                           const std::stop_token& stop) {
    const auto found = std::make_shared<RiskFound>();
    found->facts = asked.facts;
    if (!found->facts) {
        auto facts = readFacts(reader, asked.run);
        if (!facts) {
            return tl::unexpected(facts.error());
        }
        found->facts = std::move(*facts);
    }
    if (stop.stop_requested()) {
        return nullptr;
    }
    shop::trending::RiskQuestion question;
    question.run = asked.run;
    question.lot = asked.lot;
    question.suspect = asked.suspect;
    question.complaint = asked.complaint;
    found->risk = shop::trending::atRisk(*found->facts, question);
    if (stop.stop_requested()) {
        return nullptr;
    }
    found->fix = fixOf(*found, asked);
    return found;
}

} // namespace holdfast::kiosk::screens
