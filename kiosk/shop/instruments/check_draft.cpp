#include "kiosk/shop/instruments/check_draft.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::shop::instruments {
namespace {

analytics::AuthoredTemperature authored(analytics::Temperature t, analytics::TemperatureUnit unit) {
    return {t.in(unit), unit};
}

analytics::AuthoredDifference authored(analytics::TemperatureDifference d, analytics::TemperatureUnit unit) {
    return {d.in(unit), unit};
}

} // namespace

tl::expected<analytics::PressureSource, std::vector<FormFault>> airFrom(const AirDraft& draft) {
    FormReader form{analytics::TemperatureUnit::celsius};
    const bool needsPressure = draft.from != AirFrom::altitudeAlone;
    const bool needsAltitude = draft.from != AirFrom::barometer;
    const auto pressure = needsPressure ? form.neededNumber(draft.pressure, "pressure") : std::nullopt;
    if (pressure && *pressure <= 0.0) {
        form.fault(FormCause::pressureInvalid, "pressure", trimmed(draft.pressure));
    }
    const auto height =
        needsAltitude ? form.neededNumber(draft.altitude, "altitude") : form.number(draft.altitude, "altitude");
    if (!form.faults().empty()) {
        return tl::unexpected(std::move(form.faults()));
    }
    const double figure = height.value_or(0.0);
    const auto shop =
        draft.altitudeInFeet ? analytics::Altitude::fromFeet(figure) : analytics::Altitude::fromMetres(figure);
    if (draft.from == AirFrom::altitudeAlone) {
        return analytics::PressureSource{analytics::AltitudeAlone{shop}};
    }
    const auto value = analytics::Pressure::from(pressure.value_or(0.0), draft.pressureUnit);
    if (draft.from == AirFrom::weatherReport) {
        return analytics::PressureSource{analytics::SeaLevelReport{value, shop}};
    }
    return analytics::PressureSource{
        analytics::StationReading{value, height ? std::optional{shop} : std::nullopt, std::nullopt}};
}

analytics::SteadyReading readByHand(analytics::AuthoredTemperature value, const std::string& typed,
                                    analytics::TemperatureDifference resolution) {
    const auto step = std::max(resolution, analytics::TemperatureDifference::from(stepTyped(typed), value.unit));
    analytics::SteadyReading reading;
    reading.mean = value.temperature();
    reading.u = step / std::sqrt(3.0);
    reading.spread = step;
    reading.samples = 1;
    reading.effectiveSamples = 1.0;
    return reading;
}

std::optional<records::CheckDone> checkFrom(const std::string& instrument, const analytics::CheckResult& result,
                                            const std::optional<analytics::AirPressure>& air,
                                            analytics::TemperatureUnit unit) {
    const auto check = analytics::toCheck(result);
    if (!check) {
        return std::nullopt;
    }
    records::CheckDone done;
    done.instrument = instrument;
    done.check = {check->kind, check->passed, check->date, check->due};
    done.indicated = authored(result.indicated, unit);
    done.reference = authored(result.reference, unit);
    done.uncertainty = authored(result.u, unit);
    done.limit = authored(result.limit.limit, unit);
    if (air && result.kind == analytics::CheckKind::boiling) {
        done.stationPressureKilopascal = air->station.kilopascals();
    }
    return done;
}

} // namespace holdfast::kiosk::shop::instruments
