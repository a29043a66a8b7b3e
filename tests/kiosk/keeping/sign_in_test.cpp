#include "kiosk/shop/keeping/badge.hpp"
#include "kiosk/shop/keeping/sign_in.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop;
using namespace std::chrono_literals;
using records::Role;

namespace {

/// The hash of these is the PIN itself: what Argon2id does is tested with the PINs. The answer comes at once.
class Signing final : public SignIn {
public:
    using SignIn::SignIn;
    using SignIn::tryPin;
    tl::expected<std::int64_t, SignInRefusal> tryPin(const std::string& pin, const People& people,
                                                     drivers::MonotonicTime now) {
        const auto check = tryPin(people, now);
        return check ? *checked(*check, check->hash == pin, people, now) : tl::unexpected(check.error());
    }
};

Signing signIn() {
    return {};
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

TEST_CASE("a PIN counts as wrong until it was shown right, also when somebody gives up meanwhile", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(in.choose(2, kPeople));
    const auto check = in.tryPin(kPeople, at(0s));
    REQUIRE(check);
    CHECK(check->hash == "2846");
    CHECK(in.step() == SignInStep::checking);
    CHECK(in.tries() == PinTries{1, {{2, 1}}}); // what is kept before it is looked at
    in.giveUp();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(in.choose(1, kPeople));
    CHECK(in.tryPin(kPeople, at(0s)).error().cause == SignInCause::tooSoon); // one at a time
    const bool right = GENERATE(false, true);
    CHECK_FALSE(in.checked(*check, right, kPeople, at(1s))); // nobody signs who gave up
    CHECK_FALSE(in.holder(Right::decideHolds, kPeople, at(1s)));
    CHECK(in.step() == SignInStep::pin);
    CHECK(in.person() == 1);
    CHECK(in.tries() == (right ? PinTries{} : PinTries{1, {{2, 1}}}));
}

TEST_CASE("somebody who leaves while the PIN is checked does not sign", "[keeping]") {
    auto in = signIn();
    in.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(in.choose(2, kPeople));
    const auto check = in.tryPin(kPeople, at(0s));
    REQUIRE(check);
    auto gone = kPeople;
    gone[1].left = true;
    const auto answer = in.checked(*check, true, gone, at(1s));
    REQUIRE(answer);
    CHECK(answer->error().cause == SignInCause::personLeft);
    CHECK_FALSE(in.holder(Right::decideHolds, kPeople, at(1s)));
}

TEST_CASE("a restart forgets no wrong PIN, and its wait begins anew", "[keeping]") {
    const auto folder = std::filesystem::temp_directory_path() / ("holdfast-pins-" + std::to_string(::getpid()));
    std::filesystem::create_directories(folder);
    CHECK(readPinTries(folder) == PinTries{}); // none yet
    auto before = signIn();
    before.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(before.choose(2, kPeople));
    for (const auto second : {0s, 1s, 2s, 10s}) {
        CHECK_FALSE(before.tryPin("0001", kPeople, at(second)));
    }
    REQUIRE(writePinTries(folder, before.tries()));
    CHECK(readPinTries(folder) == PinTries{4, {{2, 4}}});
    Signing after{readPinTries(folder), at(1000s)};
    CHECK(after.waitLeft(at(1000s)) == 5s); // this room's own table: 5 s after four wrong ones
    after.begin(Right::decideHolds, kPeople);
    REQUIRE_FALSE(after.choose(2, kPeople));
    CHECK(after.tryPin("2846", kPeople, at(1004s)).error().cause == SignInCause::tooSoon);
    CHECK(after.tryPin("0001", kPeople, at(1005s)).error().wait == 15s);
    CHECK(after.tryPin("2846", kPeople, at(1020s)));
    REQUIRE(writePinTries(folder, after.tries()));
    CHECK(readPinTries(folder) == PinTries{});
    for (const auto* damaged : {"2 -1\n", "x", "2 4 junk", "2 99999999999999999999"}) { // locks nobody out
        std::ofstream{folder / kPinTriesFile} << damaged;
        CHECK(readPinTries(folder) == PinTries{});
    }
    std::filesystem::remove_all(folder);
    CHECK_FALSE(writePinTries(folder, before.tries())); // a folder that is not there
}

TEST_CASE("an old badge says that it was replaced, and opens nothing", "[keeping]") {
    auto people = kPeople;
    people[1].badge = badgeOf(2);
    const auto oldNumber = badgeNumberOf(people[1]);
    CHECK(oldNumber == 2); // as printed before
    CHECK(badgeRead(oldNumber, people) == BadgeRead{2, false});
    people[1].badge = nextBadgeOf(people[1]);
    CHECK(badgeRead(oldNumber, people) == BadgeRead{2, true});
    const auto newNumber = badgeNumberOf(people[1]);
    CHECK(badgeRead(newNumber, people) == BadgeRead{2, false});
    CHECK_FALSE(badgeRead(newNumber + 10'000, people)); // the issue after it was never printed
    CHECK_FALSE(badgeRead(10'001, people));             // nor a second one of person 1
    CHECK_FALSE(badgeRead(0, people));
    auto in = signIn();
    in.begin(Right::decideHolds, people);
    CHECK(in.chooseBadge(oldNumber, people)->cause == SignInCause::badgeReplaced);
    CHECK(in.step() == SignInStep::waiting);
    CHECK(in.chooseBadge(77, people)->cause == SignInCause::personUnknown);
    CHECK_FALSE(in.chooseBadge(newNumber, people));
    CHECK(in.person() == 2);
}
