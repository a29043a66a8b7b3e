#include "kiosk/records/shop_records.hpp"
#include "kiosk/reports/briefing.hpp"
#include "kiosk/wording/briefing_sentences.hpp"
#include "tests/kiosk/command/asked.hpp"
#include "tests/kiosk/records/support/lot_book.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/placed.hpp"

#include <QByteArray>
#include <QFile>

#include <cmath>
#include <memory>

using namespace holdfast;
using namespace holdfast::command_test;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::records::testing;

namespace {

/// Pages and pictures are drawn by the test's own application.
command::Seams seamsAt(std::int64_t now) {
    command::Seams seams;
    seams.now = {now, 0};
    seams.today = "2026-02-25";
    seams.readyToDraw = [] {
        reports_test::withFonts();
        return std::make_shared<int>(1);
    };
    return seams;
}

void openAsDemo(LotShop& lots) {
    for (const auto& sample : sampleOfEveryKind()) {
        if (const auto* opened = std::get_if<records::BookOpened>(&sample)) {
            auto demo = *opened;
            demo.demo = true;
            REQUIRE(lots.say(demo));
            return;
        }
    }
}

std::string folderOf(LotShop& lots) {
    return lots.shop.book().folder().string();
}

/// A lot with an under-cured reading, on hold.
void holdOne(LotShop& lots) {
    openAsDemo(lots);
    lots.shop.read(analytics::Word::cured);
    const auto bad = lots.shop.read(analytics::Word::underCured);
    REQUIRE(lots.say(LotShop::hold("h1", records::HoldCause::reading, bad, records::PieceRange{113, 140}, 31)));
}

QByteArray bytesOf(const std::string& path) {
    QFile file(QString::fromStdString(path));
    REQUIRE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

} // namespace

TEST_CASE("report: a book of one held lot says so, and no more than it knows", "[command][report]") {
    LotShop lots;
    holdOne(lots);
    const auto json = asked({"report", "--data", folderOf(lots)}, seamsAt(lots.shop.now() + 1000));
    CHECK(json["demo"] == true);
    CHECK(json["lots"]["week"] == 1.0);
    CHECK(json["failed_lots"]["week"] == 1.0);
    CHECK(json["failed_lots"]["standing"] == "not-enough"); // nothing before it to compare with
    CHECK(json["weeks_before"] == 0);
    REQUIRE(json["on_hold"].size() == 1);
    CHECK(json["on_hold"][0]["run"] == 20418);
    CHECK(json["on_hold"][0]["lot"] == 1);
    REQUIRE(json["weeks"].size() == 14);
    CHECK(json["weeks"][13]["lots"] == 1);
    CHECK(json["weeks"][13]["failed"] == 1);
    const auto head = lots.shop.book().head();
    REQUIRE(head);
    CHECK(json["head"] == ledger::toHex(head->hash));
    const auto text = ask({"report", "--data", folderOf(lots)}, seamsAt(lots.shop.now() + 1000));
    INFO(text.out);
    CHECK(text.out.find("DEMO") != std::string::npos);
    CHECK(text.out.find("1 of 1 lots failed this week. There are too few lots before it") != std::string::npos);
    CHECK(text.out.find("run 20418 lot 1") != std::string::npos);
    CHECK(text.out.find("[briefing.") == std::string::npos);
}

TEST_CASE("report: a week without a lot, and a book without anything", "[command][report]") {
    constexpr std::int64_t kMonth = 30 * std::int64_t{86'400'000};
    LotShop lots;
    holdOne(lots);
    const auto later = asked({"report", "--data", folderOf(lots)}, seamsAt(lots.shop.now() + kMonth));
    CHECK(later["lots"]["week"] == 0.0);
    CHECK(later["weeks_before"] == 1);
    CHECK(later["margin"].is_null());
    const auto before = asked({"report", "--data", folderOf(lots), "--day", "2020-01-01"}, seamsAt(lots.shop.now()));
    CHECK(before["to"] == "2020-01-01");
    CHECK(before["from"] == "2019-12-26");
    CHECK(before["sentences"].dump().find("stands as of now") != std::string::npos);
    CHECK(later["sentences"].dump().find("stands as of now") == std::string::npos);
    CHECK(before["lots"]["week"] == 0.0);
    CHECK(ask({"report", "--data", folderOf(lots), "--day", "someday"}).status == 2);
}

TEST_CASE("report: the page as others read it: sentences, DEMO, cautions, the book's head", "[command][report]") {
    reports_test::withFonts();
    if (!reports_test::readersAreHere()) {
        return;
    }
    LotShop lots;
    holdOne(lots);
    const Written pdf{""};
    for (const std::string language : {"en", "es"}) {
        const auto answer = ask({"report", "--data", folderOf(lots), "--pdf", pdf.path(), "--language", language},
                                seamsAt(lots.shop.now() + 1000));
        INFO(answer.out << answer.err);
        REQUIRE(answer.status == 0);
        const auto text = reports_test::textRead(bytesOf(pdf.path()));
        INFO(text.toStdString());
        const auto head = lots.shop.book().head();
        REQUIRE(head);
        const auto& words = wording::Language::ofCode(language);
        for (const auto& said : {words.text("briefing.title"), words.text("reports.demo"),
                                 words.text("briefing.heading.dryers"), words.text("briefing.heading.changed")}) {
            INFO(said);
            CHECK(text.contains(QString::fromStdString(said)));
        }
        CHECK(text.contains(QStringLiteral("20418")));
        CHECK(text.contains(QStringLiteral("1/1")));
        const auto hash = ledger::toHex(head->hash);
        auto unbroken = text;
        CHECK(unbroken.remove(u' ').contains(QString::fromStdString(hash)));
        CHECK(text.count(QStringLiteral("1 of 1 lots failed")) == (language == "en" ? 1 : 0));
    }
}

TEST_CASE("report: the page keeps to its margins with every list full", "[command][report][reports]") {
    reports_test::withFonts();
    reports::BriefingFacts facts;
    facts.shop = "A shop with a name of more than usual length that somebody typed in full";
    facts.demo = true;
    facts.now = {1'772'000'000'000, 0};
    facts.printed = facts.now;
    facts.head = std::string(64, 'b');
    for (int i = 0; i < 40; ++i) {
        facts.facts.dryers.push_back({"d" + std::to_string(i), "Dryer " + std::string(30, 'x'), {}});
        facts.facts.runs.push_back({});
        facts.facts.runs.back().number = 20'000 + i;
        facts.facts.lots.push_back({});
        facts.facts.lots.back().run = i;
        facts.facts.events.push_back({});
        facts.facts.events.back().at = facts.now.millisecondsSinceEpoch;
        facts.facts.events.back().dryer = i;
        facts.briefing.onHold.push_back(i);
        facts.briefing.failedLotsOfWeek.push_back(i);
        facts.briefing.openComplaints.push_back(i);
        facts.briefing.changed.push_back(i);
        facts.due.items.push_back({records::DueKind::checkDue, 0, "Probe " + std::string(20, 'p'), {}});
        if (i < 6) {
            facts.briefing.dryers.push_back({i, 3, 3, {}, {}, 4, 1, 0, shop::trending::Standing::worse});
        }
        if (i < 14) {
            facts.weeks.push_back({facts.now.millisecondsSinceEpoch, 40 * i, i});
        }
    }
    facts.due.tests.today = 40;
    facts.due.tests.late = 12;
    facts.due.tests.soon = 9;
    facts.due.tests.latest.resize(3);
    facts.due.tests.latest.front().print = 7;
    facts.briefing.lots = {40.0, 30.0, shop::trending::Standing::usual};
    facts.briefing.failedLots = {40.0, 2.0, shop::trending::Standing::worse};
    for (const auto* language : {"en", "es"}) {
        for (const auto* paper : {"a4", "letter"}) {
            INFO(language << " " << paper);
            reports::ReportStyle style;
            style.demo = true;
            style.paper = reports::paperOf(paper);
            style.speech.language = &wording::Language::ofCode(language);
            const auto page = reports::briefing(facts, style);
            reports_test::checkReport(page, style);
            REQUIRE(page);
            CHECK(page->pages.size() == 1);
        }
    }
}

TEST_CASE("the book's charts and suspects of a single lot say why there is no figure", "[command][chart]") {
    LotShop lots;
    holdOne(lots);
    const auto margin = asked({"chart", "--kind", "margin", "--data", folderOf(lots)});
    CHECK(margin["kind"] == "margin");
    CHECK(margin["limits"]["why_not"].is_string());
    CHECK(margin["signals"].empty());
    const auto failures = asked({"chart", "--kind", "failures", "--data", folderOf(lots), "--points"});
    CHECK(failures["lots"] == 1);
    CHECK(failures["failed"] == 1);
    CHECK(failures["why_not"].is_string());
    const auto suspects = asked({"suspects", "--data", folderOf(lots)});
    CHECK(suspects["why_not"].is_string());
    CHECK(suspects["ranked"].empty());
    CHECK(ask({"chart", "--kind", "margin", "--data", folderOf(lots), "--dryer", "Nowhere"}).status == 2);
    CHECK(ask({"chart", "--kind", "margin", "--data", folderOf(lots), "--from", "yesterday"}).status == 2);
}

TEST_CASE("a chart is drawn as SVG with its words, and as PNG", "[command][chart]") {
    const auto seams = seamsAt(0);
    for (const std::string ending : {".svg", ".png"}) {
        const Written place{""};
        const auto path = place.path() + ending;
        const auto json = asked({"chart", published("handbook_wafers.csv"), "--kind", "c", "--value", "defects",
                                 "--rules", "1", "--picture", path},
                                seams);
        CHECK(json["picture"] == path);
        const auto bytes = bytesOf(path);
        std::filesystem::remove(path);
        if (ending == ".svg") {
            CHECK(bytes.contains("<svg"));
            CHECK(bytes.contains("usual"));
            CHECK(bytes.contains("one point above the upper limit"));
        } else {
            CHECK(bytes.startsWith("\x89PNG"));
        }
    }
    const auto refused = ask({"chart", published("handbook_wafers.csv"), "--kind", "c", "--value", "defects",
                              "--picture", "/no/such/folder/chart.svg"},
                             seams);
    CHECK(refused.status == 2);
    CHECK(refused.err.find("/no/such/folder/chart.svg") != std::string::npos);
}
