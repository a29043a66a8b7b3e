#include "kiosk/reports/page/paint.hpp"
#include "tests/kiosk/reports/support/lot_samples.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/placed.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;

namespace {

std::vector<ReportStyle> sheets() {
    std::vector<ReportStyle> out;
    for (const auto* key : {"a4", "letter"}) {
        for (const auto code : {Symbology::code128, Symbology::qr}) {
            for (const auto* language : {"en", "es"}) {
                ReportStyle style;
                style.paper = paperOf(key);
                style.code = code;
                style.demo = true;
                style.speech.language = &wording::Language::ofCode(language);
                out.push_back(style);
            }
        }
    }
    return out;
}

int countOf(const Reported& report, const QString& words) {
    int count = 0;
    for (const auto& page : report->pages) {
        for (const auto& text : page.texts) {
            count += text.text == words ? 1 : 0;
        }
    }
    return count;
}

} // namespace

TEST_CASE("a quarantine list of none, one and many keeps to its pages and heads each of them", "[reports]") {
    withFonts();
    for (const auto& style : sheets()) {
        for (const int bins : {0, 1, 2, 90}) {
            INFO(style.paper.key << " " << bins);
            const auto report = quarantineList(quarantine(bins, "Red jerseys"), style);
            checkReport(report, style);
            REQUIRE(report);
            std::size_t codes = 0;
            for (const auto& page : report->pages) {
                codes += page.codes.size();
            }
            CHECK(codes == static_cast<std::size_t>(bins));
            const auto pages = static_cast<int>(report->pages.size());
            CHECK((pages > 1) == (bins == 90));
            CHECK(countOf(report, QStringLiteral("DEMO")) == pages);
            const auto head = QString::fromStdString(style.speech.text("reports.quarantine.since"));
            CHECK(countOf(report, head) >= (bins == 0 ? 0 : pages - 1)); // the signature may stand on a page of its own
        }
    }
}

TEST_CASE("another's decoder reads every bin of a quarantine list", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    for (const auto& style : sheets()) {
        const auto report = quarantineList(quarantine(30, "Red jerseys"), style);
        REQUIRE(report);
        QStringList expected;
        for (int bin = 31; bin < 61; ++bin) {
            expected += QString::fromStdString(codeTextOf(drivers::TicketKind::bin, bin));
        }
        expected.sort();
        CHECK(codesRead(report->pages).join(u' ').toStdString() == expected.join(u' ').toStdString());
    }
}

TEST_CASE("a quarantine list sums bins and pieces and says whose count nobody knows", "[reports]") {
    withFonts();
    const auto text = placedText(quarantineList(quarantine(14, "Red jerseys"), {}));
    INFO(text.toStdString());
    // 14 bins of 10 pieces, each seventh of unknown count (lot_samples.hpp): 12 · 10.
    CHECK(text.contains(QStringLiteral("14 bins, 120 pieces. Of 2 bins nobody knows")));
    CHECK(text.contains(QStringLiteral("48–57")));
    CHECK(text.contains(QStringLiteral("2026-11-25 14:02")));
    CHECK(text.contains(QStringLiteral("Counted by")));
    CHECK(placedText(quarantineList(quarantine(0, "Shop"), {})).contains(QStringLiteral("the shelf must be empty")));
}

TEST_CASE("holds become bins as the book has them", "[reports]") {
    records::HoldRow hold;
    hold.placed.bin = 7;
    hold.placed.pieces = records::PieceRange{3, {}};
    hold.placed.cause = records::HoldCause::test;
    hold.runNumber = 20414;
    hold.lotNumber = 2;
    hold.shipped = true;
    const auto bins = quarantineBins({hold});
    REQUIRE(bins.size() == 1);
    CHECK(bins[0].bin == 7);
    CHECK(bins[0].pieces == records::PieceRange{3, {}});
    CHECK_FALSE(bins[0].count);
    CHECK(bins[0].shipped);
    CHECK(quarantineBins({}).empty());
}

TEST_CASE("a recall sums by customer and keeps apart what is here", "[reports]") {
    const auto list = recallListOf({RecallReach::batch, "B-2207", 0, 0}, recallLots("Red jerseys"));
    // By hand from lot_samples.cpp: club 48 + 12 in C-1 and C-2, school 24 + 30 in its own C-1 and unmarked cartons.
    REQUIRE(list.customers.size() == 2);
    CHECK(list.customers[0].name == "Harbour Rowing Club");
    CHECK(list.customers[0].pieces == 60);
    CHECK(list.customers[0].cartons == 2);
    CHECK(list.customers[0].lines[0].pieces == 12); // the 19th before the 20th
    CHECK(list.customers[1].pieces == 54);
    CHECK(list.customers[1].cartons == 1);
    CHECK(list.pieces == 114);
    CHECK(list.cartons == 3);
    CHECK(list.lots == 3);
    REQUIRE(list.here.size() == 2);
    CHECK(list.here[0].lot == 2);
    CHECK(list.here[0].pieces == 58); // 60 made, 2 used up by tests
    CHECK(list.here[0].nothingShipped);
    CHECK(list.here[1].run == 20420);
    CHECK(list.here[1].pieces == 6); // as counted on the shelf
    CHECK_FALSE(list.here[1].nothingShipped);
}

