#include "kiosk/records/record_json.hpp"

#include <cstdint>

namespace holdfast::kiosk::records {
namespace {

Json toJson(const RevisionUsed& revision) {
    return Json{{"name", revision.name}, {"revision", revision.revision}};
}

RevisionUsed readRevision(ObjectReader& from) {
    return {from.text("name"), from.count("revision", 1)};
}

Json toJson(const PlannedLayer& layer) {
    Json parts = Json::array();
    for (const auto& part : layer.parts) {
        parts.push_back(Json{{"family", part.family}, {"mass", part.mass}});
    }
    Json json{{"colour", layer.colour}, {"ink", layer.ink}, {"parts", parts}};
    if (!layer.buckets.empty()) {
        json["buckets"] = layer.buckets;
    }
    setIf(json, "underbase", layer.underbase);
    return json;
}

/// Numbers of labels; the key may be left out.
void readNumbers(ObjectReader& from, const char* key, std::vector<std::int64_t>& numbers) {
    const auto read = [&](const Json& value, const std::string& path) {
        const bool whole =
            value.is_number_integer() && !(value.is_number_unsigned() && value.get<std::uint64_t>() > INT64_MAX);
        if (whole && value.get<std::int64_t>() >= 0) {
            numbers.push_back(value.get<std::int64_t>());
        } else {
            from.faults().push_back({FaultCode::wrongType, path, "a label's number is asked for"});
        }
    };
    from.values(key, read, true);
}

PlannedLayer readLayer(ObjectReader& from) {
    PlannedLayer layer;
    layer.colour = from.textOr("colour");
    layer.ink = from.text("ink");
    bool someMass = false;
    from.list("parts", [&](ObjectReader& one) {
        InkPart part{one.text("family"), one.number("mass")};
        if (!(part.mass >= 0.0)) {
            one.fault(FaultCode::badValue, "mass", "is negative");
        }
        someMass = someMass || part.mass > 0.0;
        layer.parts.push_back(part);
    });
    if (!someMass && from.has("parts")) {
        from.fault(FaultCode::badValue, "parts", "a layer needs ink");
    }
    readNumbers(from, "buckets", layer.buckets);
    layer.underbase = from.flagOr("underbase");
    return layer;
}

} // namespace

Json toJson(const RevisionsUsed& revisions) {
    Json families = Json::array();
    for (const auto& family : revisions.families) {
        families.push_back(toJson(family));
    }
    return Json{{"families", families}, {"fabric", toJson(revisions.fabric)}};
}

void read(ObjectReader& from, RevisionsUsed& revisions) {
    from.list("families", [&](ObjectReader& one) { revisions.families.push_back(readRevision(one)); });
    from.object("fabric", [&](ObjectReader& one) { revisions.fabric = readRevision(one); });
}

Json toJson(const RunPlanned& record) {
    Json json{{"run", record.run}, {"kind", wordJson(record.kind)}, {"number", record.number}, {"title", record.title}};
    setIf(json, "customer", record.customer);
    setIf(json, "reference", record.reference);
    setIf(json, "garment_colour", record.garmentColour);
    setIf(json, "cloth_lot", record.clothLot);
    setIf(json, "finish", record.finish);
    setIf(json, "pieces", record.pieces);
    setIf(json, "dryer", record.dryer);
    json["fabric"] = record.fabric;
    json["layers"] = Json::array();
    for (const auto& layer : record.layers) {
        json["layers"].push_back(toJson(layer));
    }
    setIf(json, "childrens_wear", record.childrensWear);
    return json;
}

void read(ObjectReader& from, RunPlanned& record) {
    record.run = from.text("run");
    record.kind = from.word<PlanKind>("kind");
    record.number = from.integer("number", 0);
    record.title = from.textOr("title");
    record.customer = from.textOr("customer");
    record.reference = from.textOr("reference");
    record.garmentColour = from.textOr("garment_colour");
    record.clothLot = from.textOr("cloth_lot");
    record.finish = from.textOr("finish");
    record.pieces = from.optionalCount("pieces");
    record.dryer = from.textOr("dryer");
    record.fabric = from.text("fabric");
    from.list("layers", [&](ObjectReader& one) { record.layers.push_back(readLayer(one)); });
    if (record.layers.empty() && from.has("layers")) {
        from.fault(FaultCode::badValue, "layers", "a run has at least one layer");
    }
    record.childrensWear = from.flagOr("childrens_wear");
}

Json toJson(const RunReplanned& record) {
    return toJson(record.plan);
}

void read(ObjectReader& from, RunReplanned& record) {
    read(from, record.plan);
}

Json toJson(const RunFinished& record) {
    Json json{{"run", record.run}};
    setIf(json, "made", record.made);
    setIf(json, "spoiled", record.spoiled);
    return json;
}

void read(ObjectReader& from, RunFinished& record) {
    record.run = from.text("run");
    record.made = from.optionalCount("made");
    record.spoiled = from.optionalCount("spoiled");
}

Json toJson(const LotOpened& record) {
    Json json{{"lot", record.lot}, {"run", record.run}, {"number", record.number}};
    setIf(json, "dryer", record.dryer);
    setIf(json, "first_piece", record.firstPiece);
    json["revisions"] = toJson(record.revisions);
    setAuthoredIf(json, "set_point", record.setPoint);
    setIf(json, "belt_m_per_min", record.beltMetresPerMinute);
    return json;
}

void read(ObjectReader& from, LotOpened& record) {
    record.lot = from.text("lot");
    record.run = from.text("run");
    record.number = from.count("number", 1);
    record.dryer = from.textOr("dryer");
    record.firstPiece = from.optionalCount("first_piece", 1);
    from.object("revisions", [&](ObjectReader& one) { read(one, record.revisions); });
    record.setPoint = from.optionalTemperature("set_point");
    record.beltMetresPerMinute = from.optionalNumber("belt_m_per_min");
}

Json toJson(const LotClosed& record) {
    Json json{{"lot", record.lot}};
    setIf(json, "last_piece", record.lastPiece);
    json["why"] = wordJson(record.why);
    return json;
}

void read(ObjectReader& from, LotClosed& record) {
    record.lot = from.text("lot");
    record.lastPiece = from.optionalCount("last_piece");
    record.why = from.word<LotEnd>("why");
}

} // namespace holdfast::kiosk::records
