#pragma once

#include "kiosk/records/bucket_records.hpp"
#include "kiosk/records/complaint_records.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/records/ink_records.hpp"
#include "kiosk/records/instrument_records.hpp"
#include "kiosk/records/load_records.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/print_records.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/records/record_fault.hpp"
#include "kiosk/records/run_records.hpp"
#include "kiosk/records/shop_records.hpp"
#include "kiosk/records/test_records.hpp"

#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace holdfast::kiosk::records {

/// One alternative a kind; a new kind is one struct, its reader and writer, and one row in the table.
using Record =
    std::variant<BookOpened, PersonAdded, CrewChanged, DryerDescribed, SettingChanged, FamilyRecord, FabricRecord,
                 InstrumentDescribed, CertificateAdded, CheckDone, RunPlanned, RunReplanned, LotOpened, LotClosed,
                 ReadingTaken, ReadingRefused, CorrectionMade, BucketOpened, MixMade, BucketClosed, ActionTaken,
                 ReadingStruck, FlashNoted, RunFinished, PersonChanged, PinSet, PrintNamed, PrintChanged,
                 MethodDescribed, LoadWashed, LoadJudged, TestDone, HoldPlaced, HoldChanged, DecisionSigned,
                 PiecesMoved, PiecesCounted, ShelfCounted, ReadingMissed, ComplaintTaken, FindingSigned>;

struct KindRow final {
    std::string_view kind; ///< "reading.taken"
    int version = 1;       ///< that this program writes, and the newest it can read
};

/// In the order of Record's alternatives.
[[nodiscard]] std::span<const KindRow> kinds() noexcept;
[[nodiscard]] const KindRow& rowOf(const Record& record) noexcept;

/// The JSON bytes of an entry's body, of the version the kind's row names.
[[nodiscard]] std::string bodyOf(const Record& record);

/// Reads a body strictly, lifting an older version first. unknownKind and newerVersion mean: open the book read-only.
[[nodiscard]] RecordResult<Record> readRecord(std::string_view kind, int version, std::string_view body);

} // namespace holdfast::kiosk::records
