// Which lots failed, and how many by week.
#include "kiosk/shop/trending/failure_trend.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
using holdfast::kiosk::records::DecisionWord;
using holdfast::kiosk::records::HoldCause;
using holdfast::kiosk::records::ReadingReason;
using holdfast::kiosk::records::TestOutcome;

namespace {

LotOutcome outcomeOf(const Invented& book) {
    const auto outcomes = lotOutcomes(book.facts, {});
    REQUIRE(outcomes.size() == 1);
    return outcomes.front();
}

} // namespace

TEST_CASE("a lot fails by a bad reading until the cause is taken back", "[trending]") {
    Invented book;
    const auto lot = book.lot(kMonday);
    const auto bad = book.reading(lot, kMonday + 1, -5.0);
    CHECK(outcomeOf(book).failed);
    CHECK(outcomeOf(book).by == std::vector<FailedBy>{FailedBy::drawnReading});
    auto& hold = book.hold(lot, HoldCause::reading, book.facts.readings[static_cast<std::size_t>(bad)].id);
    CHECK(outcomeOf(book).failed); // nobody decided
    hold.decided = DecisionWord::released;
    hold.belowLimit = true;
    CHECK(outcomeOf(book).failed); // released all the same
    hold.decided = DecisionWord::scrapped;
    hold.belowLimit = false;
    CHECK(outcomeOf(book).failed);
    hold.decided = DecisionWord::released;
    CHECK_FALSE(outcomeOf(book).failed); // within the limits
    hold.decided.reset();
    hold.lifted = true;
    CHECK_FALSE(outcomeOf(book).failed);
}

TEST_CASE("set-up readings hold nothing, and what somebody thought of stays out of the rates", "[trending]") {
    Invented book;
    const auto lot = book.lot(kMonday);
    book.reading(lot, kMonday + 1, -5.0, ReadingReason::setUp);
    CHECK_FALSE(outcomeOf(book).failed);
    book.reading(lot, kMonday + 2, -5.0, ReadingReason::worry);
    CHECK(outcomeOf(book).failed);
    CHECK_FALSE(outcomeOf(book).inRates);
    CHECK(outcomeOf(book).drawn == 0);
    book.reading(lot, kMonday + 3, -5.0);
    CHECK(outcomeOf(book).inRates);
    CHECK(outcomeOf(book).badDrawn == 1);
}

TEST_CASE("a test in a void load fails nobody, and one that its repeats outweigh neither", "[trending]") {
    Invented book;
    const auto lot = book.lot(kMonday);
    const auto first = book.print(lot);
    book.wash(first, kMonday + 1, TestOutcome::inAVoidLoad);
    CHECK_FALSE(outcomeOf(book).failed);
    book.wash(first, kMonday + 2, TestOutcome::failed);
    CHECK(outcomeOf(book).failed);
    book.wash(book.print(lot), kMonday + 3, TestOutcome::passed);
    CHECK(outcomeOf(book).failed); // one repeat is one against one
    book.wash(book.print(lot), kMonday + 4, TestOutcome::passed);
    CHECK_FALSE(outcomeOf(book).failed);
    CHECK(outcomeOf(book).overruledTests.size() == 1);
    book.wash(book.print(lot), kMonday + 5, TestOutcome::failed);
    CHECK(outcomeOf(book).failed); // another print fails too
}

TEST_CASE("a complaint fails a lot only if it says that the print failed", "[trending]") {
    Invented book;
    const auto lot = book.lot(kMonday);
    book.complaint(lot, kMonday + kDayMs, records::ComplaintKind::feel);
    CHECK_FALSE(outcomeOf(book).failed);
    book.complaint(lot, kMonday + kDayMs);
    CHECK(outcomeOf(book).by == std::vector<FailedBy>{FailedBy::complaint});
    book.facts.complaints.back().lot = kNoFact; // of the run alone
    CHECK(outcomeOf(book).failed);
    records::TrendFinding finding;
    finding.complaint = 1;
    finding.cause = "wash-too-harsh: boiled at the customer's";
    book.facts.findings = {finding};
    CHECK_FALSE(outcomeOf(book).failed);
}

