#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/simulated/simulated_probe.hpp"
#include "drivers/simulated/simulated_scanner.hpp"

#include <QStringList>

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::tests {

/// Removed with all that is in it.
class TemporaryFolder final {
public:
    TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    ~TemporaryFolder();
    [[nodiscard]] const std::filesystem::path& path() const noexcept { return m_path; }

private:
    std::filesystem::path m_path;
};

[[nodiscard]] QString text(const std::filesystem::path& path);

/// Seconds of clock time.
[[nodiscard]] drivers::MonotonicTime seconds(double count);
/// The demo's probe: five samples a second in steps of 0.1 °C.
[[nodiscard]] const drivers::InstrumentDescription& probeDescription();
/// One ride that comes under the heat after 20 s and leaves it, hottest, after 60 s.
[[nodiscard]] drivers::Scenario scenarioWith(double peakFahrenheit, std::vector<drivers::Trouble> troubles = {});
inline constexpr double kTopSeconds = 60.0;
inline constexpr double kPeak = 294.2;     ///< °F; cures the demo's run 20413
inline constexpr double kCold = 262.0;     ///< °F, far under it: inks that cure at 285 °F (contracts, Starters)
inline constexpr std::int64_t kHot = 1000; ///< counts: 100.0 °C
inline constexpr double kSpeed = 10.0;     ///< of a rig
/// What the probe says in its sample of that index, in steps: the scenario is a pure function.
[[nodiscard]] std::int64_t countAt(const drivers::Scenario& scenario, std::int64_t index);

/// A folder, a clock that both sides run by, a scanner that is always there, and the path of a probe.
class Rig final {
public:
    /// `speed`: clock seconds a second. Slow enough that a stalled machine does not make a gap.
    explicit Rig(double speed);

    [[nodiscard]] const drivers::Clock& clock() const noexcept { return m_clock; }
    [[nodiscard]] std::filesystem::path data() const { return m_folder.path() / "data"; }
    [[nodiscard]] std::filesystem::path at(const char* name) const { return m_folder.path() / name; }
    [[nodiscard]] std::filesystem::path scannerPort() const { return m_scanner.path(); }
    [[nodiscard]] std::string probePort() const { return at("probe").string(); }
    /// --demo on this folder, these ports and this speed.
    [[nodiscard]] QStringList demoArguments() const;

    /// Plugs a probe in, which begins its scenario now.
    [[nodiscard]] std::unique_ptr<drivers::SimulatedProbe> plugIn(const drivers::Scenario& scenario) const;
    void scan(std::string_view code) { m_scanner.scan(code); }
    void scanRun(std::uint64_t number);
    /// A scan of any length, handed over as the other side takes it.
    void scanWhole(const std::string& code);

private:
    TemporaryFolder m_folder;
    drivers::ScaledClock m_clock;
    double m_speed;
    drivers::SimulatedScanner m_scanner;
};

class KioskProcess;

/// Plugs the probe in and, once the kiosk has opened it, scans the run: its scanner has long been listened to by then,
/// where a scan in the moment of opening would be dropped with what an instrument had said before.
[[nodiscard]] std::unique_ptr<drivers::SimulatedProbe> ride(Rig& rig, const KioskProcess& kiosk,
                                                            const drivers::Scenario& scenario, std::uint64_t run);
/// Waits until more entries stand in the book than before; fails the test with what the kiosk said.
void waitForEntry(KioskProcess& kiosk, const Rig& rig, std::int64_t before);

} // namespace holdfast::tests
