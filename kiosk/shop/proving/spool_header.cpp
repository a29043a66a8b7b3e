#include "kiosk/shop/proving/spool_header.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::shop {

using records::Json;

ledger::Bytes headerOf(const OpenSpool& open) {
    const bool celsius = open.scale.unit == drivers::ReadingUnit::celsius;
    Json json{{"version", 1}, {"probe", open.probe}, {"step", open.scale.step}, {"unit", celsius ? "C" : "F"}};
    records::setIf(json, "run", open.run);
    records::setIf(json, "corrects", open.corrects);
    json["position"] = records::wordJson(open.position);
    for (const auto& other : open.others) {
        Json one{{"run", other.run}};
        records::setIf(one, "corrects", other.corrects);
        json["others"].push_back(std::move(one));
    }
    const auto text = json.dump(-1, ' ', false, Json::error_handler_t::replace);
    return {text.begin(), text.end()};
}

records::RecordResult<SpoolHeader> readHeader(const ledger::Bytes& bytes) {
    records::Faults faults;
    SpoolHeader header;
    const std::string text{bytes.begin(), bytes.end()};
    if (const auto json = records::parseJson(text, faults)) {
        records::ObjectReader from{*json, "", faults};
        (void)from.integer("version", 1, 1);
        header.probe = from.text("probe");
        header.scale.step = from.number("step");
        const auto unit = from.word<analytics::TemperatureUnit>("unit");
        header.scale.unit = unit == analytics::TemperatureUnit::celsius ? drivers::ReadingUnit::celsius
                                                                        : drivers::ReadingUnit::fahrenheit;
        header.run = from.optionalText("run");
        header.corrects = from.optionalText("corrects");
        header.position = from.word<records::BeltPosition>("position");
        const auto readOther = [&](records::ObjectReader& one) {
            header.others.push_back({one.text("run"), one.optionalText("corrects")});
        };
        from.list("others", readOther, true);
        from.finish();
    }
    if (!faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    return header;
}

} // namespace holdfast::kiosk::shop
