#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/spool.hpp"
#include "kiosk/ledger/writer.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/shop/proving/proving_desk.hpp"

#include <QCoreApplication>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <unistd.h>

using namespace holdfast::kiosk::shop;
using holdfast::analytics::Word;
namespace a = holdfast::analytics;
namespace drivers = holdfast::drivers;
namespace ledger = holdfast::kiosk::ledger;
namespace records = holdfast::kiosk::records;

namespace {

QCoreApplication& application() {
    static int count = 1;
    static char name[] = "desk_test";
    static char* arguments[] = {name, nullptr};
    static QCoreApplication app{count, arguments};
    return app;
}

/// A book with starters, a probe in date and run 20418, and a desk on it.
class Kiosk final {
public:
    Kiosk() : m_folder{std::filesystem::temp_directory_path() / ("holdfast-desk-" + std::to_string(::getpid()))} {
        application();
        std::filesystem::remove_all(m_folder);
        openBook(ledger::OpenMode::firstStart);
        fill();
        openDesk();
    }
    ~Kiosk() {
        closeDesk();
        m_writer.reset();
        m_book.reset();
        std::filesystem::remove_all(m_folder);
    }

    void restart() {
        closeDesk();
        m_writer.reset();
        m_book.reset();
        openBook(ledger::OpenMode::readWrite);
        openDesk();
    }

    /// Lets queued calls and the writer's answers arrive until the condition holds.
    template <class Condition>
    bool until(Condition holds) {
        for (int i = 0; i < 400 && !holds(); ++i) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents); // woken at the latest by the desk's tick
        }
        return holds();
    }
    bool untilStage(Stage stage) {
        return until([&] { return stageOf(m_desk->state()) == stage; });
    }

    void announce() {
        m_desk->onLink("P-3", drivers::LinkStatus{drivers::LinkState::ready, "x", "y"}, 0.1, false);
        m_desk->onScan("20418");
        REQUIRE(untilStage(Stage::window));
    }
    void leg(double from, double to, int seconds) {
        for (int s = 0; s < seconds; ++s) {
            QVector<drivers::Sample> batch;
            for (int i = 1; i <= 5; ++i) {
                const double part = (s + i / 5.0) / seconds;
                batch.push_back({m_clock.now() + drivers::MonotonicTime{i * 200'000},
                                 std::llround((from + (to - from) * part) * 10), drivers::SampleFlag::none});
            }
            m_clock.advance(std::chrono::seconds{1});
            m_desk->onSamples("P-3", batch);
        }
    }
    void rideToTop(double peak = 168) {
        leg(25, 25, 10);
        leg(25, peak, 48);
        leg(peak, peak, 10);
    }
    /// First order, as a film warms in air of 190 °C and cools outside.
    void heatedRide() {
        constexpr double kRoom = 25.0;
        constexpr double kAir = 190.0;
        constexpr int kInTunnel = 45;
        const double peak = kAir - (kAir - kRoom) * std::exp(-kInTunnel / 20.0);
        leg(kRoom, kRoom, 10);
        double t = kRoom;
        for (int s = 1; s <= kInTunnel + 90; ++s) {
            const double next = s <= kInTunnel ? kAir - (kAir - kRoom) * std::exp(-s / 20.0)
                                               : kRoom + (peak - kRoom) * std::exp(-(s - kInTunnel) / 40.0);
            leg(t, next, 1);
            t = next;
        }
    }
    void coolDown(double peak = 168) { leg(peak, 45, 41); }

    [[nodiscard]] ProvingDesk& desk() { return *m_desk; }
    [[nodiscard]] ledger::Book& book() { return *m_book; }
    [[nodiscard]] std::size_t spools() const { return ledger::Spool::findLeftOver(m_folder)->size(); }

private:
    void openBook(ledger::OpenMode mode) {
        auto opened = ledger::Book::open(m_folder, std::make_shared<const records::ShopProjection>(), mode);
        REQUIRE(opened);
        m_book = std::move(*opened);
        m_writer = std::make_unique<ledger::Writer>(*m_book);
    }
    void openDesk() {
        m_desk = std::make_unique<ProvingDesk>(
            DeskNeeds{*m_book, *m_writer, m_clock, [this] { return random(); }, "kiosk", "dryer"});
        m_desk->start();
        REQUIRE(until([&] { return !m_desk->state().instruments.empty(); }));
    }
    void closeDesk() {
        m_desk.reset();
        QCoreApplication::processEvents();
    }
    ledger::UuidRandom random() {
        ledger::UuidRandom bytes{};
        bytes.back() = static_cast<std::uint8_t>(++m_random);
        bytes.at(8) = static_cast<std::uint8_t>(m_random / 256);
        return bytes;
    }
    void tell(const records::Record& record) {
        ledger::EntryDraft draft;
        draft.id = m_ids.next(1'772'000'000'000, random());
        draft.kiosk = "kiosk";
        draft.kind = records::rowOf(record).kind;
        draft.body = records::bodyOf(record);
        const auto told = m_book->commit({{draft}, {}});
        INFO((told ? std::string{} : told.error().what));
        REQUIRE(told);
    }
    void fill() {
        for (const auto& family : a::starterFamilies()) {
            tell(records::recordOf(family, a::TemperatureUnit::fahrenheit));
        }
        for (const auto& fabric : a::starterFabrics()) {
            tell(records::recordOf(fabric, a::TemperatureUnit::fahrenheit));
        }
        records::InstrumentDescribed probe;
        probe.instrument = "probe-3";
        probe.spec.name = "P-3";
        probe.spec.type = a::ThermocoupleType::k;
        probe.spec.toleranceClass = a::ToleranceClass::iecClass1;
        tell(probe);
        const auto today = std::chrono::floor<std::chrono::days>(
            std::chrono::sys_time<std::chrono::milliseconds>{std::chrono::milliseconds{1'772'000'000'000}});
        tell(records::CheckDone{"probe-3", {a::CheckKind::ice, true, today, today + std::chrono::days{7}}, {}});
        records::RunPlanned plan;
        plan.run = "run-20418";
        plan.number = 20418;
        plan.fabric = "100% cotton";
        plan.layers = {{"white", "standard", {{"standard", 1.0}}}};
        tell(plan);
    }

    std::filesystem::path m_folder;
    drivers::ManualClock m_clock{{1'772'000'000'000, 0}};
    std::unique_ptr<ledger::Book> m_book;
    std::unique_ptr<ledger::Writer> m_writer;
    ledger::UuidSequence m_ids;
    unsigned m_random = 0;
    std::unique_ptr<ProvingDesk> m_desk;
};

} // namespace

