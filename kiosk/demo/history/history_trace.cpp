#include "kiosk/demo/history/history_trace.hpp"

#include "kiosk/demo/history/chance.hpp"

#include <cmath>

namespace holdfast::kiosk::demo {
namespace {

using analytics::Temperature;

constexpr double kStep = 0.1; ///< °C a count
constexpr double kRoom = 25.0;
constexpr double kCold = 55.0;       ///< under the 60 °C at which a pass ends
constexpr double kCoolingLag = 18.0; ///< s: well under the film rate of 15 °C/s
constexpr double kRisingLag = 19.0;  ///< s, as the simulated tunnel's film
constexpr std::int64_t kSecond = 1'000'000;

} // namespace

std::vector<ledger::TracePoint> shortRide(Temperature top, analytics::Duration hold, std::uint64_t seed) {
    Chance chance{seed};
    std::vector<ledger::TracePoint> points;
    points.reserve(128);
    const auto add = [&](double celsius, std::int64_t noise) {
        const auto at = static_cast<std::int64_t>(points.size()) * kSecond;
        points.push_back({at, std::llround(celsius / kStep) + noise, 0});
    };
    const bool held = hold.count() > 0.0;
    const double start = chance.between(22.0, 30.0);
    const int rise = held ? 60 : chance.between(36, 44);
    const double gone = 1.0 - std::exp(-rise / kRisingLag);
    for (int i = 0; i < rise; ++i) {
        const double part = (1.0 - std::exp(-i / kRisingLag)) / gone;
        add(start + (top.celsius() - start) * part, static_cast<std::int64_t>(chance.pick(3)) - 1);
    }
    add(top.celsius(), 0);
    for (int i = 0; i <= static_cast<int>(hold.count()); ++i) {
        add(top.celsius(),
            held ? static_cast<std::int64_t>(chance.pick(3)) : 6 + static_cast<std::int64_t>(chance.pick(4)));
    }
    add(top.celsius(), 0);
    double celsius = top.celsius();
    for (int i = 1; celsius > kCold; ++i) {
        celsius = kRoom + (top.celsius() - kRoom) * std::exp(-i / kCoolingLag);
        add(celsius, 0);
    }
    return points;
}

analytics::RawTrace rawTraceOf(const std::vector<ledger::TracePoint>& points) {
    analytics::RawTrace raw;
    raw.samples.reserve(points.size());
    for (const auto& point : points) {
        raw.samples.push_back({analytics::MonotonicTime{point.microseconds},
                               Temperature::fromCelsius(static_cast<double>(point.counts) * kStep), false});
    }
    raw.resolution = analytics::TemperatureDifference::fromCelsius(kStep);
    return raw;
}

} // namespace holdfast::kiosk::demo
