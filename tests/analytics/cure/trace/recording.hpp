#pragma once

#include "analytics/cure/trace_facts.hpp"

#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

/// Recordings made of straight lines, for the tests of this folder.
namespace holdfast::analytics::testing {

struct Knot final {
    double seconds = 0.0;
    double celsius = 0.0;
};

inline double onLines(const std::vector<Knot>& knots, double seconds) {
    if (seconds <= knots.front().seconds) {
        return knots.front().celsius;
    }
    for (std::size_t i = 1; i < knots.size(); ++i) {
        if (seconds <= knots[i].seconds) {
            const double share = (seconds - knots[i - 1].seconds) / (knots[i].seconds - knots[i - 1].seconds);
            return knots[i - 1].celsius + share * (knots[i].celsius - knots[i - 1].celsius);
        }
    }
    return knots.back().celsius;
}

inline TraceSample sampleAt(double seconds, double celsius) {
    return {MonotonicTime{std::llround(seconds * 1e6)}, Temperature::fromCelsius(celsius), false};
}

inline RawTrace along(const std::vector<Knot>& knots, double step = 0.25, double start = 1000.0) {
    RawTrace trace;
    const auto count = static_cast<int>(std::floor(knots.back().seconds / step + 1e-9));
    for (int i = 0; i <= count; ++i) {
        trace.samples.push_back(sampleAt(start + i * step, onLines(knots, i * step)));
    }
    return trace;
}

/// 25 °C, up at 4 °C/s to 165 °C at 40 s, level until 50 s, down at 4 °C/s below 60 °C, 30 °C at 90 s.
inline std::vector<Knot> rideKnots() {
    return {{0, 25}, {5, 25}, {40, 165}, {50, 165}, {83.75, 30}, {90, 30}};
}
inline RawTrace ride(double step = 0.25) {
    return along(rideKnots(), step);
}

inline RawTrace without(RawTrace trace, double fromSeconds, double toSeconds) {
    const MonotonicTime start = trace.samples.front().at;
    std::erase_if(trace.samples, [&](const TraceSample& s) {
        const double at = Duration{s.at - start}.count();
        return at > fromSeconds + 1e-9 && at < toSeconds - 1e-9;
    });
    return trace;
}

inline std::size_t indexAt(const RawTrace& trace, double seconds) {
    std::size_t i = 0;
    while (i + 1 < trace.samples.size() &&
           Duration{trace.samples[i].at - trace.samples.front().at}.count() < seconds - 1e-9) {
        ++i;
    }
    return i;
}

inline int dropped(const CleanedRecording& recording, DropWhy why) {
    return recording.dropped[static_cast<std::size_t>(why)];
}

inline bool samePass(const Pass& a, const Pass& b) {
    if (a.samples.size() != b.samples.size() || a.joins != b.joins || a.startsHot != b.startsHot ||
        a.unitInDoubt != b.unitInDoubt || a.everAbove80 != b.everAbove80) {
        return false;
    }
    for (std::size_t i = 0; i < a.samples.size(); ++i) {
        if (a.samples[i].at != b.samples[i].at || a.samples[i].t != b.samples[i].t) {
            return false;
        }
    }
    return true;
}

} // namespace holdfast::analytics::testing
