#pragma once

#include "kiosk/records/json_object.hpp"
#include "kiosk/records/kinds.hpp"

/// Each record as JSON and back, in its newest version. Reading notes faults in the reader's list; what it gives is
/// only to be used if there were none.
namespace holdfast::kiosk::records {

[[nodiscard]] Json toJson(const FamilyRecord& record);
[[nodiscard]] Json toJson(const FabricRecord& record);
[[nodiscard]] Json toJson(const InstrumentSpec& spec);
[[nodiscard]] Json toJson(const CertificateSpec& spec);
[[nodiscard]] Json toJson(const CheckSpec& spec);
[[nodiscard]] Json toJson(const BookOpened& record);
[[nodiscard]] Json toJson(const PersonAdded& record);
[[nodiscard]] Json toJson(const CrewChanged& record);
[[nodiscard]] Json toJson(const DryerDescribed& record);
[[nodiscard]] Json toJson(const SettingChanged& record);
[[nodiscard]] Json toJson(const InstrumentDescribed& record);
[[nodiscard]] Json toJson(const CertificateAdded& record);
[[nodiscard]] Json toJson(const CheckDone& record);
[[nodiscard]] Json toJson(const RevisionsUsed& revisions);
[[nodiscard]] Json toJson(const RunPlanned& record);
[[nodiscard]] Json toJson(const RunReplanned& record);
[[nodiscard]] Json toJson(const LotOpened& record);
[[nodiscard]] Json toJson(const LotClosed& record);
[[nodiscard]] Json toJson(const ReadingTaken& record);
[[nodiscard]] Json toJson(const ReadingRefused& record);
[[nodiscard]] Json toJson(const CorrectionMade& record);
[[nodiscard]] Json toJson(const BucketOpened& record);
[[nodiscard]] Json toJson(const MixMade& record);
[[nodiscard]] Json toJson(const BucketClosed& record);
[[nodiscard]] Json toJson(const ActionTaken& record);
[[nodiscard]] Json toJson(const ReadingStruck& record);
[[nodiscard]] Json toJson(const FlashNoted& record);
[[nodiscard]] Json toJson(const RunFinished& record);
[[nodiscard]] Json toJson(const PersonChanged& record);
[[nodiscard]] Json toJson(const PinSet& record);
[[nodiscard]] Json toJson(const PrintNamed& record);
[[nodiscard]] Json toJson(const PrintChanged& record);
[[nodiscard]] Json toJson(const MethodDescribed& record);
[[nodiscard]] Json toJson(const LoadWashed& record);
[[nodiscard]] Json toJson(const LoadJudged& record);
[[nodiscard]] Json toJson(const TestDone& record);
[[nodiscard]] Json toJson(const HoldPlaced& record);
[[nodiscard]] Json toJson(const HoldChanged& record);
[[nodiscard]] Json toJson(const DecisionSigned& record);
[[nodiscard]] Json toJson(const PiecesMoved& record);
[[nodiscard]] Json toJson(const PiecesCounted& record);
[[nodiscard]] Json toJson(const ShelfCounted& record);
[[nodiscard]] Json toJson(const ReadingMissed& record);
[[nodiscard]] Json toJson(const ComplaintTaken& record);
[[nodiscard]] Json toJson(const FindingSigned& record);

void read(ObjectReader& from, FamilyRecord& record);
void read(ObjectReader& from, FabricRecord& record);
void read(ObjectReader& from, InstrumentSpec& spec);
void read(ObjectReader& from, CertificateSpec& spec);
void read(ObjectReader& from, CheckSpec& spec);
void read(ObjectReader& from, BookOpened& record);
void read(ObjectReader& from, PersonAdded& record);
void read(ObjectReader& from, CrewChanged& record);
void read(ObjectReader& from, DryerDescribed& record);
void read(ObjectReader& from, SettingChanged& record);
void read(ObjectReader& from, InstrumentDescribed& record);
void read(ObjectReader& from, CertificateAdded& record);
void read(ObjectReader& from, CheckDone& record);
void read(ObjectReader& from, RevisionsUsed& revisions);
void read(ObjectReader& from, RunPlanned& record);
void read(ObjectReader& from, RunReplanned& record);
void read(ObjectReader& from, LotOpened& record);
void read(ObjectReader& from, LotClosed& record);
void read(ObjectReader& from, ReadingTaken& record);
void read(ObjectReader& from, ReadingRefused& record);
void read(ObjectReader& from, CorrectionMade& record);
void read(ObjectReader& from, BucketOpened& record);
void read(ObjectReader& from, MixMade& record);
void read(ObjectReader& from, BucketClosed& record);
void read(ObjectReader& from, ActionTaken& record);
void read(ObjectReader& from, ReadingStruck& record);
void read(ObjectReader& from, FlashNoted& record);
void read(ObjectReader& from, RunFinished& record);
void read(ObjectReader& from, PersonChanged& record);
void read(ObjectReader& from, PinSet& record);
void read(ObjectReader& from, PrintNamed& record);
void read(ObjectReader& from, PrintChanged& record);
void read(ObjectReader& from, MethodDescribed& record);
void read(ObjectReader& from, LoadWashed& record);
void read(ObjectReader& from, LoadJudged& record);
void read(ObjectReader& from, TestDone& record);
void read(ObjectReader& from, HoldPlaced& record);
void read(ObjectReader& from, HoldChanged& record);
void read(ObjectReader& from, DecisionSigned& record);
void read(ObjectReader& from, PiecesMoved& record);
void read(ObjectReader& from, PiecesCounted& record);
void read(ObjectReader& from, ShelfCounted& record);
void read(ObjectReader& from, ReadingMissed& record);
void read(ObjectReader& from, ComplaintTaken& record);
void read(ObjectReader& from, FindingSigned& record);

/// The one of trace, strip, spot and gun that was seen stands under its own key of the reading.
void setEvidence(Json& json, const Evidence& evidence);
void read(ObjectReader& from, Evidence& evidence);

/// Of the JSON that windowJson and verdictJson write; guards are not in it.
void read(ObjectReader& from, analytics::RunWindow& window);
void read(ObjectReader& from, analytics::Reason& reason);

/// SHA-256 of a blob under the key: 64 hexadecimal digits, small letters.
[[nodiscard]] std::string readBlobHash(ObjectReader& from, const char* key);
/// Text under the key that says something: not missing, not blanks alone.
[[nodiscard]] std::string readSaid(ObjectReader& from, const char* key);
/// A list of numbers of persons, each once; a fault unless there are `least` to `most`.
[[nodiscard]] std::vector<std::int64_t> readSigners(ObjectReader& from, std::size_t least, std::size_t most);
/// A list of texts under the key, each once and none empty; the key may be left out.
[[nodiscard]] std::vector<std::string> readDifferent(ObjectReader& from, const char* key);
/// A list of numbers under the key; the key may be left out. A fault unless they ascend and none is below `least`.
[[nodiscard]] std::vector<double> readAscending(ObjectReader& from, const char* key, double least);

/// Leaves the key out when there is nothing.
template <class T>
void setIf(Json& json, const char* key, const std::optional<T>& value) {
    if (value) {
        json[key] = *value;
    }
}
inline void setIf(Json& json, const char* key, const std::string& value) {
    if (!value.empty()) {
        json[key] = value;
    }
}
inline void setIf(Json& json, const char* key, bool value) {
    if (value) {
        json[key] = value;
    }
}
template <class T>
void setAuthoredIf(Json& json, const char* key, const std::optional<T>& value) {
    if (value) {
        json[key] = toJson(*value);
    }
}
inline void setIf(Json& json, const char* key, const std::vector<std::string>& all) {
    if (!all.empty()) {
        json[key] = all;
    }
}
inline void setIf(Json& json, const char* key, const std::optional<analytics::Date>& date) {
    if (date) {
        json[key] = toText(*date);
    }
}
inline void setSecondsIf(Json& json, const char* key, const std::optional<analytics::Duration>& value) {
    if (value) {
        json[key] = value->count();
    }
}
/// A number above 0, or a fault.
[[nodiscard]] inline std::optional<double> optionalPositive(ObjectReader& from, const char* key) {
    const auto value = from.optionalNumber(key);
    if (value && !(*value > 0.0)) {
        from.fault(FaultCode::badValue, key, "must be above 0");
    }
    return value;
}
/// A number of 0 or more, or a fault.
[[nodiscard]] inline std::optional<double> optionalNotNegative(ObjectReader& from, const char* key) {
    const auto value = from.optionalNumber(key);
    if (value && !(*value >= 0.0)) {
        from.fault(FaultCode::badValue, key, "is negative");
    }
    return value;
}
template <class E>
[[nodiscard]] Json wordJson(E value) {
    return std::string{toWord(value)};
}
template <class E>
void setWordIf(Json& json, const char* key, const std::optional<E>& value) {
    if (value) {
        json[key] = wordJson(*value);
    }
}

} // namespace holdfast::kiosk::records
