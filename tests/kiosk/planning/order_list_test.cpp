// RFC 4180 is the form of the table; RFC 3629 what counts as UTF-8.
#include "kiosk/shop/planning/order_list.hpp"
#include "kiosk/shop/planning/table.hpp"
#include "tests/kiosk/planning/starters.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace holdfast;
using namespace holdfast::kiosk::shop;

namespace {

OrderList read(const std::string& text, const std::vector<std::string>& known = {}) {
    return readOrders(text, starters(), known);
}

const std::string kHead = "reference,title,pieces,fabric,layers\r\n";

} // namespace

TEST_CASE("a good list becomes plans, whatever the separator, order and language of its columns", "[planning]") {
    const auto comma = read(kHead + "A-1,red jerseys,144,100% polyester,white: low-cure / black: low-cure\r\n");
    REQUIRE(comma.plans.size() == 1);
    CHECK(comma.faults.empty());
    CHECK(comma.plans[0].layers.size() == 2);
    CHECK(comma.plans[0].layers[0].colour == "white"); // bottom first
    CHECK(comma.plans[0].reference == "A-1");
    const auto spanish = read("\xEF\xBB\xBF"
                              "Capas;Tela;Título;color de bolsa\nblanco: standard;100% cotton;camisetas;x\n");
    REQUIRE(spanish.plans.size() == 1);
    CHECK(spanish.plans[0].title == "camisetas");
}

TEST_CASE("quotes hold separators, line ends and doubled quotes", "[planning]") {
    const auto list = read(kHead + "A-1,\"\"\"big\"\", red\r\njerseys\",,100% cotton,black: standard\r\n");
    // A line end inside a title is a control sign on a ticket.
    REQUIRE(list.faults.size() == 1);
    CHECK(list.faults[0].fault->cause == PlanFaultCause::controlSign);
    const auto table = readTable("a,\"b\"\"c,\nd\"\nlast,row", ',');
    REQUIRE(table.rows.size() == 2);
    CHECK(table.rows[0].cells[1] == "b\"c,\nd"); // RFC 4180, 2.6 and 2.7
    CHECK(table.rows[1].line == 3);
}

TEST_CASE("each bad row is told by its line, and the good ones are taken", "[planning]") {
    const auto list = read(kHead + "A-1,tees,10,100% cotton,black: standard\n"
                                   "A-2,tees,10,100% cotton\n"
                                   "A-3,tees,many,100% cotton,black: standard\n"
                                   "A-1,tees,10,100% cotton,black: standard\n"
                                   "A-5,tees,10,100% cotton,black\n"
                                   "A-6,=1+1,10,100% cotton,black: standard\n",
                           {});
    CHECK(list.rows == 6);
    REQUIRE(list.plans.size() == 1);
    REQUIRE(list.faults.size() == 5);
    CHECK(list.faults[0].cause == OrderFaultCause::rowOfOtherLength);
    CHECK(list.faults[0].line == 3);
    CHECK(list.faults[1].fault->cause == PlanFaultCause::piecesNotANumber);
    CHECK(list.faults[2].cause == OrderFaultCause::referenceTwice);
    CHECK(list.faults[3].cause == OrderFaultCause::layersUnreadable);
    CHECK(list.faults[4].cause == OrderFaultCause::formula);
    CHECK(list.faults[4].line == 7);
}

TEST_CASE("an order that is already planned is not planned twice", "[planning]") {
    const auto list = read(kHead + "A-1,tees,10,100% cotton,black: standard\n", {"A-1"});
    CHECK(list.plans.empty());
    REQUIRE(list.faults.size() == 1);
    CHECK(list.faults[0].cause == OrderFaultCause::referenceTwice);
}

TEST_CASE("anything a spreadsheet would run is refused, wherever it stands", "[planning]") {
    for (const auto* cell : {"=HYPERLINK(1)", "+1", "-1", "@SUM(A1)", "  =1"}) {
        INFO(cell);
        const auto list = read(kHead + "A-1," + cell + ",10,100% cotton,black: standard\n");
        REQUIRE(list.faults.size() == 1);
        CHECK(list.faults[0].cause == OrderFaultCause::formula);
    }
}

TEST_CASE("a list without a needed column, empty, endless or in another encoding is refused as a whole", "[planning]") {
    CHECK(read("").faults[0].cause == OrderFaultCause::empty);
    CHECK(read(kHead).faults[0].cause == OrderFaultCause::empty);
    const auto missing = read("title,fabric\ntees,100% cotton\n");
    REQUIRE(missing.faults.size() == 1);
    CHECK(missing.faults[0].cause == OrderFaultCause::columnMissing);
    CHECK(missing.faults[0].text == "layers");
    CHECK(read("title,title,fabric,layers\na,b,c,d\n").faults[0].cause == OrderFaultCause::columnTwice);
    CHECK(read(kHead + "A,\"never closed,1,c,d\n").faults[0].cause == OrderFaultCause::unclosedQuote);
    const auto latin = read(kHead + "A-1,camisetas de ni\xF1o,10,100% cotton,black: standard\n");
    REQUIRE(latin.faults.size() == 1);
    CHECK(latin.faults[0].cause == OrderFaultCause::notText);
    CHECK(latin.faults[0].line == 2);
    const std::string wide{"\xFF\xFEr\0e\0f\0", 8}; // UTF-16
    CHECK(read(wide).faults[0].cause == OrderFaultCause::notText);
}

TEST_CASE("a hundred thousand rows are refused in one sentence, five thousand are taken", "[planning]") {
    const std::string row = ",tees,10,100% cotton,black: standard\n";
    std::string text = kHead;
    for (int i = 0; i < kMostOrders; ++i) {
        text += row;
    }
    CHECK(read(text).plans.size() == static_cast<std::size_t>(kMostOrders));
    for (int i = kMostOrders; i < 100'000; ++i) {
        text += row;
    }
    const auto list = read(text);
    CHECK(list.plans.empty());
    REQUIRE(list.faults.size() == 1);
    CHECK(list.faults[0].cause == OrderFaultCause::tooManyRows);
    CHECK(list.rows == 100'000);
}

TEST_CASE("what is no UTF-8 is found at its line", "[planning]") {
    CHECK(firstLineNotText("año, piñón, 320 °F") == 0);
    for (const auto* bad : {"\xC0\x80", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xFF", "\xC3"}) {
        INFO(bad); // RFC 3629, 3: overlong forms, surrogates, beyond U+10FFFF, cut short
        CHECK(firstLineNotText(std::string{"a\n"} + bad) == 2);
    }
}

TEST_CASE("no bytes break the reader", "[planning]") {
    std::mt19937 dice{7};
    const std::string signs = ",;\t\"\r\n:/=ab1 \xC3\xB1";
    for (int i = 0; i < 20'000; ++i) {
        std::string text = i % 2 == 0 ? kHead : std::string{};
        for (auto n = dice() % 60U; n > 0; --n) {
            text.push_back(signs[dice() % signs.size()]);
        }
        const auto list = read(text);
        CHECK(list.plans.size() <= static_cast<std::size_t>(list.rows));
        CHECK((!list.plans.empty() || !list.faults.empty()));
    }
}
