#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {
namespace {

Json toJson(const TraceSeen& trace) {
    Json json{{"sha256", trace.sha256}, {"step", records::toJson(trace.step)}, {"pass", trace.pass}};
    setIf(json, "stopped_by_hand", trace.stoppedByHand);
    setIf(json, "cut_off", trace.cutOff);
    setIf(json, "unit_confirmed", trace.unitConfirmed);
    if (trace.sustainedPeak) {
        json["sustained_peak_c"] = trace.sustainedPeak->celsius();
    }
    if (trace.rawPeak) {
        json["peak_c"] = trace.rawPeak->celsius();
    }
    return json;
}

Json toJson(const StripSeen& strip) {
    Json json = Json::object();
    setAuthoredIf(json, "last_dark", strip.lastDark);
    setAuthoredIf(json, "first_light", strip.firstLight);
    json["all_light_before"] = strip.allLightBefore;
    setIf(json, "used_before", strip.usedBefore);
    setIf(json, "number", strip.number);
    return json;
}

Json toJson(const SpotSeen& spot) {
    Json json{{"held", records::toJson(spot.held)}};
    setAuthoredIf(json, "before_use", spot.beforeUse);
    return json;
}

Json toJson(const GunSeen& gun) {
    return Json{{"surface", records::toJson(gun.surface)}, {"place", wordJson(gun.place)}};
}

constexpr const char* keyOf(const TraceSeen&) {
    return "trace";
}
constexpr const char* keyOf(const StripSeen&) {
    return "strip";
}
constexpr const char* keyOf(const SpotSeen&) {
    return "spot";
}
constexpr const char* keyOf(const GunSeen&) {
    return "gun";
}

void read(ObjectReader& from, TraceSeen& trace) {
    trace.sha256 = readBlobHash(from, "sha256");
    trace.step = from.difference("step");
    trace.pass = from.count("pass", 1);
    trace.stoppedByHand = from.flagOr("stopped_by_hand");
    trace.cutOff = from.flagOr("cut_off");
    trace.unitConfirmed = from.flagOr("unit_confirmed");
    trace.sustainedPeak = from.optionalCelsius("sustained_peak_c");
    trace.rawPeak = from.optionalCelsius("peak_c");
}

} // namespace

void setEvidence(Json& json, const Evidence& evidence) {
    std::visit([&](const auto& seen) { json[keyOf(seen)] = toJson(seen); }, evidence);
}

void read(ObjectReader& from, Evidence& evidence) {
    int found = 0;
    found += from.optionalObject("trace", [&](ObjectReader& one) { read(one, evidence.emplace<TraceSeen>()); });
    found += from.optionalObject("strip", [&](ObjectReader& one) {
        StripSeen strip;
        strip.lastDark = one.optionalTemperature("last_dark");
        strip.firstLight = one.optionalTemperature("first_light");
        strip.allLightBefore = one.flag("all_light_before");
        strip.usedBefore = one.flagOr("used_before");
        strip.number = one.optionalInteger("number", 0);
        evidence = strip;
    });
    found += from.optionalObject("spot", [&](ObjectReader& one) {
        evidence = SpotSeen{one.temperature("held"), one.optionalTemperature("before_use")};
    });
    found += from.optionalObject("gun", [&](ObjectReader& one) {
        evidence = GunSeen{one.temperature("surface"), one.word<analytics::ShotPlace>("place")};
    });
    if (found != 1) {
        from.fault(FaultCode::inconsistent, "trace", "exactly one of trace, strip, spot and gun is asked for");
    }
}

} // namespace holdfast::kiosk::records
