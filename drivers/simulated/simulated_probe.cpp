#include "drivers/simulated/simulated_probe.hpp"

#include "drivers/protocol/line_framer.hpp"
#include "drivers/simulated/instrument_voice.hpp"
#include "drivers/simulated/pseudo_terminal.hpp"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <stop_token>
#include <thread>
#include <utility>

namespace holdfast::drivers {

namespace {

constexpr std::chrono::milliseconds kLongestNap{5}; // a clock that is moved by hand gives no notice
constexpr std::int64_t kMostAtOnce = 64;
constexpr std::size_t kLongestQuestion = 256;
constexpr std::size_t kNoiseBytes = 20;

/// What a receiver at another speed makes of a line: bytes without sense, mostly not text.
std::string noiseBytes(std::uint64_t seed, std::int64_t index) {
    std::string bytes;
    for (std::size_t i = 0; i < kNoiseBytes; ++i) {
        const double spread =
            noiseAt(seed, index * static_cast<std::int64_t>(kNoiseBytes) + static_cast<std::int64_t>(i));
        bytes.push_back(static_cast<char>(static_cast<unsigned char>(128 + static_cast<int>(spread * 40.0) % 128)));
    }
    return bytes;
}

} // namespace

/// The thread's side.
class SimulatedProbe::Instrument final {
public:
    Instrument(InstrumentDescription description, Scenario scenario, const Clock& clock, std::string serialNumber,
               std::string path)
        : m_description{std::move(description)}, m_scenario{std::move(scenario)}, m_clock{clock},
          m_voice{m_description, std::move(serialNumber)}, m_port{std::move(path)}, m_path{m_port.path()},
          m_begin{clock.now()}, m_thread{[this](const std::stop_token& stop) { run(stop); }} {}

    [[nodiscard]] const std::string& path() const noexcept { return m_path; }
    void setPlugged(bool plugged) noexcept { m_plugged = plugged; }
    void ride(double peakCelsius, double secondsInside) {
        const std::scoped_lock lock{m_mutex};
        const SimulatedRide added{m_clock.now() - m_begin, peakCelsius, secondsInside};
        const auto earlier = [](const SimulatedRide& a, const SimulatedRide& b) { return a.start < b.start; };
        m_scenario.rides.insert(std::upper_bound(m_scenario.rides.begin(), m_scenario.rides.end(), added, earlier),
                                added);
    }

private:
    void run(const std::stop_token& stop);
    void keepPlugged(const Trouble* trouble);
    void sendDue(MonotonicTime sinceBegin);
    void answerAll(const std::string& bytes);
    [[nodiscard]] std::string saidAt(MonotonicTime sinceBegin);
    [[nodiscard]] std::chrono::milliseconds nap() const noexcept;

    InstrumentDescription m_description;
    Scenario m_scenario; ///< under m_mutex
    std::mutex m_mutex;
    const Clock& m_clock;
    InstrumentVoice m_voice;
    PseudoTerminal m_port;
    const std::string m_path;
    MonotonicTime m_begin;
    std::atomic<bool> m_plugged{true};
    LineFramer m_questions{"\n", kLongestQuestion};
    std::int64_t m_nextIndex = 0;
    std::jthread m_thread; ///< last: ends before the rest goes
};

void SimulatedProbe::Instrument::run(const std::stop_token& stop) {
    while (!stop.stop_requested()) {
        const MonotonicTime sinceBegin = m_clock.now() - m_begin;
        {
            const std::scoped_lock lock{m_mutex};
            keepPlugged(m_scenario.troubleAt(sinceBegin));
        }
        if (!m_description.isScpi()) {
            sendDue(sinceBegin);
        }
        answerAll(m_port.receive(nap()));
    }
}

void SimulatedProbe::Instrument::keepPlugged(const Trouble* trouble) {
    const bool shall = m_plugged && !(trouble != nullptr && trouble->kind == TroubleKind::unplugged);
    if (shall && !m_port.isPlugged()) {
        m_port.plug();
    } else if (!shall && m_port.isPlugged()) {
        m_port.unplug();
    }
}

void SimulatedProbe::Instrument::sendDue(MonotonicTime sinceBegin) {
    const std::int64_t due = sinceBegin / MonotonicTime{m_description.interval};
    m_nextIndex = std::max(m_nextIndex, due + 1 - kMostAtOnce);
    std::string bytes;
    for (; m_nextIndex <= due; ++m_nextIndex) {
        bytes += saidAt(m_nextIndex * MonotonicTime{m_description.interval});
    }
    m_port.send(bytes);
}

void SimulatedProbe::Instrument::answerAll(const std::string& bytes) {
    for (const FramedLine& question : m_questions.feed(bytes)) {
        if (question && m_description.isScpi()) {
            const std::string reading = saidAt(m_clock.now() - m_begin);
            m_port.send(reading.empty() ? reading : m_voice.answer(*question, reading));
        }
    }
}

std::string SimulatedProbe::Instrument::saidAt(MonotonicTime sinceBegin) {
    const std::scoped_lock lock{m_mutex};
    const std::int64_t index = sinceBegin / MonotonicTime{m_description.interval};
    const double celsius = m_scenario.celsiusAt(sinceBegin) + m_scenario.noiseCelsius * noiseAt(m_scenario.seed, index);
    const Trouble* trouble = m_scenario.troubleAt(sinceBegin);
    if (trouble == nullptr) {
        return m_voice.reading(celsius);
    }
    switch (trouble->kind) {
    case TroubleKind::silence:
    case TroubleKind::unplugged:
        return {};
    case TroubleKind::openCircuit:
        return m_voice.status(SampleFlag::openCircuit);
    case TroubleKind::overRange:
        return m_voice.status(SampleFlag::outOfRange);
    case TroubleKind::glitch:
        return m_voice.reading(trouble->celsius);
    case TroubleKind::noise:
        return noiseBytes(m_scenario.seed, index);
    case TroubleKind::garbledLines:
        return "MODE?? 12 34" + m_description.terminator();
    case TroubleKind::otherUnit:
        return m_voice.otherUnit(celsius);
    }
    return {};
}

std::chrono::milliseconds SimulatedProbe::Instrument::nap() const noexcept {
    const MonotonicTime next = m_begin + m_nextIndex * MonotonicTime{m_description.interval};
    const MonotonicTime left = std::max(next - m_clock.now(), MonotonicTime{0});
    return m_description.isScpi() ? kLongestNap : std::min(realDelay(m_clock, left), kLongestNap);
}

SimulatedProbe::SimulatedProbe(InstrumentDescription description, Scenario scenario, const Clock& clock,
                               std::string serialNumber, std::string path)
    : m_instrument{std::make_unique<Instrument>(std::move(description), std::move(scenario), clock,
                                                std::move(serialNumber), std::move(path))} {}

SimulatedProbe::~SimulatedProbe() = default;

const std::string& SimulatedProbe::path() const noexcept {
    return m_instrument->path();
}

void SimulatedProbe::setPlugged(bool plugged) noexcept {
    m_instrument->setPlugged(plugged);
}

void SimulatedProbe::ride(double peakCelsius, double secondsInside) {
    m_instrument->ride(peakCelsius, secondsInside);
}

} // namespace holdfast::drivers
