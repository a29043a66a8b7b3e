#pragma once

#include "analytics/quantity/temperature.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// A drum full: what was washed together shares its fate.
namespace holdfast::kiosk::records {

/// load.washed: one cycle of a machine with everything that was in the drum.
struct LoadWashed final {
    std::string load{};      ///< id
    std::int64_t number = 0; ///< as people say it
    std::string machine{};
    std::string programme{}; ///< key of the wash method whose programme ran
    std::optional<analytics::AuthoredTemperature> temperature{};
    std::string detergent{}; ///< its batch
    bool tumbled = true;
    std::vector<std::string> prints{}; ///< ids of those in the drum
    std::string besides{};             ///< what else shared it, as typed
    std::string goodWitness{};         ///< mark on the swatch; may be empty: none was in
    std::string weakWitness{};
};

enum class LoadWord {
    valid,
    tooHarsh,  ///< void: even the good witness changed below its limit
    tooGentle, ///< void: even the weak witness changed less than its limit says
    noWitness, ///< void: it cannot be told whether it washed
};

/// load.judged: what its witnesses looked like. A load that is not valid holds nothing and clears nothing.
struct LoadJudged final {
    std::string load{};
    std::optional<double> goodGrade{}; ///< 1 to 5; by eye in half steps
    std::optional<double> weakGrade{};
    std::optional<double> goodLow{}; ///< limits that were used
    std::optional<double> weakHigh{};
    std::optional<double> weakLow{};
    LoadWord word = LoadWord::noWitness;
    std::optional<std::string> corrects{}; ///< id of the entry
    bool byInstrument = false;             ///< the grades are GS of ISO 105-A05: only such make a witness chart
};

} // namespace holdfast::kiosk::records