TEST_CASE("a second way through the dryer is no lot of its own", "[trending]") {
    Invented book;
    book.reading(book.lot(kMonday), kMonday + 1, -5.0);
    book.facts.lots[static_cast<std::size_t>(book.lot(kMonday + 5))].isReRun = true;
    CHECK(lotOutcomes(book.facts, {}).size() == 1);
}

TEST_CASE("failed lots are counted by week, empty weeks stay empty, missed readings widen the rate", "[trending]") {
    Invented book;
    for (int week = 0; week < 6; ++week) {
        for (int i = 0; i < (week == 3 ? 0 : 10); ++i) {
            const auto at = kMonday + week * kWeekMs + i * kHourMs;
            const auto lot = book.lot(at);
            book.reading(lot, at + 1, i == 0 ? -5.0 : 5.0);
        }
    }
    book.facts.missed.push_back({kMonday + 1, 0, records::DueReadingKind::pieces});
    const auto trend = failureTrend(book.facts, {});
    REQUIRE(trend.weeks.size() == 6);
    CHECK(trend.lots == 50);
    CHECK(trend.failed == 5);
    CHECK(trend.weeks[0].isoYear == 2026);
    CHECK(trend.weeks[0].isoWeek == 10); // 2026-03-02, ISO 8601: 2026-01-01 is a Thursday, so week 1 began 2025-12-29
    CHECK_FALSE(trend.weeks[3].share);
    REQUIRE(trend.weeks[0].share);
    CHECK(*trend.weeks[0].share == Approx(0.1));
    REQUIRE(trend.usual);
    CHECK(*trend.usual == Approx(0.1));
    REQUIRE(trend.readingRate);
    CHECK(trend.readingRate->lowest == Approx(5.0 / 51.0));  // failed/due, decisions 6
    CHECK(trend.readingRate->highest == Approx(6.0 / 51.0)); // (failed + missed)/due
    CHECK(trend.readingRate->due == 51);
    CHECK_FALSE(trend.since);
}

TEST_CASE("a week with far more failures lies over the limit, and a change of the share is dated", "[trending]") {
    Invented book;
    for (int week = 0; week < 30; ++week) {
        for (int i = 0; i < 40; ++i) {
            const auto at = kMonday + week * kWeekMs + i * kHourMs;
            const bool fails = week < 20 ? i == 7 && week % 2 == 0 : i < 10;
            book.reading(book.lot(at), at + 1, fails ? -5.0 : 5.0);
        }
    }
    FailureQuestion question;
    question.filter.to = kMonday + 21 * kWeekMs;
    const auto first = failureTrend(book.facts, question);
    REQUIRE(first.weeks.size() == 21);
    CHECK(first.weeks[20].outside);
    CHECK_FALSE(first.weeks[0].outside);
    const auto whole = failureTrend(book.facts, {});
    REQUIRE(whole.since);
    CHECK(whole.since->earliest() <= kMonday + 20 * kWeekMs);
    CHECK(whole.since->latest() >= kMonday + 20 * kWeekMs);
    CHECK(whole.since->after == Approx(0.25).margin(0.01));
}

TEST_CASE("no lot, one lot, nothing failed, all failed: a figure with its caveat or why not", "[trending][hostile]") {
    Invented none;
    CHECK(failureTrend(none.facts, {}).usual.error().why == NoFigure::noLots);
    Invented all;
    for (int day = 0; day < 100; ++day) {
        all.reading(all.lot(kMonday + day * kDayMs), kMonday + day * kDayMs + 1, -5.0);
    }
    const auto bad = failureTrend(all.facts, {});
    CHECK(bad.failed == 100);
    CHECK(bad.since.error().why == NoFigure::everythingFailed);
    CHECK(std::none_of(bad.weeks.begin(), bad.weeks.end(), [](const auto& week) { return week.outside; }));
    Invented good;
    good.days(std::vector<double>(100, 5.0));
    const auto fine = failureTrend(good.facts, {});
    CHECK(fine.failed == 0);
    CHECK(fine.since.error().why == NoFigure::nothingFailed);
}
