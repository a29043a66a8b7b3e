#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/testing/tests_place.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/starters.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <catch2/catch.hpp>

namespace holdfast::kiosk::screens::testing {

inline constexpr std::int64_t kHour = 3'600'000;
inline constexpr std::int64_t kDay = 24 * kHour;

class TestsRig final : public PlaceRig {
public:
    TestsRig() {
        shop.plan();
        for (const auto& method : shop::starterMethods()) {
            write({method});
        }
        begun = shop.now();
        clock.setWall({begun, 0});
        needs.keep = [this](const Keeping& keeping, const KeepDone& then) { keepNow(keeping, then); };
        place = std::make_unique<TestsPlace>(needs);
        place->reload();
    }

    void after(std::int64_t milliseconds) {
        clock.setWall({clock.wall().millisecondsSinceEpoch + milliseconds, 0});
        place->reload();
    }
    /// Names a print of run 20418; gives its id.
    std::string name(const std::string& shelf = {}) {
        REQUIRE(place->act("tests.name"));
        REQUIRE(place->enter("tests.field.run", "20418"));
        REQUIRE(place->enter("tests.field.piece", "12"));
        if (!shelf.empty()) {
            REQUIRE(place->act("tests.set.retained.yes"));
            REQUIRE(place->enter("tests.field.shelf", shelf));
            REQUIRE(place->enter("tests.field.until", "2026-03-01"));
        }
        REQUIRE(place->act("tests.save"));
        REQUIRE_FALSE(place->isWriting());
        const auto prints = records::openPrints(shop.db(), 10);
        REQUIRE(prints);
        REQUIRE_FALSE(prints->empty());
        return prints->front().named.print;
    }
    [[nodiscard]] records::PrintRow print(const std::string& id) {
        const auto row = records::printById(shop.db(), id);
        REQUIRE(row);
        REQUIRE(*row);
        return **row;
    }
    std::vector<records::TestRow> tests(const std::string& print) {
        const auto all = records::testsOfPrint(shop.db(), print);
        REQUIRE(all);
        return *all;
    }
    /// Washes the print once and judges the load; gives its id.
    std::string wash(const std::string& print, const std::string& good, const std::string& weak) {
        REQUIRE(place->act("tests.new-load"));
        REQUIRE(place->enter("tests.field.print", shop::printSigns(this->print(print).named.number)));
        REQUIRE(place->enter("tests.field.machine", "front loader"));
        REQUIRE(place->enter("tests.field.good-witness", "G1"));
        REQUIRE(place->enter("tests.field.weak-witness", "W1"));
        REQUIRE(place->act("tests.save"));
        INFO(allText(place->sheet()));
        REQUIRE(place->act("tests.judge"));
        if (!good.empty()) {
            REQUIRE(place->enter("tests.field.good-grade", good));
        }
        if (!weak.empty()) {
            REQUIRE(place->enter("tests.field.weak-grade", weak));
        }
        REQUIRE(place->act("tests.save"));
        const auto loads = records::loads(shop.db(), 1);
        REQUIRE(loads);
        REQUIRE_FALSE(loads->empty());
        return loads->front().washed.load;
    }
    void grade(const std::string& print, const std::string& colour) {
        REQUIRE(place->act("tests.pick.print." + print));
        REQUIRE(place->act("tests.test"));
        REQUIRE(place->act("tests.by.wash-house"));
        REQUIRE(place->act("tests.set.answer.0." + colour));
        REQUIRE(place->act("tests.set.answer.1.4.5"));
        REQUIRE(place->act("tests.set.answer.2.no"));
        REQUIRE(place->act("tests.set.answer.3.no"));
        REQUIRE(place->act("tests.save"));
        INFO(allText(place->sheet()));
        REQUIRE_FALSE(place->isWriting());
    }
    bool says(const std::string& words) const { return testing::says(*place, words); }

    std::int64_t begun = 0;
    std::unique_ptr<TestsPlace> place;

private:
    /// At the clock's time: what was washed when decides whether it counts.
    void keepNow(const Keeping& keeping, const KeepDone& then) {
        if (diskFull) {
            then(ledger::Failure{ledger::FailureCode::diskFull, "full"});
            return;
        }
        ledger::CommitRequest request;
        request.blobs = keeping.blobs;
        for (std::size_t i = 0; i < keeping.list.size(); ++i) {
            ledger::EntryDraft draft;
            const bool named = i < keeping.ids.size() && !keeping.ids[i].empty();
            draft.id = named ? keeping.ids[i] : shop.freshId();
            draft.wallMilliseconds = clock.wall().millisecondsSinceEpoch;
            draft.person = keeping.person;
            draft.kind = records::rowOf(keeping.list[i]).kind;
            draft.version = records::rowOf(keeping.list[i]).version;
            draft.body = records::bodyOf(keeping.list[i]);
            request.entries.push_back(draft);
        }
        const auto receipt = shop.book().commit(request);
        INFO((receipt ? std::string{} : receipt.error().what));
        REQUIRE(receipt);
        then(std::nullopt);
    }
};

inline std::string idOfDue(const TestsPlace& place, const QString& title) {
    for (const auto& row : place.sheet().list) {
        if (row.title == title) {
            return row.id.toStdString();
        }
    }
    return {};
}

} // namespace holdfast::kiosk::screens::testing
