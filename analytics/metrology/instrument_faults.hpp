#pragma once

#include "analytics/metrology/instrument.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace holdfast::analytics {

/// What can be wrong with an instrument's data as typed in.
enum class InstrumentFaultKind {
    classWithoutType,       ///< a tolerance class, but no thermocouple type to read it with
    classNotDefinedForType, ///< the standard has no such class for this type (IEC class 3 for J)
    statedToleranceInvalid, ///< negative or not finite
    resolutionInvalid,      ///< negative or not finite
    placementInvalid,       ///< own u_p negative or not finite
    rangeInvalid,           ///< an end is not finite
    rangeReversed,          ///< low end not below the high end
    certificateWithoutPoints,
    coverageFactorInvalid, ///< k missing (0), negative or not finite
    pointNotFinite,        ///< temperature or correction
    pointsOutOfOrder,      ///< not above the point before it
    uncertaintyInvalid,    ///< U negative or not finite
    certificateDueBeforeDate,
    checkDueBeforeDate,
    stripMissing, ///< a strip without its steps
    stripWithoutSteps,
    stripStepNotFinite,
    stripStepsOutOfOrder, ///< not above the step before it
    stripToleranceInvalid ///< negative or not finite
};

/// One fault and where it sits: `entry` is the index in certificates or checks, `item` that of the point or step.
struct InstrumentFault final {
    InstrumentFaultKind kind;
    std::optional<std::size_t> entry;
    std::optional<std::size_t> item;
    bool operator==(const InstrumentFault&) const = default;
};

/// Every fault of the instrument at once, in the order of the fields; empty when it may be used. That no tolerance is
/// known is not a fault of the data: Calibration::faultAt says where one is needed.
[[nodiscard]] std::vector<InstrumentFault> validate(const Instrument& instrument);

/// Every fault of one certificate; `entry` absent.
[[nodiscard]] std::vector<InstrumentFault> faultsOf(const Certificate& certificate);

} // namespace holdfast::analytics
