#pragma once

#include "kiosk/shop/trending/terms.hpp"

#include <string_view>

namespace holdfast::kiosk::shop::trending {

/// Causes of print failure as the trade knows them (common practice), each with what decides it.
enum class CureCause {
    underCured,      ///< too little heat: a ride or a strip of the same state
    dryerLosingHeat, ///< margin sinks over weeks: episode chart
    beltTooFast,     ///< margin dropped at a belt change
    mislabelledInk,  ///< failures follow a bucket, readings are good: wash of a square cured hotter
    badMix,          ///< additive or pot life outside: the bucket's own record
    instrumentWrong, ///< reads hotter than its fellows: check in ice or boiling water
    dampCloth,       ///< cold readings of one cloth or finish: a level stretch near 100 °C in the ride
    clothFinish,     ///< failures follow a finish or cloth lot with good margin: print on washed cloth
    dyeBleed,        ///< colour of the garment in the print: bleed watch
    overheated,      ///< scorched or brittle: readings above the ceiling
    washTooHarsh,    ///< witness outside its limits, or the customer's own wash
    falseAlarm,      ///< repeats pass
    other,           ///< as typed
};
inline constexpr std::size_t kCureCauses = 13;

struct CauseRow final {
    CureCause cause = CureCause::other;
    int findings = 0; ///< signed with it
    int provenLater = 0;
    std::int64_t lastAt = 0; ///< 0: never
    std::vector<FactIndex> complaints{};
};
struct CauseTable final {
    std::vector<CauseRow> rows{}; ///< commonest first, then in the order above; every cause once
    int findings = 0;
    std::vector<std::string> typed{}; ///< causes as typed that are counted under other, each once
};

/// The word by which a finding names a listed cause in the book: FindingSigned::cause begins with it.
[[nodiscard]] std::string_view wordOf(CureCause cause) noexcept;
/// Of a finding's cause as kept: the word alone, or the word, a colon and a remark. Anything else: other.
[[nodiscard]] CureCause causeOf(std::string_view kept) noexcept;
[[nodiscard]] CauseTable causeTable(const TrendFacts& facts);

} // namespace holdfast::kiosk::shop::trending
