#include "kiosk/reports/page/paint.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/samples.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;

namespace {

constexpr double kHalfHair = 0.1; // mm

std::vector<std::string> hostileTexts() {
    std::string control;
    for (char sign = 0; sign < 32; ++sign) {
        control += sign;
        control += 'x';
    }
    std::string words;
    while (words.size() < 10'000) {
        words += "word ";
    }
    return {std::string(10'000, 'W'),
            words,
            control,
            "\"'`<&>{}$(rm)\\%s{title}",
            "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xD8\xB3\xD9\x84\xD8\xA7\xD9\x85 \xE2\x80\xAE right-to-left \xE2\x81\xA6",
            "",
            "   ",
            "\xFF\xFE\xC3 broken \xED\xA0\x80",
            std::string("\xF0\x9F\x8E\xBD") + std::string(4000, '.'),
            std::string("e") + [] {
                std::string marks;
                for (int i = 0; i < 300; ++i) {
                    marks += "\xCC\x81";
                }
                return marks;
            }()};
}

bool apart(const Box& a, const Box& b) {
    return a.right() <= b.x + kHalfHair || b.right() <= a.x + kHalfHair || a.bottom() <= b.y + kHalfHair ||
           b.bottom() <= a.y + kHalfHair;
}

bool inside(const Box& box, const PlacedPage& page, double margin) {
    return box.x >= margin - 1e-6 && box.y >= margin - 1e-6 && box.right() <= page.width - margin + 1e-6 &&
           box.bottom() <= page.height - margin + 1e-6 && box.width >= 0 && box.height >= 0;
}

/// Everything inside the margins, no line on another line or on a code with its quiet zone, no rule in a code.
void checkPage(const PlacedPage& page, double margin) {
    for (std::size_t i = 0; i < page.texts.size(); ++i) {
        const auto& text = page.texts[i];
        INFO(text.text.toStdString());
        CHECK(inside(text.box, page, margin));
        CHECK(text.size > 2.0); // under 6 pt nobody reads it
        for (std::size_t j = i + 1; j < page.texts.size(); ++j) {
            INFO(page.texts[j].text.toStdString());
            CHECK(apart(text.box, page.texts[j].box));
        }
        for (const auto& code : page.codes) {
            CHECK(apart(text.box, code.box));
        }
    }
    for (const auto& box : page.ink) {
        CHECK(inside(box, page, margin));
        for (const auto& code : page.codes) {
            CHECK(apart(box, code.box));
        }
    }
    for (const auto& code : page.codes) {
        CHECK(inside(code.box, page, margin));
    }
}

void checkReport(const Reported& report, const ReportStyle& style) {
    if (!report) {
        CHECK(report.error().cause == ReportCause::paperTooSmall);
        CHECK(style.paper.height < 60); // only the card may be too small
        return;
    }
    REQUIRE_FALSE(report->pages.empty());
    for (const auto& page : report->pages) {
        checkPage(page, style.paper.margin);
    }
    CHECK(pdfOf(report->pages, report->name));
}

std::vector<ReportStyle> everyStyle() {
    std::vector<ReportStyle> styles;
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        for (const auto& paper : kPapers) {
            ReportStyle style;
            style.paper = paper;
            style.code = symbology;
            style.demo = true;
            styles.push_back(style);
        }
    }
    return styles;
}

} // namespace

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
