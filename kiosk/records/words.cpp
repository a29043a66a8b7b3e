#include "kiosk/records/words.hpp"

namespace holdfast::kiosk::records {
namespace {

constexpr WordRow<analytics::Chemistry> kChemistry[] = {
    {analytics::Chemistry::plastisol, "plastisol"},
    {analytics::Chemistry::waterBased, "water-based"},
    {analytics::Chemistry::discharge, "discharge"},
    {analytics::Chemistry::silicone, "silicone"},
};

constexpr WordRow<analytics::BleedResistance> kBleedResistance[] = {
    {analytics::BleedResistance::none, "none"},
    {analytics::BleedResistance::low, "low"},
    {analytics::BleedResistance::high, "high"},
};

constexpr WordRow<analytics::Mark> kMark[] = {
    {analytics::Mark::standard, "standard"},
    {analytics::Mark::dataSheet, "data-sheet"},
    {analytics::Mark::commonPractice, "common-practice"},
    {analytics::Mark::fromMemory, "from-memory"},
};

constexpr WordRow<analytics::InstrumentKind> kInstrumentKind[] = {
    {analytics::InstrumentKind::probe, "probe"},
    {analytics::InstrumentKind::spot, "spot"},
    {analytics::InstrumentKind::strip, "strip"},
    {analytics::InstrumentKind::gun, "gun"},
};

constexpr WordRow<analytics::ThermocoupleType> kThermocoupleType[] = {
    {analytics::ThermocoupleType::k, "K"}, {analytics::ThermocoupleType::j, "J"}, {analytics::ThermocoupleType::t, "T"},
    {analytics::ThermocoupleType::e, "E"}, {analytics::ThermocoupleType::n, "N"},
};

constexpr WordRow<analytics::ToleranceClass> kToleranceClass[] = {
    {analytics::ToleranceClass::iecClass1, "IEC 60584-1 class 1"},
    {analytics::ToleranceClass::iecClass2, "IEC 60584-1 class 2"},
    {analytics::ToleranceClass::iecClass3, "IEC 60584-1 class 3"},
    {analytics::ToleranceClass::astmStandard, "ASTM E230 standard"},
    {analytics::ToleranceClass::astmSpecial, "ASTM E230 special"},
};

constexpr WordRow<analytics::Placement> kPlacement[] = {
    {analytics::Placement::wetInk, "wet"},
    {analytics::Placement::tapedOnFilm, "taped"},
    {analytics::Placement::inOrUnderCloth, "cloth"},
};

constexpr WordRow<analytics::CheckKind> kCheckKind[] = {
    {analytics::CheckKind::ice, "ice"},
    {analytics::CheckKind::boiling, "boiling"},
    {analytics::CheckKind::comparison, "comparison"},
};

constexpr WordRow<analytics::TemperatureUnit> kTemperatureUnit[] = {
    {analytics::TemperatureUnit::celsius, "C"},
    {analytics::TemperatureUnit::fahrenheit, "F"},
};

constexpr WordRow<analytics::ShotPlace> kShotPlace[] = {
    {analytics::ShotPlace::inTunnelHottest, "tunnel"},
    {analytics::ShotPlace::outfeed, "outfeed"},
};

constexpr WordRow<Role> kRole[] = {
    {Role::operatorAtDryer, "operator"},
    {Role::qualityAssurance, "qa"},
    {Role::owner, "owner"},
};

constexpr WordRow<PlanKind> kPlanKind[] = {
    {PlanKind::run, "run"},
    {PlanKind::windowCard, "window-card"},
};

constexpr WordRow<LotEnd> kLotEnd[] = {
    {LotEnd::runEnded, "run-ended"},
    {LotEnd::newRevision, "new-revision"},
    {LotEnd::otherBucket, "other-bucket"},
    {LotEnd::dryerChanged, "dryer-changed"},
};

constexpr WordRow<ReadingReason> kReadingReason[] = {
    {ReadingReason::drawn, "drawn"},  {ReadingReason::afterChange, "after-change"},
    {ReadingReason::setUp, "set-up"}, {ReadingReason::retake, "retake"},
    {ReadingReason::worry, "worry"},  {ReadingReason::map, "map"},
    {ReadingReason::study, "study"},
};

constexpr WordRow<BeltPosition> kBeltPosition[] = {
    {BeltPosition::left, "left"},
    {BeltPosition::centre, "centre"},
    {BeltPosition::right, "right"},
};

constexpr WordRow<LotState> kLotState[] = {
    {LotState::settingUp, "setting-up"}, {LotState::open, "open"},         {LotState::cleared, "cleared"},
    {LotState::unproven, "unproven"},    {LotState::onHold, "on-hold"},    {LotState::released, "released"},
    {LotState::reRun, "re-run"},         {LotState::scrapped, "scrapped"},
};

constexpr WordRow<BucketEnd> kBucketEnd[] = {
    {BucketEnd::empty, "empty"},
    {BucketEnd::thrownAway, "thrown-away"},
    {BucketEnd::mislabelled, "mislabelled"},
};

constexpr WordRow<FloorAction> kFloorAction[] = {
    {FloorAction::beltSlower, "belt-slower"},
    {FloorAction::beltFaster, "belt-faster"},
    {FloorAction::hotter, "hotter"},
    {FloorAction::cooler, "cooler"},
    {FloorAction::feedStopped, "feed-stopped"},
    {FloorAction::started, "started"},
    {FloorAction::pulled, "pulled"},
    {FloorAction::problem, "problem"},
    {FloorAction::takenOver, "taken-over"},
};

constexpr WordRow<StruckCause> kStruckCause[] = {
    {StruckCause::probeFellOut, "probe-fell-out"},
    {StruckCause::wrongPrint, "wrong-print"},
    {StruckCause::leadCaught, "lead-caught"},
    {StruckCause::garbledTrace, "garbled-trace"},
};

} // namespace

std::span<const WordRow<analytics::Chemistry>> tableOf(analytics::Chemistry) noexcept {
    return kChemistry;
}

std::span<const WordRow<analytics::BleedResistance>> tableOf(analytics::BleedResistance) noexcept {
    return kBleedResistance;
}

std::span<const WordRow<analytics::Mark>> tableOf(analytics::Mark) noexcept {
    return kMark;
}

std::span<const WordRow<analytics::InstrumentKind>> tableOf(analytics::InstrumentKind) noexcept {
    return kInstrumentKind;
}

std::span<const WordRow<analytics::ThermocoupleType>> tableOf(analytics::ThermocoupleType) noexcept {
    return kThermocoupleType;
}

std::span<const WordRow<analytics::ToleranceClass>> tableOf(analytics::ToleranceClass) noexcept {
    return kToleranceClass;
}

std::span<const WordRow<analytics::Placement>> tableOf(analytics::Placement) noexcept {
    return kPlacement;
}

std::span<const WordRow<analytics::CheckKind>> tableOf(analytics::CheckKind) noexcept {
    return kCheckKind;
}

std::span<const WordRow<analytics::TemperatureUnit>> tableOf(analytics::TemperatureUnit) noexcept {
    return kTemperatureUnit;
}

std::span<const WordRow<analytics::ShotPlace>> tableOf(analytics::ShotPlace) noexcept {
    return kShotPlace;
}

std::span<const WordRow<Role>> tableOf(Role) noexcept {
    return kRole;
}

std::span<const WordRow<PlanKind>> tableOf(PlanKind) noexcept {
    return kPlanKind;
}

std::span<const WordRow<LotEnd>> tableOf(LotEnd) noexcept {
    return kLotEnd;
}

std::span<const WordRow<ReadingReason>> tableOf(ReadingReason) noexcept {
    return kReadingReason;
}

std::span<const WordRow<BeltPosition>> tableOf(BeltPosition) noexcept {
    return kBeltPosition;
}

std::span<const WordRow<LotState>> tableOf(LotState) noexcept {
    return kLotState;
}

std::span<const WordRow<BucketEnd>> tableOf(BucketEnd) noexcept {
    return kBucketEnd;
}

std::span<const WordRow<FloorAction>> tableOf(FloorAction) noexcept {
    return kFloorAction;
}

std::span<const WordRow<StruckCause>> tableOf(StruckCause) noexcept {
    return kStruckCause;
}

} // namespace holdfast::kiosk::records
