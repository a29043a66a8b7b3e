#include "kiosk/demo/demo_history.hpp"

#include "drivers/protocol/ticket_code.hpp"
#include "drivers/simulated/scenario.hpp"
#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/shop/proving/proving_desk.hpp"

#include <QCoreApplication>
#include <QThread>

#include <algorithm>
#include <cmath>
#include <random>

namespace holdfast::kiosk::demo {

namespace {

constexpr std::uint64_t kSeed = 20411;
constexpr double kStep = 0.1; // °C a count
constexpr int kSamplesPerSecond = 5;
constexpr double kSecondsInside = 40.0;
constexpr int kPreRollSeconds = 62;
constexpr int kWholeSeconds = 260;
constexpr int kMostLooked = 100'000; ///< readings looked through for the demo's own
constexpr const char* kKiosk = "019ac000-0000-7000-8000-000000000001";

/// The same numbers every time: the demo's ids and noise.
class DemoChance final {
public:
    ledger::UuidRandom bytes() {
        ledger::UuidRandom out{};
        for (auto& byte : out) {
            byte = static_cast<std::uint8_t>(m_engine() & 0xFFU);
        }
        return out;
    }

private:
    std::mt19937_64 m_engine{kSeed};
};

drivers::WallTime earlier(drivers::WallTime now, int minutes) {
    now.millisecondsSinceEpoch -= static_cast<std::int64_t>(minutes) * 60'000;
    return now;
}

ledger::Result<std::string> writeShop(ledger::Book& book, DemoChance& chance, drivers::WallTime at,
                                      const std::string& probeAddress) {
    ledger::UuidSequence ids;
    const auto makeId = [&] { return ids.next(static_cast<std::uint64_t>(at.millisecondsSinceEpoch), chance.bytes()); };
    const auto shop = demoShop(makeId, drivers::localDay(at), probeAddress);
    ledger::CommitRequest request;
    for (const auto& record : shop.records) {
        const auto& row = records::rowOf(record);
        request.entries.push_back({makeId(), kKiosk, at.millisecondsSinceEpoch, at.utcOffsetMinutes, 0,
                                   std::string{row.kind}, row.version, records::bodyOf(record)});
    }
    request.persons = shop.names;
    if (auto done = book.commit(request); !done) {
        return tl::unexpected(done.error());
    }
    return shop.dryer;
}

/// Empty if the book is no demo.
ledger::Result<std::string> dryerOfDemo(const ledger::Book& book) {
    const auto shop = records::shop(book.reader());
    const auto dryers = records::dryers(book.reader());
    const bool demo = shop && *shop && (*shop)->demo && dryers && !dryers->empty();
    return demo ? dryers->front().dryer : std::string{};
}

/// A first start that was interrupted goes on where it stopped.
std::vector<DemoRide> ridesNotKept(const ledger::Book& book) {
    std::vector<DemoRide> missing;
    const auto rows = records::latestReadings(book.reader(), kMostLooked);
    for (const auto& ride : demoRides()) {
        const bool kept = rows && std::any_of(rows->begin(), rows->end(),
                                              [&ride](const auto& row) { return row.runNumber == ride.run; });
        if (rows && !kept) {
            missing.push_back(ride);
        }
    }
    return missing;
}

/// Lets queued calls run until `done` says so; gives up after a minute's worth of short waits.
template <class Done>
bool pump(const Done& done) {
    constexpr int kMostWaits = 12'000;
    for (int i = 0; i < kMostWaits; ++i) {
        QCoreApplication::processEvents();
        if (done()) {
            return true;
        }
        QThread::msleep(5);
    }
    return false;
}

class History final {
public:
    History(shop::ProvingDesk& desk, drivers::ManualClock& clock) : m_desk{desk}, m_clock{clock} {}

    bool play(const DemoRide& ride, drivers::WallTime begin) {
        m_clock.setWall(begin);
        const auto number = static_cast<std::uint64_t>(ride.run);
        m_desk.send(shop::ScannedText{drivers::encode(drivers::TicketKind::run, number, 4)});
        if (!pump([&] { return m_desk.state().run && m_desk.state().run->onFile.plan.number == ride.run; })) {
            return false;
        }
        drivers::Scenario scenario;
        scenario.seed = number;
        scenario.rides.push_back({drivers::MonotonicTime{std::chrono::seconds{kPreRollSeconds}},
                                  (ride.peakFahrenheit - 32.0) * 5.0 / 9.0, kSecondsInside});
        for (int second = 0; second < kWholeSeconds; ++second) {
            sendSecond(scenario, ride, second);
        }
        const bool kept = pump([&] { return m_desk.state().verdict.has_value() && m_desk.state().pending.empty(); });
        m_desk.send(shop::NextPressed{});
        return kept;
    }

private:
    void sendSecond(const drivers::Scenario& scenario, const DemoRide& ride, int second) {
        QVector<drivers::Sample> samples;
        const auto begin = m_clock.now();
        const int top = kPreRollSeconds + static_cast<int>(kSecondsInside);
        const bool silent = std::abs(second - top) <= ride.silentSeconds / 2 && ride.silentSeconds > 0;
        for (int i = 0; i < kSamplesPerSecond && !silent; ++i) {
            const auto since = std::chrono::seconds{second} + std::chrono::milliseconds{1000 * i / kSamplesPerSecond};
            const double celsius =
                scenario.celsiusAt(since) +
                scenario.noiseCelsius * drivers::noiseAt(scenario.seed, second * kSamplesPerSecond + i);
            samples.append({begin + std::chrono::milliseconds{1000 * i / kSamplesPerSecond},
                            std::llround(celsius / kStep), drivers::SampleFlag::none});
        }
        if (!samples.isEmpty()) {
            m_desk.onSamples(QString::fromLatin1(kDemoProbe), samples);
        }
        m_clock.advance(std::chrono::seconds{1});
        m_desk.send(shop::Tick{m_clock.now()});
        QCoreApplication::processEvents();
    }

    shop::ProvingDesk& m_desk;
    drivers::ManualClock& m_clock;
};

} // namespace

ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                               const std::string& probeAddress) {
    const auto head = book.head();
    if (!head) {
        return tl::unexpected(head.error());
    }
    DemoChance chance;
    const auto begin = earlier(now, 600);
    auto dryer = head->sequence == 0 ? writeShop(book, chance, begin, probeAddress) : dryerOfDemo(book);
    if (!dryer) {
        return tl::unexpected(dryer.error());
    }
    const auto missing = ridesNotKept(book);
    if (dryer->empty() || missing.empty()) {
        return {};
    }
    drivers::ManualClock clock{begin};
    shop::ProvingDesk desk{{book, writer, clock, [&chance] { return chance.bytes(); }, kKiosk, *dryer}};
    desk.start();
    if (!pump([&] { return !desk.state().instruments.empty(); })) {
        return tl::unexpected(ledger::Failure{ledger::FailureCode::inputOutput, "the demo's instruments did not load"});
    }
    desk.onLink(QString::fromLatin1(kDemoProbe),
                {drivers::LinkState::ready, kDemoCatalogueId, "004217", drivers::LinkFault::none}, kStep, false);
    History history{desk, clock};
    for (const auto& ride : missing) {
        if (!history.play(ride, earlier(now, ride.minutesAgo))) {
            return tl::unexpected(ledger::Failure{ledger::FailureCode::inputOutput,
                                                  "ride " + std::to_string(ride.run) + " of the demo was not kept"});
        }
    }
    return {};
}

} // namespace holdfast::kiosk::demo
