#include "tests/kiosk/e2e/support/rig.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/demo/demo_history.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <memory>
#include <system_error>

#include <unistd.h>

namespace holdfast::tests {

namespace {

constexpr std::uint64_t kSeed = 7;
constexpr double kRideAtSeconds = 20.0;
constexpr double kSecondsInside = 40.0;
constexpr int kTicketWidth = 4;

} // namespace

TemporaryFolder::TemporaryFolder() {
    auto name = (std::filesystem::temp_directory_path() / "holdfast-e2e-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    m_path = name;
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(m_path, ignored);
}

QString text(const std::filesystem::path& path) {
    return QString::fromStdString(path.string());
}

drivers::MonotonicTime seconds(double count) {
    return drivers::MonotonicTime{static_cast<std::int64_t>(count * 1e6)};
}

const drivers::InstrumentDescription& probeDescription() {
    const auto* description = drivers::findInstrument("line-type-k-celsius");
    REQUIRE(description != nullptr);
    return *description;
}

drivers::Scenario scenarioWith(double peakFahrenheit, std::vector<drivers::Trouble> troubles) {
    drivers::Scenario scenario;
    scenario.seed = kSeed;
    scenario.rides.push_back({seconds(kRideAtSeconds), (peakFahrenheit - 32.0) * 5.0 / 9.0, kSecondsInside});
    scenario.troubles = std::move(troubles);
    return scenario;
}

std::int64_t countAt(const drivers::Scenario& scenario, std::int64_t index) {
    const auto& description = probeDescription();
    const double celsius = scenario.celsiusAt(index * drivers::MonotonicTime{description.interval}) +
                           scenario.noiseCelsius * drivers::noiseAt(scenario.seed, index);
    return std::llround(celsius / description.scale().step);
}

Rig::Rig(double speed)
    : m_clock{speed, drivers::SystemClock{}.wall()}, m_speed{speed}, m_scanner{at("scanner").string()} {}

/// Of the twelve days alone: the eighteen months before them take a first start several seconds.
QStringList Rig::demoArguments() const {
    ensureApplication();
    REQUIRE(kiosk::demo::makeDemoBook(data(), m_clock.wall(), (data() / "demo-probe").string(),
                                      kiosk::demo::DemoSize::twelveDays));
    return {QStringLiteral("--demo"),
            QStringLiteral("--data"),
            text(data()),
            QStringLiteral("--probe-port"),
            QString::fromStdString(probePort()),
            QStringLiteral("--scanner-port"),
            text(scannerPort()),
            QStringLiteral("--speed"),
            QString::number(m_speed)};
}

std::unique_ptr<drivers::SimulatedProbe> Rig::plugIn(const drivers::Scenario& scenario) const {
    return std::make_unique<drivers::SimulatedProbe>(probeDescription(), scenario, m_clock, "004217", probePort());
}

void Rig::scanRun(std::uint64_t number) {
    scan(drivers::encode(drivers::TicketKind::run, number, kTicketWidth));
}

void Rig::scanWhole(const std::string& code) {
    const auto bytes = code + "\r\n";
    std::string_view left = bytes;
    REQUIRE(eventually([&] {
        left.remove_prefix(m_scanner.offer(left));
        return left.empty();
    }));
}

std::unique_ptr<drivers::SimulatedProbe> ride(Rig& rig, const KioskProcess& kiosk, const drivers::Scenario& scenario,
                                              std::uint64_t run) {
    auto probe = rig.plugIn(scenario);
    REQUIRE(eventually([&] { return kiosk.hasOpen(rig.probePort()); }));
    rig.scanRun(run);
    return probe;
}

void waitForEntry(KioskProcess& kiosk, const Rig& rig, std::int64_t before) {
    const bool grown = eventually([&] { return entriesIn(rig.data()) > before || !kiosk.alive(); });
    INFO("alive: " << kiosk.alive() << ", said: " << kiosk.said()
                   << ", rides spooled: " << spoolsIn(rig.data()).size());
    REQUIRE(grown);
    REQUIRE(entriesIn(rig.data()) > before);
}

} // namespace holdfast::tests
