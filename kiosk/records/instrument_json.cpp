#include "kiosk/records/record_json.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {
namespace {

using analytics::AuthoredTemperature;

std::vector<AuthoredTemperature> readTemperatures(ObjectReader& from, const char* key) {
    std::vector<AuthoredTemperature> all;
    from.list(key, [&](ObjectReader& one) {
        AuthoredTemperature t;
        t.value = one.number("value");
        t.unit = one.word<analytics::TemperatureUnit>("unit");
        all.push_back(t);
    });
    return all;
}

template <class T>
bool ascending(const std::vector<T>& all, AuthoredTemperature T::*at) {
    return std::adjacent_find(all.begin(), all.end(), [&](const T& a, const T& b) {
               return (a.*at).temperature() >= (b.*at).temperature();
           }) == all.end();
}

bool ascending(const std::vector<AuthoredTemperature>& all) {
    return std::adjacent_find(all.begin(), all.end(), [](const auto& a, const auto& b) {
               return a.temperature() >= b.temperature();
           }) == all.end();
}

Json temperaturesJson(const std::vector<AuthoredTemperature>& all) {
    Json json = Json::array();
    for (const auto& t : all) {
        json.push_back(toJson(t));
    }
    return json;
}

void readStrip(ObjectReader& from, InstrumentSpec& spec) {
    from.optionalObject("strip", [&](ObjectReader& strip) {
        const auto before = strip.faults().size();
        AuthoredStrip read;
        read.steps = readTemperatures(strip, "steps");
        read.tolerance = strip.difference("tolerance");
        read.expiry = strip.optionalDate("expiry");
        if (strip.faults().size() == before && (read.steps.empty() || !ascending(read.steps))) {
            strip.fault(FaultCode::inconsistent, "steps", "at least one is asked for, in ascending order");
        }
        spec.strip = read;
    });
    if (!spec.strip && spec.kind == analytics::InstrumentKind::strip) {
        from.fault(FaultCode::missingKey, "strip", "a strip needs its steps");
    }
}

} // namespace

Json toJson(const InstrumentSpec& spec) {
    Json json{{"name", spec.name}, {"kind", wordJson(spec.kind)}};
    if (spec.type) {
        json["type"] = wordJson(*spec.type);
    }
    if (spec.toleranceClass) {
        json["class"] = wordJson(*spec.toleranceClass);
    }
    setAuthoredIf(json, "stated_tolerance", spec.statedTolerance);
    setAuthoredIf(json, "resolution", spec.resolution);
    if (spec.range) {
        json["range"] = temperaturesJson({spec.range->low, spec.range->high});
    }
    json["placement"] = wordJson(spec.placement);
    setAuthoredIf(json, "own_placement", spec.ownPlacement);
    if (spec.strip) {
        json["strip"] =
            Json{{"steps", temperaturesJson(spec.strip->steps)}, {"tolerance", toJson(spec.strip->tolerance)}};
        if (spec.strip->expiry) {
            json["strip"]["expiry"] = toText(*spec.strip->expiry);
        }
    }
    return json;
}

void read(ObjectReader& from, InstrumentSpec& spec) {
    spec.name = from.text("name");
    if (spec.name.empty() && from.has("name")) {
        from.fault(FaultCode::badValue, "name", "is empty");
    }
    spec.kind = from.word<analytics::InstrumentKind>("kind");
    spec.type = from.optionalWord<analytics::ThermocoupleType>("type");
    spec.toleranceClass = from.optionalWord<analytics::ToleranceClass>("class");
    spec.statedTolerance = from.optionalDifference("stated_tolerance");
    spec.resolution = from.optionalDifference("resolution");
    if (from.has("range")) {
        const auto ends = readTemperatures(from, "range");
        if (ends.size() == 2 && ascending(ends)) {
            spec.range = AuthoredRange{ends[0], ends[1]};
        } else {
            from.fault(FaultCode::badValue, "range", "two temperatures are asked for, the lower first");
        }
    }
    spec.placement = from.wordOr("placement", analytics::Placement::wetInk);
    spec.ownPlacement = from.optionalDifference("own_placement");
    readStrip(from, spec);
}

Json toJson(const CertificateSpec& spec) {
    Json points = Json::array();
    for (const auto& point : spec.points) {
        points.push_back(Json{{"at", toJson(point.at)},
                              {"correction", toJson(point.correction)},
                              {"U", toJson(point.expandedUncertainty)}});
    }
    return Json{{"date", toText(spec.date)}, {"due", toText(spec.due)}, {"k", spec.coverageFactor}, {"points", points}};
}

