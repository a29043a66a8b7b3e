// The Shop as sheets, on a real book: what is shown, what is written, and what is not.
#include "kiosk/records/queries.hpp"
#include "kiosk/shop/keeping/exchange.hpp"
#include "tests/kiosk/support/keeping_rig.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <thread>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using records::Role;

TEST_CASE("each section of the Shop has all its sentences", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    for (const auto* section : {"settings", "dryers", "crew", "people", "roles", "cards", "book", "file"}) {
        INFO(section);
        REQUIRE(frame.shop->act(std::string{"shop.section."} + section));
        CHECK(says(*frame.shop, ""));
        CHECK_FALSE(frame.shop->sheet().blocks.isEmpty());
    }
    CHECK(frame.told.empty());
}

TEST_CASE("language needs no signature, risk does, and a bad one is not written", "[keeping][places]") {
    KeepingRig frame;
    frame.shop->act("shop.section.settings");
    CHECK(frame.shop->act("shop.settings.choose.language.es"));
    CHECK(frame.asked.empty());
    CHECK(std::get<std::string>(**records::setting(frame.book().db(), "language")) == "es");
    CHECK(frame.signedBy() == 0);
    CHECK(frame.shop->enter("shop.settings.risk_percent", "50"));
    CHECK(says(*frame.shop, "not between 0.1 and 20"));
    CHECK(frame.asked.empty());
    frame.signs = false;
    const auto before = frame.entries();
    frame.shop->enter("shop.settings.risk_percent", "5");
    CHECK(frame.asked == std::vector{shop::Right::changeSettings});
    CHECK(frame.entries() == before);
    frame.signs = true;
    frame.shop->enter("shop.settings.risk_percent", "5");
    CHECK(std::get<double>(**records::setting(frame.book().db(), "risk_percent")) == 5.0);
    CHECK(frame.signedBy() == 1);
}

TEST_CASE("a dryer with no heated length is kept and says why it shows no dwell", "[keeping][places]") {
    KeepingRig frame;
    frame.shop->act("shop.section.dryers");
    frame.shop->act("shop.dryers.new");
    frame.shop->enter("shop.dryers.name", "north");
    frame.shop->enter("shop.dryers.belt", "2.4");
    CHECK(says(*frame.shop, "No dwell can be shown: the heated length is not known"));
    frame.shop->enter("shop.dryers.length", "0");
    frame.shop->act("shop.dryers.save");
    CHECK(says(*frame.shop, "not above zero"));
    CHECK(frame.asked.empty());
    frame.shop->enter("shop.dryers.length", "");
    frame.shop->act("shop.dryers.save");
    CHECK(frame.asked == std::vector{shop::Right::describeDryers});
    CHECK(frame.signedBy() == 1);
    CHECK(says(*frame.shop, "no dwell known"));
    const auto dryers = records::dryers(frame.book().db());
    REQUIRE(dryers->size() == 1);
    CHECK_FALSE(dryers->front().heatedLengthMetres);
    frame.shop->act("shop.dryers.pick." + dryers->front().dryer);
    frame.shop->enter("shop.dryers.length", "3");
    CHECK(says(*frame.shop, "Dwell: 75\u00A0s")); // 3 m at 2.4 m/min, by hand
}

TEST_CASE("the crew comes and goes by badge without a signature, a wrong badge changes nothing", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.person(2, "Bo", Role::operatorAtDryer, "", true);
    CHECK(frame.shop->scanned(badge(1), false)); // from another place
    CHECK((*records::crew(frame.book().db()))->persons == std::vector<std::int64_t>{1});
    frame.shop->act("shop.crew.more");
    CHECK((*records::crew(frame.book().db()))->unnamed == 1);
    CHECK(frame.signedBy() == 0); // nobody signs for the crew
    const auto before = frame.entries();
    CHECK(frame.shop->scanned(badge(77), true));
    CHECK(frame.shop->scanned(badge(2), true));
    CHECK(frame.told.size() == 2);
    CHECK(frame.entries() == before);
    frame.shop->act("shop.section.settings");
    CHECK_FALSE(frame.shop->scanned(badge(1), true)); // nobody is taken from the crew behind what stands there
    CHECK(frame.entries() == before);
    frame.shop->act("shop.section.crew");
    frame.shop->scanned(badge(1), true);
    CHECK((*records::crew(frame.book().db()))->persons.empty());
    CHECK(frame.asked.empty());
    CHECK_FALSE(frame.shop->scanned({drivers::TicketKind::run, 1}, true));
}

