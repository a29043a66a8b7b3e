// Bytes on a line to an entry in the book, by the shipped program. The demo's figures (runs, inks, peaks) are those of
// kiosk/demo/demo_shop.cpp: run 20413, three low-cure layers on polyester, is cured by a ride of 294.2 °F.
#include "kiosk/ledger/book.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/rig.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::tests;
using analytics::ReasonCode;
using analytics::Word;

namespace {

constexpr std::uint64_t kRun = 20413;

/// The demo's history is written and the scanner is listened to.
void waitUntilOpen(const KioskProcess& kiosk, const Rig& rig) {
    REQUIRE(eventually([&] { return kiosk.hasOpen(rig.scannerPort()); }));
    REQUIRE_FALSE(readingsIn(rig.data()).empty()); // its history comes in one commit
}

nlohmann::json checked(const std::filesystem::path& data) {
    const auto check =
        runToEnd({QStringLiteral("check-book"), QStringLiteral("--data"), text(data), QStringLiteral("--json")});
    CHECK(check.err.empty());
    REQUIRE(check.status == 0);
    return nlohmann::json::parse(check.out);
}

std::vector<std::int64_t> countsOf(const WholeReading& reading) {
    std::vector<std::int64_t> counts;
    for (const auto& point : reading.trace) {
        counts.push_back(point.counts);
    }
    return counts;
}

/// Where in the scenario's first two minutes the samples stand, all of them and in order; −1 if nowhere.
std::int64_t foundAt(const drivers::Scenario& scenario, const std::vector<std::int64_t>& counts) {
    std::vector<std::int64_t> sent;
    for (std::int64_t index = 0; index < 600; ++index) {
        sent.push_back(countAt(scenario, index));
    }
    const auto found = std::search(sent.begin(), sent.end(), counts.begin(), counts.end());
    return found == sent.end() ? -1 : found - sent.begin();
}

double longestStepSeconds(const WholeReading& reading) {
    std::int64_t longest = 0;
    for (std::size_t i = 1; i < reading.trace.size(); ++i) {
        longest = std::max(longest, reading.trace[i].microseconds - reading.trace[i - 1].microseconds);
    }
    return static_cast<double>(longest) * 1e-6;
}

} // namespace

TEST_CASE("a scan and a ride on the line become one cured reading that a fresh process finds sound", "[e2e]") {
    Rig rig{kSpeed};
    std::int64_t before = 0;
    const auto scenario = scenarioWith(kPeak);
    {
        KioskProcess kiosk{rig.demoArguments()};
        waitUntilOpen(kiosk, rig);
        before = entriesIn(rig.data());
        const auto probe = ride(rig, kiosk, scenario, kRun);
        waitForEntry(kiosk, rig, before);
    }
    REQUIRE(kindsFrom(rig.data(), before + 1) == std::vector<std::string>{"reading.taken"});
    const auto reading = newestReading(rig.data());
    CHECK(reading.row.runNumber == static_cast<std::int64_t>(kRun));
    CHECK(reading.row.word == Word::cured);
    REQUIRE(reading.taken.verdict);
    CHECK(reading.taken.verdict->word == Word::cured);
    CHECK_FALSE(reading.evidence().cutOff);
    // What was sent is what was kept: every sample from the pre-roll to the fall, none lost, none invented.
    const auto counts = countsOf(reading);
    const auto first = foundAt(scenario, counts);
    REQUIRE(first >= 0);
    CHECK(first < 100);                                                    // 20 s: before the heat
    CHECK(first + static_cast<std::int64_t>(counts.size()) > 5 * 60 + 25); // 60 s the top, then 5 s fallen (contracts)
    const auto span = reading.trace.back().microseconds - reading.trace.front().microseconds;
    const double mean = static_cast<double>(span) * 1e-6 / static_cast<double>(counts.size() - 1);
    CHECK(mean == Approx(0.2).epsilon(0.05)); // the instrument's interval, 200 ms; stamps waver with the machine

    const auto report = checked(rig.data());
    CHECK(report["sound"] == true);
    CHECK(report["entries"] == before + 1);
    CHECK(spoolsIn(rig.data()).empty());
}

TEST_CASE("a probe unplugged at the top of its ride proves nothing and leaves one entry with the gap in it", "[e2e]") {
    Rig rig{kSpeed};
    KioskProcess kiosk{rig.demoArguments()};
    waitUntilOpen(kiosk, rig);
    const auto before = entriesIn(rig.data());
    const double gap = 6.0; // short enough that the film cannot have cooled to 60 °C in it: one pass (decisions 3)
    const auto scenario = scenarioWith(kPeak, {{drivers::TroubleKind::unplugged, seconds(kTopSeconds - gap / 2),
                                                seconds(kTopSeconds + gap / 2), 0.0}});
    const auto begun = rig.clock().now();
    const auto probe = ride(rig, kiosk, scenario, kRun);
    waitForEntry(kiosk, rig, before);
    // Until the film is cold again (60 °C is 27 s after the top at the model's 22 s lag), nothing more is written.
    REQUIRE(eventually([&] { return rig.clock().now() - begun > seconds(kTopSeconds + 40.0); }));
    CHECK(kindsFrom(rig.data(), before + 1) == std::vector<std::string>{"reading.taken"});
    const auto reading = newestReading(rig.data());
    CHECK(reading.row.runNumber == static_cast<std::int64_t>(kRun));
    CHECK(reading.row.word == Word::notProven);
    CHECK(reading.saysReason(ReasonCode::gapHidesTop));
    CHECK(longestStepSeconds(reading) > gap - 0.5);
    CHECK(kiosk.alive());
    CHECK(checked(rig.data())["sound"] == true);
}

TEST_CASE("a ride cut off by a power cut is kept once, never cured, and the kiosk goes on", "[e2e]") {
    Rig rig{kSpeed};
    auto kiosk = std::make_unique<KioskProcess>(rig.demoArguments());
    waitUntilOpen(*kiosk, rig);
    const auto before = entriesIn(rig.data());
    auto probe = ride(rig, *kiosk, scenarioWith(kPeak), kRun);
    REQUIRE(eventually([&] { return highestSpooled(rig.data()) > kHot; }));
    kiosk->cutOff();
    probe.reset();
    REQUIRE(spoolsIn(rig.data()).size() == 1);
    REQUIRE(entriesIn(rig.data()) == before);

    kiosk = std::make_unique<KioskProcess>(rig.demoArguments());
    waitForEntry(*kiosk, rig, before);
    const auto reading = newestReading(rig.data());
    CHECK(reading.row.runNumber == static_cast<std::int64_t>(kRun));
    CHECK(reading.evidence().cutOff);
    REQUIRE(reading.row.word);
    CHECK(*reading.row.word != Word::cured);
    const auto counts = countsOf(reading);
    CHECK(*std::max_element(counts.begin(), counts.end()) > kHot);
    kiosk->cutOff(); // perhaps before the spool was removed

    kiosk = std::make_unique<KioskProcess>(rig.demoArguments());
    REQUIRE(eventually([&] { return kiosk->hasOpen(rig.scannerPort()); }));
    probe = ride(rig, *kiosk, scenarioWith(kPeak), kRun);
    waitForEntry(*kiosk, rig, before + 1);
    CHECK(newestReading(rig.data()).row.word == Word::cured);
    CHECK(entriesIn(rig.data()) == before + 2);
    CHECK(cutOffReadings(rig.data()) == 1);
    kiosk->cutOff();
    CHECK(spoolsIn(rig.data()).empty());
    CHECK(checked(rig.data())["sound"] == true);
}
