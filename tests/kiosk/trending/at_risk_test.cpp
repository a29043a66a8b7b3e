// From a complaint's lot to what else is at risk, and what findings add up to.
#include "kiosk/shop/trending/at_risk.hpp"
#include "kiosk/shop/trending/briefing.hpp"
#include "kiosk/shop/trending/causes.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>
#include <set>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
using holdfast::kiosk::records::TestOutcome;

namespace {

/// Ten lots of a bad bucket among sixty; of seven a print was washed, and five failed; two have a piece on the shelf.
struct BadBucket final {
    Invented book{};
    std::vector<FactIndex> bad{};

    BadBucket() {
        const auto good = book.bucket(1);
        const auto wrong = book.bucket(2);
        for (int day = 0; day < 30; ++day) {
            const auto at = kMonday + day * kDayMs + 7 * kHourMs;
            book.turn(records::FloorAction::started, at);
            for (int i = 0; i < 2; ++i) {
                const bool isBad = i == 1 && day % 3 == 0;
                const auto lot = book.lot(at + (i + 1) * kHourMs, 0, {isBad ? wrong : good});
                book.reading(lot, at + (i + 1) * kHourMs + 1, 5.0);
                book.ship(lot, at + kDayMs, 60);
                if (isBad) {
                    bad.push_back(lot);
                } else if (day % 2 == 0) {
                    book.wash(book.print(lot), at + kDayMs, TestOutcome::passed);
                }
            }
        }
        for (std::size_t i = 0; i < 7; ++i) {
            book.wash(book.print(bad[i]), kMonday + 31 * kDayMs, i < 5 ? TestOutcome::failed : TestOutcome::passed);
        }
        book.print(bad[8], "D 1");
        book.print(bad[9], "D 2");
        book.print(bad[0], "D 3");
        book.print(bad[1], "D 4");
    }
};

} // namespace

TEST_CASE("the lots that share the suspect are at risk, with their pieces and a range", "[trending]") {
    const BadBucket shop;
    RiskQuestion question;
    question.lot = shop.book.facts.lots[static_cast<std::size_t>(shop.bad[9])].id;
    const auto risk = atRisk(shop.book.facts, question);
    REQUIRE(risk);
    REQUIRE(risk->suspect);
    CHECK(risk->suspect->level.number == 2);
    CHECK(risk->ours == IsItOurs::likely);
    REQUIRE(risk->lots.size() == 10);
    CHECK(risk->lots.front().asked);
    CHECK(risk->pieces == 1000);
    CHECK(risk->shipped == 600);
    CHECK(risk->here == 400);
    REQUIRE(risk->bad);
    // Five of seven washed prints failed: about 0.71 of 1,000, and a wide range, for seven are few.
    CHECK(risk->bad->expected == Approx(5.0 / 7.0 * 1000.0).margin(60.0));
    CHECK(static_cast<double>(risk->bad->lower) < risk->bad->expected);
    CHECK(static_cast<double>(risk->bad->upper) > risk->bad->expected);
    CHECK(risk->bad->upper <= 1000);
    REQUIRE(risk->wash.size() == 3);
    std::set<FactIndex> lots;
    for (const auto& piece : risk->wash) {
        CHECK_FALSE(piece.shelf.empty());
        CHECK(piece.chance > 0.0);
        lots.insert(piece.lot);
    }
    CHECK(lots.size() == 3); // one of each lot before a second
    const auto shared = std::find_if(risk->evidence.begin(), risk->evidence.end(),
                                     [](const auto& one) { return one.kind == EvidenceKind::suspectShared; });
    REQUIRE(shared != risk->evidence.end());
    CHECK(shared->speaksFor);
    CHECK(shared->count == 5);
    CHECK(shared->of == 5);
    const auto cured = std::find_if(risk->evidence.begin(), risk->evidence.end(),
                                    [](const auto& one) { return one.kind == EvidenceKind::itsReadingsCured; });
    REQUIRE(cured != risk->evidence.end());
    CHECK_FALSE(cured->speaksFor);
}

