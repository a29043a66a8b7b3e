#include "kiosk/reports/page/paint.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/placed.hpp"
#include "tests/kiosk/reports/support/samples.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;

TEST_CASE("everything fits on every paper, and nothing lies on anything", "[reports]") {
    withFonts();
    for (const auto& style : everyStyle()) {
        INFO(style.paper.key << (style.code == Symbology::qr ? " qr" : " bars"));
        for (const auto& single : everySingle(style)) {
            INFO(single.code);
            checkReport(single.report, style);
        }
        for (int layers = 0; layers <= 12; ++layers) {
            INFO(layers << " layers");
            checkReport(runTicket(layeredRun(layers), style), style);
            checkReport(windowCard(layeredRun(layers), style), style);
        }
    }
}

TEST_CASE("a badge and an instrument's label fit on the card", "[reports]") {
    withFonts();
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        ReportStyle style;
        style.paper = paperOf("card");
        style.code = symbology;
        CHECK(personBadge(badge("Night shift"), style));
        CHECK(instrumentLabel(instrument("Probe three"), style));
    }
}

TEST_CASE("hostile texts are cut by whole lines and never leave the page", "[reports]") {
    withFonts();
    for (const auto& style : everyStyle()) {
        for (const auto& text : hostileTexts()) {
            INFO(style.paper.key << ": " << text.substr(0, 60));
            checkReport(runTicket(runOfTexts(text), style), style);
            checkReport(windowCard(runOfTexts(text), style), style);
            checkReport(bucketLabel(bucket(text), style), style);
            checkReport(binLabel(bin(text), style), style);
            checkReport(printLabel(printUnderTest(text), style), style);
            checkReport(personBadge(badge(text), style), style);
            checkReport(instrumentLabel(instrument(text), style), style);
        }
    }
}

TEST_CASE("sheets of cards stay inside the page, and codes are far enough apart", "[reports]") {
    withFonts();
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        for (const auto* key : {"a4", "letter", "half-letter", "a6", "label-100x150"}) {
            ReportStyle style;
            style.paper = paperOf(key);
            style.code = symbology;
            style.demo = true;
            for (const auto& report : {actionCards(everyCard(), style), stripLabels(strips(50), style)}) {
                INFO(key);
                REQUIRE(report);
                for (const auto& page : report->pages) {
                    checkPage(page, style.paper.margin);
                    CHECK_FALSE(page.codes.empty());
                }
            }
        }
    }
}

TEST_CASE("nothing to print, and numbers without a code, are told apart", "[reports]") {
    withFonts();
    ActionCards none;
    none.dryer.clear();
    none.readings.clear();
    none.positions.clear();
    CHECK(actionCards(none, {}).error().cause == ReportCause::nothingToPrint);
    CHECK(stripLabels(strips(0), {}).error().cause == ReportCause::nothingToPrint);
    CHECK(stripLabels(strips(-3), {}).error().cause == ReportCause::nothingToPrint);
    auto run = openRun();
    run.plan.number = -1;
    CHECK(runTicket(run, {}).error().cause == ReportCause::numberUnusable);
    run.plan.number = INT64_MAX;
    CHECK(runTicket(run, {}));
    CHECK(pdfOf({}, "none").error().cause == ReportCause::nothingToPrint);
    ReportStyle tiny;
    tiny.paper = {"tiny", 12, 12, 1, 2.6};
    CHECK(personBadge(badge("x"), tiny).error().cause == ReportCause::paperTooSmall);
    CHECK(actionCards(everyCard(), tiny).error().cause == ReportCause::paperTooSmall);
}

TEST_CASE("what people typed becomes one tidy line", "[reports]") {
    withFonts();
    CHECK(tidy(" a\t\nb \r c ") == QStringLiteral("a b c"));
    CHECK(tidy(std::string("a\0b", 3)) == QStringLiteral("a b"));
    CHECK(tidy("285\xC2\xA0°F") == QStringLiteral("285\u00A0°F"));
    CHECK(tidy("a\xE2\x80\xAE"
               "b") == QStringLiteral("ab"));
    CHECK(tidy(std::string(10'000, 'x')).endsWith(QChar(0x2026)));
    CHECK(tidy("") == QString());
    CHECK(tidy("   ") == QString());
}

TEST_CASE("lines are broken at words, and the last one is cut with three dots", "[reports]") {
    withFonts();
    const Type type{3, false};
    const auto lines = wrapped(QStringLiteral("one two three four five six seven eight nine ten"), 20, type, 3);
    REQUIRE(lines.size() == 3);
    CHECK(lines.last().endsWith(QChar(0x2026)));
    for (const auto& line : lines) {
        CHECK(advance(line, type) <= 20 + 1e-6);
    }
    CHECK(wrapped(QStringLiteral("one"), 20, type, 3) == QStringList{QStringLiteral("one")});
    CHECK(wrapped(QString(), 20, type, 3).isEmpty());
}
