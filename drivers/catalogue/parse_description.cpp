#include "drivers/catalogue/catalogue.hpp"
#include "drivers/catalogue/json_object.hpp"

#include <algorithm>

namespace holdfast::drivers {

namespace {

constexpr int kVersion = 1;

/// What both protocols share.
struct Common {
    std::string terminator;
    std::size_t longestLine = 0;
    CountScale scale;
    ReadingRange range;
};

bool isId(const std::string& id) {
    return !id.empty() && std::all_of(id.begin(), id.end(), [](char sign) {
        return (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9') || sign == '-';
    });
}

ReadingUnit unitFrom(std::size_t place) {
    return place == 0 ? ReadingUnit::celsius : ReadingUnit::fahrenheit;
}

int bounded(JsonObject& object, const std::string& key, int low, int high) {
    const int value = object.need<int>(key);
    if (value < low || value > high) {
        object.refuse(key);
        return low;
    }
    return value;
}

std::optional<std::size_t> place(JsonObject& fields, const std::string& key, int count) {
    if (!fields.has(key)) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(bounded(fields, key, 0, count - 1));
}

SerialSettings readSerial(JsonObject object) {
    SerialSettings settings;
    settings.baud = bounded(object, "baud", 50, 4'000'000);
    settings.dataBits = bounded(object, "data_bits", 5, 8);
    settings.parity = static_cast<Parity>(object.choice("parity", {"none", "even", "odd", "mark", "space"}));
    settings.stopBits = bounded(object, "stop_bits", 1, 2);
    settings.flow = static_cast<FlowControl>(object.choice("flow", {"none", "hardware", "software"}));
    object.finish();
    return settings;
}

Common readCommon(JsonObject& root) {
    Common common;
    common.terminator = root.need<std::string>("terminator");
    if (common.terminator != "\r\n" && common.terminator != "\n" && common.terminator != "\r") {
        root.refuse("terminator");
    }
    common.longestLine = static_cast<std::size_t>(bounded(root, "longest_line", 1, 4096));
    common.scale.unit = unitFrom(root.choice("unit", {"C", "F"}));
    common.scale.step = root.need<double>("step");
    if (!(common.scale.step >= 1e-6 && common.scale.step <= 100.0)) {
        root.refuse("step");
    }
    const auto range = root.need<std::vector<double>>("range");
    if (range.size() != 2 || !(range[0] < range[1])) {
        root.refuse("range");
    } else {
        common.range = {range[0], range[1]};
    }
    return common;
}

LineFields readFields(JsonObject object) {
    LineFields fields;
    const auto separator = object.need<std::string>("separator");
    if (separator.size() != 1) {
        object.refuse("separator");
    } else {
        fields.separator = separator.front();
    }
    const int count = bounded(object, "count", 1, 64);
    fields.count = static_cast<std::size_t>(count);
    fields.value = static_cast<std::size_t>(bounded(object, "value", 0, count - 1));
    fields.unit = place(object, "unit", count);
    fields.status = place(object, "status", count);
    fields.serial = place(object, "serial", count);
    fields.serialPrefix = object.get<std::string>("serial_prefix", {});
    object.finish();
    return fields;
}

std::optional<SampleFlag> flagFrom(const std::string& name) {
    if (name == "none") {
        return SampleFlag::none;
    }
    if (name == "open_circuit") {
        return SampleFlag::openCircuit;
    }
    if (name == "out_of_range") {
        return SampleFlag::outOfRange;
    }
    return name == "instrument_fault" ? std::optional{SampleFlag::instrumentFault} : std::nullopt;
}

LineRules readLine(JsonObject& root, const Common& common) {
    LineRules rules;
    rules.terminator = common.terminator;
    rules.longestLine = common.longestLine;
    rules.scale = common.scale;
    rules.range = common.range;
    rules.fields = readFields(root.child("fields"));
    rules.decimalComma = root.get("decimal_comma", false);
    if (rules.decimalComma && rules.fields.separator == ',') {
        root.refuse("decimal_comma");
    }
    for (const auto& [word, unit] : root.table("unit_words")) {
        if (unit != "C" && unit != "F") {
            root.refuse("unit_words." + word);
        }
        rules.unitWords.emplace(word, unitFrom(unit == "C" ? 0 : 1));
    }
    for (const auto& [word, name] : root.table("status_words")) {
        const auto flag = flagFrom(name);
        if (!flag) {
            root.refuse("status_words." + word);
        }
        rules.statusWords.emplace(word, flag.value_or(SampleFlag::none));
    }
    return rules;
}

ScpiDialogue readScpi(JsonObject object, const Common& common) {
    ScpiDialogue dialogue;
    dialogue.rules.terminator = common.terminator;
    dialogue.rules.longestLine = common.longestLine;
    dialogue.rules.scale = common.scale;
    dialogue.rules.range = common.range;
    dialogue.query = object.need<std::string>("query");
    dialogue.setup = object.get<std::vector<std::string>>("setup", {});
    const auto overload = flagFrom(object.need<std::string>("overload"));
    if (!overload || *overload == SampleFlag::none) {
        object.refuse("overload");
    }
    dialogue.rules.overload = overload.value_or(SampleFlag::outOfRange);
    object.finish();
    return dialogue;
}

IdentityRules readIdentity(JsonObject& root) {
    IdentityRules rules;
    if (!root.has("identity")) {
        return rules;
    }
    JsonObject object = root.child("identity");
    rules.maker = object.get<std::string>("maker", {});
    rules.model = object.get<std::string>("model", {});
    rules.serialNumber = object.get<std::string>("serial_number", {});
    object.finish();
    return rules;
}

InstrumentDescription readDescription(JsonObject& root) {
    InstrumentDescription description;
    description.id = root.need<std::string>("id");
    if (!isId(description.id)) {
        root.refuse("id");
    }
    description.name = root.need<std::string>("name");
    const bool isScpi = root.choice("protocol", {"line", "scpi"}) == 1;
    description.serial = readSerial(root.child("serial"));
    description.interval = std::chrono::milliseconds{bounded(root, "interval_ms", 10, 60'000)};
    const Common common = readCommon(root);
    if (isScpi) {
        description.protocol = readScpi(root.child("scpi"), common);
    } else {
        description.protocol = readLine(root, common);
    }
    description.identity = readIdentity(root);
    root.finish();
    return description;
}

} // namespace

tl::expected<InstrumentDescription, CatalogueFault> parseDescription(std::string_view json) {
    using Kind = CatalogueFault::Kind;
    const auto parsed = nlohmann::json::parse(json.begin(), json.end(), nullptr, false);
    if (parsed.is_discarded() || !parsed.is_object()) {
        return tl::unexpected(CatalogueFault{Kind::notJson, {}});
    }
    std::optional<CatalogueFault> fault;
    JsonObject root{parsed, {}, fault};
    if (root.get<std::string>("format", {}) != "holdfast-instrument") {
        return tl::unexpected(CatalogueFault{Kind::otherFormat, "format"});
    }
    if (const int version = root.need<int>("version"); !fault && version != kVersion) {
        return tl::unexpected(CatalogueFault{version > kVersion ? Kind::newerVersion : Kind::wrongValue, "version"});
    }
    InstrumentDescription description = readDescription(root);
    if (fault) {
        return tl::unexpected(*fault);
    }
    return description;
}

} // namespace holdfast::drivers
