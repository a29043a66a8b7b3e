// Others come to the book while a kiosk has it open.
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/schema.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/rig.hpp"

#include <SQLiteCpp/Database.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cstdlib>

using namespace holdfast;
using namespace holdfast::tests;
using Catch::Matchers::Contains;

namespace {

constexpr double kQuickSpeed = 20.0;

std::int64_t entriesOfSoundBook(const std::filesystem::path& data) {
    const auto check =
        runToEnd({QStringLiteral("check-book"), QStringLiteral("--data"), text(data), QStringLiteral("--json")});
    REQUIRE(check.status == 0);
    const auto report = nlohmann::json::parse(check.out);
    REQUIRE(report["sound"] == true);
    return report["entries"];
}

} // namespace

TEST_CASE("a second kiosk on the same book says so and leaves the first one's ride alone", "[e2e]") {
    Rig rig{kQuickSpeed};
    KioskProcess first{rig.demoArguments()};
    REQUIRE(eventually([&] { return first.hasOpen(rig.scannerPort()); }));
    const auto before = entriesIn(rig.data());
    const auto probe = ride(rig, first, scenarioWith(kPeak), 20413);
    REQUIRE(eventually([&] { return highestSpooled(rig.data()) > kHot; }));

    KioskProcess second{{QStringLiteral("--data"), text(rig.data())}};
    REQUIRE(eventually([&] { return second.said().find('\n') != std::string::npos || !second.alive(); }));
    REQUIRE(eventually([&] { return second.said().find("book") != std::string::npos; }));
    CHECK_THAT(second.said(), Contains("Another kiosk has this book open."));
    CHECK_THAT(second.said(), Contains("The book is as it was."));
    CHECK(second.alive()); // its window says the same until somebody closes it
    second.cutOff();

    waitForEntry(first, rig, before);
    CHECK(first.alive());
    CHECK(entriesIn(rig.data()) == before + 1);
    CHECK(newestReading(rig.data()).row.word == analytics::Word::cured);
    CHECK(entriesOfSoundBook(rig.data()) == before + 1);
}

TEST_CASE("a backup taken during a ride restores to a sound book, and the ride is kept", "[e2e]") {
    Rig rig{kQuickSpeed};
    KioskProcess kiosk{rig.demoArguments()};
    REQUIRE(eventually([&] { return kiosk.hasOpen(rig.scannerPort()); }));
    const auto before = entriesIn(rig.data());
    const auto probe = ride(rig, kiosk, scenarioWith(kPeak), 20413);
    REQUIRE(eventually([&] { return highestSpooled(rig.data()) > kHot; }));

    const auto copy = rig.at("copy.sqlite");
    const auto backup = runToEnd({QStringLiteral("backup"), text(copy), QStringLiteral("--data"), text(rig.data())});
    CHECK(backup.err.empty());
    REQUIRE(backup.status == 0);
    waitForEntry(kiosk, rig, before);
    CHECK(newestReading(rig.data()).row.word == analytics::Word::cured);

    const auto elsewhere = rig.at("restored");
    const auto restore = runToEnd({QStringLiteral("restore"), text(copy), QStringLiteral("--data"), text(elsewhere)});
    CHECK(restore.err.empty());
    REQUIRE(restore.status == 0);
    CHECK(entriesOfSoundBook(elsewhere) >= before); // the ride may have ended before the copy was taken
    CHECK(entriesOfSoundBook(rig.data()) == before + 1);

    // Into the folder that a kiosk has open: refused, and nothing is lost.
    const auto over = runToEnd({QStringLiteral("restore"), text(copy), QStringLiteral("--data"), text(rig.data())});
    CHECK(over.status == 2);
    CHECK_THAT(over.err, Contains("Another kiosk has this book open."));
    CHECK(entriesOfSoundBook(rig.data()) == before + 1);
    CHECK(kiosk.alive());
}

TEST_CASE("a newer program's book is opened for reading and nothing is written into it", "[e2e]") {
    Rig rig{kQuickSpeed};
    {
        KioskProcess kiosk{rig.demoArguments()};
        REQUIRE(eventually([&] { return kiosk.hasOpen(rig.scannerPort()); }));
    }
    const auto before = entriesIn(rig.data());
    {
        SQLite::Database database{(rig.data() / kiosk::ledger::Book::fileName).string(), SQLite::OPEN_READWRITE};
        database.exec("PRAGMA user_version = " + std::to_string(kiosk::ledger::schemaVersion + 1));
    }
    KioskProcess kiosk{rig.demoArguments()};
    REQUIRE(eventually([&] { return kiosk.hasOpen(rig.scannerPort()); }));
    const auto probe = ride(rig, kiosk, scenarioWith(kPeak), 20413);
    const auto begun = rig.clock().now();
    REQUIRE(eventually([&] { return highestSpooled(rig.data()) > kHot; })); // the ride is safe beside the book
    REQUIRE(eventually([&] { return rig.clock().now() - begun > seconds(kTopSeconds + 40.0); }));
    CHECK(kiosk.alive());
    CHECK_THAT(kiosk.said(), Contains("written by a newer Holdfast"));
    CHECK(entriesIn(rig.data()) == before);
    CHECK(highestSpooled(rig.data()) > kHot);
}
