#include "kiosk/shop/trending/causes.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::shop::trending {
namespace {

/// Stored for ever: a word is never changed, only added.
constexpr std::array<std::string_view, kCureCauses> kWords{
    "under-cured",      "dryer-losing-heat", "belt-too-fast", "mislabelled-ink", "bad-mix",
    "instrument-wrong", "damp-cloth",        "cloth-finish",  "dye-bleed",       "overheated",
    "wash-too-harsh",   "false-alarm",       "other"};

} // namespace

std::string_view wordOf(CureCause cause) noexcept {
    return kWords[static_cast<std::size_t>(cause)];
}

CureCause causeOf(std::string_view kept) noexcept {
    const auto word = kept.substr(0, kept.find(':'));
    for (std::size_t i = 0; i < kWords.size(); ++i) {
        if (kWords[i] == word) {
            return static_cast<CureCause>(i);
        }
    }
    return CureCause::other;
}

CauseTable causeTable(const TrendFacts& facts) {
    CauseTable table;
    table.rows.resize(kCureCauses);
    for (std::size_t i = 0; i < kCureCauses; ++i) {
        table.rows[i].cause = static_cast<CureCause>(i);
    }
    for (const auto& finding : facts.findings) {
        const auto cause = causeOf(finding.cause);
        auto& row = table.rows[static_cast<std::size_t>(cause)];
        ++row.findings;
        row.provenLater += finding.provenLater ? 1 : 0;
        row.lastAt = std::max(row.lastAt, finding.at);
        if (finding.complaint != kNoFact) {
            row.complaints.push_back(finding.complaint);
        }
        if (cause == CureCause::other &&
            std::find(table.typed.begin(), table.typed.end(), finding.cause) == table.typed.end()) {
            table.typed.push_back(finding.cause);
        }
        ++table.findings;
    }
    std::stable_sort(table.rows.begin(), table.rows.end(),
                     [](const CauseRow& a, const CauseRow& b) { return a.findings > b.findings; });
    return table;
}

} // namespace holdfast::kiosk::shop::trending