TEST_CASE("an owner adds people; the last owner stays", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.shop->act("shop.section.people");
    frame.shop->act("shop.people.new");
    frame.shop->enter("shop.people.name", "Cleo");
    frame.shop->act("shop.people.role.qa");
    frame.shop->act("shop.people.save");
    CHECK(frame.asked == std::vector{shop::Right::changePeople});
    const auto people = records::peopleOnFile(frame.book().db());
    REQUIRE(people->size() == 2);
    CHECK(frame.signedBy() == 1);
    CHECK(people->at(1).badge == shop::badgeOf(2));
    CHECK(people->at(1).roles == std::vector{Role::operatorAtDryer, Role::qualityAssurance});
    CHECK(says(*frame.shop, "Cleo"));
    frame.shop->act("shop.people.pick.1");
    frame.shop->act("shop.people.badge");
    REQUIRE(frame.printed.size() == 1);
    CHECK(frame.printed[0].number == 1);
    frame.shop->act("shop.people.left.yes");
    frame.shop->act("shop.people.save");
    CHECK(says(*frame.shop, "Nobody else could sign as an owner"));
    CHECK(frame.asked.size() == 1);
}

TEST_CASE("a lost badge is replaced, the old one says so and opens nothing", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.person(2, "Bo", Role::qualityAssurance, "2846");
    frame.shop->act("shop.section.people");
    frame.shop->act("shop.people.pick.2");
    frame.shop->act("shop.people.replace");
    CHECK(says(*frame.shop, "Replace this badge?"));
    CHECK_FALSE(frame.shop->scanned(badge(1), true)); // what stands there is not taken for another's
    frame.shop->act("shop.people.replace-now");
    CHECK(frame.asked == std::vector{shop::Right::changePeople});
    CHECK(frame.signedBy() == 1);
    REQUIRE(frame.printed.size() == 1);
    CHECK(frame.printed[0].number == 2);
    const auto people = records::peopleOnFile(frame.book().db());
    CHECK(people->at(1).badge != shop::badgeOf(2));
    const auto fresh = static_cast<std::uint64_t>(shop::badgeNumberOf(people->at(1)));
    CHECK(says(*frame.shop, people->at(1).badge));
    frame.shop->act("shop.people.leave");
    const auto before = frame.entries();
    CHECK(frame.shop->scanned(badge(2), true));
    REQUIRE(frame.told.size() == 1);
    CHECK(frame.told[0].find("This badge was replaced") != std::string::npos);
    frame.shop->act("shop.section.crew");
    CHECK(frame.shop->scanned(badge(2), true));
    CHECK(frame.told.size() == 2);
    CHECK(frame.entries() == before);
    CHECK(frame.shop->scanned(badge(fresh), true));
    CHECK((*records::crew(frame.book().db()))->persons == std::vector<std::int64_t>{2});
    frame.signIn->ask(shop::Right::decideHolds, [](std::int64_t) {});
    frame.signIn->scanned(badge(2), true);
    CHECK(says(*frame.signIn, "This badge was replaced"));
    frame.signIn->scanned(badge(fresh), true);
    CHECK(says(*frame.signIn, "Bo: type your PIN."));
}

TEST_CASE("a PIN set under People is hashed beside, and not kept if the form was left meanwhile", "[keeping][places]") {
    KeepingRig frame;
    frame.person(1, "Ana", Role::owner, "1397");
    frame.shop->act("shop.section.people");
    for (const bool leaves : {true, false}) {
        frame.shop->act("shop.people.pick.1");
        frame.shop->enter("shop.people.pin", "2846");
        frame.shop->enter("shop.people.pin-again", "2846");
        const auto before = frame.entries();
        const auto shown = frame.shown();
        frame.shop->act("shop.people.save");
        CHECK(says(*frame.shop, "Working…"));
        frame.shop->act("shop.people.save"); // a second press does nothing
        if (leaves) {
            frame.shop->act("shop.people.leave");
        }
        CHECK(until([&] { return frame.shown() > shown; }));
        CHECK(frame.entries() == before + (leaves ? 0 : 1));
    }
    CHECK(shop::verifyPin(records::peopleOnFile(frame.book().db())->front().pinHash, "2846"));
}

