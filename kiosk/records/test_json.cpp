#include "kiosk/records/record_json.hpp"
#include "kiosk/records/test_value_json.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {
namespace {

Json programmeJson(const WashProgramme& programme) {
    Json json = Json::object();
    setAuthoredIf(json, "temperature", programme.temperature);
    setIf(json, "minutes", programme.minutes);
    json["tumble"] = programme.tumble;
    json["cycles"] = programme.cycles;
    return json;
}

void read(ObjectReader& from, WashProgramme& programme) {
    programme.temperature = from.optionalTemperature("temperature");
    programme.minutes = from.optionalCount("minutes", 1);
    programme.tumble = from.flag("tumble");
    programme.cycles = from.count("cycles", 1);
}

std::vector<analytics::Chemistry> readChemistries(ObjectReader& from) {
    std::vector<analytics::Chemistry> all;
    for (const auto& text : readDifferent(from, "chemistries")) {
        if (const auto chemistry = fromWord<analytics::Chemistry>(text)) {
            all.push_back(*chemistry);
        } else {
            from.fault(FaultCode::badValue, "chemistries", "no such word: " + text);
        }
    }
    return all;
}

void readOwnWords(ObjectReader& from, MethodDescribed& record) {
    record.steps = from.texts("steps", true);
    record.cautions = from.texts("cautions", true);
    if (record.kind == TestKind::own && record.name.empty()) {
        from.fault(FaultCode::missingKey, "name", "a method of the shop's own needs a name");
    }
}

void readPlan(ObjectReader& from, MethodDescribed& record) {
    record.restHours = optionalNotNegative(from, "rest_hours").value_or(0.0);
    record.dueHours = readAscending(from, "due_hours", 0.0);
    from.optionalObject("programme", [&](ObjectReader& one) { read(one, record.programme.emplace()); });
    if (record.kind == TestKind::wash && !record.programme) {
        from.fault(FaultCode::missingKey, "programme", "a wash needs its programme");
    }
    record.pullPercent = readAscending(from, "pull_percent", 0.0);
    if (!record.pullPercent.empty() && !(record.pullPercent.front() > 0.0)) {
        from.fault(FaultCode::badValue, "pull_percent", "a pull of nothing");
    }
}

Json lengthsJson(const GaugeLengths& lengths) {
    Json json{{"original_mm", lengths.originalMm}};
    setIf(json, "stretched_mm", lengths.stretchedMm);
    setIf(json, "relaxed_mm", lengths.relaxedMm);
    return json;
}

std::optional<GaugeLengths> readLengths(ObjectReader& from, const char* key) {
    std::optional<GaugeLengths> lengths;
    from.optionalObject(key, [&](ObjectReader& one) {
        lengths.emplace();
        lengths->originalMm = one.number("original_mm");
        if (one.has("original_mm") && !(lengths->originalMm > 0.0)) {
            one.fault(FaultCode::badValue, "original_mm", "must be above 0");
        }
        lengths->stretchedMm = optionalPositive(one, "stretched_mm");
        lengths->relaxedMm = optionalPositive(one, "relaxed_mm");
    });
    return lengths;
}

void setSeen(Json& json, const TestDone& record) {
    for (const auto& result : record.results) {
        json["results"].push_back(toJson(result));
    }
    if (record.lengthwise) {
        json["lengthwise"] = lengthsJson(*record.lengthwise);
    }
    if (record.widthwise) {
        json["widthwise"] = lengthsJson(*record.widthwise);
    }
    if (record.before) {
        json["before"] = toJson(*record.before);
    }
    if (record.after) {
        json["after"] = toJson(*record.after);
    }
    if (record.garment) {
        json["garment"] = toJson(*record.garment);
    }
    setIf(json, "colour_limit", record.colourLimit);
    setIf(json, "instrument", record.instrument);
    for (const auto& picture : record.pictures) {
        json["pictures"].push_back(Json{{"sha256", picture.sha256}, {"side", wordJson(picture.side)}});
    }
}

void readSeen(ObjectReader& from, TestDone& record) {
    from.list(
        "results", [&](ObjectReader& one) { record.results.push_back(readTestResult(one)); }, true);
    record.lengthwise = readLengths(from, "lengthwise");
    record.widthwise = readLengths(from, "widthwise");
    record.before = optionalLab(from, "before");
    record.after = optionalLab(from, "after");
    record.garment = optionalLab(from, "garment");
    record.colourLimit = from.optionalNumber("colour_limit");
    if (record.colourLimit && !(*record.colourLimit > 0.0)) {
        from.fault(FaultCode::badValue, "colour_limit", "it is above 0");
    }
    record.instrument = from.textOr("instrument");
    from.list(
        "pictures",
        [&](ObjectReader& one) {
            record.pictures.push_back({readBlobHash(one, "sha256"), one.word<PictureSide>("side")});
        },
        true);
}

} // namespace

Json toJson(const MethodDescribed& record) {
    Json json{{"key", record.key}, {"revision", record.revision}};
    setIf(json, "name", record.name);
    json["kind"] = wordJson(record.kind);
    json["mark"] = wordJson(record.mark);
    setIf(json, "source", record.source);
    for (const auto chemistry : record.chemistries) {
        json["chemistries"].push_back(wordJson(chemistry));
    }
    json["rest_hours"] = record.restHours;
    if (!record.dueHours.empty()) {
        json["due_hours"] = record.dueHours;
    }
    if (record.programme) {
        json["programme"] = programmeJson(*record.programme);
    }
    if (!record.pullPercent.empty()) {
        json["pull_percent"] = record.pullPercent;
    }
    setIf(json, "steps", record.steps);
    setIf(json, "cautions", record.cautions);
    if (record.rule) {
        json["rule"] = toJson(*record.rule);
    }
    setIf(json, "each_lot", record.eachLot);
    setIf(json, "withdrawn", record.withdrawn);
    return json;
}

void read(ObjectReader& from, MethodDescribed& record) {
    record.key = readSaid(from, "key");
    record.revision = from.count("revision", 1);
    record.name = from.textOr("name");
    record.kind = from.word<TestKind>("kind");
    record.mark = from.word<analytics::Mark>("mark");
    record.source = from.textOr("source");
    record.chemistries = readChemistries(from);
    readPlan(from, record);
    readOwnWords(from, record);
    from.optionalObject("rule", [&](ObjectReader& one) { record.rule = readPassRule(one); });
    record.eachLot = from.flagOr("each_lot");
    record.withdrawn = from.flagOr("withdrawn");
}

Json toJson(const TestDone& record) {
    Json json{{"print", record.print}, {"method", record.method}, {"revision", record.revision}};
    setIf(json, "cycle", record.cycle);
    setIf(json, "load", record.load);
    setSeen(json, record);
    json["outcome"] = wordJson(record.outcome);
    setIf(json, "note", record.note);
    setIf(json, "corrects", record.corrects);
    return json;
}

void read(ObjectReader& from, TestDone& record) {
    record.print = readSaid(from, "print");
    record.method = readSaid(from, "method");
    record.revision = from.count("revision", 1);
    record.cycle = from.optionalCount("cycle");
    record.load = from.optionalText("load");
    readSeen(from, record);
    record.outcome = from.word<TestOutcome>("outcome");
    if (record.outcome == TestOutcome::inAVoidLoad && !record.load) {
        from.fault(FaultCode::missingKey, "load", "only what was in a load can be in a void one");
    }
    record.note = from.textOr("note");
    record.corrects = from.optionalText("corrects");
}

} // namespace holdfast::kiosk::records
