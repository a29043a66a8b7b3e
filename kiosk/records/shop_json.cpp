#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {

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
    json["roles"] = Json::array();
    for (const Role role : record.roles) {
        json["roles"].push_back(wordJson(role));
    }
    return json;
}

void read(ObjectReader& from, PersonAdded& record) {
    record.number = from.integer("number", 1);
    record.badge = from.textOr("badge");
    for (const auto& text : from.texts("roles")) {
        if (const auto role = fromWord<Role>(text)) {
            record.roles.push_back(*role);
        } else {
            from.fault(FaultCode::badValue, "roles", "no such word: " + text);
        }
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
    setIf(json, "withdrawn", record.withdrawn);
    return json;
}

void read(ObjectReader& from, DryerDescribed& record) {
    record.dryer = from.text("dryer");
    record.name = from.text("name");
    record.heatedLengthMetres = from.optionalNumber("heated_length_m");
    record.beltMetresPerMinute = from.optionalNumber("belt_m_per_min");
    record.setPoint = from.optionalTemperature("set_point");
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
