#include "kiosk/shop/keeping/dryer_draft.hpp"
#include "kiosk/shop/keeping/person_draft.hpp"
#include "kiosk/shop/keeping/settings.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop;
using records::Role;

namespace {

std::optional<std::string> plainHash(std::string_view pin) {
    return "$argon2id$" + std::string{pin};
}

PeopleNow oneOwner() {
    PeopleNow now;
    now.people = {{1, badgeOf(1), {Role::owner}, false, "$argon2id$x"}, {2, badgeOf(2), {Role::owner}, false, ""}};
    now.names = {{1, "Ana"}, {2, "Bo"}};
    now.nextNumber = 3;
    return now;
}

template <class Fault, class Cause>
bool has(const std::vector<Fault>& faults, Cause cause, const std::string& field) {
    return std::any_of(faults.begin(), faults.end(),
                       [&](const auto& one) { return one.cause == cause && one.field == field; });
}

DryerDraft north() {
    DryerDraft draft;
    draft.name = "north";
    draft.heatedLength = "3";
    draft.belt = "2,4";
    draft.slowest = "0.5";
    draft.fastest = "6";
    draft.setPoint = "340";
    draft.highestSetPoint = "450";
    draft.piecesPerMetre = "1.5";
    return draft;
}

} // namespace

TEST_CASE("a dwell is the heated length over the belt's speed", "[keeping]") {
    const auto dryer = dryerFrom(north(), {});
    REQUIRE(dryer);
    CHECK(dwellOf(*dryer)->count() == Approx(75.0)); // 3 m at 2.4 m/min: 1.25 min, by hand
    CHECK(dryer->setPoint == analytics::AuthoredTemperature{340, analytics::TemperatureUnit::fahrenheit});
}

TEST_CASE("a dryer with no heated length is described all the same and shows no dwell", "[keeping]") {
    auto draft = north();
    draft.heatedLength = "  ";
    const auto dryer = dryerFrom(draft, {});
    REQUIRE(dryer);
    CHECK_FALSE(dryer->heatedLengthMetres);
    CHECK_FALSE(dwellOf(*dryer));
    auto zero = *dryer;
    zero.heatedLengthMetres = 0.0; // in an old book
    CHECK_FALSE(dwellOf(zero));
}

TEST_CASE("lengths and speeds of zero, below it or in words are refused at their field", "[keeping]") {
    for (const auto& [typed, cause] : {std::pair{"0", DryerFaultCause::notPositive},
                                       {"-3", DryerFaultCause::notPositive},
                                       {"-0.0", DryerFaultCause::notPositive},
                                       {"three", DryerFaultCause::notANumber},
                                       {"inf", DryerFaultCause::notANumber},
                                       {"nan", DryerFaultCause::notANumber},
                                       {"1e3", DryerFaultCause::notANumber},
                                       {"1,600", DryerFaultCause::notANumber},
                                       {"3 m", DryerFaultCause::notANumber}}) {
        INFO(typed);
        auto draft = north();
        draft.heatedLength = typed;
        const auto dryer = dryerFrom(draft, {});
        REQUIRE_FALSE(dryer);
        CHECK(has(dryer.error(), cause, "length"));
    }
}

TEST_CASE("what contradicts itself in a dryer is told", "[keeping]") {
    auto draft = north();
    draft.slowest = "7";
    draft.setPoint = "500";
    draft.name = " ";
    const auto dryer = dryerFrom(draft, {});
    REQUIRE_FALSE(dryer);
    CHECK(has(dryer.error(), DryerFaultCause::nameMissing, "name"));
    CHECK(has(dryer.error(), DryerFaultCause::slowestAboveFastest, "slowest"));
    CHECK(has(dryer.error(), DryerFaultCause::setPointAboveHighest, "set-point"));
    draft = north();
    draft.belt = "6.5";
    CHECK(has(dryerFrom(draft, {}).error(), DryerFaultCause::beltOutside, "belt"));
    records::DryerDescribed other;
    other.dryer = "id-1";
    other.name = "north";
    CHECK(has(dryerFrom(north(), {other}).error(), DryerFaultCause::nameTaken, "name"));
}

TEST_CASE("a set-point that was not touched stays as it was authored", "[keeping]") {
    auto dryer = *dryerFrom(north(), {});
    dryer.dryer = "id-1";
    auto draft = draftOf(dryer, analytics::TemperatureUnit::celsius);
    CHECK(draft.setPoint == "171.1111"); // 340 °F, by hand
    draft.belt = "3";
    const auto changed = dryerFrom(draft, {dryer});
    REQUIRE(changed);
    CHECK(changed->setPoint == dryer.setPoint);
    CHECK(changed->dryer == "id-1");
}

TEST_CASE("somebody new gets the next number, its badge and the PIN in one commit", "[keeping]") {
    PersonDraft draft;
    draft.name = " Cleo ";
    draft.roles = {Role::qualityAssurance};
    draft.pin = draft.pinAgain = "1397";
    const auto made = personFrom(draft, oneOwner(), plainHash);
    REQUIRE(made);
    CHECK(made->name == ledger::PersonName{3, "Cleo"});
    REQUIRE(made->list.size() == 2);
    CHECK(std::get<records::PersonAdded>(made->list[0]).badge == badgeOf(3));
    CHECK(std::get<records::PinSet>(made->list[1]).hash == "$argon2id$1397");
}

