#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {

Json toJson(const BucketOpened& record) {
    Json json{{"bucket", record.bucket}, {"number", record.number}, {"family", record.family}};
    setIf(json, "colour", record.colour);
    setIf(json, "batch", record.batch);
    if (record.expiry) {
        json["expiry"] = toText(*record.expiry);
    }
    setIf(json, "additive_percent", record.additivePercent);
    setIf(json, "pot_life_starts_ms", record.potLifeStartsAt);
    return json;
}

void read(ObjectReader& from, BucketOpened& record) {
    record.bucket = from.text("bucket");
    record.number = from.integer("number", 0);
    record.family = from.text("family");
    record.colour = from.textOr("colour");
    record.batch = from.textOr("batch");
    record.expiry = from.optionalDate("expiry");
    record.additivePercent = optionalNotNegative(from, "additive_percent");
    record.potLifeStartsAt = from.optionalInteger("pot_life_starts_ms", 0);
}

Json toJson(const MixMade& record) {
    Json parts = Json::array();
    for (const auto& part : record.parts) {
        parts.push_back(Json{{"bucket", part.bucket}, {"mass", part.mass}});
    }
    Json json{{"bucket", record.bucket}, {"number", record.number}, {"name", record.name}};
    setIf(json, "colour", record.colour);
    json["parts"] = std::move(parts);
    setIf(json, "additive_percent", record.additivePercent);
    setIf(json, "pot_life_starts_ms", record.potLifeStartsAt);
    return json;
}

void read(ObjectReader& from, MixMade& record) {
    record.bucket = from.text("bucket");
    record.number = from.integer("number", 0);
    record.name = from.text("name");
    record.colour = from.textOr("colour");
    bool someMass = false;
    from.list("parts", [&](ObjectReader& one) {
        BucketPart part{one.text("bucket"), one.number("mass")};
        if (!(part.mass >= 0.0)) {
            one.fault(FaultCode::badValue, "mass", "is negative");
        }
        someMass = someMass || part.mass > 0.0;
        record.parts.push_back(std::move(part));
    });
    if (!someMass && from.has("parts")) {
        from.fault(FaultCode::badValue, "parts", "a mix needs one part of positive mass");
    }
    record.additivePercent = optionalNotNegative(from, "additive_percent");
    record.potLifeStartsAt = from.optionalInteger("pot_life_starts_ms", 0);
}

Json toJson(const BucketClosed& record) {
    return Json{{"bucket", record.bucket}, {"why", wordJson(record.why)}};
}

void read(ObjectReader& from, BucketClosed& record) {
    record.bucket = from.text("bucket");
    record.why = from.word<BucketEnd>("why");
}

} // namespace holdfast::kiosk::records
