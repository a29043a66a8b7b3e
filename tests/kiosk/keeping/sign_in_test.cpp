#include "kiosk/shop/keeping/sign_in.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop;
using namespace std::chrono_literals;
using records::Role;

namespace {

/// The hash of these is the PIN itself: what Argon2id does is tested with the PINs.
SignIn signIn() {
    return SignIn{[](const std::string& hash, std::string_view pin) { return hash == pin; }};
}

const SignIn::People kPeople{{1, "P", {Role::owner}, false, "1397"},
                             {2, "P", {Role::qualityAssurance}, false, "2846"},
                             {3, "P", {Role::operatorAtDryer}, false, "3751"},
                             {4, "", {Role::qualityAssurance}, false, ""},
                             {5, "P", {Role::owner}, true, "5917"}};

drivers::MonotonicTime at(std::chrono::seconds s) {
    return s;
}

} // namespace

TEST_CASE("badge, then PIN, then five minutes in which nobody asks again", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE(in.step() == SignInStep::waiting);
    REQUIRE_FALSE(in.choose(2, kPeople));
    CHECK(in.tryPin("2846", kPeople, at(10s)).value() == 2);
    CHECK(in.step() == SignInStep::closed);
    CHECK(in.holder(Right::decideHolds, kPeople, at(309s)) == 2);
    CHECK_FALSE(in.holder(Right::decideHolds, kPeople, at(310s)));
    CHECK_FALSE(in.holder(Right::changePeople, kPeople, at(11s))); // another right, another role
    auto without = kPeople;
    without[1].roles = {Role::operatorAtDryer}; // taken away meanwhile
    CHECK_FALSE(in.holder(Right::decideHolds, without, at(11s)));
}

TEST_CASE("who may not is told who may, before any PIN", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    const auto refusal = in.choose(3, kPeople);
    REQUIRE(refusal);
    CHECK(refusal->cause == SignInCause::notEntitled);
    CHECK(refusal->may == std::vector{Role::qualityAssurance, Role::owner});
    CHECK(in.step() == SignInStep::waiting);
}

TEST_CASE("a wrong badge, one of somebody who left and one without a PIN each say so", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    CHECK(in.choose(99, kPeople)->cause == SignInCause::personUnknown);
    CHECK(in.choose(5, kPeople)->cause == SignInCause::personLeft);
    CHECK(in.choose(4, kPeople)->cause == SignInCause::noPin);
    REQUIRE_FALSE(in.choose(2, kPeople));
    CHECK(in.choose(99, kPeople)->cause == SignInCause::personUnknown);
    CHECK(in.person() == 2); // a wrong badge changes nothing
}

TEST_CASE("wrong PINs slow the next, and neither waiting people nor another person help", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(in.choose(2, kPeople));
    drivers::MonotonicTime now = at(0s);
    for (const auto wait : {0s, 0s, 2s, 5s, 15s, 30s, 60s, 60s}) { // this room's own table
        const auto refused = in.tryPin("0001", kPeople, now);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().cause == SignInCause::pinWrong);
        CHECK(refused.error().wait == wait);
        REQUIRE_FALSE(in.choose(in.person() == 2 ? 1 : 2, kPeople));
        CHECK(in.waitLeft(now) == wait);
        if (wait > 0s) {
            const auto early = in.tryPin("1397", kPeople, now + wait - 1us);
            REQUIRE_FALSE(early);
            CHECK(early.error().cause == SignInCause::tooSoon); // even the right one
            CHECK(early.error().wait == 1s);
        }
        now += wait;
    }
    in.giveUp();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(in.choose(2, kPeople));
    CHECK(in.tryPin("0001", kPeople, now).error().wait == 60s); // giving up takes nothing away
    CHECK(in.tryPin("2846", kPeople, now + 60s));
}

TEST_CASE("nobody clears guesses at an owner's PIN with their own", "[keeping]") {
    auto in = signIn();
    drivers::MonotonicTime now = at(0s);
    std::chrono::seconds last{0};
    for (int i = 0; i < 7; ++i) {
        in.begin(Right::decideHolds, kPeople);
        REQUIRE_FALSE(in.choose(1, kPeople));
        const auto refused = in.tryPin("0001", kPeople, now);
        REQUIRE_FALSE(refused);
        last = refused.error().wait;
        now += last;
        REQUIRE_FALSE(in.choose(2, kPeople));
        REQUIRE(in.tryPin("2846", kPeople, now));
    }
    CHECK(last == 60s);
}

TEST_CASE("a first start, also an interrupted one, asks for the owner's PIN first", "[keeping]") {
    auto in = signIn();
    const SignIn::People interrupted{{1, "P", {Role::owner}, false, ""}};
    const SignIn::People onlyQa{{2, "P", {Role::qualityAssurance}, false, "2846"}};
    const SignIn::People ownerLeft{{1, "P", {Role::owner}, true, "1397"}};
    for (const auto& people : {SignIn::People{}, interrupted, onlyQa, ownerLeft}) {
        CHECK(lacksOwner(people));
        in.begin(Right::describeDryers, people);
        CHECK(in.step() == SignInStep::firstOwner);
    }
    in.ownerSet(1, at(5s));
    CHECK(in.step() == SignInStep::closed);
    CHECK(in.holder(Right::describeDryers, kPeople, at(6s)) == 1);
    CHECK_FALSE(lacksOwner(kPeople));
}

TEST_CASE("somebody who leaves while the PIN is typed does not sign", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(in.choose(2, kPeople));
    auto gone = kPeople;
    gone[1].left = true;
    CHECK(in.tryPin("2846", gone, at(0s)).error().cause == SignInCause::personLeft);
    CHECK(in.step() == SignInStep::waiting);
}

TEST_CASE("the table of rights holds every right once, and the owner may do all", "[keeping]") {
    for (std::size_t i = 0; i < kRights.size(); ++i) {
        CHECK(static_cast<std::size_t>(kRights[i].right) == i);
        CHECK(mayDo(kRights[i].right, Role::owner));
    }
}
