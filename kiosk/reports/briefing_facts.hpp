#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/entry.hpp"
#include "kiosk/ledger/report.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/shop/trending/briefing.hpp"
#include "kiosk/wording/briefing_sentences.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::reports {

/// Lots begun in seven days.
struct BriefingWeek final {
    std::int64_t from = 0; ///< wall milliseconds
    int lots = 0;
    int failed = 0;
};

/// What the owner's page is made from, as it stands in the book.
struct BriefingFacts final {
    std::string shop{};
    bool demo = false;
    drivers::WallTime now{};     ///< the week ends here
    drivers::WallTime printed{}; ///< when it was asked for
    std::string head{};          ///< hash of the newest entry, hex
    std::int64_t sequence = 0;
    records::TrendFacts facts{};
    shop::trending::Briefing briefing{};
    std::vector<BriefingWeek> weeks{}; ///< fourteen, oldest first; the last one is this week
    wording::BriefingDue due{};        ///< within the seven days to come

    /// A week that ended before it was asked for: holds and what is due stand as of now all the same.
    [[nodiscard]] bool isOfAnotherDay() const { return drivers::localDay(now) < drivers::localDay(printed); }
};

/// Takes a reading connection; belongs to its thread. Seconds for years of readings: not in the main thread.
[[nodiscard]] ledger::Result<BriefingFacts> briefingFacts(const SQLite::Database& database, const ledger::Head& head,
                                                          const drivers::WallTime& now);

/// Lots of each of the fourteen weeks that end at `now`.
[[nodiscard]] std::vector<BriefingWeek> briefingWeeks(const records::TrendFacts& facts, std::int64_t now);

} // namespace holdfast::kiosk::reports
