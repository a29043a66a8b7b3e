#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <algorithm>

namespace holdfast::kiosk::records::testing {

inline const std::string kLot = "01926e2a-0000-7000-8000-000000000002";
inline const std::string kRun = "01926e2a-0000-7000-8000-000000000001";
inline const std::string kPrint = "p1";
/// Ids of entries that others name.
inline const std::string kFirst = "01926e2a-0000-7000-a000-000000000001";
inline const std::string kSecond = "01926e2a-0000-7000-a000-000000000002";
inline const std::string kNone = "01926e2a-0000-7000-a000-000000000009";

/// A planned shop in which things happen to lot 1; each call says one entry.
class LotShop final {
public:
    explicit LotShop(bool childrensWear = false) { shop.plan(childrensWear); }

    [[nodiscard]] LotState state(const std::string& lot = kLot) const {
        const auto found = lotById(shop.db(), lot);
        REQUIRE(found);
        REQUIRE(*found);
        return (*found)->state;
    }
    void close(int lastPiece = 144) { REQUIRE(shop.tell(LotClosed{kLot, lastPiece, LotEnd::runEnded})); }
    void print(const std::string& id = kPrint, std::int64_t number = 1) {
        PrintNamed named{id, number, kRun, kLot};
        REQUIRE(shop.tell(named));
    }
    [[nodiscard]] TestDone test(TestOutcome outcome, std::optional<int> cycle = {},
                                std::optional<std::string> load = {}) const {
        TestDone done;
        done.print = kPrint;
        done.method = "wash-house";
        done.cycle = cycle;
        done.load = std::move(load);
        done.outcome = outcome;
        return done;
    }
    [[nodiscard]] bool say(const Record& record, const std::string& id = {}) {
        const auto told = shop.tell(record, id);
        why = told ? std::string{} : told.error().what;
        return told.has_value();
    }
    void load(const std::string& id, std::int64_t number) {
        LoadWashed washed{id, number, "the big machine", "wash-house"};
        washed.prints = {kPrint};
        REQUIRE(shop.tell(washed));
    }
    [[nodiscard]] static LoadJudged judged(const std::string& load, LoadWord word,
                                           std::optional<std::string> corrects = {}) {
        LoadJudged judged{load, 4.5, 2.0};
        judged.word = word;
        judged.corrects = std::move(corrects);
        return judged;
    }
    [[nodiscard]] static HoldPlaced hold(const std::string& id, HoldCause cause, const std::string& because,
                                         std::optional<PieceRange> pieces = {}, std::int64_t bin = 0) {
        HoldPlaced placed{id, kLot, cause, because, pieces};
        placed.bin = bin;
        return placed;
    }
    [[nodiscard]] static DecisionSigned decision(const std::string& id, DecisionWord word,
                                                 std::vector<std::string> holds = {}) {
        DecisionSigned made{id, kLot, std::move(holds), word};
        made.reason = "looked at";
        made.signers = {12};
        return made;
    }
    [[nodiscard]] std::vector<std::string> open() const {
        std::vector<std::string> ids;
        const auto rows = openHolds(shop.db());
        REQUIRE(rows);
        for (const auto& row : *rows) {
            ids.push_back(row.placed.hold);
        }
        return ids;
    }

    Shop shop{};
    std::string why{}; ///< of the refusal that say() met
};

using Ids = std::vector<std::string>;

} // namespace holdfast::kiosk::records::testing