TEST_CASE("without a suspect the lots of its own episode are looked at, and nothing is claimed", "[trending]") {
    Invented book;
    book.turn(records::FloorAction::started, kMonday);
    for (int i = 0; i < 3; ++i) {
        const auto lot = book.lot(kMonday + (i + 1) * kHourMs);
        book.reading(lot, kMonday + (i + 1) * kHourMs + 1, 5.0);
        book.wash(book.print(lot), kMonday + kDayMs, TestOutcome::passed);
    }
    RiskQuestion question;
    question.run = book.facts.runs[1].id;
    const auto risk = atRisk(book.facts, question);
    REQUIRE(risk);
    CHECK_FALSE(risk->suspect);
    CHECK(risk->ours == IsItOurs::unlikely);
    CHECK(risk->lots.size() == 3);
    REQUIRE(risk->bad);
    CHECK(risk->bad->upper >= risk->bad->lower);
    question.run = "nowhere";
    CHECK(atRisk(book.facts, question).error().why == NoFigure::noLots);
    const Invented nothing;
    CHECK_FALSE(atRisk(nothing.facts, question));
}

TEST_CASE("a lot nobody read or washed is unknown, not innocent", "[trending]") {
    Invented book;
    book.lot(kMonday);
    RiskQuestion question;
    question.run = book.facts.runs[0].id;
    const auto risk = atRisk(book.facts, question);
    REQUIRE(risk);
    CHECK(risk->ours == IsItOurs::unknown);
    CHECK_FALSE(risk->bad);
    CHECK(risk->evidence.front().kind == EvidenceKind::noEvidence);
}

TEST_CASE("each finding updates the table of causes", "[trending]") {
    records::TrendFacts facts;
    const auto before = causeTable(facts);
    REQUIRE(before.rows.size() == kCureCauses);
    CHECK(before.findings == 0);
    facts.findings.push_back({10, kNoFact, kNoFact, "belt-too-fast: rush order", "slower again", true});
    facts.findings.push_back({20, kNoFact, kNoFact, "belt-too-fast", "", false});
    facts.findings.push_back({30, kNoFact, kNoFact, "the moon", "", false});
    const auto table = causeTable(facts);
    CHECK(table.findings == 3);
    CHECK(table.rows.front().cause == CureCause::beltTooFast);
    CHECK(table.rows.front().findings == 2);
    CHECK(table.rows.front().provenLater == 1);
    CHECK(table.rows.front().lastAt == 20);
    CHECK(table.typed == std::vector<std::string>{"the moon"});
    for (std::size_t i = 0; i < kCureCauses; ++i) {
        const auto cause = static_cast<CureCause>(i);
        CHECK(causeOf(wordOf(cause)) == cause);
    }
    CHECK(causeOf("") == CureCause::other);
}

TEST_CASE("a week is set against the thirteen before it", "[trending]") {
    Invented book;
    const auto now = kMonday + 14 * kWeekMs;
    for (int day = 0; day < 14 * 7; ++day) {
        for (FactIndex dryer = 0; dryer < 2; ++dryer) {
            const auto at = kMonday + day * kDayMs + 7 * kHourMs;
            book.turn(records::FloorAction::started, at, dryer);
            const bool bad = dryer == 1 && day >= 13 * 7;
            for (int i = 0; i < 3; ++i) {
                const auto lot = book.lot(at + (i + 1) * kHourMs, dryer);
                book.reading(lot, at + (i + 1) * kHourMs + 1, bad ? -4.0 - 0.1 * i : 5.0 + 0.3 * ((day + i) % 3));
            }
        }
    }
    const auto briefing = briefingOf(book.facts, now);
    CHECK(briefing.weeksBefore == 13);
    CHECK(briefing.lots.week == Approx(42.0));
    CHECK(briefing.lots.before == Approx(42.0));
    CHECK(briefing.lots.standing == Standing::usual);
    CHECK(briefing.failedLots.week == Approx(21.0));
    CHECK(briefing.failedLots.standing == Standing::worse);
    CHECK(briefing.failedLotsOfWeek.size() == 21);
    REQUIRE(briefing.dryers.size() == 2);
    CHECK(briefing.dryers.front().dryer == 1);
    CHECK(briefing.dryers.front().standing == Standing::worse);
    CHECK(briefing.dryers.back().standing == Standing::usual);
    CHECK(briefing.drifts.size() == 2);
    const auto empty = briefingOf(records::TrendFacts{}, now);
    CHECK(empty.failedLots.standing == Standing::notEnough);
    CHECK_FALSE(empty.margin);
}
