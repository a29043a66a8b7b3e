#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

/// Instruments as people type them in: everything as text, checked at once and as a whole.
namespace holdfast::kiosk::shop::instruments {

enum class FormCause {
    valueMissing,
    notANumber, ///< text
    dateMissing,
    notADate,    ///< text: no day written as 2026-03-01
    dateAhead,   ///< text: a certificate of a day that is still to come
    textTooLong, ///< text: its first signs
    controlSign,
    nameMissing,
    nameTaken, ///< text
    classWithoutType,
    classNotDefined,  ///< the standard has no such class for this type
    toleranceInvalid, ///< below 0
    resolutionInvalid,
    placementInvalid,
    rangeIncomplete, ///< one end only
    rangeReversed,
    stepsMissing,
    stepsOutOfOrder, ///< item: the step not above the one before it
    stepNotANumber,  ///< item, text
    tooManySteps,    ///< more than kMostSteps
    countInvalid,    ///< text: no whole number from 1 to kMostInPack
    catalogueUnknown,
    addressUnreadable,       ///< text
    addressWithoutCatalogue, ///< nobody could understand what it sends
    addressTaken,            ///< text: name of the instrument that is there
    coverageFactorInvalid,   ///< k missing, 0 or negative
    noPoint,
    pointOutOfOrder,    ///< item: below the point before it
    pointTwice,         ///< item: at the same temperature as the one before it
    uncertaintyInvalid, ///< item: U is 0 or negative
    dueBeforeDate,
    pressureInvalid, ///< 0 or negative
};

struct FormFault final {
    FormCause cause{};
    std::string field{}; ///< "name", "point.2.at"; positions from 1
    std::string text{};
    std::optional<int> item{}; ///< point or step, from 1
    bool operator==(const FormFault&) const = default;
};

inline constexpr std::size_t kMostSteps = 40;
inline constexpr int kMostInPack = 500;

/// Collects faults while texts become values.
class FormReader final {
public:
    explicit FormReader(analytics::TemperatureUnit unit) : m_unit{unit} {}

    std::string text(const std::string& typed, const std::string& field);
    /// Empty is no fault.
    std::optional<double> number(const std::string& typed, const std::string& field, std::optional<int> item = {});
    /// Empty is valueMissing.
    std::optional<double> neededNumber(const std::string& typed, const std::string& field,
                                       std::optional<int> item = {});
    /// `before` is kept as authored if its text still stands there. Empty is no fault.
    std::optional<analytics::AuthoredTemperature>
    temperature(const std::string& typed, const std::string& field,
                const std::optional<analytics::AuthoredTemperature>& before = {});
    std::optional<analytics::AuthoredDifference>
    difference(const std::string& typed, const std::string& field,
               const std::optional<analytics::AuthoredDifference>& before = {});
    std::optional<analytics::Date> date(const std::string& typed, const std::string& field, bool needed);
    void fault(FormCause cause, std::string field, std::string shown = {}, std::optional<int> item = {});

    [[nodiscard]] analytics::TemperatureUnit unit() const noexcept { return m_unit; }
    [[nodiscard]] std::vector<FormFault>& faults() noexcept { return m_faults; }

private:
    analytics::TemperatureUnit m_unit;
    std::vector<FormFault> m_faults;
};

} // namespace holdfast::kiosk::shop::instruments
