#include "kiosk/reports/page/paint.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/samples.hpp"

#include <catch2/catch.hpp>

#include <QDir>
#include <QFile>

using namespace holdfast;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;

namespace {

QString textOf(const Reported& report) {
    REQUIRE(report);
    const auto pdf = pdfOf(report->pages, report->name);
    REQUIRE(pdf);
    return textRead(*pdf);
}

/// nbsp and the hyphens and dashes stay as they are; blanks are one.
bool says(const QString& text, const char* words) {
    const auto plain = QString(text).replace(QChar::Nbsp, QChar::Space);
    return plain.contains(QString::fromUtf8(words));
}

} // namespace

TEST_CASE("another's decoder reads every single page on every paper, as bars and as squares", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        for (const auto& paper : kPapers) {
            ReportStyle style;
            style.paper = paper;
            style.code = symbology;
            style.demo = true;
            INFO(paper.key << (symbology == Symbology::qr ? " qr" : " bars"));
            std::vector<PlacedPage> pages;
            QStringList expected;
            for (const auto& single : everySingle(style)) {
                const bool ticketOnCard = paper.key == "card" && !single.report;
                if (ticketOnCard) {
                    continue; // a run does not fit on a badge: it says so
                }
                REQUIRE(single.report);
                pages.push_back(single.report->pages.front());
                expected += QString::fromStdString(single.code);
            }
            REQUIRE(pages.size() >= 2);
            expected.sort();
            CHECK(codesRead(pages).join(u' ').toStdString() == expected.join(u' ').toStdString());
        }
    }
}

TEST_CASE("another's decoder reads every action card and strip label", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        for (const auto* key : {"a4", "letter", "a6"}) {
            ReportStyle style;
            style.paper = paperOf(key);
            style.code = symbology;
            INFO(key << (symbology == Symbology::qr ? " qr" : " bars"));
            const auto cards = actionCards(everyCard(), style);
            const auto labels = stripLabels(strips(40), style);
            REQUIRE(cards);
            REQUIRE(labels);
            CHECK(codesRead(cards->pages).size() == 10 + 10 + 3 + 9 + 8); // as in samples.cpp and cards.hpp
            const auto read = codesRead(labels->pages);
            CHECK(read.size() == 40);
            CHECK(read.contains(QString::fromStdString(codeTextOf(drivers::TicketKind::instrument, 439))));
        }
    }
}

TEST_CASE("a run ticket says number, people, pieces, layers top first, window and cautions", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    for (const auto* key : {"label-62x100", "label-100x150", "a6", "half-letter", "a4", "letter"}) {
        INFO(key);
        ReportStyle style;
        style.paper = paperOf(key);
        const auto text = textOf(runTicket(openRun(), style));
        INFO(text.toStdString());
        for (const auto* words : {"20418", "Crew shirts, front print", "288", "white, underbase", "standard",
                                  "320 °F, 30 s", "cotton, navy", "320–380 °F", "Children’s wear", "Hot belt"}) {
            INFO(words);
            CHECK(says(text, words));
        }
        const bool small = style.paper.width < 70; // may leave out what is worth less
        for (const auto* words : {"Harbour Rowing Club", "PO 7731-B", "North dryer"}) {
            INFO(words);
            CHECK((small || says(text, words)));
        }
        CHECK(text.indexOf(QStringLiteral("blue")) < text.indexOf(QStringLiteral("red low-cure")));
        CHECK(text.indexOf(QStringLiteral("red low-cure")) < text.indexOf(QStringLiteral("white, underbase")));
        CHECK_FALSE(says(text, "DEMO"));
    }
}

TEST_CASE("a closed window is no window, and the ticket says why", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    for (const auto& paper : kPapers) {
        INFO(paper.key);
        ReportStyle style;
        style.paper = paper;
        style.demo = true;
        const auto report = runTicket(closedRun(), style);
        if (!report) {
            CHECK(paper.key == "card");
            CHECK(report.error().cause == ReportCause::paperTooSmall);
            continue;
        }
        const auto text = textOf(report);
        INFO(text.toStdString());
        CHECK(says(text, "No window"));
        CHECK(says(text, "320 °F"));
        CHECK(says(text, "black"));
        CHECK(says(text, "DEMO"));
    }
}

