#pragma once

#include "kiosk/shop/proving/proving_state.hpp"

#include <functional>
#include <string>
#include <utility>
#include <vector>

/// A shop floor for tests: a described probe, a strip, runs, and rides as batches of samples. What the machine wants
/// done is noted and answered only when a test says so.
namespace holdfast::kiosk::shop::testing {

inline constexpr double kStep = 0.1; // °C a count

[[nodiscard]] inline analytics::AuthoredTemperature fahrenheit(double value) {
    return {value, analytics::TemperatureUnit::fahrenheit};
}

struct Leg final {
    double toCelsius = 0;
    double seconds = 0;
};

/// Room for 30 s, up to the peak at 3 °C/s, ten seconds there, down to 45 °C at 3 °C/s, and six seconds more.
[[nodiscard]] std::vector<Leg> rideTo(double peakCelsius);

[[nodiscard]] KnownInstrument probeNamed(const std::string& name);
[[nodiscard]] KnownInstrument stripOf280To330F();
/// A spot thermometer, or a gun of ±2 °C, that is calibrated as the probe is.
[[nodiscard]] KnownInstrument handInstrument(const std::string& name, analytics::InstrumentKind kind,
                                             std::uint64_t number);
/// One layer of `family` (a starter of contracts.md) on `fabric`.
[[nodiscard]] std::shared_ptr<const AnnouncedRun> runOf(const std::string& family, const std::string& fabric,
                                                        std::int64_t number = 20418);

class Floor final {
public:
    Floor();

    void send(const ProvingEvent& event);
    /// Plugs a probe in.
    void plug(const std::string& probe);
    void announce(std::shared_ptr<const AnnouncedRun> run);
    /// Plays legs from where the probe is, five samples a second in batches of one second, with a tick after each.
    void play(const std::string& probe, const std::vector<Leg>& legs);
    /// The probe is somewhere else now.
    void place(const std::string& probe, double celsius);
    /// Two probes at once.
    void playTogether(const std::string& a, const std::vector<Leg>& legsOfA, const std::string& b,
                      const std::vector<Leg>& legsOfB);
    /// Time passes and nothing is sent.
    void wait(double seconds);
    /// Answers the oldest commit that was not yet answered.
    void commitDone();
    void commitFails(ledger::FailureCode code);
    [[nodiscard]] bool commitOpen() const { return m_answered < m_commits.size(); }

    [[nodiscard]] const ProvingState& state() const { return m_state; }
    [[nodiscard]] Stage stage() const { return stageOf(m_state); }
    [[nodiscard]] const std::vector<Commit>& commits() const { return m_commits; }
    [[nodiscard]] const std::vector<ProvingEffect>& effects() const { return m_effects; }
    [[nodiscard]] std::vector<drivers::Sample> spooled(std::int64_t spool) const;
    template <class E>
    [[nodiscard]] std::vector<E> all() const {
        std::vector<E> found;
        for (const auto& effect : m_effects) {
            if (const auto* one = std::get_if<E>(&effect)) {
                found.push_back(*one);
            }
        }
        return found;
    }
    /// Readings (also refused ones and corrections) in commit n.
    [[nodiscard]] std::vector<records::Record> readingsIn(std::size_t commit) const;
    [[nodiscard]] MonotonicTime now() const { return m_now; }
    /// Called after every event.
    std::function<void(const ProvingState& state)> check;

private:
    struct Cursor {
        double celsius = 25.0;
    };
    void second(const std::vector<std::pair<std::string, std::vector<double>>>& batches);

    ProvingState m_state;
    std::vector<ProvingEffect> m_effects;
    std::vector<Commit> m_commits;
    std::size_t m_answered = 0;
    std::int64_t m_lastSequence = 100;
    MonotonicTime m_now{0};
    std::map<std::string, Cursor> m_cursors;
};

} // namespace holdfast::kiosk::shop::testing
