#include "kiosk/records/record_json.hpp"

#include <cmath>

namespace holdfast::kiosk::records {
namespace {

Json rolesJson(const std::vector<Role>& roles) {
    Json json = Json::array();
    for (const Role role : roles) {
        json.push_back(wordJson(role));
    }
    return json;
}

void readRoles(ObjectReader& from, std::vector<Role>& roles) {
    for (const auto& text : from.texts("roles")) {
        if (const auto role = fromWord<Role>(text)) {
            roles.push_back(*role);
        } else {
            from.fault(FaultCode::badValue, "roles", "no such word: " + text);
        }
    }
}

} // namespace

Json toJson(const BookOpened& record) {
    Json json{{"shop", record.shop}, {"kiosk", record.kiosk}, {"program", record.program}};
    setIf(json, "demo", record.demo);
    return json;
}

void read(ObjectReader& from, BookOpened& record) {
    record.shop = from.text("shop");
    record.kiosk = from.text("kiosk");
    record.program = from.text("program");
    record.demo = from.flagOr("demo");
}

Json toJson(const PersonAdded& record) {
    Json json{{"number", record.number}};
    setIf(json, "badge", record.badge);
    json["roles"] = rolesJson(record.roles);
    return json;
}

void read(ObjectReader& from, PersonAdded& record) {
    record.number = from.integer("number", 1);
    record.badge = from.textOr("badge");
    readRoles(from, record.roles);
}

Json toJson(const PersonChanged& record) {
    Json json{{"number", record.number}};
    setIf(json, "badge", record.badge);
    json["roles"] = rolesJson(record.roles);
    setIf(json, "left", record.left);
    return json;
}

void read(ObjectReader& from, PersonChanged& record) {
    record.number = from.integer("number", 1);
    record.badge = from.textOr("badge");
    readRoles(from, record.roles);
    record.left = from.flagOr("left");
}

Json toJson(const PinSet& record) {
    return Json{{"number", record.number}, {"hash", record.hash}};
}

void read(ObjectReader& from, PinSet& record) {
    record.number = from.integer("number", 1);
    record.hash = from.text("hash");
    if (!record.hash.empty() && !record.hash.starts_with("$argon2id$")) {
        from.fault(FaultCode::badValue, "hash", "an Argon2id string is asked for");
    }
}

Json toJson(const CrewChanged& record) {
    Json json{{"persons", record.persons}};
    if (record.unnamed > 0) {
        json["unnamed"] = record.unnamed;
    }
    return json;
}

void read(ObjectReader& from, CrewChanged& record) {
    from.values("persons", [&](const Json& value, const std::string& path) {
        if (value.is_number_integer() && value.get<std::int64_t>() >= 1) {
            record.persons.push_back(value.get<std::int64_t>());
        } else {
            from.faults().push_back({FaultCode::wrongType, path, "a person's number is asked for"});
        }
    });
    record.unnamed = from.countOr("unnamed", 0);
}

Json toJson(const DryerDescribed& record) {
    Json json{{"dryer", record.dryer}, {"name", record.name}};
    setIf(json, "heated_length_m", record.heatedLengthMetres);
    setIf(json, "belt_m_per_min", record.beltMetresPerMinute);
    setAuthoredIf(json, "set_point", record.setPoint);
    setIf(json, "slowest_m_per_min", record.slowestMetresPerMinute);
    setIf(json, "fastest_m_per_min", record.fastestMetresPerMinute);
    setAuthoredIf(json, "highest_set_point", record.highestSetPoint);
    setIf(json, "pieces_per_m", record.piecesPerMetre);
    setIf(json, "withdrawn", record.withdrawn);
    return json;
}

void read(ObjectReader& from, DryerDescribed& record) {
    record.dryer = from.text("dryer");
    record.name = from.text("name");
    record.heatedLengthMetres = from.optionalNumber("heated_length_m");
    record.beltMetresPerMinute = from.optionalNumber("belt_m_per_min");
    record.setPoint = from.optionalTemperature("set_point");
    record.slowestMetresPerMinute = optionalPositive(from, "slowest_m_per_min");
    record.fastestMetresPerMinute = optionalPositive(from, "fastest_m_per_min");
    record.highestSetPoint = from.optionalTemperature("highest_set_point");
    record.piecesPerMetre = optionalPositive(from, "pieces_per_m");
    if (record.slowestMetresPerMinute.value_or(0.0) > record.fastestMetresPerMinute.value_or(HUGE_VAL)) {
        from.fault(FaultCode::inconsistent, "slowest_m_per_min", "is above the fastest");
    }
    record.withdrawn = from.flagOr("withdrawn");
}

Json toJson(const SettingChanged& record) {
    Json json{{"key", record.key}};
    std::visit([&](const auto& value) { json["value"] = value; }, record.value);
    return json;
}

void read(ObjectReader& from, SettingChanged& record) {
    record.key = from.text("key");
    const Json* value = from.raw("value");
    if (value == nullptr) {
        from.fault(FaultCode::missingKey, "value", "is missing");
    } else if (value->is_boolean()) {
        record.value = value->get<bool>();
    } else if (value->is_string()) {
        record.value = value->get<std::string>();
    } else if (value->is_number_integer()) {
        record.value = value->get<std::int64_t>();
    } else if (value->is_number()) {
        record.value = value->get<double>();
    } else {
        from.fault(FaultCode::wrongType, "value", "true, false, a number or text is asked for");
    }
}

} // namespace holdfast::kiosk::records
