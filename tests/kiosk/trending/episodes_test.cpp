// From a start, stop or setting to the next: decisions 5 and 6. Figures are worked by hand.
#include "kiosk/shop/trending/episodes.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>
#include <limits>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
using holdfast::kiosk::records::FloorAction;
using holdfast::kiosk::records::ReadingReason;

TEST_CASE("an episode's margin is the mean of its drawn readings and of no others", "[trending]") {
    Invented book;
    book.turn(FloorAction::started, kMonday);
    const auto lot = book.lot(kMonday + 1);
    book.reading(lot, kMonday + 10, 4.0);
    book.reading(lot, kMonday + 20, 6.0, ReadingReason::afterChange);
    for (const auto reason : {ReadingReason::worry, ReadingReason::retake, ReadingReason::study, ReadingReason::setUp,
                              ReadingReason::map}) {
        book.reading(lot, kMonday + 30, -40.0, reason);
    }
    const auto episodes = episodesOf(book.facts, {});
    REQUIRE(episodes.size() == 1);
    REQUIRE(episodes[0].mean);
    CHECK(episodes[0].mean->celsius() == Approx(5.0)); // (4 + 6)/2
    CHECK(episodes[0].readings.size() == 2);
    CHECK(episodes[0].worst == holdfast::analytics::Word::cured);
    CHECK(episodes[0].leadsTo == 0);
}

