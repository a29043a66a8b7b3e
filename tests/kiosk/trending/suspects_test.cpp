// What failures share: counts by hand, Fisher's p and whole episodes, and nobody blamed by chance.
#include "kiosk/shop/trending/instruments_compared.hpp"
#include "kiosk/shop/trending/suspects.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
using holdfast::kiosk::records::TestOutcome;

namespace {

/// Thirty days, four lots a day; every third day one lot is printed from a mix of two pails, and it fails.
Invented mixThatFails() {
    Invented book;
    const auto good = book.bucket(1);
    const auto pail = book.bucket(2);
    const auto other = book.bucket(3);
    const auto mix = book.bucket(4, {pail, other});
    for (int day = 0; day < 30; ++day) {
        const auto at = kMonday + day * kDayMs + 7 * kHourMs;
        book.turn(records::FloorAction::started, at);
        for (int i = 0; i < 4; ++i) {
            const bool fails = i == 3 && day % 3 == 0;
            const auto used = fails ? mix : i == 2 ? other : good;
            const auto lot = book.lot(at + (i + 1) * kHourMs, 0, {used});
            book.reading(lot, at + (i + 1) * kHourMs + 60'000, 5.0);
            if (fails) {
                book.wash(book.print(lot), at + kDayMs, TestOutcome::failed);
            }
        }
    }
    return book;
}

} // namespace

TEST_CASE("a mixed bucket that fails is the first suspect, with what it was mixed from", "[trending]") {
    const auto book = mixThatFails();
    const auto found = suspects(book.facts, {});
    REQUIRE(found);
    CHECK(found->lots == 120);
    CHECK(found->failed == 10);
    CHECK(found->episodes == 30);
    REQUIRE(found->names());
    const auto& first = found->ranked.front();
    CHECK(first.level.kind == FactorKind::bucket);
    CHECK(first.level.number == 4);
    CHECK(first.level.isMix);
    CHECK(first.failedWith == 10);
    CHECK(first.with == 10);
    CHECK(first.failedWithout == 0);
    CHECK(first.without == 110);
    CHECK(first.strength == Strength::strong);
    REQUIRE(first.sameAs.size() == 1); // pail 2 went nowhere else
    CHECK(first.sameAs.front().number == 2);
    REQUIRE(first.trial);
    CHECK(first.trial->power >= 0.8); // decisions 6
    // Pail 3 was used by others too: 10 of 40 or so failed, a weaker suspect that stands behind.
    const auto third =
        std::find_if(found->ranked.begin(), found->ranked.end(), [](const auto& one) { return one.level.number == 3; });
    REQUIRE(third != found->ranked.end());
    CHECK(third->with == 40);
    CHECK(third->p >= first.p);
    CHECK(lotsWith(book.facts, first.level).size() == 10);
    CHECK(levelsOfLot(book.facts, 3).size() >= 5);
}

TEST_CASE("one failed test blames nobody", "[trending]") {
    Invented book;
    const auto load = book.load(7);
    for (int day = 0; day < 30; ++day) {
        const auto at = kMonday + day * kDayMs + 7 * kHourMs;
        book.turn(records::FloorAction::started, at);
        const auto lot = book.lot(at + kHourMs, 0, {book.bucket(day + 1)});
        book.reading(lot, at + kHourMs + 1, 5.0);
        book.wash(book.print(lot), at + kDayMs, day == 11 ? TestOutcome::failed : TestOutcome::passed, load);
    }
    const auto found = suspects(book.facts, {});
    REQUIRE(found);
    CHECK(found->failed == 1);
    CHECK_FALSE(found->names());
}

TEST_CASE("failures of one day count as one day, however many lots it had", "[trending]") {
    Invented book;
    const auto usual = book.bucket(1);
    const auto ofThatDay = book.bucket(2);
    for (int day = 0; day < 12; ++day) {
        const auto at = kMonday + day * kDayMs + 7 * kHourMs;
        book.turn(records::FloorAction::started, at);
        for (int i = 0; i < 10; ++i) {
            const auto lot = book.lot(at + (i + 1) * 60'000, 0, {day == 5 ? ofThatDay : usual});
            book.reading(lot, at + (i + 1) * 60'000 + 1, day == 5 ? -5.0 : 5.0);
        }
    }
    const auto found = suspects(book.facts, {});
    REQUIRE(found);
    CHECK(found->failed == 10);
    // Ten of ten against none of a hundred and ten, but it is one day of twelve: p = 1/12, counted over all
    // arrangements.
    CHECK(found->ranked.front().p == Approx(1.0 / 12.0));
    CHECK_FALSE(found->names());
}

TEST_CASE("nothing failed, all failed, no lot, one episode: why there is no suspect", "[trending][hostile]") {
    Invented none;
    CHECK(suspects(none.facts, {}).error().why == NoFigure::noLots);
    Invented good;
    good.days({5.0, 6.0});
    CHECK(suspects(good.facts, {}).error() == Refusal{NoFigure::nothingFailed, 0, 2});
    Invented bad;
    bad.days({-5.0, -6.0});
    CHECK(suspects(bad.facts, {}).error() == Refusal{NoFigure::everythingFailed, 2, 2});
    Invented one;
    one.turn(records::FloorAction::started, kMonday);
    one.reading(one.lot(kMonday + 1), kMonday + 2, 5.0);
    one.reading(one.lot(kMonday + 3), kMonday + 4, -5.0);
    CHECK(suspects(one.facts, {}).error().why == NoFigure::oneEpisode);
}

TEST_CASE("shift is looked at on request only, and persons never", "[trending]") {
    const auto book = mixThatFails();
    SuspectQuestion question;
    question.most = 100;
    const auto hasShift = [](const Suspects& found) {
        return std::any_of(found.ranked.begin(), found.ranked.end(),
                           [](const auto& one) { return one.level.kind == FactorKind::shift; });
    };
    Invented late = book;
    for (std::size_t i = 0; i < late.facts.lots.size(); i += 2) {
        late.facts.lots[i].openedAt += 9 * kHourMs;
    }
    CHECK_FALSE(hasShift(*suspects(late.facts, question)));
    question.shift = true;
    CHECK(hasShift(*suspects(late.facts, question)));
}

TEST_CASE("an instrument that reads hotter than its fellows is named with limits", "[trending]") {
    Invented book;
    for (int day = 0; day < 20; ++day) {
        const auto at = kMonday + day * kDayMs + 7 * kHourMs;
        book.turn(records::FloorAction::started, at);
        const auto lot = book.lot(at + 1);
        const double heat = 5.0 + 0.8 * ((day * 7) % 5 - 2); // days differ by far more than probes do
        book.reading(lot, at + 10, heat, records::ReadingReason::drawn, 0);
        book.reading(lot, at + 20, heat + 1.5 + 0.1 * (day % 3), records::ReadingReason::drawn, 1);
    }
    const auto found = compareInstruments(book.facts, {});
    REQUIRE(found);
    REQUIRE(found->size() == 2);
    const auto& hot = found->front();
    CHECK(book.facts.instruments[static_cast<std::size_t>(hot.instrument)].name == "P-2");
    CHECK(hot.hotter.celsius() == Approx(1.6).margin(0.05));
    CHECK(hot.least.celsius() > 1.4);
    CHECK(hot.most.celsius() < 1.8);
    CHECK(hot.pairs == 20);
    CHECK(hot.strength == Strength::strong);
    CHECK(found->back().hotter.celsius() == Approx(-hot.hotter.celsius()));
}

TEST_CASE("an instrument without a fellow is compared with nothing", "[trending][hostile]") {
    Invented book;
    CHECK(compareInstruments(book.facts, {}).error().why == NoFigure::noReadings);
    book.days({5.0, 6.0, 5.5});
    CHECK(compareInstruments(book.facts, {}).error().why == NoFigure::nothingToCompare);
}
