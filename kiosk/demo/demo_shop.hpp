#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <chrono>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

/// An invented shop: its people, dryer, inks, cloths, instruments and runs. Nothing in it is real.
namespace holdfast::kiosk::demo {

/// What a simulated print of a run goes through.
struct DemoRide final {
    std::int64_t run = 0; ///< number
    double peakFahrenheit = 0.0;
    int silentSeconds = 0; ///< around the top: the probe says nothing
    int minutesAgo = 0;    ///< in the history
};

/// Ids of things, made by the caller so that this file stays pure data.
using MakeId = std::function<std::string()>;

struct DemoShop final {
    std::vector<records::Record> records; ///< in order, the book's first entries
    std::vector<ledger::PersonName> names;
    std::string dryer; ///< id
};

inline constexpr const char* kDemoProbe = "P-3";
inline constexpr const char* kDemoCatalogueId = "line-type-k-celsius";

[[nodiscard]] DemoShop demoShop(const MakeId& makeId, std::chrono::sys_days today, const std::string& probeAddress);

/// The rides of the history, oldest first; a run scanned in the demo rides the same way again.
[[nodiscard]] const std::vector<DemoRide>& demoRides();

} // namespace holdfast::kiosk::demo