TEST_CASE("a dryer is withdrawn: no longer offered, its history stays, and not while a run is on it",
          "[keeping][places]") {
    KeepingRig frame;
    records::DryerDescribed dryer;
    dryer.dryer = "d1";
    dryer.name = "north";
    REQUIRE(frame.book().tell(dryer));
    frame.book().plan();
    records::LotOpened lot;
    lot.lot = "lot on north";
    lot.run = *records::testing::sampleReading().run;
    lot.number = 2;
    lot.dryer = "d1";
    REQUIRE(frame.book().tell(lot));
    frame.shop->act("shop.section.dryers");
    frame.shop->act("shop.dryers.pick.d1");
    frame.shop->act("shop.dryers.withdraw");
    CHECK(says(*frame.shop, "a run is on it"));
    CHECK(frame.shop->act("shop.dryers.withdraw-now")); // no such press is shown
    CHECK(frame.asked.empty());
    records::LotClosed closed;
    closed.lot = lot.lot;
    REQUIRE(frame.book().tell(closed));
    const auto before = frame.entries();
    frame.shop->act("shop.dryers.pick.d1");
    frame.shop->act("shop.dryers.withdraw");
    CHECK(says(*frame.shop, "Withdraw north?"));
    CHECK(says(*frame.shop, "lock-out")); // job.md, cautions
    frame.shop->act("shop.dryers.leave");
    CHECK(says(*frame.shop, "Heated length"));
    frame.shop->act("shop.dryers.withdraw");
    frame.shop->act("shop.dryers.withdraw-now");
    CHECK(frame.asked == std::vector{shop::Right::describeDryers});
    CHECK(frame.signedBy() == 1);
    CHECK(says(*frame.shop, "No dryer is described yet"));
    CHECK(records::dryersNow(frame.book().db())->empty());
    CHECK(frame.entries() == before + 1); // and all that stood there stands
}

TEST_CASE("the book is checked and copied while the page can be left", "[keeping][places]") {
    KeepingRig frame;
    frame.book().plan();
    frame.shop->act("shop.section.book");
    const auto waitFor = [&](const std::string& words) {
        for (int i = 0; i < 100'000 && allText(frame.shop->sheet()).find(words) == std::string::npos; ++i) {
            std::this_thread::yield();
            frame.shop->tick();
        }
        return says(*frame.shop, words);
    };
    frame.shop->act("shop.book.check");
    CHECK(waitFor("The book is sound."));
    frame.shop->act("shop.book.backup");
    CHECK(waitFor("A verified copy stands in"));
    CHECK(frame.told.empty());
    int copies = 0;
    for (const auto& item : std::filesystem::directory_iterator{frame.exchange()}) {
        CHECK(item.path().extension() == ".sqlite");
        ++copies;
    }
    CHECK(copies == 1);
}

TEST_CASE("a shop file is looked at first, every fault is a sentence, and only a signature takes it over",
          "[keeping][places]") {
    KeepingRig frame;
    std::filesystem::create_directories(frame.exchange());
    const auto lay = [&](const std::string& text) {
        std::ofstream{frame.exchange() / "a.json"} << text;
        frame.shop->act("shop.section.file");
        frame.shop->act("shop.file.pick.0");
    };
    lay("{\"families\": 3, \"colour\": 1}");
    CHECK(says(*frame.shop, "a.json is not taken over"));
    CHECK(says(*frame.shop, "“colour” is no key of a shop file."));
    lay("");
    CHECK(says(*frame.shop, "It is no JSON"));
    shop::BookStock stock;
    stock.families = {records::recordOf(analytics::starterFamilies().front(), analytics::TemperatureUnit::fahrenheit)};
    lay(records::writeShopFile(shop::exportOf(stock)));
    CHECK(says(*frame.shop, "New: " + stock.families[0].name));
    const auto before = frame.entries();
    frame.signs = false;
    frame.shop->act("shop.file.import-now");
    CHECK(frame.entries() == before);
    frame.signs = true;
    frame.shop->act("shop.file.import-now");
    CHECK(frame.entries() == before + 1);
    CHECK(frame.signedBy() == 1);
    CHECK(says(*frame.shop, "Taken over: 1"));
    frame.shop->act("shop.file.export");
    CHECK(frame.asked.size() == 3);
    CHECK(std::filesystem::exists(frame.exchange() / "holdfast-shop.json"));
    lay(records::writeShopFile(shop::exportOf(stock)));
    CHECK(says(*frame.shop, "The book has all of it already."));
}
