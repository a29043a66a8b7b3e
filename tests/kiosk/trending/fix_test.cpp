// Whether a fix worked, corrected for complaints that have not come yet.
#include "kiosk/shop/trending/fix_worked.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;

namespace {

/// A lot a week of 1,000 pieces; before the fix in week 26 every lot is complained about twice, 1 and 4 weeks later.
Invented shopUntil(int weeks) {
    Invented book;
    for (int week = 0; week < weeks; ++week) {
        const auto at = kMonday + week * kWeekMs;
        const auto lot = book.lot(at);
        book.ship(lot, at, 1000);
        for (const int delay : {1, 4}) {
            if (week < 26 && week + delay < weeks) {
                book.complaint(lot, at + delay * kWeekMs + 1);
            }
        }
    }
    return book;
}

FixAsked askedAt(int weeks) {
    return {kMonday + 26 * kWeekMs, kMonday + weeks * kWeekMs, {}, 26};
}

} // namespace

TEST_CASE("soon after a fix it is too early to say, and it says when to ask again", "[trending]") {
    const auto verdict = fixWorked(shopUntil(28).facts, askedAt(28));
    REQUIRE(verdict);
    CHECK_FALSE(verdict->worked);
    CHECK(verdict->tooEarly);
    REQUIRE(verdict->askAgain);
    CHECK(*verdict->askAgain > askedAt(28).now);
    CHECK(verdict->complaintsAfter == 0);
    CHECK(verdict->shippedAfter == 2000);
}

TEST_CASE("half a year later the fix is shown to have worked", "[trending]") {
    const auto verdict = fixWorked(shopUntil(52).facts, askedAt(52));
    REQUIRE(verdict);
    CHECK(verdict->worked);
    CHECK_FALSE(verdict->tooEarly);
    CHECK(verdict->complaintsBefore == 52);
}

TEST_CASE("without complaints or shipments nothing is said of a fix", "[trending][hostile]") {
    const Invented none;
    CHECK(fixWorked(none.facts, askedAt(30)).error().why == NoFigure::tooFewFailures);
    const auto early = fixWorked(shopUntil(26).facts, askedAt(26));
    REQUIRE_FALSE(early);
    CHECK(early.error().why == NoFigure::tooEarly);
}
