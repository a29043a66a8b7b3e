#pragma once

#include "analytics/metrology/fixed_points/check_result.hpp"
#include "kiosk/records/instrument_records.hpp"
#include "kiosk/shop/instruments/form_reader.hpp"

#include <tl/expected.hpp>

namespace holdfast::kiosk::shop::instruments {

/// Where the air pressure is taken from.
enum class AirFrom { barometer, weatherReport, altitudeAlone };

/// What decides where water boils, while it is being typed.
struct AirDraft final {
    AirFrom from = AirFrom::weatherReport;
    analytics::PressureUnit pressureUnit = analytics::PressureUnit::hectopascal;
    bool altitudeInFeet = false;
    std::string pressure{};
    std::string altitude{}; ///< may be empty with a barometer; given, it shows whether its figure was reduced
};

/// Faults at "pressure" and "altitude", all at once. Whether the air of a shop can have such values is judged by
/// analytics::airPressure.
[[nodiscard]] tl::expected<analytics::PressureSource, std::vector<FormFault>> airFrom(const AirDraft& draft);

/// What a person read off an instrument without a line once it had stood still: nothing moved it by more than one step
/// for half a minute, taken as rectangular (JCGM 100:2008, 4.3.7). The step is that of the instrument or of the typed
/// figures, whichever is coarser.
[[nodiscard]] analytics::SteadyReading readByHand(analytics::AuthoredTemperature value, const std::string& typed,
                                                  analytics::TemperatureDifference resolution);

/// check.done with what it was decided from, in the shown unit; nothing while it is not decided.
[[nodiscard]] std::optional<records::CheckDone> checkFrom(const std::string& instrument,
                                                          const analytics::CheckResult& result,
                                                          const std::optional<analytics::AirPressure>& air,
                                                          analytics::TemperatureUnit unit);

} // namespace holdfast::kiosk::shop::instruments
