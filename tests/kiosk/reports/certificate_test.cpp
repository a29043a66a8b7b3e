#include "kiosk/reports/page/paint.hpp"
#include "kiosk/reports/picture.hpp"
#include "tests/kiosk/reports/support/lot_samples.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/placed.hpp"
#include "tests/kiosk/reports/support/samples.hpp"

#include <catch2/catch.hpp>

#include <QBuffer>
#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;
using records::LotState;

namespace {

ReportStyle styleOf(const char* paper, const char* language = "en") {
    ReportStyle style;
    style.paper = paperOf(paper);
    style.speech.language = &wording::Language::ofCode(language);
    return style;
}

Reported printed(const CertificateFacts& facts, const ReportStyle& style = {}) {
    return runCertificate(certificateOf(facts), style);
}

/// Of the largest type on the first page.
QStringList largest(const Reported& report) {
    REQUIRE(report);
    double size = 0;
    for (const auto& text : report->pages.front().texts) {
        size = std::max(size, text.size);
    }
    QStringList out;
    for (const auto& text : report->pages.front().texts) {
        if (text.size > size - 1e-6) {
            out += text.text;
        }
    }
    return out;
}

ledger::Bytes pngOf(int width, int height) {
    QImage image(width, height, QImage::Format_RGB32);
    image.fill(Qt::red);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    REQUIRE(image.save(&buffer, "png"));
    return {bytes.begin(), bytes.end()};
}

} // namespace

TEST_CASE("only a run whose lots are all cleared or released has a certificate", "[reports]") {
    for (const auto state : {LotState::cleared, LotState::released}) {
        CHECK(certificateOf(certified(3, 1, state, "x")).isCertificate);
    }
    for (const auto state : {LotState::settingUp, LotState::open, LotState::unproven, LotState::onHold, LotState::reRun,
                             LotState::scrapped}) {
        CHECK_FALSE(certificateOf(certified(3, 1, state, "x")).isCertificate);
    }
    auto none = certified(0, 0, LotState::cleared, "x");
    none.trace.lots.clear();
    CHECK_FALSE(certificateOf(none).isCertificate);
}

TEST_CASE("what stands against a certificate stands in the largest type, and it is headed as a record", "[reports]") {
    withFonts();
    const auto record = printed(certified(4, 2, LotState::onHold, "Crew shirts"));
    CHECK(largest(record).contains(QStringLiteral("Record of run 20418")));
    CHECK(largest(record).contains(QStringLiteral("Lot 2: On hold")));
    CHECK_FALSE(placedText(record).contains(QStringLiteral("Certificate of")));
    CHECK(record->name == "run-20418-record");
    const auto certificate = printed(certified(4, 2, LotState::released, "Crew shirts"));
    CHECK(largest(certificate).contains(QStringLiteral("Certificate of run 20418")));
    CHECK(certificate->name == "run-20418-certificate");
    auto many = certified(0, 0, LotState::onHold, "Crew shirts");
    many.trace.lots.insert(many.trace.lots.end(), 40, many.trace.lots[1]);
    CHECK(placedText(printed(many)).contains(QStringLiteral("35 more lots"))); // 41 on hold, six of them named
    auto empty = certified(0, 0, LotState::cleared, "Crew shirts");
    empty.trace.lots.clear();
    CHECK(placedText(printed(empty)).contains(QStringLiteral("Nothing was read")));
}

TEST_CASE("a certificate holds everything an auditor asks, failures included", "[reports]") {
    withFonts();
    const auto text = placedText(printed(certified(16, 6, LotState::released, "Crew shirts")));
    INFO(text.toStdString());
    for (const auto* words : {"Harbour Rowing Club",
                              "PO 7731-B",
                              "navy",
                              "cotton",
                              "288",
                              "Children’s wear",
                              "low-cure",
                              "B-220",
                              "B-221",
                              "320–380 °F",
                              "Cured",
                              "Under-cured",
                              "Overheated",
                              "Not proven",
                              "Not taken",
                              "struck:",
                              "judged again",
                              "+6 °F",
                              "4.5",
                              "failed",
                              "passed",
                              "A. Night",
                              "person 9",
                              "Scrapped",
                              "LAB-7714",
                              "4711",
                              "beef",
                              "What was not tested",
                              "accredited laboratory",
                              "lock-out",
                              "Retained piece",
                              "Page 1 of"}) {
        INFO(words);
        CHECK(text.contains(QString::fromUtf8(words)));
    }
}

TEST_CASE("the word safe is never printed", "[reports]") {
    withFonts();
    for (const auto state : {LotState::released, LotState::onHold}) {
        const auto facts = certified(16, 6, state, "Crew shirts");
        CHECK_FALSE(placedText(printed(facts)).contains(QStringLiteral("safe"), Qt::CaseInsensitive));
        CHECK_FALSE(
            placedText(printed(facts, styleOf("a4", "es"))).contains(QStringLiteral("segur"), Qt::CaseInsensitive));
    }
}

