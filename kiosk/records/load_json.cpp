#include "kiosk/records/record_json.hpp"

#include <cmath>

namespace holdfast::kiosk::records {
namespace {

/// On the grey scale, 1 to 5; by eye in half steps.
std::optional<double> optionalGrade(ObjectReader& from, const char* key, bool halfSteps) {
    const auto grade = from.optionalNumber(key);
    if (!grade) {
        return grade;
    }
    if (*grade < 1.0 || *grade > 5.0) {
        from.fault(FaultCode::badValue, key, "is outside 1 to 5");
    } else if (halfSteps && std::floor(*grade * 2.0) != *grade * 2.0) {
        from.fault(FaultCode::badValue, key, "is no half step");
    }
    return grade;
}

} // namespace

Json toJson(const LoadWashed& record) {
    Json json{
        {"load", record.load}, {"number", record.number}, {"machine", record.machine}, {"programme", record.programme}};
    setAuthoredIf(json, "temperature", record.temperature);
    setIf(json, "detergent", record.detergent);
    json["tumbled"] = record.tumbled;
    json["prints"] = record.prints;
    setIf(json, "besides", record.besides);
    setIf(json, "good_witness", record.goodWitness);
    setIf(json, "weak_witness", record.weakWitness);
    return json;
}

void read(ObjectReader& from, LoadWashed& record) {
    record.load = readSaid(from, "load");
    record.number = from.integer("number", 0);
    record.machine = readSaid(from, "machine");
    record.programme = readSaid(from, "programme");
    record.temperature = from.optionalTemperature("temperature");
    record.detergent = from.textOr("detergent");
    record.tumbled = from.flag("tumbled");
    record.prints = readDifferent(from, "prints");
    record.besides = from.textOr("besides");
    record.goodWitness = from.textOr("good_witness");
    record.weakWitness = from.textOr("weak_witness");
}

Json toJson(const LoadJudged& record) {
    Json json{{"load", record.load}};
    setIf(json, "good_grade", record.goodGrade);
    setIf(json, "weak_grade", record.weakGrade);
    setIf(json, "by_instrument", record.byInstrument);
    setIf(json, "good_low", record.goodLow);
    setIf(json, "weak_high", record.weakHigh);
    setIf(json, "weak_low", record.weakLow);
    json["word"] = wordJson(record.word);
    setIf(json, "corrects", record.corrects);
    return json;
}

void read(ObjectReader& from, LoadJudged& record) {
    record.load = readSaid(from, "load");
    record.byInstrument = from.flagOr("by_instrument");
    record.goodGrade = optionalGrade(from, "good_grade", !record.byInstrument);
    record.weakGrade = optionalGrade(from, "weak_grade", !record.byInstrument);
    record.goodLow = from.optionalNumber("good_low");
    record.weakHigh = from.optionalNumber("weak_high");
    record.weakLow = from.optionalNumber("weak_low");
    if (record.weakLow && record.weakHigh && *record.weakLow > *record.weakHigh) {
        from.fault(FaultCode::inconsistent, "weak_low", "is above weak_high");
    }
    record.word = from.word<LoadWord>("word");
    if (record.word == LoadWord::valid && !(record.goodGrade && record.weakGrade)) {
        from.fault(FaultCode::inconsistent, "word", "a load is valid only by both its witnesses");
    }
    record.corrects = from.optionalText("corrects");
}

} // namespace holdfast::kiosk::records
