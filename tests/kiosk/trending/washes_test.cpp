// Margin against surviving the wash: the rule under which a curve is given, and the curve.
#include "kiosk/shop/trending/wash_margin.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
using holdfast::kiosk::records::TestOutcome;

namespace {

/// Lots at whole margins from −4 to 10; the first `prints` prints of each, of which so many hold as the margin says.
Invented washed(int prints) {
    Invented book;
    for (int margin = -4; margin <= 10; ++margin) {
        const auto at = kMonday + (margin + 4) * kDayMs;
        const auto lot = book.lot(at);
        book.reading(lot, at + 1, margin);
        const double share = 1.0 / (1.0 + std::exp(-(margin - 1.0)));
        for (int i = 0; i < prints; ++i) {
            const bool holds = i + 0.5 < share * prints;
            book.wash(book.print(lot), at + kDayMs, holds ? TestOutcome::passed : TestOutcome::failed);
        }
    }
    return book;
}

} // namespace

TEST_CASE("no curve under ten failures and ten survivals, but the offer of a cure ladder", "[trending]") {
    const auto few = washMargin(washed(1).facts, {});
    CHECK(few.failed + few.held == 15);
    REQUIRE_FALSE(few.curve);
    CHECK(few.curve.error() == Refusal{NoFigure::tooFewFailures, few.failed, 10}); // decisions 6
    CHECK(few.offerCureLadder);
    CHECK(few.margins.empty());
}

TEST_CASE("with enough of both the margin helps and a margin for a share is given", "[trending]") {
    const auto many = washMargin(washed(12).facts, {});
    REQUIRE(many.curve);
    CHECK(many.curve->aKelvin == Approx(1.0).margin(0.25)); // log odds a kelvin, as invented
    CHECK(many.curve->aKelvinLow > 0.0);
    CHECK(many.curve->aKelvinHigh > many.curve->aKelvin);
    CHECK(many.curve->holdsAt(holdfast::analytics::TemperatureDifference::fromCelsius(1.0)) == Approx(0.5).margin(0.1));
    CHECK_FALSE(many.offerCureLadder);
    REQUIRE(many.margins.size() == 2);
    CHECK(many.margins[0].margin.celsius() == Approx(3.94).margin(0.8)); // 1 + ln 19
    CHECK(many.margins[1].margin > many.margins[0].margin);
}

TEST_CASE("all hold, all fail, void loads: the rule and no figure", "[trending][hostile]") {
    auto book = washed(12);
    for (auto& test : book.facts.tests) {
        test.counts = TestOutcome::passed;
    }
    CHECK(washMargin(book.facts, {}).curve.error().why == NoFigure::tooFewFailures);
    for (auto& test : book.facts.tests) {
        test.counts = TestOutcome::failed;
    }
    CHECK(washMargin(book.facts, {}).curve.error().why == NoFigure::tooFewSurvivals);
    for (auto& test : book.facts.tests) {
        test.counts = TestOutcome::inAVoidLoad;
    }
    CHECK(washMargin(book.facts, {}).points.empty());
    CHECK(washMargin(records::TrendFacts{}, {}).points.empty());
}
