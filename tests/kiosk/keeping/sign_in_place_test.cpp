// The signature as a sheet, on a real book.
#include "tests/kiosk/support/keeping_rig.hpp"

#include <catch2/catch.hpp>

#include <future>
#include <thread>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using records::Role;

TEST_CASE("badge and PIN sign once, and then nobody asks for five minutes", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    std::vector<std::int64_t> signedBy;
    const auto then = [&](std::int64_t person) { signedBy.push_back(person); };
    frame.signIn->ask(shop::Right::decideHolds, then);
    REQUIRE(frame.signIn->isOpen());
    CHECK(says(*frame.signIn, "Ana"));
    CHECK(frame.signIn->scanned(badge(1), true));
    CHECK(frame.type("1397"));
    CHECK(signedBy == std::vector<std::int64_t>{1});
    CHECK(frame.closed == 1);
    CHECK_FALSE(frame.signIn->isOpen());
    frame.signIn->ask(shop::Right::decideHolds, then);
    CHECK(signedBy.size() == 2);
    frame.clock().advance(shop::kSignatureLasts);
    frame.signIn->ask(shop::Right::decideHolds, then);
    CHECK(frame.signIn->isOpen());
    CHECK(frame.signIn->act("sign-in.leave"));
    CHECK(signedBy.size() == 2);
}

TEST_CASE("a second signature is another person's, and a fresh one each time", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.person(2, "Bo", Role::qualityAssurance, "2846");
    std::vector<std::int64_t> signedBy;
    const auto then = [&](std::int64_t person) { signedBy.push_back(person); };
    frame.signIn->askAfresh(shop::Right::decideHolds, 0, then);
    frame.signIn->scanned(badge(1), true);
    CHECK(frame.type("1397"));
    frame.signIn->askAfresh(shop::Right::decideHolds, 1, then);
    REQUIRE(frame.signIn->isOpen()); // though Ana has signed a moment ago
    CHECK(says(*frame.signIn, "Ana has signed. This needs a second person who may decide about holds."));
    frame.signIn->scanned(badge(1), true);
    CHECK(says(*frame.signIn, "Ana has signed this already."));
    CHECK(signedBy == std::vector<std::int64_t>{1});
    frame.signIn->scanned(badge(2), true);
    CHECK(frame.type("2846"));
    CHECK(signedBy == std::vector<std::int64_t>{1, 2});
}

TEST_CASE("a wrong badge, a role that may not and a wrong PIN each get their sentence", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.person(2, "Bo", Role::operatorAtDryer, "2846");
    bool done = false;
    frame.signIn->ask(shop::Right::decideHolds, [&](std::int64_t) { done = true; });
    CHECK_FALSE(says(*frame.signIn, "Bo")); // only those who may
    frame.signIn->scanned(badge(99), true);
    CHECK(says(*frame.signIn, "nobody in this book"));
    frame.signIn->scanned(badge(2), true);
    CHECK(says(*frame.signIn, "Bo may not decide about holds. These may: QA or owner."));
    frame.signIn->act("sign-in.person.1");
    for (int i = 0; i < 3; ++i) {
        CHECK(frame.type("0001"));
    }
    CHECK(says(*frame.signIn, "may be typed in 2 s")); // this room's own table
    frame.clock().advance(std::chrono::seconds{1});
    CHECK(says(*frame.signIn, "may be typed in 1 s"));
    frame.clock().advance(std::chrono::seconds{1});
    CHECK(says(*frame.signIn, "The PIN is wrong"));
    CHECK_FALSE(says(*frame.signIn, "0001"));
    CHECK_FALSE(done);
}

TEST_CASE("at a first start the owner's PIN is set before anything is signed", "[keeping][places]") {
    KeepingRig frame;
    const bool interrupted = GENERATE(false, true);
    if (interrupted) {
        frame.person(1, "Ana", Role::owner, "");
    }
    std::int64_t signedBy = 0;
    frame.signIn->ask(shop::Right::describeDryers, [&](std::int64_t person) { signedBy = person; });
    CHECK(says(*frame.signIn, "No owner has a PIN yet"));
    if (!interrupted) {
        frame.signIn->enter("sign-in.name", "Ana");
    }
    frame.signIn->enter("sign-in.pin", "1234");
    frame.signIn->enter("sign-in.pin-again", "1234");
    frame.signIn->act("sign-in.set");
    CHECK(says(*frame.signIn, "stand in a row"));
    CHECK_FALSE(says(*frame.signIn, "1234"));
    frame.signIn->enter("sign-in.pin", "1397");
    frame.signIn->enter("sign-in.pin-again", "1397");
    frame.diskFull = true;
    frame.signIn->act("sign-in.set");
    CHECK(says(*frame.signIn, "Working…"));
    CHECK(until([&] { return frame.told.size() == 1; }));
    CHECK(signedBy == 0);
    frame.diskFull = false;
    frame.signIn->act("sign-in.set"); // what was typed was kept
    CHECK(until([&] { return signedBy != 0; }));
    CHECK(signedBy == 1);
    CHECK(frame.signedBy() == 1); // the first owner signs their own coming
    const auto people = records::peopleOnFile(frame.book().db());
    REQUIRE(people);
    REQUIRE(people->size() == 1);
    CHECK(people->front().pinHash == plainHash("1397"));
    CHECK(frame.book().book().personNames()->front().name == "Ana");
}

TEST_CASE("a PIN is checked beside, the screen says so at once, and who leaves has signed nothing",
          "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    std::promise<void> gate;
    auto open = gate.get_future().share();
    frame.verify = [open](const std::string& hash, std::string_view pin) {
        open.wait();
        return plainVerify(hash, pin);
    };
    frame.makeSignIn();
    bool done = false;
    frame.signIn->ask(shop::Right::decideHolds, [&](std::int64_t) { done = true; });
    frame.signIn->act("sign-in.person.1");
    CHECK(frame.signIn->enter("sign-in.pin", "1397"));
    CHECK(says(*frame.signIn, "Checking…"));
    CHECK_FALSE(frame.signIn->enter("sign-in.pin", "1397"));
    const bool gone = GENERATE(false, true);
    if (gone) {
        std::thread opener{[&] { gate.set_value(); }};
        frame.signIn.reset(); // the place itself goes: nobody is called back
        opener.join();
        QCoreApplication::processEvents();
    } else {
        frame.signIn->left();
        gate.set_value();
        CHECK(until([&] { return frame.shown() > 0; }));
        CHECK_FALSE(frame.signIn->isOpen());
    }
    CHECK_FALSE(done);
    CHECK(frame.closed == 0);
}

TEST_CASE("starting the program anew does not make guessing faster", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.signIn->ask(shop::Right::decideHolds, [](std::int64_t) {});
    frame.signIn->act("sign-in.person.1");
    for (int i = 0; i < 3; ++i) {
        CHECK(frame.type("0001"));
    }
    frame.makeSignIn();
    frame.signIn->ask(shop::Right::decideHolds, [](std::int64_t) {});
    frame.signIn->act("sign-in.person.1");
    CHECK(says(*frame.signIn, "may be typed in 2 s")); // this room's own table: 2 s after the third
    CHECK(frame.signIn->enter("sign-in.pin", "1397"));
    CHECK(frame.signIn->isOpen());
}
