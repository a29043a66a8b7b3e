#pragma once

#include "analytics/cure/ink_family.hpp"
#include "analytics/cure/reason.hpp"
#include "analytics/cure/verdict.hpp"
#include "analytics/cure/window.hpp"
#include "analytics/fastness/pass_rule.hpp"
#include "analytics/metrology/instrument.hpp"
#include "kiosk/records/bucket_records.hpp"
#include "kiosk/records/complaint_records.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/records/load_records.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/print_records.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/run_records.hpp"
#include "kiosk/records/shop_records.hpp"
#include "kiosk/records/test_records.hpp"

#include <cassert>
#include <optional>
#include <span>
#include <string_view>

/// The words that stand for closed lists in JSON. They are stored for ever: a word is never changed, only added.
namespace holdfast::kiosk::records {

template <class E>
struct WordRow final {
    E value;
    std::string_view word;
};

[[nodiscard]] std::span<const WordRow<analytics::Chemistry>> tableOf(analytics::Chemistry) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::BleedResistance>> tableOf(analytics::BleedResistance) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::Mark>> tableOf(analytics::Mark) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::InstrumentKind>> tableOf(analytics::InstrumentKind) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::ThermocoupleType>> tableOf(analytics::ThermocoupleType) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::ToleranceClass>> tableOf(analytics::ToleranceClass) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::Placement>> tableOf(analytics::Placement) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::CheckKind>> tableOf(analytics::CheckKind) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::TemperatureUnit>> tableOf(analytics::TemperatureUnit) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::Word>> tableOf(analytics::Word) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::WindowState>> tableOf(analytics::WindowState) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::CulpritKind>> tableOf(analytics::CulpritKind) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::FlashWord>> tableOf(analytics::FlashWord) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::ShotPlace>> tableOf(analytics::ShotPlace) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::ReasonCode>> tableOf(analytics::ReasonCode) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::Remedy>> tableOf(analytics::Remedy) noexcept;
[[nodiscard]] std::span<const WordRow<Role>> tableOf(Role) noexcept;
[[nodiscard]] std::span<const WordRow<PlanKind>> tableOf(PlanKind) noexcept;
[[nodiscard]] std::span<const WordRow<LotEnd>> tableOf(LotEnd) noexcept;
[[nodiscard]] std::span<const WordRow<ReadingReason>> tableOf(ReadingReason) noexcept;
[[nodiscard]] std::span<const WordRow<BeltPosition>> tableOf(BeltPosition) noexcept;
[[nodiscard]] std::span<const WordRow<LotState>> tableOf(LotState) noexcept;
[[nodiscard]] std::span<const WordRow<BucketEnd>> tableOf(BucketEnd) noexcept;
[[nodiscard]] std::span<const WordRow<FloorAction>> tableOf(FloorAction) noexcept;
[[nodiscard]] std::span<const WordRow<StruckCause>> tableOf(StruckCause) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::Quantity>> tableOf(analytics::Quantity) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::Bound>> tableOf(analytics::Bound) noexcept;
[[nodiscard]] std::span<const WordRow<analytics::CrackClass>> tableOf(analytics::CrackClass) noexcept;
[[nodiscard]] std::span<const WordRow<PrintEnd>> tableOf(PrintEnd) noexcept;
[[nodiscard]] std::span<const WordRow<TestKind>> tableOf(TestKind) noexcept;
[[nodiscard]] std::span<const WordRow<PictureSide>> tableOf(PictureSide) noexcept;
[[nodiscard]] std::span<const WordRow<TestOutcome>> tableOf(TestOutcome) noexcept;
[[nodiscard]] std::span<const WordRow<LoadWord>> tableOf(LoadWord) noexcept;
[[nodiscard]] std::span<const WordRow<CountBasis>> tableOf(CountBasis) noexcept;
[[nodiscard]] std::span<const WordRow<HoldCause>> tableOf(HoldCause) noexcept;
[[nodiscard]] std::span<const WordRow<DecisionWord>> tableOf(DecisionWord) noexcept;
[[nodiscard]] std::span<const WordRow<PiecePlace>> tableOf(PiecePlace) noexcept;
[[nodiscard]] std::span<const WordRow<DueReadingKind>> tableOf(DueReadingKind) noexcept;
[[nodiscard]] std::span<const WordRow<ComplaintKind>> tableOf(ComplaintKind) noexcept;

template <class E>
[[nodiscard]] std::string_view toWord(E value) noexcept {
    for (const auto& row : tableOf(value)) {
        if (row.value == value) {
            return row.word;
        }
    }
    assert(!"every value has its word");
    return {};
}

template <class E>
[[nodiscard]] std::optional<E> fromWord(std::string_view word) noexcept {
    for (const auto& row : tableOf(E{})) {
        if (row.word == word) {
            return row.value;
        }
    }
    return std::nullopt;
}

} // namespace holdfast::kiosk::records
