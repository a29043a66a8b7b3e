#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {
namespace {

Json pointJson(const AuthoredCurePoint& point) {
    return Json{{"time_s", point.time.count()}, {"temperature", toJson(point.temperature)}};
}

AuthoredCurePoint readPoint(const Json& value, const std::string& path, Faults& faults) {
    ObjectReader from{value, path, faults};
    AuthoredCurePoint point;
    point.time = from.seconds("time_s");
    point.temperature = from.temperature("temperature");
    from.finish();
    return point;
}

void noteFaults(ObjectReader& from, const FamilyRecord& record) {
    static constexpr std::pair<analytics::FamilyFault, std::pair<const char*, const char*>> kTexts[] = {
        {analytics::FamilyFault::nameEmpty, {"name", "is empty"}},
        {analytics::FamilyFault::gelReversed, {"gel", "its low end is above its high end"}},
        {analytics::FamilyFault::cureBelowGel, {"cure", "is below the gel range"}},
        {analytics::FamilyFault::cureAboveCeiling, {"ceiling", "is below the cure temperature"}},
        {analytics::FamilyFault::holdNegative, {"hold_s", "is negative"}},
        {analytics::FamilyFault::pairsNotHotterShorter, {"pairs", "the hotter must be the shorter"}},
        {analytics::FamilyFault::pairsNotAboveGel, {"pairs", "both must lie above the gel range"}},
        {analytics::FamilyFault::bandReversed, {"additive_band", "its low end is above its high end"}},
        {analytics::FamilyFault::notFinite, {"cure", "a number is not finite"}},
    };
    for (const auto fault : analytics::faultsOf(toFamily(record))) {
        for (const auto& [code, text] : kTexts) {
            if (code == fault) {
                from.fault(FaultCode::inconsistent, text.first, text.second);
            }
        }
    }
}

void readPairs(ObjectReader& from, FamilyRecord& record) {
    std::vector<AuthoredCurePoint> points;
    from.values(
        "pairs",
        [&](const Json& value, const std::string& path) { points.push_back(readPoint(value, path, from.faults())); },
        true);
    if (points.size() == 2) {
        record.pairs = AuthoredPairs{points[0], points[1]};
    } else if (from.has("pairs")) {
        from.fault(FaultCode::badValue, "pairs", "exactly two equal-cure pairs are asked for, the hotter first");
    }
}

/// Two values of one kind as a list of two; nothing (and a fault) for any other number.
void readBand(ObjectReader& from, FamilyRecord& record) {
    std::vector<double> ends;
    from.values(
        "additive_band",
        [&](const Json& value, const std::string& path) {
            if (value.is_number()) {
                ends.push_back(value.get<double>());
            } else {
                from.faults().push_back({FaultCode::wrongType, path, "a number is asked for"});
            }
        },
        true);
    if (ends.size() == 2) {
        record.additiveBand = analytics::AdditiveBand{ends[0], ends[1]};
    } else if (from.has("additive_band")) {
        from.fault(FaultCode::badValue, "additive_band", "two mass fractions are asked for");
    }
}

void readGel(ObjectReader& from, FamilyRecord& record) {
    std::vector<analytics::AuthoredTemperature> ends;
    from.values(
        "gel",
        [&](const Json& value, const std::string& path) {
            ObjectReader end{value, path, from.faults()};
            analytics::AuthoredTemperature t;
            t.value = end.number("value");
            t.unit = end.word<analytics::TemperatureUnit>("unit");
            end.finish();
            ends.push_back(t);
        },
        true);
    if (ends.size() == 2) {
        record.gel = AuthoredGel{ends[0], ends[1]};
    } else if (from.has("gel")) {
        from.fault(FaultCode::badValue, "gel", "two temperatures are asked for");
    }
}

} // namespace

Json toJson(const FamilyRecord& record) {
    Json json{{"name", record.name}, {"revision", record.revision}, {"chemistry", wordJson(record.chemistry)}};
    if (record.gel) {
        json["gel"] = Json::array({toJson(record.gel->low), toJson(record.gel->high)});
    }
    json["cure"] = toJson(record.cure);
    json["hold_s"] = record.hold.count();
    setIf(json, "unbroken", record.unbroken);
    setAuthoredIf(json, "ceiling", record.ceiling);
    json["bleed_resistance"] = wordJson(record.bleedResistance);
    json["ease"] = record.ease;
    if (record.pairs) {
        json["pairs"] = Json::array({pointJson(record.pairs->hotter), pointJson(record.pairs->cooler)});
    }
    setSecondsIf(json, "pot_life_s", record.potLife);
    if (record.additiveBand) {
        json["additive_band"] = Json::array({record.additiveBand->low, record.additiveBand->high});
    }
    setSecondsIf(json, "rest_s", record.restBeforeTest);
    json["mark"] = wordJson(record.mark);
    setIf(json, "source", record.source);
    return json;
}

void read(ObjectReader& from, FamilyRecord& record) {
    const auto before = from.faults().size();
    record.name = from.text("name");
    record.revision = from.countOr("revision", 1, 1);
    record.chemistry = from.word<analytics::Chemistry>("chemistry");
    readGel(from, record);
    record.cure = from.temperature("cure");
    record.hold = from.optionalSeconds("hold_s").value_or(analytics::Duration{0});
    record.unbroken = from.flagOr("unbroken");
    record.ceiling = from.optionalTemperature("ceiling");
    record.bleedResistance = from.wordOr("bleed_resistance", analytics::BleedResistance::none);
    record.ease = from.countOr("ease", 1);
    readPairs(from, record);
    record.potLife = from.optionalSeconds("pot_life_s");
    readBand(from, record);
    record.restBeforeTest = from.optionalSeconds("rest_s");
    record.mark = from.wordOr("mark", analytics::Mark::fromMemory);
    record.source = from.textOr("source");
    if (from.faults().size() == before) {
        noteFaults(from, record);
    }
}

Json toJson(const FabricRecord& record) {
    Json json{{"name", record.name}, {"revision", record.revision}};
    setAuthoredIf(json, "hard_ceiling", record.hardCeiling);
    setAuthoredIf(json, "bleed_ceiling", record.bleedCeiling);
    json["need_of_at_risk_colour"] = wordJson(record.needOfAtRiskColour);
    json["colours_not_at_risk"] = record.coloursNotAtRisk;
    json["mark"] = wordJson(record.mark);
    setIf(json, "source", record.source);
    return json;
}

void read(ObjectReader& from, FabricRecord& record) {
    const auto before = from.faults().size();
    record.name = from.text("name");
    record.revision = from.countOr("revision", 1, 1);
    record.hardCeiling = from.optionalTemperature("hard_ceiling");
    record.bleedCeiling = from.optionalTemperature("bleed_ceiling");
    record.needOfAtRiskColour = from.wordOr("need_of_at_risk_colour", analytics::BleedResistance::none);
    record.coloursNotAtRisk = from.texts("colours_not_at_risk", true);
    record.mark = from.wordOr("mark", analytics::Mark::fromMemory);
    record.source = from.textOr("source");
    if (from.faults().size() != before) {
        return;
    }
    for (const auto fault : analytics::faultsOf(toFabric(record))) {
        const bool name = fault == analytics::FabricFault::nameEmpty;
        from.fault(FaultCode::inconsistent, name ? "name" : "bleed_ceiling",
                   name ? "is empty" : "is above the hard ceiling, or not finite");
    }
}

} // namespace holdfast::kiosk::records
