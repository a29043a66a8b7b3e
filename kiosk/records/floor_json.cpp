#include "kiosk/records/record_json.hpp"
#include "kiosk/records/verdict_json.hpp"

namespace holdfast::kiosk::records {

Json toJson(const ActionTaken& record) {
    Json json = Json::object();
    setIf(json, "dryer", record.dryer);
    json["action"] = wordJson(record.action);
    setIf(json, "belt_m_per_min", record.beltMetresPerMinute);
    setAuthoredIf(json, "set_point", record.setPoint);
    setIf(json, "pieces", record.pieces);
    setIf(json, "answers", record.answers);
    return json;
}

void read(ObjectReader& from, ActionTaken& record) {
    record.dryer = from.textOr("dryer");
    record.action = from.word<FloorAction>("action");
    record.beltMetresPerMinute = optionalNotNegative(from, "belt_m_per_min");
    record.setPoint = from.optionalTemperature("set_point");
    record.pieces = from.optionalCount("pieces");
    record.answers = from.optionalText("answers");
}

Json toJson(const ReadingStruck& record) {
    return Json{{"reading", record.reading}, {"cause", wordJson(record.cause)}};
}

void read(ObjectReader& from, ReadingStruck& record) {
    record.reading = from.text("reading");
    record.cause = from.word<StruckCause>("cause");
}

Json toJson(const FlashNoted& record) {
    Json reasons = Json::array();
    for (const auto& reason : record.reasons) {
        reasons.push_back(reasonJson(reason));
    }
    return Json{{"run", record.run},           {"position", record.position},   {"instrument", record.instrument},
                {"peak", toJson(record.peak)}, {"word", wordJson(record.word)}, {"reasons", std::move(reasons)}};
}

void read(ObjectReader& from, FlashNoted& record) {
    record.run = from.text("run");
    record.position = from.count("position", 1);
    record.instrument = from.text("instrument");
    record.peak = from.temperature("peak");
    record.word = from.word<analytics::FlashWord>("word");
    from.list("reasons", [&](ObjectReader& one) { read(one, record.reasons.emplace_back()); });
}

} // namespace holdfast::kiosk::records
