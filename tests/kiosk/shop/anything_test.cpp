#include "drivers/protocol/ticket_code.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>
#include <limits>
#include <map>
#include <random>
#include <set>

// Whatever happens in whatever order: nothing is shown before it is kept, and nothing that was recorded is lost.
using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
namespace ledger = holdfast::kiosk::ledger;
namespace drivers = holdfast::drivers;
namespace records = holdfast::kiosk::records;

namespace {

class Anything final {
public:
    explicit Anything(unsigned seed) : m_random{seed} {
        auto spot = probeNamed("S-1");
        spot.kind = holdfast::analytics::InstrumentKind::spot;
        m_floor.send(InstrumentsLoaded{{probeNamed("P-3"), probeNamed("P-4"), stripOf280To330F(), spot},
                                       holdfast::analytics::starterFamilies(),
                                       holdfast::analytics::GuardSetting{}});
        m_floor.plug("P-3");
        m_floor.plug("P-4");
        m_floor.check = [this](const ProvingState& state) { nothingIsShownBeforeItIsKept(state); };
    }

    void anyEvent() {
        switch (pick(28)) {
        case 0:
        case 1:
            return m_floor.announce(runOf("standard", "100% cotton", pick(3) + 1));
        case 2:
        case 3:
        case 4:
            return m_floor.play(probe(), {{static_cast<double>(20 + pick(180)), static_cast<double>(5 + pick(60))}});
        case 5:
            return m_floor.playTogether("P-3", rideTo(90 + pick(100)), "P-4", rideTo(90 + pick(100)));
        case 6:
            return m_floor.wait(pick(2) == 0 ? 3 : 320);
        case 7:
        case 8:
            return answer();
        case 9:
            return m_floor.send(StopPressed{});
        case 10:
            return m_floor.send(RetakePressed{});
        case 11:
            return m_floor.send(RetryPressed{});
        case 12:
            return m_floor.send(NextPressed{});
        case 13:
            return strip();
        case 14:
            return failSpool();
        case 15:
        case 16:
            return m_floor.send(ActionPressed{static_cast<ActionCard>(pick(26))});
        case 17:
            return m_floor.send(BeltLeft{"run-" + std::to_string(pick(3) + 1)});
        case 18:
            return traces();
        case 19:
            return byHand();
        case 20:
            return flash();
        case 21:
            return m_floor.send(PlacementChosen{static_cast<holdfast::analytics::Placement>(pick(3))});
        case 22:
            return m_floor.send(PiecesTyped{"run-" + std::to_string(pick(3) + 1), pick(600) - 20});
        case 23:
            return m_floor.send(dryer());
        case 24:
            return m_floor.send(FreshIds{{}, {static_cast<std::uint64_t>(pick(1000)), 7}});
        case 25:
            return m_floor.send(PiecesPulsed{pick(600) - 20});
        case 26:
            return m_floor.send(CounterLink{pick(2) == 0});
        default:
            return scan();
        }
    }

    /// Everything that is still under way comes to its end.
    void settle() {
        m_floor.wait(400);
        for (int i = 0; i < 200 && !m_floor.state().pending.empty(); ++i) {
            m_floor.send(RetryPressed{});
            if (m_floor.commitOpen()) {
                done();
            }
        }
    }

    void everyRideIsKeptOnce() {
        REQUIRE(m_floor.state().pending.empty());
        std::set<std::int64_t> redundant;
        for (const auto key : m_done) {
            for (const auto& commit : m_floor.commits()) {
                if (commit.key == key) {
                    redundant.insert(commit.spools.begin(), commit.spools.end());
                }
            }
        }
        std::set<std::int64_t> discarded;
        for (const auto& one : m_floor.all<DiscardSpool>()) {
            discarded.insert(one.spool);
        }
        for (const auto& open : m_floor.all<OpenSpool>()) {
            INFO("spool " << open.spool);
            CHECK(redundant.count(open.spool) + discarded.count(open.spool) == 1); // never both, never neither
            if (discarded.count(open.spool) == 1) {
                bool cooling = true; // of the ride before, which was ended by a press while it was hot
                double before = std::numeric_limits<double>::infinity();
                for (const auto& sample : m_floor.spooled(open.spool)) {
                    const double celsius = static_cast<double>(sample.counts) * kStep;
                    cooling = cooling && celsius <= before;
                    before = celsius;
                    REQUIRE((cooling || celsius <= 80.0)); // it was no ride
                }
            }
        }
        CHECK(std::set<std::int64_t>(m_done.begin(), m_done.end()).size() == m_done.size());
    }

    /// Every lot is opened before its first reading, once, and ended at most once.
    void everyLotIsOpenedOnce() {
        std::set<std::string> opened;
        std::set<std::string> closed;
        for (const auto& commit : m_floor.commits()) {
            for (const auto& record : commit.records) {
                if (const auto* lot = std::get_if<records::LotOpened>(&record)) {
                    CHECK(opened.insert(lot->lot).second);
                } else if (const auto* end = std::get_if<records::LotClosed>(&record)) {
                    CHECK(opened.count(end->lot) == 1);
                    CHECK(closed.insert(end->lot).second);
                } else if (const auto* taken = std::get_if<records::ReadingTaken>(&record); taken && taken->lot) {
                    CHECK(opened.count(*taken->lot) == 1);
                }
            }
        }
        for (const auto& run : m_floor.state().belt) {
            CHECK(closed.count(run->lotId) == 0); // the next reading is of a lot that goes on
        }
    }