TEST_CASE("from scan to verdict the desk needs no touch, and the verdict stands in the book", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.announce();
    kiosk.rideToTop();
    CHECK(stageOf(kiosk.desk().state()) == Stage::recording);
    kiosk.coolDown();
    REQUIRE(kiosk.untilStage(Stage::verdict));
    CHECK(kiosk.desk().state().verdict->word == Word::cured);
    const auto rows = records::latestReadings(kiosk.book().reader(), 5);
    REQUIRE(rows);
    REQUIRE(rows->size() == 1);
    CHECK(rows->at(0).word == Word::cured);
    CHECK(rows->at(0).runNumber == 20418);
    CHECK(rows->at(0).lotNumber == 1);
    const auto digest = ledger::fromHex(rows->at(0).trace);
    REQUIRE(digest);
    CHECK(kiosk.book().blob(*digest));
    CHECK(kiosk.spools() == 0);
    CHECK(kiosk.book().check()->sound());
}

TEST_CASE("after a restart the dryer's usual is made of the good rides in the book", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.announce();
    for (std::size_t i = 1; i <= 2; ++i) {
        kiosk.heatedRide();
        REQUIRE(kiosk.until([&] { return kiosk.desk().state().goodRides.size() == i; }));
    }
    const auto before = kiosk.desk().state().goodRides;
    kiosk.restart();
    REQUIRE(kiosk.until([&] { return kiosk.desk().state().goodRides.size() == 2; }));
    for (std::size_t i = 0; i < 2; ++i) {
        const auto& now = kiosk.desk().state().goodRides[i].ride;
        CHECK(now.fit.curve.tau.count() == Approx(before[i].ride.fit.curve.tau.count()));
        CHECK(now.fit.curve.air.celsius() == Approx(before[i].ride.fit.curve.air.celsius()));
    }
}

TEST_CASE("after a run is finished a change at the dryer is written, and nothing hangs", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.announce();
    kiosk.heatedRide();
    REQUIRE(kiosk.untilStage(Stage::verdict));
    const auto lot = *kiosk.desk().state().kept.at(0).reading.lot;
    bool finished = false;
    kiosk.desk().keep(
        {{records::LotClosed{lot, 36, records::LotEnd::runEnded}, records::RunFinished{"run-20418", 36, std::nullopt}}},
        [&](const std::optional<ledger::Failure>& failure) { finished = !failure; });
    REQUIRE(kiosk.until([&] { return finished; }));
    kiosk.desk().send(ActionPressed{ActionCard::beltSlower});
    REQUIRE(kiosk.until([&] { return kiosk.desk().state().pending.empty(); }));
    CHECK(kiosk.desk().state().floor.lastAction->kept);
    CHECK(kiosk.book().check()->sound());
}

