#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/wording/sentences.hpp"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// A reading with its body, for the lists of the Dryer screen.
struct ListedReading final {
    records::ReadingRow row;
    records::ReadingTaken reading;
    std::string what; ///< "144 red jerseys, 100 % polyester"
};

struct ListedLot final {
    records::LotRow lot;
    std::int64_t runNumber = 0;
    std::string what;
    std::optional<analytics::Word> word; ///< of the reading that holds it
};

/// What the screens say about the shop around the run at hand; read from the book after each commit.
struct FloorFacts final {
    std::string dryerName;
    int crew = 0;
    bool demo = false;
    std::int64_t wallMilliseconds = 0;
    int utcOffsetMinutes = 0;
    std::vector<ListedReading> latest; ///< newest first, one a run
    std::vector<ListedLot> onHold;
    int lotsOnHold = 0;                ///< may be more than are listed
    std::vector<records::DueItem> due; ///< most urgent first
    std::string nextTest{};            ///< of prints, "24 h look, by 16:00"; empty: none is due
};

/// Reads it from the book; what cannot be read stays empty. Wall time is left to the caller. Main thread only.
[[nodiscard]] FloorFacts floorFactsOf(const ledger::Book& book, const drivers::WallTime& now,
                                      const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
