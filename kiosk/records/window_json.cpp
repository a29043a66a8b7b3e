#include "kiosk/records/record_json.hpp"

/// A stored window read back. Guards are stored beside it, see reading_json.cpp.
namespace holdfast::kiosk::records {
namespace {

using analytics::Temperature;

/// Null stands for absent.
std::optional<Temperature> nullableCelsius(ObjectReader& from, const char* key) {
    const Json* value = from.raw(key);
    return value == nullptr || value->is_null() ? std::nullopt : from.optionalCelsius(key);
}

std::optional<analytics::GuardedLimit> limitOf(const std::optional<Temperature>& t) {
    return t ? std::optional{analytics::GuardedLimit{*t, {}}} : std::nullopt;
}

analytics::Culprit readCulprit(ObjectReader& from) {
    analytics::Culprit culprit;
    culprit.kind = from.word<analytics::CulpritKind>("kind");
    const Json* position = from.raw("position");
    if (position != nullptr && !position->is_null()) {
        culprit.position = from.optionalCount("position", 1);
    }
    culprit.name = from.textOr("name");
    culprit.limit = from.celsius("limit_c");
    return culprit;
}

analytics::WayOut readWayOut(ObjectReader& from) {
    analytics::WayOut way;
    from.list("changes", [&](ObjectReader& one) {
        way.changes.push_back({one.count("position", 1), one.text("from"), one.text("to")});
    });
    const Json* instrument = from.raw("instrument");
    if (instrument != nullptr && !instrument->is_null()) {
        way.instrument = from.optionalText("instrument");
    }
    way.lower = from.celsius("lower_c");
    way.upper = nullableCelsius(from, "upper_c");
    return way;
}

} // namespace

void read(ObjectReader& from, analytics::RunWindow& window) {
    window.state = from.word<analytics::WindowState>("state");
    window.narrow = from.flag("narrow");
    window.bleedNotProvable = from.flag("bleed_not_provable");
    window.lower = from.celsius("lower_c");
    window.hold = from.seconds("hold_s");
    window.upperHard = limitOf(nullableCelsius(from, "upper_hard_c"));
    window.upperBleed = limitOf(nullableCelsius(from, "upper_bleed_c"));
    window.upper = nullableCelsius(from, "upper_c");
    window.aim = nullableCelsius(from, "aim_c");
    from.values("bleeds", [&](const Json& value, const std::string& path) {
        if (value.is_number_integer()) {
            window.bleeds.push_back(value.get<int>());
        } else {
            from.faults().push_back({FaultCode::wrongType, path, "a layer's position is asked for"});
        }
    });
    from.list("culprits", [&](ObjectReader& one) { window.culprits.push_back(readCulprit(one)); });
    from.list("ways_out", [&](ObjectReader& one) { window.waysOut.push_back(readWayOut(one)); });
    window.waysOutLeftOut = from.count("ways_out_left_out");
}

} // namespace holdfast::kiosk::records