TEST_CASE("a stop no longer than one dwell ends no episode, a longer one and a setting do", "[trending]") {
    Invented book; // dwell 60 s
    book.turn(FloorAction::started, kMonday);
    book.turn(FloorAction::feedStopped, kMonday + 100'000);
    book.turn(FloorAction::started, kMonday + 160'000); // after 60 s: equality counts as met
    book.turn(FloorAction::feedStopped, kMonday + 200'000);
    book.turn(FloorAction::started, kMonday + 260'001); // longer
    book.turn(FloorAction::hotter, kMonday + 300'000);
    const auto lot = book.lot(kMonday);
    for (const auto at : {50'000, 170'000, 270'000, 310'000}) {
        book.reading(lot, kMonday + at, 5.0);
    }
    const auto episodes = episodesOf(book.facts, {});
    REQUIRE(episodes.size() == 3);
    CHECK(episodes[0].from == kMonday);
    CHECK(episodes[0].readings.size() == 2);
    CHECK(episodes[1].from == kMonday + 260'001);
    CHECK(episodes[2].from == kMonday + 300'000);
}

TEST_CASE("a dryer of which nobody writes down starts has an episode a day", "[trending]") {
    Invented book;
    for (int day = 0; day < 3; ++day) {
        const auto at = kMonday + day * kDayMs + 7 * kHourMs;
        const auto lot = book.lot(at);
        book.reading(lot, at + kHourMs, 5.0);
        book.reading(lot, at + 2 * kHourMs, 6.0);
    }
    CHECK(episodesOf(book.facts, {}).size() == 3);
}

TEST_CASE("strips are intervals: alone they give what all of them allow, never their middle", "[trending]") {
    Invented book;
    book.turn(FloorAction::started, kMonday);
    const auto lot = book.lot(kMonday + 1);
    book.strip(lot, kMonday + 10, 1.0, 9.0);
    book.strip(lot, kMonday + 20, 3.0, 12.0);
    const auto episodes = episodesOf(book.facts, {});
    REQUIRE(episodes.size() == 1);
    CHECK_FALSE(episodes[0].mean);
    CHECK(episodes[0].strips == 2);
    REQUIRE(episodes[0].between.low);
    REQUIRE(episodes[0].between.high);
    CHECK(episodes[0].between.low->celsius() == Approx(3.0));
    CHECK(episodes[0].between.high->celsius() == Approx(9.0));
}

TEST_CASE("a strip beside a probe moves the mean no further than it must", "[trending]") {
    Invented book;
    book.turn(FloorAction::started, kMonday);
    const auto lot = book.lot(kMonday + 1);
    book.reading(lot, kMonday + 10, 5.0);
    book.strip(lot, kMonday + 20, 1.0, 9.0); // allows the probe's figure
    const auto episodes = episodesOf(book.facts, {});
    REQUIRE(episodes.size() == 1);
    REQUIRE(episodes[0].mean);
    CHECK(episodes[0].mean->celsius() == Approx(5.0));
}

TEST_CASE("episodes are told apart by dryer, and on request by family and place", "[trending]") {
    Invented book;
    book.turn(FloorAction::started, kMonday, 0);
    book.turn(FloorAction::started, kMonday, 1);
    const auto first = book.lot(kMonday + 1, 0);
    const auto second = book.lot(kMonday + 2, 0, {}, "low-cure");
    const auto third = book.lot(kMonday + 3, 1);
    for (const auto lot : {first, second, third}) {
        book.reading(lot, kMonday + 10, 5.0);
        book.reading(lot, kMonday + 20, 5.0);
        book.facts.readings.back().position = records::BeltPosition::left;
    }
    CHECK(episodesOf(book.facts, {}).size() == 2);
    CHECK(episodesOf(book.facts, {}, {true, false}).size() == 3);
    CHECK(episodesOf(book.facts, {}, {true, true}).size() == 6);
    TrendFilter low;
    low.family = "low-cure";
    CHECK(episodesOf(book.facts, low).size() == 1);
    TrendFilter unknown;
    unknown.dryer = "nowhere";
    CHECK(episodesOf(book.facts, unknown).empty());
    CHECK(episodeOfLots(book.facts)[0] == episodeOfLots(book.facts)[1]);
    CHECK(episodeOfLots(book.facts)[0] != episodeOfLots(book.facts)[2]);
}

TEST_CASE("a clock that went backwards and figures that are none make no nonsense", "[trending][hostile]") {
    Invented book;
    book.turn(FloorAction::started, kMonday + 5 * kDayMs);
    book.turn(FloorAction::started, kMonday);
    const auto lot = book.lot(kMonday + 6 * kDayMs);
    book.reading(lot, kMonday + 6 * kDayMs, 5.0);
    book.reading(lot, kMonday + kHourMs, std::numeric_limits<double>::quiet_NaN());
    book.reading(lot, kMonday + 2 * kHourMs, 4.0);
    const auto episodes = episodesOf(book.facts, {});
    REQUIRE(episodes.size() == 2);
    for (const auto& episode : episodes) {
        CHECK(episode.from <= episode.to);
        CHECK((!episode.mean || episode.mean->isFinite()));
    }
    CHECK(episodesOf(records::TrendFacts{}, {}).empty());
}

TEST_CASE("a missed reading belongs to its episode", "[trending]") {
    Invented book;
    book.turn(FloorAction::started, kMonday);
    const auto lot = book.lot(kMonday + 1);
    book.facts.missed.push_back({kMonday + 50, lot, records::DueReadingKind::pieces});
    const auto episodes = episodesOf(book.facts, {});
    REQUIRE(episodes.size() == 1);
    CHECK(episodes[0].missed == 1);
    CHECK_FALSE(episodes[0].mean);
    CHECK(episodes[0].whyNoMean.why == NoFigure::noReadings);
}

TEST_CASE("weeks begin on the local Monday", "[trending]") {
    CHECK(weekOf(kMonday, 0) == kMonday);
    CHECK(weekOf(kMonday - 1, 0) == kMonday - kWeekMs);
    CHECK(weekOf(kMonday + 6 * kDayMs, 0) == kMonday);
    CHECK(weekOf(kMonday, -60) == kMonday - kWeekMs + kHourMs); // it is Sunday there
    CHECK(weekOf(0, 0) == -3 * kDayMs);                         // 1970-01-01 was a Thursday
    CHECK(weekOf(-10 * kDayMs, 0) == -10 * kDayMs);             // 1969-12-22 was a Monday
}
