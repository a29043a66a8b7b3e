#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {
namespace {

void setRetained(Json& json, const std::optional<RetainedPlace>& place) {
    if (place) {
        Json& one = json["retained"] = Json{{"shelf", place->shelf}};
        setIf(one, "until", place->until);
        setIf(one, "reprint_allowed", place->reprintAllowed);
    }
}

std::optional<RetainedPlace> readRetained(ObjectReader& from) {
    std::optional<RetainedPlace> place;
    from.optionalObject("retained", [&](ObjectReader& one) {
        place.emplace();
        place->shelf = readSaid(one, "shelf");
        place->until = one.optionalDate("until");
        place->reprintAllowed = one.flagOr("reprint_allowed");
    });
    return place;
}

} // namespace

Json toJson(const PrintNamed& record) {
    Json json{{"print", record.print}, {"number", record.number}, {"run", record.run}, {"lot", record.lot}};
    setIf(json, "piece", record.piece);
    setWordIf(json, "position", record.position);
    json["printed_ms"] = record.printedAt;
    setIf(json, "half_of", record.halfOf);
    setRetained(json, record.retained);
    return json;
}

void read(ObjectReader& from, PrintNamed& record) {
    record.print = readSaid(from, "print");
    record.number = from.integer("number", 0, kMostPrints - 1);
    record.run = readSaid(from, "run");
    record.lot = readSaid(from, "lot");
    record.piece = from.optionalCount("piece", 1);
    record.position = from.optionalWord<BeltPosition>("position");
    record.printedAt = from.integer("printed_ms", 0);
    record.halfOf = from.optionalText("half_of");
    if (record.halfOf == record.print) {
        from.fault(FaultCode::inconsistent, "half_of", "a print is no half of itself");
    }
    record.retained = readRetained(from);
}

Json toJson(const PrintChanged& record) {
    Json json{{"print", record.print}};
    setRetained(json, record.retained);
    setWordIf(json, "ended", record.ended);
    return json;
}

void read(ObjectReader& from, PrintChanged& record) {
    record.print = readSaid(from, "print");
    record.retained = readRetained(from);
    record.ended = from.optionalWord<PrintEnd>("ended");
}

} // namespace holdfast::kiosk::records