TEST_CASE("what is lost on the way to a window is said on the ticket", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    auto ticket = closedRun();
    ticket.layers.reset();
    ticket.window.reset();
    const auto text = textOf(runTicket(ticket, {}));
    CHECK(says(text, "No window"));
    CHECK(says(text, "so no window is known: ask before printing."));
    CHECK(says(text, "black"));
}

TEST_CASE("labels say what they stick to", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    ReportStyle style;
    style.paper = paperOf("label-62x100");
    const auto bucketText = textOf(bucketLabel(bucket("low-cure red"), style));
    INFO(bucketText.toStdString());
    for (const auto* words : {"118", "low-cure red", "2026-11-25", "Cures at", "285 °F, 30 s", "2026-11-25 09:00"}) {
        INFO(words);
        CHECK(says(bucketText, words));
    }
    const auto binText = textOf(binLabel(bin("Black was under-cured."), style));
    for (const auto* words :
         {"On hold: do not ship", "Run 20414, lot 2", "48–97", "50", "Black was under-cured.", "2026-11-25"}) {
        INFO(words);
        CHECK(says(binText, words));
    }
}

TEST_CASE("a print's label wears the five signs of the laundry pen, without the T", "[reports]") {
    withFonts();
    ReportStyle style;
    style.paper = paperOf("label-62x100");
    // 12345 in base 31 is 12·31² + 26·31 + 7 (by hand: 11532 + 806 + 7), so four signs 0, 12, 26, 7 of the alphabet.
    CHECK(codeTextOf(drivers::TicketKind::print, 12'345).substr(0, 5) == "T0DU7");
    const auto report = printLabel(printUnderTest("Crew shirts"), style);
    REQUIRE(report);
    QString largest;
    double size = 0;
    for (const auto& text : report->pages.front().texts) {
        if (text.size > size) {
            size = text.size;
            largest = text.text;
        }
    }
    CHECK(largest.size() == 5);
    CHECK(largest.startsWith(QStringLiteral("0DU7")));
    CHECK(printLabel({.number = kiosk::records::kMostPrints}, style).error().cause == ReportCause::numberUnusable);
    if (readersAreHere()) {
        const auto text = textOf(report);
        for (const auto* words : {"Retained piece", "Run 20414, lot 2", "48", "Crew shirts", "2026-11-25"}) {
            INFO(words);
            CHECK(says(text, words));
        }
    }
}

TEST_CASE("layers that do not fit are counted, never left out in silence", "[reports]") {
    withFonts();
    auto ticket = layeredRun(12);
    for (const auto& paper : kPapers) {
        ReportStyle style;
        style.paper = paper;
        const auto report = runTicket(ticket, style);
        if (!report) {
            continue;
        }
        int shown = 0;
        int named = 0;
        for (const auto& text : report->pages.front().texts) {
            shown += text.text.startsWith(QStringLiteral("colour ")) ? 1 : 0;
            named += text.text.contains(QStringLiteral("more layer")) ? text.text.section(u' ', 0, 0).toInt() : 0;
        }
        INFO(paper.key);
        CHECK(shown + named == 12);
    }
}

TEST_CASE("the fonts are in the file, so that every machine prints the same", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    const auto report = runTicket(openRun(), {});
    REQUIRE(report);
    const auto pdf = pdfOf(report->pages, report->name);
    REQUIRE(pdf);
    const QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("a.pdf")));
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write(*pdf);
    file.close();
    const auto fonts = QString::fromUtf8(outputOf(QStringLiteral("pdffonts"), {file.fileName()}));
    INFO(fonts.toStdString());
    CHECK(fonts.contains(QStringLiteral("B612")));
    CHECK_FALSE(fonts.contains(QStringLiteral("B612Mono")));
    const auto images = outputOf(QStringLiteral("pdfimages"), {QStringLiteral("-list"), file.fileName()});
    CHECK(images.count('\n') <= 2); // a heading of two lines and no pictures
}
