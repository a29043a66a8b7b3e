// Naming prints, and where they are kept.
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/print_draft.hpp"
#include "tests/kiosk/testing/support/facts.hpp"

#include "drivers/protocol/ticket_code.hpp"

using namespace holdfast;
using namespace holdfast::testing_test;
using shop::TestFaultCause;

namespace {

shop::PrintContext context() {
    shop::PrintContext made;
    made.run = "run-1";
    records::LotRow first;
    first.id = "lot-1";
    first.openedAt = kPrinted - 2 * kHour;
    records::LotRow second;
    second.id = "lot-2";
    second.number = 2;
    second.openedAt = kPrinted - kHour;
    made.lots = {first, second};
    made.nextNumber = 4711;
    made.printId = "print-new";
    made.now = kPrinted + kHour;
    return made;
}

} // namespace

TEST_CASE("the five signs of a print are its code without the T, however they are typed", "[testing][print]") {
    for (const std::int64_t number : {0, 1, 30, 31, 4711, 923'520}) { // 31⁴ numbers: 923,521
        const auto signs = shop::printSigns(number);
        INFO(signs);
        CHECK(signs.size() == 5);
        CHECK(shop::printTyped(signs) == number);
        CHECK(shop::printTyped("T" + signs) == number);
        std::string small;
        for (const char sign : signs) {
            small += static_cast<char>(std::tolower(static_cast<unsigned char>(sign)));
        }
        CHECK(shop::printTyped(" " + small.substr(0, 2) + " " + small.substr(2) + " ") == number);
        const auto code = drivers::decode("T" + signs);
        REQUIRE(code);
        CHECK(code->kind == drivers::TicketKind::print);
    }
}

TEST_CASE("a misread sign, another kind of code, and noise name no print", "[testing][print][refusal]") {
    const auto signs = shop::printSigns(4711);
    for (std::size_t i = 0; i < signs.size(); ++i) {
        for (const char other : drivers::kTicketSigns) {
            auto wrong = signs;
            wrong[i] = other;
            if (wrong != signs) {
                INFO(wrong);
                CHECK_FALSE(shop::printTyped(wrong)); // one wrong sign is always seen (ISBN-10 scheme)
            }
        }
    }
    for (const auto* noise : {"", "T", "12", "ABCDEFG", "O0O0O", "five!", "\xC3\xB1\xC3\xB1"}) {
        CHECK_FALSE(shop::printTyped(noise));
    }
    CHECK_FALSE(shop::printTyped(drivers::encode(drivers::TicketKind::run, 4711, 4)));
}

TEST_CASE("a print is named under the newest lot, and its piece leaves the lot to be tested", "[testing][print]") {
    shop::PrintDraft draft;
    draft.run = "20391";
    draft.piece = "12";
    draft.position = records::BeltPosition::left;
    const auto made = shop::printFrom(draft, context());
    REQUIRE(made);
    CHECK(made->named.number == 4711);
    CHECK(made->named.lot == "lot-2");
    CHECK(made->named.piece == 12);
    CHECK(made->named.printedAt == kPrinted + kHour); // nobody said when: now
    REQUIRE(made->moved);
    CHECK(made->moved->to == records::PiecePlace::tested);
    CHECK(made->moved->count == 1);
    CHECK(made->moved->lot == "lot-2");
    draft.lot = "lot-1";
    draft.retained = {true, "A3", "2027-10-14", true};
    const auto kept = shop::printFrom(draft, context());
    REQUIRE(kept);
    CHECK(kept->named.lot == "lot-1");
    CHECK(kept->moved->to == records::PiecePlace::retained);
    CHECK(kept->named.retained->shelf == "A3");
    CHECK(kept->named.retained->reprintAllowed);
}

TEST_CASE("what cannot be a print is refused where it stands", "[testing][print][refusal]") {
    shop::PrintDraft draft;
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::runMissing);
    draft.run = "20391";
    auto unknown = context();
    unknown.run.reset();
    CHECK(onlyFault(shop::printFrom(draft, unknown)).cause == TestFaultCause::runUnknown);
    auto without = context();
    without.lots.clear();
    CHECK(onlyFault(shop::printFrom(draft, without)).cause == TestFaultCause::lotMissing);
    draft.piece = "0";
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::pieceNotPositive);
    draft.piece = "3.5";
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::notWhole);
    draft.piece = "";
    draft.printed = "12:00"; // UTC here; it is 11:00
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::printedInFuture);
    draft.printed = "08:59"; // lot 2 was opened at 09:00
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::printedBeforeLot);
    for (const auto* noTime : {"noon", "25:00", "10:60", "2026-13-01 10:00", "10:5", "2026-10-14T", ":"}) {
        draft.printed = noTime;
        INFO(noTime);
        CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::notATime);
    }
    draft.printed = "2026-10-14 10:00";
    CHECK(shop::printFrom(draft, context())->named.printedAt == kPrinted);
    draft.retained.retained = true;
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::shelfMissing);
    draft.retained.shelf = "A3";
    draft.retained.until = "next year";
    CHECK(onlyFault(shop::printFrom(draft, context())).cause == TestFaultCause::notADate);
    auto full = context();
    full.nextNumber = 923'521;
    draft.retained = {};
    CHECK(onlyFault(shop::printFrom(draft, full)).cause == TestFaultCause::noNumberLeft);
}

TEST_CASE("the time of printing is the shop's own", "[testing][print]") {
    auto mexico = context();
    mexico.utcOffsetMinutes = -360; // UTC−6
    shop::PrintDraft draft;
    draft.run = "20391";
    draft.printed = "04:00";
    CHECK(shop::printFrom(draft, mexico)->named.printedAt == kPrinted);
}

TEST_CASE("a print is cut in two: the half is the same piece under its own number", "[testing][print]") {
    const auto whole = print();
    const auto half = shop::halfOf(whole, context());
    REQUIRE(half);
    CHECK(half->named.halfOf == whole.named.print);
    CHECK(half->named.number == 4711);
    CHECK(half->named.printedAt == whole.named.printedAt);
    CHECK_FALSE(half->moved);
    auto gone = whole;
    gone.ended = records::PrintEnd::lost;
    CHECK(onlyFault(shop::halfOf(gone, context())).cause == TestFaultCause::printEnded);
}

TEST_CASE("a retained piece has a shelf, a day, and an end", "[testing][print]") {
    auto row = print();
    CHECK_FALSE(shop::isPastItsTime(row, analytics::Date{std::chrono::days{20'741}}));
    const auto kept = shop::shelfFrom({true, "B2", "2026-10-14", false}, row);
    REQUIRE(kept);
    row.named.retained = kept->retained;
    CHECK_FALSE(shop::isPastItsTime(row, analytics::Date{std::chrono::days{20'740}})); // 14 October 2026 itself
    CHECK(shop::isPastItsTime(row, analytics::Date{std::chrono::days{20'741}}));
    CHECK(shop::draftOf(row.named.retained).until == "2026-10-14");
    CHECK(shop::ended(row, records::PrintEnd::shipped)->retained == row.named.retained);
    row.ended = records::PrintEnd::shipped;
    CHECK(onlyFault(shop::shelfFrom({true, "B2", "", false}, row)).cause == TestFaultCause::printEnded);
    CHECK(onlyFault(shop::ended(row, records::PrintEnd::lost)).cause == TestFaultCause::printEnded);
}
