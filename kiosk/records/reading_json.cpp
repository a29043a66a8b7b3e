#include "kiosk/records/record_json.hpp"
#include "kiosk/records/verdict_json.hpp"

namespace holdfast::kiosk::records {
namespace {

using analytics::GuardedLimit;
using analytics::MarginRange;
using analytics::TemperatureDifference;
using analytics::Verdict;

Json limitJson(const GuardedLimit& limit) {
    return Json{{"limit_c", limit.limit.celsius()}, {"guard_c", limit.guard.celsius()}};
}

GuardedLimit readLimit(ObjectReader& from) {
    return {from.celsius("limit_c"), from.kelvins("guard_c")};
}

Json guardsJson(const GuardsUsed& guards) {
    Json json{{"layers", Json::array()}};
    for (const auto& layer : guards.layers) {
        json["layers"].push_back(limitJson(layer));
    }
    if (guards.hard) {
        json["hard"] = limitJson(*guards.hard);
    }
    if (guards.bleed) {
        json["bleed"] = limitJson(*guards.bleed);
    }
    return json;
}

void read(ObjectReader& from, GuardsUsed& guards) {
    from.list("layers", [&](ObjectReader& one) { guards.layers.push_back(readLimit(one)); });
    from.optionalObject("hard", [&](ObjectReader& one) { guards.hard = readLimit(one); });
    from.optionalObject("bleed", [&](ObjectReader& one) { guards.bleed = readLimit(one); });
}

Json calibrationJson(const CalibrationUsed& used) {
    Json json = Json::object();
    if (used.certificate) {
        json["certificate"] = toText(*used.certificate);
    }
    json["checked_in_date"] = used.checkedInDate;
    json["correction_c"] = used.correction.celsius();
    json["common_c"] = used.common.celsius();
    json["random_c"] = used.random.celsius();
    json["risk_percent"] = used.risk.percent();
    return json;
}

void read(ObjectReader& from, CalibrationUsed& used) {
    used.certificate = from.optionalDate("certificate");
    used.checkedInDate = from.flag("checked_in_date");
    used.correction = from.kelvins("correction_c");
    used.common = from.kelvins("common_c");
    used.random = from.kelvins("random_c");
    used.risk = analytics::Probability::fromPercent(from.number("risk_percent"));
}

std::optional<TemperatureDifference> readNullableKelvins(const Json& value, const std::string& path, Faults& faults) {
    if (value.is_number()) {
        return TemperatureDifference::fromCelsius(value.get<double>());
    }
    if (!value.is_null()) {
        faults.push_back({FaultCode::wrongType, path, "a number or null is asked for"});
    }
    return std::nullopt;
}

/// A number, [low, high] with null at an open end, or null.
std::optional<MarginRange> readMargin(ObjectReader& from, const char* key) {
    const Json* value = from.raw(key);
    if (value == nullptr || value->is_null()) {
        return std::nullopt;
    }
    if (value->is_array() && value->size() == 2) {
        return MarginRange{readNullableKelvins((*value)[0], key, from.faults()),
                           readNullableKelvins((*value)[1], key, from.faults())};
    }
    const auto both = from.optionalKelvins(key);
    return both ? std::optional{MarginRange{both, both}} : std::nullopt;
}

void readLayers(ObjectReader& from, const GuardsUsed& guards, Verdict& verdict) {
    from.list("layers", [&](ObjectReader& one) {
        analytics::LayerVerdict layer;
        layer.position = one.count("position", 1);
        layer.colour = one.textOr("colour");
        layer.family = one.textOr("family");
        layer.word = one.word<analytics::Word>("verdict");
        layer.margin = readMargin(one, "margin_c");
        layer.limit.limit = one.celsius("limit_c");
        const auto index = static_cast<std::size_t>(layer.position - 1);
        if (index < guards.layers.size()) {
            layer.limit.guard = guards.layers[index].guard;
        }
        verdict.layers.push_back(layer);
    });
}

void setVerdict(Json& json, const Verdict& verdict) {
    Json all = verdictJson(verdict, nullptr);
    all.erase("window"); // stands beside it
    for (auto& [key, value] : all.items()) {
        json[key] = std::move(value);
    }
    setIf(json, "bleed_watch_due", verdict.bleedWatchDue);
    json["could_prove"] = verdict.couldProve;
    json["remedies"] = Json::array();
    for (const auto remedy : verdict.remedies) {
        json["remedies"].push_back(wordJson(remedy));
    }
}

void readVerdict(ObjectReader& from, ReadingTaken& record) {
    Verdict verdict;
    verdict.word = from.word<analytics::Word>("verdict");
    verdict.bleedNotRuledOut = from.flag("bleed_not_ruled_out");
    verdict.bleedWatchDue = from.flagOr("bleed_watch_due");
    verdict.couldProve = from.flag("could_prove");
    verdict.margin = readMargin(from, "margin_c");
    const auto upper = readMargin(from, "upper_margin_c");
    verdict.upperMargin = upper ? upper->low : std::nullopt;
    verdict.guard = from.kelvins("guard_c");
    from.list("reasons", [&](ObjectReader& one) { read(one, verdict.reasons.emplace_back()); });
    for (const auto& text : from.texts("remedies")) {
        if (const auto remedy = fromWord<analytics::Remedy>(text)) {
            verdict.remedies.push_back(*remedy);
        } else {
            from.fault(FaultCode::badValue, "remedies", "no such word: " + text);
        }
    }
    readLayers(from, record.guards, verdict);
    if (const auto* trace = std::get_if<TraceSeen>(&record.evidence)) {
        if (trace->sustainedPeak) {
            verdict.sustained = analytics::PeakAt{*trace->sustainedPeak, {}};
        }
        if (trace->rawPeak) {
            verdict.raw = analytics::PeakAt{*trace->rawPeak, {}};
        }
    }
    record.verdict = std::move(verdict);
}

void readWindow(ObjectReader& from, ReadingTaken& record) {
    from.optionalObject("guards", [&](ObjectReader& one) { read(one, record.guards); });
    from.optionalObject("window", [&](ObjectReader& one) { read(one, record.window.emplace()); });
    if (!record.window) {
        return;
    }
    for (std::size_t i = 0; i < record.guards.layers.size(); ++i) {
        analytics::LayerRequirement layer;
        layer.position = static_cast<int>(i) + 1;
        layer.cure = record.guards.layers[i];
        record.window->layers.push_back(layer);
    }
    if (record.window->upperHard && record.guards.hard) {
        record.window->upperHard = record.guards.hard;
    }
    if (record.window->upperBleed && record.guards.bleed) {
        record.window->upperBleed = record.guards.bleed;
    }
}

} // namespace

Json toJson(const ReadingTaken& record) {
    constexpr std::size_t kKeys = 16; // growing moves everything, and there are more readings than anything else
    Json json = Json::object();
    json.get_ref<Json::object_t&>().reserve(kKeys);
    setIf(json, "run", record.run);
    setIf(json, "lot", record.lot);
    setIf(json, "dryer", record.dryer);
    json["instrument"] = record.instrument;
    json["position"] = wordJson(record.position);
    json["placement"] = wordJson(record.placement);
    json["reason"] = wordJson(record.reason);
    setIf(json, "piece", record.piece);
    setIf(json, "retake_of", record.retakeOf);
    setEvidence(json, record.evidence);
    if (record.window) {
        json["window"] = windowJson(*record.window);
        json["guards"] = guardsJson(record.guards);
    }
    if (record.revisions) {
        json["revisions"] = toJson(*record.revisions);
    }
    if (record.calibration) {
        json["calibration"] = calibrationJson(*record.calibration);
    }
    if (record.verdict) {
        setVerdict(json, *record.verdict);
    }
    return json;
}

void read(ObjectReader& from, ReadingTaken& record) {
    record.run = from.optionalText("run");
    record.lot = from.optionalText("lot");
    record.dryer = from.textOr("dryer");
    record.instrument = from.text("instrument");
    record.position = from.word<BeltPosition>("position");
    record.placement = from.word<analytics::Placement>("placement");
    record.reason = from.word<ReadingReason>("reason");
    record.piece = from.optionalCount("piece", 1);
    record.retakeOf = from.optionalText("retake_of");
    read(from, record.evidence);
    readWindow(from, record);
    from.optionalObject("revisions", [&](ObjectReader& one) { read(one, record.revisions.emplace()); });
    from.optionalObject("calibration", [&](ObjectReader& one) { read(one, record.calibration.emplace()); });
    if (from.has("verdict")) {
        readVerdict(from, record);
    }
    const bool refused = record.verdict && record.verdict->word == analytics::Word::refused;
    if (record.run.has_value() != record.verdict.has_value() && !(refused && !record.run)) {
        from.fault(FaultCode::inconsistent, "verdict", "a reading has a verdict if and only if it has a run");
    }
}

Json toJson(const ReadingRefused& record) {
    Json json = Json::object();
    setIf(json, "run", record.run);
    setIf(json, "lot", record.lot);
    setIf(json, "dryer", record.dryer);
    json["instrument"] = record.instrument;
    json["position"] = wordJson(record.position);
    setEvidence(json, record.evidence);
    json["reasons"] = Json::array();
    for (const auto& reason : record.reasons) {
        json["reasons"].push_back(reasonJson(reason));
    }
    return json;
}

void read(ObjectReader& from, ReadingRefused& record) {
    record.run = from.optionalText("run");
    record.lot = from.optionalText("lot");
    record.dryer = from.textOr("dryer");
    record.instrument = from.text("instrument");
    record.position = from.word<BeltPosition>("position");
    read(from, record.evidence);
    from.list("reasons", [&](ObjectReader& one) { read(one, record.reasons.emplace_back()); });
}

Json toJson(const CorrectionMade& record) {
    Json json{{"corrects", record.corrects}, {"reading", toJson(record.reading)}};
    setIf(json, "check", record.check);
    return json;
}

void read(ObjectReader& from, CorrectionMade& record) {
    record.corrects = from.text("corrects");
    from.object("reading", [&](ObjectReader& one) { read(one, record.reading); });
    record.check = from.textOr("check");
}

} // namespace holdfast::kiosk::records
