#include "kiosk/screens/presenting/places/print_certificate.hpp"
#include "kiosk/screens/presenting/places/print_wishes.hpp"
#include "tests/kiosk/records/support/lot_book.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/placed.hpp"

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::records::testing;
using namespace holdfast::kiosk::screens;
using namespace holdfast::reports_test;
using What = PrintWish::What;

namespace {

constexpr std::int64_t kRunNumber = 20418; // of the samples

std::optional<reports::Reported> wished(LotShop& lots, const PrintWish& wish, const wording::Speech& speech = {}) {
    return reportFor(wish, lots.shop.book(), {lots.shop.now(), 0}, speech);
}

QString textOf(const std::optional<reports::Reported>& report) {
    REQUIRE(report);
    return placedText(*report);
}

void hold(LotShop& lots) {
    auto placed = LotShop::hold("h1", records::HoldCause::reading, {}, records::PieceRange{113, 140}, 31);
    placed.count = 28;
    REQUIRE(lots.say(placed));
}

void ship(LotShop& lots) {
    records::PiecesMoved moved;
    moved.lot = kLot;
    moved.count = 24;
    moved.customer = "Kestrel School";
    moved.cartons = {"C-7"};
    REQUIRE(lots.say(moved));
}

} // namespace

TEST_CASE("wishes for things that are not in the book come to nothing", "[reports]") {
    withFonts();
    LotShop lots;
    for (const auto what : {What::binLabel, What::printLabel, What::certificate, What::recall}) {
        CHECK_FALSE(wished(lots, {what, 999'999, {}}));
    }
    CHECK_FALSE(wished(lots, {What::recall, 0, "no such lot, no such batch"}));
    CHECK(textOf(wished(lots, {What::quarantine, 0, {}})).contains(QStringLiteral("shelf must be empty")));
}

TEST_CASE("a bin's label says the bracket and why it is held", "[reports]") {
    withFonts();
    LotShop lots;
    hold(lots);
    const auto text = textOf(wished(lots, {What::binLabel, 31, {}}));
    INFO(text.toStdString());
    for (const auto* words : {"113–140", "28", "Run 20418, lot 1", "under-cured or overheated", "do not ship"}) {
        INFO(words);
        CHECK(text.contains(QString::fromUtf8(words)));
    }
    CHECK(isLabel({What::binLabel, 31, {}}));
    CHECK(isLabel({What::printLabel, 1, {}}));
    CHECK_FALSE(isLabel({What::quarantine, 0, {}}));
}

TEST_CASE("a print's label and the quarantine come from the book", "[reports]") {
    withFonts();
    LotShop lots;
    lots.print();
    hold(lots);
    CHECK(textOf(wished(lots, {What::printLabel, 1, {}})).contains(QStringLiteral("Run 20418, lot 1")));
    const auto list = textOf(wished(lots, {What::quarantine, 0, {}}));
    CHECK(list.contains(QStringLiteral("1 bin, 28 pieces.")));
    CHECK(list.contains(QStringLiteral("113–140")));
}

TEST_CASE("a recall is of the lot, or of its run", "[reports]") {
    withFonts();
    LotShop lots;
    ship(lots);
    for (const auto& wish : {PrintWish{What::recall, 0, kLot}, PrintWish{What::recall, kRunNumber, {}}}) {
        const auto text = textOf(wished(lots, wish));
        INFO(text.toStdString());
        CHECK(text.contains(QStringLiteral("Kestrel School: pieces 24, cartons 1")));
        CHECK(text.contains(QStringLiteral("C-7")));
    }
}

TEST_CASE("a run's paper from the book is a record until its lot is cleared, and names the book's head", "[reports]") {
    withFonts();
    LotShop lots;
    lots.shop.read(analytics::Word::cured);
    lots.print();
    REQUIRE(lots.say(lots.test(records::TestOutcome::passed, 1)));
    auto report = wished(lots, {What::certificate, kRunNumber, {}});
    CHECK(textOf(report).contains(QStringLiteral("Lot 1: Open")));
    CHECK(textOf(report).contains(QStringLiteral("Record of run 20418")));
    lots.close();
    REQUIRE(lots.state() == records::LotState::cleared);
    report = wished(lots, {What::certificate, kRunNumber, {}});
    const auto text = textOf(report);
    INFO(text.toStdString());
    CHECK(text.contains(QStringLiteral("Certificate of run 20418")));
    const auto head = lots.shop.book().head();
    REQUIRE(head);
    CHECK(text.contains(QString::fromStdString(ledger::toHex(head->hash))));
    CHECK(text.contains(QString::number(head->sequence)));
    CHECK(text.contains(QStringLiteral("Cured")));
    CHECK(text.contains(QStringLiteral("passed")));
    hold(lots);
    CHECK(textOf(wished(lots, {What::certificate, kRunNumber, {}})).contains(QStringLiteral("Lot 1: On hold")));
}

TEST_CASE("pictures that the book holds stand in the certificate, others are said to be gone", "[reports]") {
    withFonts();
    LotShop lots;
    lots.print();
    auto test = lots.test(records::TestOutcome::passed, 1);
    test.pictures = {{std::string(64, 'a'), records::PictureSide::washed}};
    REQUIRE(lots.say(test));
    CHECK(textOf(wished(lots, {What::certificate, kRunNumber, {}})).contains(QStringLiteral("no longer kept")));
}