TEST_CASE("lots named twice are called once, and moves taken back are not called", "[reports]") {
    auto lots = recallLots("x");
    lots.push_back(lots.front());
    lots[1].shipped = lots[0].shipped;
    for (auto& move : lots[1].shipped) {
        move.count = 0;
    }
    const auto list = recallListOf({}, lots);
    CHECK(list.pieces == 114);
    CHECK(list.lots == 3);
    CHECK(list.here[0].nothingShipped);
    CHECK(recallListOf({}, {}).lots == 0);
}

TEST_CASE("a recall list of none, one and many customers keeps to its pages", "[reports]") {
    withFonts();
    for (const auto& style : sheets()) {
        auto few = recallListOf({RecallReach::lot, {}, 20414, 1}, recallLots("Red jerseys"));
        few.printed = afternoon();
        for (const auto& report : {recallList(few, style), recallList(recallListOf({}, {}), style),
                                   recallList(longRecall(1, "Kestrel School"), style),
                                   recallList(longRecall(200, "Kestrel School"), style)}) {
            INFO(style.paper.key);
            checkReport(report, style);
        }
    }
    const auto text =
        placedText(recallList(recallListOf({RecallReach::run, {}, 20414, 0}, recallLots("Red jerseys")), {}));
    INFO(text.toStdString());
    for (const auto* words :
         {"Recall of run 20414", "Harbour Rowing Club: pieces 60, cartons 2", "cartons not written down", "C-1, C-2",
          "On hold", "Here: not shipped", "58", "Nothing was shipped.", "authorities"}) {
        INFO(words);
        CHECK(text.contains(QString::fromUtf8(words)));
    }
}

TEST_CASE("no carton is lost, however many one shipment had", "[reports]") {
    withFonts();
    RecallLot lot{20414, "Red jerseys", 1, records::LotState::onHold, {}, {}};
    records::PiecesMoved moved;
    moved.count = 500;
    for (int i = 0; i < 500; ++i) {
        moved.cartons.push_back("C-" + std::to_string(i) + "-" + std::string(90, 'W'));
    }
    lot.shipped = {moved};
    const ReportStyle style;
    const auto report = recallList(recallListOf({}, {lot}), style);
    checkReport(report, style);
    const auto text = placedText(report);
    for (int i = 0; i < 500; ++i) {
        INFO(i);
        CHECK(text.contains(QStringLiteral("C-%1-").arg(i)));
    }
}

TEST_CASE("a recall's file has a line for each carton and what is here behind them", "[reports]") {
    const auto list = recallListOf({RecallReach::run, {}, 20414, 0}, recallLots("x"));
    const auto text = csvOf(list, {});
    CHECK(text == "customer,carton,pieces,run,lot,day,State,place\r\n"
                  "Harbour Rowing Club,C-2,12,20414,1,2026-11-19,On hold,shipped\r\n"
                  "Harbour Rowing Club,C-1,48,20414,1,2026-11-20,On hold,shipped\r\n"
                  "Harbour Rowing Club,C-2,,20414,1,2026-11-20,On hold,shipped\r\n"
                  "Kestrel School,C-1,24,20414,1,2026-11-21,On hold,shipped\r\n"
                  "Kestrel School,,30,20420,1,2026-11-22,Released,shipped\r\n"
                  ",,58,20414,2,,Cleared,here\r\n"
                  ",,6,20420,1,,Released,here\r\n");
    auto hostile = list;
    hostile.customers[0].name = "=HYPERLINK(\"x\"),\r\n";
    CHECK(csvOf(hostile, {}).find("\"'=HYPERLINK(\"\"x\"\"),\r\n\",C-2") != std::string::npos);
}

TEST_CASE("hostile texts keep lists on their pages", "[reports]") {
    withFonts();
    for (const auto* key : {"a4", "letter", "half-letter"}) {
        ReportStyle style;
        style.paper = paperOf(key);
        for (const auto& text : hostileTexts()) {
            INFO(key << ": " << text.substr(0, 60));
            checkReport(quarantineList(quarantine(4, text), style), style);
            checkReport(recallList(longRecall(3, text), style), style);
        }
    }
}
