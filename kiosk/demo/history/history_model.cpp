#include "kiosk/demo/history/history_model.hpp"

#include "kiosk/demo/history/history_parts.hpp"

#include <cmath>
#include <string_view>

namespace holdfast::kiosk::demo {
namespace {

using analytics::Duration;
using analytics::Temperature;
using analytics::TemperatureDifference;

std::vector<bool> workedDays(const HistoryPlan& plan) {
    std::vector<bool> worked(static_cast<std::size_t>(plan.days));
    for (int day = 0; day < plan.days; ++day) {
        const std::chrono::weekday weekday{plan.end - std::chrono::days{plan.days - day}};
        worked[static_cast<std::size_t>(day)] = weekday != std::chrono::Saturday && weekday != std::chrono::Sunday;
    }
    return worked;
}

} // namespace

HistoryFacts historyOf(const HistoryPlan& plan) {
    making::Making making{plan};
    making.worked = workedDays(plan);
    making.facts.firstDay = plan.end - std::chrono::days{plan.days};
    making.facts.days = plan.days;
    making::makeInstruments(making);
    making::makeChecks(making);
    making::makeBuckets(making);
    making::makeRuns(making);
    making::makeReadings(making);
    making::makeTests(making);
    making::makeComplaints(making);
    return std::move(making.facts);
}

TemperatureDifference plantedShift(const PlantedFailures& planted, DemoDryer dryer, int daysBack) noexcept {
    TemperatureDifference shift;
    if (planted.heatLoss && dryer == kHeatLoss.dryer && kHeatLoss.days.holds(daysBack)) {
        const double share = static_cast<double>(kHeatLoss.days.from - daysBack) /
                             static_cast<double>(kHeatLoss.days.from - kHeatLoss.days.until);
        shift += kHeatLoss.inAll * share;
    }
    if (planted.beltChange && dryer == kBeltChange.dryer && kBeltChange.days.holds(daysBack)) {
        shift += kBeltChange.shift;
    }
    return shift;
}

TemperatureDifference plantedError(const PlantedFailures& planted, const char* instrument, int daysBack) noexcept {
    const bool drifts = planted.instrumentDrift && std::string_view{instrument} == kInstrumentDrift.instrument &&
                        daysBack <= kInstrumentDrift.days.from && daysBack >= kInstrumentDrift.days.until;
    return drifts ? kInstrumentDrift.aDay * static_cast<double>(kInstrumentDrift.days.from - daysBack)
                  : TemperatureDifference{};
}

double washOutChance(TemperatureDifference trueMargin) noexcept {
    constexpr double kAtZero = -0.5;
    constexpr double kPerCelsius = -0.75;
    return 1.0 / (1.0 + std::exp(-(kAtZero + kPerCelsius * trueMargin.celsius())));
}

const char* nameOf(Ink ink) noexcept {
    constexpr std::array kNames{"standard", "low-cure", "blend", "water-based", "discharge", "silicone"};
    return kNames[static_cast<std::size_t>(ink)];
}

const char* nameOf(Cloth cloth) noexcept {
    constexpr std::array kNames{"100% cotton", "50/50 blend", "100% polyester"};
    return kNames[static_cast<std::size_t>(cloth)];
}

const char* nameOf(Finish finish) noexcept {
    constexpr std::array kNames{"none", "softened", "peached", "water-repellent"};
    return kNames[static_cast<std::size_t>(finish)];
}

Temperature cureOf(Ink ink) noexcept {
    constexpr std::array kFahrenheit{320.0, 285.0, 285.0, 320.0, 320.0, 265.0};
    return Temperature::fromFahrenheit(kFahrenheit[static_cast<std::size_t>(ink)]);
}

Duration holdOf(Ink ink) noexcept {
    constexpr std::array kSeconds{0.0, 0.0, 0.0, 90.0, 90.0, 60.0};
    return Duration{kSeconds[static_cast<std::size_t>(ink)]};
}

const std::vector<Temperature>& stripSteps() {
    static const auto kSteps = [] {
        constexpr int kCount = 17;
        std::vector<Temperature> steps;
        for (int i = 0; i < kCount; ++i) {
            steps.push_back(Temperature::fromFahrenheit(270.0 + 5.0 * i));
        }
        return steps;
    }();
    return kSteps;
}

} // namespace holdfast::kiosk::demo
