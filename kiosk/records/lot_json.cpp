#include "kiosk/records/record_json.hpp"

#include <algorithm>
#include <set>

namespace holdfast::kiosk::records {
namespace {

void setRange(Json& json, const std::optional<PieceRange>& range) {
    if (range) {
        json["pieces"] = Json{{"first", range->first}};
        setIf(json["pieces"], "last", range->last);
    }
}

std::optional<PieceRange> readRange(ObjectReader& from) {
    std::optional<PieceRange> range;
    from.optionalObject("pieces", [&](ObjectReader& one) {
        range.emplace();
        range->first = one.count("first", 1);
        range->last = one.optionalCount("last", 1);
        if (range->last && *range->last < range->first) {
            one.fault(FaultCode::inconsistent, "last", "is before the first");
        }
    });
    return range;
}

void readCorrection(ObjectReader& from, const std::string& own, std::optional<std::string>& corrects) {
    corrects = from.optionalText("corrects");
    if (corrects && (corrects->empty() || *corrects == own)) {
        from.fault(FaultCode::inconsistent, "corrects", "names nothing, or itself");
    }
}

} // namespace

Json toJson(const HoldPlaced& record) {
    Json json{{"hold", record.hold}, {"lot", record.lot}, {"cause", wordJson(record.cause)}};
    setIf(json, "because", record.because);
    setRange(json, record.pieces);
    setIf(json, "count", record.count);
    setWordIf(json, "basis", record.basis);
    json["bin"] = record.bin;
    return json;
}

void read(ObjectReader& from, HoldPlaced& record) {
    record.hold = readSaid(from, "hold");
    record.lot = readSaid(from, "lot");
    record.cause = from.word<HoldCause>("cause");
    record.because = from.textOr("because");
    record.pieces = readRange(from);
    record.count = from.optionalCount("count");
    record.basis = from.optionalWord<CountBasis>("basis");
    record.bin = from.integer("bin", 0);
}

Json toJson(const HoldChanged& record) {
    Json json{{"hold", record.hold}};
    setRange(json, record.pieces);
    setIf(json, "count", record.count);
    setWordIf(json, "basis", record.basis);
    return json;
}

void read(ObjectReader& from, HoldChanged& record) {
    record.hold = readSaid(from, "hold");
    record.pieces = readRange(from);
    record.count = from.optionalCount("count");
    record.basis = from.optionalWord<CountBasis>("basis");
}

Json toJson(const DecisionSigned& record) {
    Json json{{"decision", record.decision}, {"lot", record.lot}};
    setIf(json, "holds", record.holds);
    json["word"] = wordJson(record.word);
    json["reason"] = record.reason;
    json["signers"] = record.signers;
    setIf(json, "below_limit", record.belowLimit);
    setIf(json, "laboratory_report", record.laboratoryReport);
    setIf(json, "re_run_lot", record.reRunLot);
    setIf(json, "corrects", record.corrects);
    return json;
}

void read(ObjectReader& from, DecisionSigned& record) {
    record.decision = readSaid(from, "decision");
    record.lot = readSaid(from, "lot");
    record.holds = readDifferent(from, "holds");
    record.word = from.word<DecisionWord>("word");
    record.reason = readSaid(from, "reason");
    record.signers = readSigners(from, 1, 2);
    record.belowLimit = from.flagOr("below_limit");
    if (record.belowLimit && record.word != DecisionWord::released) {
        from.fault(FaultCode::inconsistent, "below_limit", "is said of a release only");
    }
    record.laboratoryReport = from.textOr("laboratory_report");
    record.reRunLot = from.optionalText("re_run_lot");
    if (record.reRunLot && (record.word != DecisionWord::reRun || *record.reRunLot == record.lot)) {
        from.fault(FaultCode::inconsistent, "re_run_lot", "is another lot, and said of a re-run only");
    }
    readCorrection(from, record.decision, record.corrects);
}

Json toJson(const PiecesMoved& record) {
    Json json{{"lot", record.lot}, {"to", wordJson(record.to)}, {"count", record.count}};
    setIf(json, "day", record.day);
    setIf(json, "customer", record.customer);
    setIf(json, "cartons", record.cartons);
    setIf(json, "corrects", record.corrects);
    return json;
}

void read(ObjectReader& from, PiecesMoved& record) {
    record.lot = readSaid(from, "lot");
    record.to = from.word<PiecePlace>("to");
    record.count = from.count("count");
    record.day = from.optionalDate("day");
    record.customer = from.textOr("customer");
    record.cartons = readDifferent(from, "cartons");
    readCorrection(from, {}, record.corrects);
    if (record.count == 0 && from.has("count") && !record.corrects) {
        from.fault(FaultCode::badValue, "count", "only a correction moves nothing");
    }
}

Json toJson(const PiecesCounted& record) {
    Json json{{"lot", record.lot}};
    setIf(json, "made", record.made);
    setIf(json, "here", record.here);
    setIf(json, "corrects", record.corrects);
    return json;
}

void read(ObjectReader& from, PiecesCounted& record) {
    record.lot = readSaid(from, "lot");
    record.made = from.optionalCount("made");
    record.here = from.optionalCount("here");
    readCorrection(from, {}, record.corrects);
    if (!from.has("made") && !from.has("here")) {
        from.fault(FaultCode::missingKey, "made", "nothing was counted");
    }
}

Json toJson(const ShelfCounted& record) {
    Json bins = Json::array();
    for (const auto& bin : record.bins) {
        bins.push_back(Json{{"hold", bin.hold}, {"pieces", bin.pieces}});
    }
    return Json{{"bins", std::move(bins)}};
}

void read(ObjectReader& from, ShelfCounted& record) {
    std::set<std::string> seen;
    from.list("bins", [&](ObjectReader& one) {
        BinCount bin{readSaid(one, "hold"), one.count("pieces")};
        if (!seen.insert(bin.hold).second) {
            one.fault(FaultCode::inconsistent, "hold", "stands twice");
        }
        record.bins.push_back(std::move(bin));
    });
}

Json toJson(const ReadingMissed& record) {
    Json json{{"lot", record.lot}, {"due", wordJson(record.due)}};
    setIf(json, "piece", record.piece);
    return json;
}

void read(ObjectReader& from, ReadingMissed& record) {
    record.lot = readSaid(from, "lot");
    record.due = from.word<DueReadingKind>("due");
    record.piece = from.optionalCount("piece", 1);
}

} // namespace holdfast::kiosk::records
