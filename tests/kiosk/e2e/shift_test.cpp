// A shift at the dryer as a person lives it, and what its everyday paths cost in scans and touches. The allowances are
// those of the design's rules with numbers: ticket to verdict 1 scan and 0 touches, a strip at most 3 touches, a bad
// verdict answered and a run taken from a list at most 2. Run 20413 and its peak are the demo's.
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/shop/proving/action_card.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/whole_kiosk.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>

using namespace holdfast;
using namespace holdfast::tests;
using kiosk::shop::ActionCard;

namespace {

constexpr double kGood = 294.2; // °F, inside the window of run 20413

/// Hands that count.
class Hands final {
public:
    Hands(Rig& rig, const WholeKiosk& kiosk) : m_rig{rig}, m_kiosk{kiosk} {}

    void scanRun(std::uint64_t number) {
        ++m_scans;
        m_rig.scanRun(number);
    }
    void scanCard(ActionCard card) {
        ++m_scans;
        m_rig.scan(drivers::encode(drivers::TicketKind::action, static_cast<std::uint64_t>(card), 3));
    }
    void press(const char* beginning) {
        ++m_touches;
        INFO(beginning << "\n" << m_kiosk.textsShown().join(QLatin1Char{'\n'}).toStdString());
        REQUIRE(eventually([&] { return m_kiosk.pressWhatBegins(beginning); }));
    }
    /// Prints what the path cost, and begins the next.
    void endOf(const char* path, int mostScans, int mostTouches) {
        std::cout << path << ": " << m_scans << " scans, " << m_touches << " touches (at most " << mostScans << " and "
                  << mostTouches << ")\n";
        CHECK(m_scans <= mostScans);
        CHECK(m_touches <= mostTouches);
        m_scans = 0;
        m_touches = 0;
    }
    void wait(const char* text) const {
        INFO(text << "\n" << m_kiosk.textsShown().join(QLatin1Char{'\n'}).toStdString());
        REQUIRE(eventually([&] { return m_kiosk.showsPartly(text); }));
    }

private:
    Rig& m_rig;
    const WholeKiosk& m_kiosk;
    int m_scans = 0;
    int m_touches = 0;
};

std::ptrdiff_t readingsSince(const Rig& rig, std::int64_t entry) {
    const auto kinds = kindsFrom(rig.data(), entry + 1);
    return std::count(kinds.begin(), kinds.end(), "reading.taken");
}

bool holds(const std::vector<std::string>& kinds, const char* kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

} // namespace

TEST_CASE("the paths of every day cost no more scans and touches than the design allows", "[e2e][screen][paths]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    Hands hands{rig, kiosk};
    {
        const auto probe = rig.plugIn(scenarioWith(kGood));
        hands.scanRun(20413);
        hands.wait("Cured");
        hands.endOf("ticket to verdict, live probe", 1, 0);
    }
    hands.press("Strip");
    hands.press("290, ");
    hands.press("Keep this reading");
    REQUIRE(eventually([&] { return kiosk.state().verdict && !kiosk.shows("This would prove"); }));
    CHECK(std::holds_alternative<kiosk::records::StripSeen>(kiosk.state().kept.back().reading.evidence));
    hands.endOf("strip to verdict", 0, 3);
    {
        const auto probe = rig.plugIn(scenarioWith(kCold));
        hands.scanRun(20413);
        hands.wait("Under-cured");
        hands.endOf("ticket to a bad verdict", 1, 0);
    }
    hands.press("Belt slower");
    REQUIRE(eventually([&] { return !kiosk.shows("Belt slower"); }));
    hands.endOf("bad verdict to answered", 0, 2);
    hands.press("To the dryer");
    hands.endOf("back to the dryer", 0, 1);
    hands.press("First reading");
    REQUIRE(eventually([&] { return kiosk.state().run && kiosk.state().run->onFile.plan.number != 20413; }));
    hands.endOf("a run taken from a list", 0, 2);
}

TEST_CASE("a shift on one dryer: set-up, a bad ride answered, a good one, a wipe, a hand-over",
          "[e2e][screen][shift]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    const auto before = entriesIn(rig.data());
    Hands hands{rig, kiosk};

    hands.scanRun(20413);
    hands.scanCard(ActionCard::setUp);
    hands.wait("Set-up: readings are kept and hold nothing");
    {
        const auto probe = rig.plugIn(scenarioWith(kCold));
        hands.wait("Under-cured");
    }
    CHECK(newestReading(rig.data()).taken.reason == kiosk::records::ReadingReason::setUp);
    CHECK_FALSE(kiosk::shop::verdictStays(kiosk.state())); // nothing can hold a lot, so nothing must be answered
    hands.scanCard(ActionCard::hotter);
    hands.scanCard(ActionCard::ready);
    hands.scanCard(ActionCard::next);
    hands.scanRun(20413);
    {
        const auto probe = rig.plugIn(scenarioWith(kCold));
        REQUIRE(eventually([&] { return readingsSince(rig, before) == 2; }));
        hands.wait("Under-cured");
    }
    REQUIRE(kiosk::shop::verdictStays(kiosk.state()));
    hands.scanCard(ActionCard::next);
    hands.wait("Under-cured"); // it stays until somebody says what was done
    hands.scanCard(ActionCard::beltSlower);
    REQUIRE(eventually([&] { return !kiosk::shop::verdictStays(kiosk.state()); }));
    {
        const auto probe = rig.plugIn(scenarioWith(kGood));
        REQUIRE(eventually([&] { return readingsSince(rig, before) == 3; }));
        hands.wait("Cured");
    }
    hands.scanCard(ActionCard::wipe);
    hands.wait("Wiping");
    hands.scanCard(ActionCard::takenOver);
    const auto actions = [&] { // hotter, belt slower, taken over
        const auto kinds = kindsFrom(rig.data(), before + 1);
        return std::count(kinds.begin(), kinds.end(), "action.taken");
    };
    REQUIRE(eventually([&] { return actions() >= 3; }));
    const auto kinds = kindsFrom(rig.data(), before + 1);
    CHECK(holds(kinds, "lot.closed")); // a change at the dryer ends the lot
    CHECK(newestReading(rig.data()).row.word == analytics::Word::cured);
}