TEST_CASE("the last owner who can sign neither leaves nor loses the role", "[keeping]") {
    auto now = oneOwner(); // the other owner has no PIN
    auto draft = draftOf(now.people[0], "Ana");
    draft.left = true;
    CHECK(has(personFrom(draft, now, plainHash).error(), PersonFaultCause::lastOwner, "left"));
    draft.left = false;
    draft.roles = {Role::operatorAtDryer};
    CHECK(has(personFrom(draft, now, plainHash).error(), PersonFaultCause::lastOwner, "roles"));
    now.people[1].pinHash = "$argon2id$y";
    CHECK(personFrom(draft, now, plainHash));
}

TEST_CASE("faults of a person are told at once", "[keeping]") {
    PersonDraft draft;
    draft.pin = "1397";
    draft.pinAgain = "1398";
    const auto made = personFrom(draft, oneOwner(), plainHash);
    REQUIRE_FALSE(made);
    CHECK(has(made.error(), PersonFaultCause::nameMissing, "name"));
    CHECK(has(made.error(), PersonFaultCause::noRole, "roles"));
    CHECK(has(made.error(), PersonFaultCause::pinsDiffer, "pin-again"));
    draft.name = "Ana";
    draft.roles = {Role::operatorAtDryer};
    draft.pin = draft.pinAgain = "1111";
    const auto again = personFrom(draft, oneOwner(), plainHash).error();
    CHECK(has(again, PersonFaultCause::nameTaken, "name"));
    CHECK(again.back().pin == PinFault::allEqual);
    draft.name = "Dee";
    draft.pin = draft.pinAgain = "1397";
    const auto noMemory = personFrom(draft, oneOwner(), [](std::string_view) { return std::optional<std::string>{}; });
    CHECK(has(noMemory.error(), PersonFaultCause::pinNotMade, "pin"));
}

TEST_CASE("a first owner is made with a PIN, and an interrupted start only sets it", "[keeping]") {
    auto fresh = firstOwnerDraft({});
    fresh.name = "Ana";
    CHECK(has(personFrom(fresh, {}, plainHash).error(), PersonFaultCause::pin, "pin")); // never without
    fresh.pin = fresh.pinAgain = "1397";
    CHECK(personFrom(fresh, {}, plainHash)->list.size() == 2);
    PeopleNow interrupted;
    interrupted.people = {{1, badgeOf(1), {Role::owner}, false, ""}};
    interrupted.names = {{1, "Ana"}};
    interrupted.nextNumber = 2;
    auto again = firstOwnerDraft(interrupted);
    CHECK(again.name == "Ana");
    again.pin = again.pinAgain = "1397";
    const auto made = personFrom(again, interrupted, plainHash);
    REQUIRE(made);
    REQUIRE(made->list.size() == 1);
    CHECK(std::get<records::PinSet>(made->list[0]).number == 1);
}

TEST_CASE("settings are held to their table", "[keeping]") {
    CHECK(std::get<double>(settingFrom("risk_percent", "2.5")->value) == 2.5);
    CHECK(settingFrom("risk_percent", "0.1"));
    CHECK(settingFrom("risk_percent", "20"));
    CHECK(settingFrom("risk_percent", "0.09").error().cause == SettingFaultCause::outOfRange);
    CHECK(settingFrom("risk_percent", "0").error().cause == SettingFaultCause::outOfRange);
    CHECK(settingFrom("panel_inch", "6.9").error().cause == SettingFaultCause::outOfRange);
    CHECK(settingFrom("panel_inch", "wide").error().cause == SettingFaultCause::notANumber);
    CHECK(std::get<std::int64_t>(settingFrom("reading_every_pieces", "120")->value) == 120);
    CHECK(settingFrom("reading_every_pieces", "0").error().cause == SettingFaultCause::outOfRange);
    CHECK(settingFrom("reading_every_minutes", "7.5").error().cause == SettingFaultCause::notWhole);
    CHECK(settingFrom("language", "fr").error().cause == SettingFaultCause::notAChoice);
    CHECK(settingFrom("language", "").error().cause == SettingFaultCause::notAChoice);
    CHECK(settingFrom("colour", "red").error().cause == SettingFaultCause::unknownKey);
    CHECK(settingFrom("label_printer", ""));
    CHECK(settingFrom("label_printer", "Labels_2"));
    for (const auto* bad : {"-o raw", "a b", "a/b", "a#b", "x'y", "-x"}) {
        INFO(bad);
        CHECK(settingFrom("label_printer", bad).error().cause == SettingFaultCause::notAPrinter);
    }
}

TEST_CASE("a setting of names is kept as a list, an empty one too, and no sign that cannot be printed", "[keeping]") {
    const auto text = [](const std::string& typed) {
        return std::get<std::string>(settingFrom("covering_colours", typed).value().value);
    };
    CHECK(text(" black ,navy,, Black") == "black, navy");
    CHECK(text("").empty());
    CHECK(settingFrom("covering_colours", std::string(300, 'x')).error().cause == SettingFaultCause::namesTooLong);
    CHECK(settingFrom("light_garments", "white\x01").error().cause == SettingFaultCause::controlSign);
    CHECK(settingNamed("light_garments")->toBeSigned);
}

TEST_CASE("a new badge is all that a replaced badge changes", "[keeping]") {
    const records::PersonOnFile person{2, badgeOf(2), {Role::qualityAssurance}, true, "$argon2id$x"};
    const auto changed = withNewBadge(person);
    CHECK(changed.number == 2);
    CHECK(changed.badge == badgeOf(2, 1));
    CHECK(changed.roles == person.roles);
    CHECK(changed.left);
}
