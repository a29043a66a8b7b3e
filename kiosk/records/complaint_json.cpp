#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {

Json toJson(const ComplaintTaken& record) {
    Json json{{"complaint", record.complaint}, {"number", record.number}};
    setIf(json, "customer", record.customer);
    json["what"] = wordJson(record.what);
    setIf(json, "words", record.words);
    setIf(json, "pieces", record.pieces);
    setIf(json, "clue", record.clue);
    setIf(json, "run", record.run);
    setIf(json, "lot", record.lot);
    setIf(json, "pictures", record.pictures);
    setIf(json, "received", record.received);
    return json;
}

void read(ObjectReader& from, ComplaintTaken& record) {
    record.complaint = readSaid(from, "complaint");
    record.number = from.integer("number", 0);
    record.customer = from.textOr("customer");
    record.what = from.word<ComplaintKind>("what");
    record.words = from.textOr("words");
    record.pieces = from.optionalCount("pieces", 1);
    record.clue = from.textOr("clue");
    record.run = from.optionalText("run");
    record.lot = from.optionalText("lot");
    if (record.lot && !record.run) {
        from.fault(FaultCode::inconsistent, "lot", "a lot is of a run");
    }
    record.pictures = readDifferent(from, "pictures");
    for (const auto& hash : record.pictures) {
        if (hash.size() != 64 || hash.find_first_not_of("0123456789abcdef") != std::string::npos) {
            from.fault(FaultCode::badValue, "pictures", "64 hexadecimal digits each are asked for");
        }
    }
    record.received = from.optionalDate("received");
}

Json toJson(const FindingSigned& record) {
    Json json = Json::object();
    setIf(json, "complaint", record.complaint);
    setIf(json, "lot", record.lot);
    json["cause"] = record.cause;
    setIf(json, "action", record.action);
    setIf(json, "proven_later", record.provenLater);
    json["signers"] = record.signers;
    return json;
}

void read(ObjectReader& from, FindingSigned& record) {
    record.complaint = from.textOr("complaint");
    record.lot = from.textOr("lot");
    if (record.complaint.empty() && record.lot.empty()) {
        from.fault(FaultCode::missingKey, "complaint", "a finding is of a complaint or of a lot");
    }
    record.cause = readSaid(from, "cause");
    record.action = from.textOr("action");
    record.provenLater = from.flagOr("proven_later");
    record.signers = readSigners(from, 1, 2);
}

} // namespace holdfast::kiosk::records