void read(ObjectReader& from, CertificateSpec& spec) {
    const auto before = from.faults().size();
    spec.date = from.date("date");
    spec.due = from.date("due");
    spec.coverageFactor = from.number("k");
    from.list("points", [&](ObjectReader& one) {
        AuthoredPoint point;
        point.at = one.temperature("at");
        point.correction = one.difference("correction");
        point.expandedUncertainty = one.difference("U");
        if (point.expandedUncertainty.value < 0) {
            one.fault(FaultCode::badValue, "U", "is negative");
        }
        spec.points.push_back(point);
    });
    if (from.faults().size() != before) {
        return;
    }
    if (spec.coverageFactor <= 0) {
        from.fault(FaultCode::badValue, "k", "must be above 0"); // decisions 2: a missing or zero k is refused
    }
    if (spec.points.empty() || !ascending(spec.points, &AuthoredPoint::at)) {
        from.fault(FaultCode::inconsistent, "points", "at least one is asked for, in ascending order");
    }
    if (spec.due < spec.date) {
        from.fault(FaultCode::inconsistent, "due", "is before the date");
    }
}

Json toJson(const CheckSpec& spec) {
    return Json{
        {"kind", wordJson(spec.kind)}, {"passed", spec.passed}, {"date", toText(spec.date)}, {"due", toText(spec.due)}};
}

void read(ObjectReader& from, CheckSpec& spec) {
    const auto before = from.faults().size();
    spec.kind = from.word<analytics::CheckKind>("kind");
    spec.passed = from.flag("passed");
    spec.date = from.date("date");
    spec.due = from.date("due");
    if (from.faults().size() == before && spec.due < spec.date) {
        from.fault(FaultCode::inconsistent, "due", "is before the date");
    }
}

Json toJson(const InstrumentDescribed& record) {
    Json json{{"instrument", record.instrument}};
    setIf(json, "number", record.number);
    json["spec"] = toJson(record.spec);
    setIf(json, "catalogue", record.catalogue);
    setIf(json, "address", record.address);
    setIf(json, "withdrawn", record.withdrawn);
    if (record.pack) {
        json["pack"] = Json{{"first_number", record.pack->firstNumber}, {"count", record.pack->count}};
        setIf(json["pack"], "batch", record.pack->batch);
    }
    return json;
}

void read(ObjectReader& from, InstrumentDescribed& record) {
    record.instrument = from.text("instrument");
    record.number = from.optionalInteger("number", 0);
    from.object("spec", [&](ObjectReader& spec) { read(spec, record.spec); });
    record.catalogue = from.textOr("catalogue");
    record.address = from.textOr("address");
    record.withdrawn = from.flagOr("withdrawn");
    from.optionalObject("pack", [&](ObjectReader& one) {
        record.pack = StripPack{one.integer("first_number", 0), one.count("count", 1), one.textOr("batch")};
    });
    if (record.pack && from.has("spec") && record.spec.kind != analytics::InstrumentKind::strip) {
        from.fault(FaultCode::inconsistent, "pack", "only strips come in packs");
    }
}

Json toJson(const CertificateAdded& record) {
    return Json{{"instrument", record.instrument}, {"certificate", toJson(record.certificate)}};
}

void read(ObjectReader& from, CertificateAdded& record) {
    record.instrument = from.text("instrument");
    from.object("certificate", [&](ObjectReader& spec) { read(spec, record.certificate); });
}

Json toJson(const CheckDone& record) {
    Json json{{"instrument", record.instrument}, {"check", toJson(record.check)}};
    setAuthoredIf(json, "indicated", record.indicated);
    setAuthoredIf(json, "reference", record.reference);
    setAuthoredIf(json, "uncertainty", record.uncertainty);
    setAuthoredIf(json, "limit", record.limit);
    setIf(json, "station_pressure_kpa", record.stationPressureKilopascal);
    return json;
}

void read(ObjectReader& from, CheckDone& record) {
    record.instrument = from.text("instrument");
    from.object("check", [&](ObjectReader& spec) { read(spec, record.check); });
    record.indicated = from.optionalTemperature("indicated");
    record.reference = from.optionalTemperature("reference");
    record.uncertainty = from.optionalDifference("uncertainty");
    record.limit = from.optionalDifference("limit");
    if (record.uncertainty && record.uncertainty->value < 0.0) {
        from.fault(FaultCode::badValue, "uncertainty", "is negative");
    }
    if (record.limit && record.limit->value < 0.0) {
        from.fault(FaultCode::badValue, "limit", "is negative");
    }
    record.stationPressureKilopascal = optionalPositive(from, "station_pressure_kpa");
}

} // namespace holdfast::kiosk::records