TEST_CASE("after a power cut the spool becomes a reading cut off, never cured", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.announce();
    kiosk.rideToTop();
    REQUIRE(kiosk.until([&] { return kiosk.spools() == 1; }));
    kiosk.restart();
    REQUIRE(kiosk.until([&] { return kiosk.desk().state().kept.size() == 1; }));
    const auto& kept = kiosk.desk().state().kept.at(0);
    CHECK(kept.fromSpool);
    REQUIRE(kept.run);
    CHECK(kept.run->onFile.plan.number == 20418);
    CHECK(kept.reading.verdict->word != Word::cured);
    CHECK(kiosk.spools() == 0);
    kiosk.restart();
    CHECK(records::latestReadings(kiosk.book().reader(), 5)->size() == 1); // once, not again
}

TEST_CASE("a book that turned read-only keeps the ride in its spool and says so", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.announce();
    kiosk.book().makeReadOnly({ledger::FailureCode::newerBook, "made up"});
    kiosk.rideToTop();
    kiosk.coolDown();
    REQUIRE(kiosk.untilStage(Stage::notKept));
    CHECK_FALSE(kiosk.desk().state().verdict);
    CHECK(kiosk.desk().state().pending.at(0).failure->code == ledger::FailureCode::newerBook);
    CHECK(kiosk.spools() == 1);
}

TEST_CASE("a run that is not in the book is refused", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.desk().onScan("404");
    REQUIRE(kiosk.until([&] { return kiosk.desk().state().refusal.has_value(); }));
    CHECK(kiosk.desk().state().refusal->cause == RefusalCause::runNotFound);
}

TEST_CASE("a bad reading asks after a restart too what was done, until an action answers it", "[shop][desk]") {
    Kiosk kiosk;
    kiosk.announce();
    kiosk.rideToTop(150);
    kiosk.coolDown(150);
    REQUIRE(kiosk.untilStage(Stage::verdict));
    const auto id = kiosk.desk().state().shownReadings.at(0);
    kiosk.restart();
    const auto& floor = kiosk.desk().state().floor;
    REQUIRE(kiosk.until([&] { return floor.unanswered.size() == 1; }));
    CHECK(floor.unanswered[0].id == id);
    kiosk.desk().send(ActionPressed{ActionCard::beltSlower});
    REQUIRE(kiosk.until([&] { return floor.unanswered.empty(); }));
    const auto actions = records::unanswered(kiosk.book().reader());
    REQUIRE(actions);
    CHECK(actions->empty());
    kiosk.announce();
    CHECK(kiosk.desk().state().run->lotId != ""); // and the run goes on
    CHECK(kiosk.book().check()->sound());
}

TEST_CASE("a ride that nobody announced is judged again, from the book, for the run that a scan names",
          "[shop][desk]") {
    Kiosk kiosk;
    kiosk.desk().onLink("P-3", drivers::LinkStatus{drivers::LinkState::ready, "x", "y"}, 0.1, false);
    kiosk.rideToTop();
    kiosk.coolDown();
    REQUIRE(kiosk.until([&] { return kiosk.desk().state().floor.unclaimed.size() == 1; }));
    kiosk.restart();
    const auto& floor = kiosk.desk().state().floor;
    REQUIRE(kiosk.until([&] { return floor.unclaimed.size() == 1; }));
    kiosk.desk().send(ClaimPressed{floor.unclaimed[0].id});
    kiosk.desk().onScan("20418");
    REQUIRE(kiosk.untilStage(Stage::verdict));
    CHECK(kiosk.desk().state().verdict->word == Word::cured);
    const auto rows = records::latestReadings(kiosk.book().reader(), 5);
    REQUIRE(rows);
    REQUIRE(rows->size() == 1);
    CHECK(rows->at(0).runNumber == 20418);
    CHECK(rows->at(0).lotNumber == 1);
    CHECK(rows->at(0).word == Word::cured);
    REQUIRE(kiosk.until([&] { return floor.unclaimed.empty(); }));
}

TEST_CASE("who signed stands in every entry of the commit, and in no other", "[desk]") {
    Kiosk kiosk;
    const auto before = kiosk.book().head()->sequence;
    std::optional<ledger::Failure> failure;
    int answers = 0;
    const auto then = [&](const std::optional<ledger::Failure>& told) {
        failure = told;
        ++answers;
    };
    DeskKeeping settings{
        {records::SettingChanged{"risk_percent", 5.0}, records::SettingChanged{"theme", std::string{"dark"}}}};
    settings.ids = {"00000000-0000-7000-8000-000000000007"};
    settings.signedBy = 7;
    kiosk.desk().keep(settings, then);
    kiosk.desk().keep({{records::CrewChanged{{1}, 0}}}, then);
    REQUIRE(kiosk.until([&] { return answers == 2; }));
    CHECK_FALSE(failure);
    CHECK(kiosk.book().entry(before + 1)->id == "00000000-0000-7000-8000-000000000007");
    CHECK(kiosk.book().entry(before + 1)->person == 7);
    CHECK(kiosk.book().entry(before + 2)->person == 7);
    CHECK(kiosk.book().entry(before + 3)->person == 0);
}