TEST_CASE("children's wear without a laboratory's report says so", "[reports]") {
    withFonts();
    auto facts = certified(2, 0, LotState::cleared, "Crew shirts");
    facts.trace.lots[1].decisions[0].signedAs.laboratoryReport.clear();
    CHECK(placedText(printed(facts)).contains(QStringLiteral("no laboratory report is in the book")));
    facts.trace.lots[1].decisions[0].signedAs.laboratoryReport = "LAB-1";
    facts.trace.lots[1].decisions[0].corrected = true;
    CHECK(certificateOf(facts).laboratoryReports.empty());
}

TEST_CASE("a certificate of nothing, of one and of a hundred keeps to its pages", "[reports]") {
    withFonts();
    for (const auto* paper : {"a4", "letter"}) {
        for (const auto* language : {"en", "es"}) {
            for (const auto unit : {analytics::TemperatureUnit::fahrenheit, analytics::TemperatureUnit::celsius}) {
                auto style = styleOf(paper, language);
                style.speech.figures.unit = unit;
                style.demo = true;
                for (const auto& [readings, tests] : {std::pair{0, 0}, {1, 1}, {100, 40}}) {
                    INFO(paper << ' ' << language << ' ' << readings);
                    const auto report = printed(certified(readings, tests, LotState::unproven, "Crew shirts"), style);
                    checkReport(report, style);
                    REQUIRE(report);
                    std::ptrdiff_t demo = 0;
                    for (const auto& page : report->pages) {
                        demo += std::count_if(page.texts.begin(), page.texts.end(),
                                              [](const auto& text) { return text.text == QStringLiteral("DEMO"); });
                    }
                    CHECK(demo == static_cast<std::ptrdiff_t>(report->pages.size()));
                }
            }
        }
    }
}

TEST_CASE("every reading and test stands in the certificate, each once", "[reports]") {
    withFonts();
    const auto certificate = certificateOf(certified(100, 40, LotState::cleared, "Crew shirts"));
    CHECK(certificate.readings.size() == 100);
    CHECK(certificate.tests.size() == 40);
    CHECK(certificate.pictures.size() == kMostPictures);
    CHECK(certificate.picturesLeftOut == 80 - static_cast<int>(kMostPictures));
    // None counted twice: refused and struck ones are not among those that count.
    CHECK(certificate.counts.readings + certificate.counts.struck + certificate.counts.refused == 100);
    CHECK(certificate.counts.failedTests == 8); // each fifth of 40
    const auto text = placedText(runCertificate(certificate, styleOf("a4")));
    CHECK(text.contains(QStringLiteral("32 more pictures")));
}

TEST_CASE("hostile texts keep a certificate on its pages", "[reports]") {
    withFonts();
    for (const auto* paper : {"a4", "letter"}) {
        for (const auto& text : hostileTexts()) {
            INFO(paper << ": " << text.substr(0, 60));
            auto facts = certified(3, 4, LotState::onHold, text);
            const auto ticket = runOfTexts(text);
            facts.ticket.plan.layers = ticket.plan.layers;
            facts.ticket.layers = ticket.layers;
            facts.ticket.window = ticket.window;
            const auto style = styleOf(paper);
            checkReport(printed(facts, style), style);
        }
    }
}

TEST_CASE("a run without a window, without a number, and of a forgotten tester", "[reports]") {
    withFonts();
    auto facts = certified(2, 2, LotState::cleared, "Crew shirts");
    facts.ticket.window.reset();
    facts.ticket.layers.reset();
    facts.names.clear();
    const auto text = placedText(printed(facts));
    CHECK(text.contains(QStringLiteral("no window is known")));
    CHECK(text.contains(QStringLiteral("person 4")));
    facts.ticket.plan.number = -1;
    CHECK(printed(facts).error().cause == ReportCause::numberUnusable);
}

TEST_CASE("another's reader finds code, hash and pictures in the file", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    const auto report = printed(certified(30, 4, LotState::cleared, "Crew shirts"));
    REQUIRE(report);
    CHECK(codesRead(report->pages) == QStringList{QString::fromStdString(codeTextOf(drivers::TicketKind::run, 20418))});
    const auto pdf = pdfOf(report->pages, report->name);
    REQUIRE(pdf);
    const auto text = textRead(*pdf);
    CHECK(text.contains(QString::fromLatin1(kHead)));
    const QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("a.pdf")));
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write(*pdf);
    file.close();
    const auto images = outputOf(QStringLiteral("pdfimages"), {QStringLiteral("-list"), file.fileName()});
    CHECK(images.count('\n') > 2); // a heading of two lines, then pictures
}

TEST_CASE("a thumbnail is small, and what is no picture gives none", "[reports]") {
    withFonts();
    const auto small = thumbnailOf(pngOf(800, 400), 100);
    CHECK(small.size() == QSize(100, 50));
    CHECK(thumbnailOf(pngOf(10, 20), 100).size() == QSize(10, 20));
    CHECK(thumbnailOf({}, 100).isNull());
    CHECK(thumbnailOf({'n', 'o'}, 100).isNull());
    auto broken = pngOf(800, 400);
    broken.resize(40);
    CHECK(thumbnailOf(broken, 100).isNull());
    CHECK(thumbnailOf(pngOf(800, 1), 100).height() == 1);
}
