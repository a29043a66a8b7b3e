#include "kiosk/records/kinds.hpp"

#include "kiosk/records/record_json.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace holdfast::kiosk::records {
namespace {

/// Lifts a body by one version, in memory.
using Lift = void (*)(Json& body);

struct Row final {
    KindRow row;
    std::span<const Lift> lifts; ///< lifts[i] leads from version i + 1 to i + 2; row.version - 1 of them
    Record (*read)(ObjectReader& from);
};

template <class R>
Record readAs(ObjectReader& from) {
    R record;
    read(from, record);
    return record;
}

/// For a version that only added keys which may be left out.
void nothingToLift(Json&) {}
constexpr Lift kKeysAdded[] = {nothingToLift};
constexpr Lift kKeysAddedTwice[] = {nothingToLift, nothingToLift};

/// In the order of Record's alternatives.
constexpr Row kRows[] = {
    {{"book.opened", 1}, {}, readAs<BookOpened>},
    {{"person.added", 1}, {}, readAs<PersonAdded>},
    {{"crew.changed", 1}, {}, readAs<CrewChanged>},
    {{"dryer.described", 2}, kKeysAdded, readAs<DryerDescribed>},
    {{"setting.changed", 1}, {}, readAs<SettingChanged>},
    {{"family.revised", 1}, {}, readAs<FamilyRecord>},
    {{"fabric.revised", 1}, {}, readAs<FabricRecord>},
    {{"instrument.described", 2}, kKeysAdded, readAs<InstrumentDescribed>},
    {{"certificate.added", 1}, {}, readAs<CertificateAdded>},
    {{"check.done", 2}, kKeysAdded, readAs<CheckDone>},
    {{"run.planned", 3}, kKeysAddedTwice, readAs<RunPlanned>},
    {{"run.replanned", 3}, kKeysAddedTwice, readAs<RunReplanned>},
    {{"lot.opened", 1}, {}, readAs<LotOpened>},
    {{"lot.closed", 1}, {}, readAs<LotClosed>},
    {{"reading.taken", 2}, kKeysAdded, readAs<ReadingTaken>},
    {{"reading.refused", 2}, kKeysAdded, readAs<ReadingRefused>},
    {{"correction.made", 3}, kKeysAddedTwice, readAs<CorrectionMade>},
    {{"bucket.opened", 1}, {}, readAs<BucketOpened>},
    {{"mix.made", 1}, {}, readAs<MixMade>},
    {{"bucket.closed", 1}, {}, readAs<BucketClosed>},
    {{"action.taken", 1}, {}, readAs<ActionTaken>},
    {{"reading.struck", 1}, {}, readAs<ReadingStruck>},
    {{"flash.noted", 1}, {}, readAs<FlashNoted>},
    {{"run.finished", 1}, {}, readAs<RunFinished>},
    {{"person.changed", 1}, {}, readAs<PersonChanged>},
    {{"pin.set", 1}, {}, readAs<PinSet>},
    {{"print.named", 1}, {}, readAs<PrintNamed>},
    {{"print.changed", 1}, {}, readAs<PrintChanged>},
    {{"method.described", 1}, {}, readAs<MethodDescribed>},
    {{"load.washed", 1}, {}, readAs<LoadWashed>},
    {{"load.judged", 1}, {}, readAs<LoadJudged>},
    {{"test.done", 2}, kKeysAdded, readAs<TestDone>},
    {{"hold.placed", 1}, {}, readAs<HoldPlaced>},
    {{"hold.changed", 1}, {}, readAs<HoldChanged>},
    {{"decision.signed", 1}, {}, readAs<DecisionSigned>},
    {{"pieces.moved", 1}, {}, readAs<PiecesMoved>},
    {{"pieces.counted", 2}, kKeysAdded, readAs<PiecesCounted>},
    {{"shelf.counted", 1}, {}, readAs<ShelfCounted>},
    {{"reading.missed", 1}, {}, readAs<ReadingMissed>},
    {{"complaint.taken", 1}, {}, readAs<ComplaintTaken>},
    {{"finding.signed", 1}, {}, readAs<FindingSigned>},
};
constexpr std::size_t kKinds = std::size(kRows);
static_assert(std::variant_size_v<Record> == kKinds, "one row a kind");

constexpr auto kindRows() {
    std::array<KindRow, kKinds> rows{};
    for (std::size_t i = 0; i < kKinds; ++i) {
        rows[i] = kRows[i].row;
    }
    return rows;
}
constexpr auto kKindRows = kindRows();

tl::unexpected<Faults> failed(FaultCode code, std::string what) {
    return tl::unexpected(Faults{{code, "", std::move(what)}});
}

} // namespace

std::span<const KindRow> kinds() noexcept {
    return kKindRows;
}

const KindRow& rowOf(const Record& record) noexcept {
    return kRows[record.index()].row;
}

std::string bodyOf(const Record& record) {
    const Json json = std::visit([](const auto& one) { return toJson(one); }, record);
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

RecordResult<Record> readRecord(std::string_view kind, int version, std::string_view body) {
    const auto* row =
        std::find_if(std::begin(kRows), std::end(kRows), [&](const Row& r) { return r.row.kind == kind; });
    if (row == std::end(kRows)) {
        return failed(FaultCode::unknownKind, std::string{kind});
    }
    if (version > row->row.version) {
        return failed(FaultCode::newerVersion, std::string{kind} + " version " + std::to_string(version));
    }
    if (version < 1) {
        return failed(FaultCode::badValue, std::string{kind} + " version " + std::to_string(version));
    }
    Faults faults;
    auto json = parseJson(body, faults);
    if (!json) {
        return tl::unexpected(faults);
    }
    for (int from = version; from < row->row.version; ++from) {
        row->lifts[static_cast<std::size_t>(from - 1)](*json);
    }
    ObjectReader reader{*json, "", faults};
    Record record = row->read(reader);
    reader.finish();
    if (!faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    return record;
}

ledger::Failure failureFrom(const std::vector<RecordFault>& faults) {
    ledger::Failure failure{ledger::FailureCode::damaged, ""};
    for (const auto& fault : faults) {
        if (fault.code == FaultCode::newerVersion || fault.code == FaultCode::unknownKind) {
            failure.code = ledger::FailureCode::newerBook;
        }
        failure.what += (failure.what.empty() ? "" : "; ") + fault.path + " " + fault.what;
    }
    return failure;
}

} // namespace holdfast::kiosk::records