    /// What is held or missed belongs to a lot that stands in the book; each hold is placed once, and changed after.
    void everyHoldHasItsLot() {
        std::set<std::string> opened;
        std::set<std::string> placed;
        for (const auto& commit : m_floor.commits()) {
            for (const auto& record : commit.records) {
                if (const auto* lot = std::get_if<records::LotOpened>(&record)) {
                    opened.insert(lot->lot);
                } else if (const auto* hold = std::get_if<records::HoldPlaced>(&record)) {
                    CHECK(opened.count(hold->lot) == 1);
                    CHECK(placed.insert(hold->hold).second);
                    CHECK((!hold->pieces || hold->count.value_or(0) >= 1));
                } else if (const auto* changed = std::get_if<records::HoldChanged>(&record)) {
                    CHECK(placed.count(changed->hold) == 1);
                } else if (const auto* missed = std::get_if<records::ReadingMissed>(&record)) {
                    CHECK(opened.count(missed->lot) == 1);
                }
            }
        }
    }

    [[nodiscard]] std::size_t kept() const { return m_done.size(); }

private:
    int pick(int below) { return std::uniform_int_distribution<int>{0, below - 1}(m_random); }
    std::string probe() { return pick(2) == 0 ? "P-3" : "P-4"; }

    FloorLoaded dryer() {
        FloorLoaded loaded;
        loaded.dryer.emplace();
        loaded.dryer->described.dryer = "dryer";
        loaded.dryer->described.heatedLengthMetres = 2.5;
        loaded.dryer->described.piecesPerMetre = 4.0 * pick(3);
        loaded.dryer->beltMetresPerMinute = 1.5 * pick(3);
        loaded.nextBin = pick(5);
        return loaded;
    }

    void done() {
        const auto before = m_floor.state().pending.front().key;
        m_done.push_back(before);
        m_floor.commitDone();
    }

    void answer() {
        if (!m_floor.commitOpen()) {
            return;
        }
        if (pick(3) == 0) {
            m_floor.commitFails(pick(2) == 0 ? ledger::FailureCode::diskFull : ledger::FailureCode::folderReadOnly);
        } else {
            done();
        }
    }

    void strip() {
        m_floor.send(StripOpened{});
        m_floor.send(StripStepTouched{pick(13) - 1});
        m_floor.send(StripKept{});
    }

    void byHand() {
        m_floor.send(HandOpened{pick(4) == 0 ? "P-3" : ""});
        m_floor.send(HandTyped{typed()});
        m_floor.send(HandBeforeTyped{typed()});
        m_floor.send(ShotPlaceChosen{static_cast<holdfast::analytics::ShotPlace>(pick(2))});
        m_floor.send(pick(3) == 0 ? ProvingEvent{HandLeft{}} : ProvingEvent{HandKept{}});
    }

    void flash() {
        m_floor.send(FlashOpened{});
        m_floor.send(FlashLayerChosen{pick(4) - 1});
        m_floor.send(FlashTyped{typed()});
        m_floor.send(pick(3) == 0 ? ProvingEvent{FlashLeft{}} : ProvingEvent{FlashKept{}});
    }

    std::optional<holdfast::analytics::AuthoredTemperature> typed() {
        const auto unit = static_cast<holdfast::analytics::TemperatureUnit>(pick(2));
        return pick(5) == 0 ? std::nullopt
                            : std::optional{holdfast::analytics::AuthoredTemperature{pick(600) - 100.0, unit}};
    }

    /// The oldest trace that was asked for comes, or does not.
    void traces() {
        const auto asked = m_floor.all<LoadTrace>();
        if (asked.empty()) {
            return m_floor.send(ClaimPressed{"entry-" + std::to_string(101 + pick(20))});
        }
        m_floor.send(TraceNotLoaded{asked.back().reading});
    }

    void failSpool() {
        for (const auto& probe : m_floor.state().probes) {
            if (probe.recording && probe.recording->spool != 0) {
                m_floor.send(SpoolFailed{probe.recording->spool, {ledger::FailureCode::diskFull, "made up"}});
                return;
            }
        }
    }

    void scan() {
        std::string bytes(static_cast<std::size_t>(pick(40)), '\0');
        for (auto& byte : bytes) {
            byte = static_cast<char>(pick(256));
        }
        m_floor.send(ScannedText{bytes});
    }

    void nothingIsShownBeforeItIsKept(const ProvingState& state) const {
        if (!state.verdict) {
            return;
        }
        REQUIRE_FALSE(state.shownReadings.empty());
        for (const auto& id : state.shownReadings) {
            const bool stands = std::any_of(state.kept.begin(), state.kept.end(),
                                            [&](const KeptReading& one) { return one.id == id && one.sequence > 0; });
            REQUIRE(stands);
        }
    }

    std::mt19937 m_random;
    Floor m_floor;
    std::vector<std::int64_t> m_done;
};

} // namespace

TEST_CASE("whatever happens, nothing is shown before it is kept and every ride is kept once", "[shop][property]") {
    std::size_t kept = 0;
    for (unsigned seed = 1; seed <= 100; ++seed) {
        INFO("seed " << seed);
        Anything anything{seed};
        for (int i = 0; i < 60; ++i) {
            anything.anyEvent();
        }
        anything.settle();
        anything.everyRideIsKeptOnce();
        anything.everyLotIsOpenedOnce();
        anything.everyHoldHasItsLot();
        kept += anything.kept();
    }
    CHECK(kept > 200); // the sequences did something
}

TEST_CASE("the same events give the same state and the same effects", "[shop][property]") {
    const auto told = [] {
        Floor floor;
        floor.plug("P-3");
        floor.announce(runOf("standard", "100% cotton"));
        floor.play("P-3", rideTo(168));
        floor.commitDone();
        return std::pair{floor.effects().size(), floor.commits().at(0).trace};
    };
    CHECK(told() == told());
}
