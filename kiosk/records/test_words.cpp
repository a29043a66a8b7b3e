#include "kiosk/records/words.hpp"

// Words of tests of prints and of what happens to lots.
namespace holdfast::kiosk::records {
namespace {

constexpr WordRow<analytics::Quantity> kQuantity[] = {
    {analytics::Quantity::changeGrade, "change-grade"},
    {analytics::Quantity::stainingGrade, "staining-grade"},
    {analytics::Quantity::rubDryGrade, "rub-dry-grade"},
    {analytics::Quantity::rubWetGrade, "rub-wet-grade"},
    {analytics::Quantity::crackClass, "crack-class"},
    {analytics::Quantity::elongationHeld, "elongation-held"},
    {analytics::Quantity::recovery, "recovery"},
    {analytics::Quantity::growth, "growth"},
    {analytics::Quantity::changeLengthwise, "change-lengthwise"},
    {analytics::Quantity::changeWidthwise, "change-widthwise"},
    {analytics::Quantity::colourDifference, "colour-difference"},
    {analytics::Quantity::lifted, "lifted"},
    {analytics::Quantity::cracked, "cracked"},
    {analytics::Quantity::peeled, "peeled"},
    {analytics::Quantity::tacky, "tacky"},
    {analytics::Quantity::colourTransferred, "colour-transferred"},
    {analytics::Quantity::bled, "bled"},
    {analytics::Quantity::filmSoftened, "film-softened"},
    {analytics::Quantity::waterStands, "water-stands"},
    {analytics::Quantity::fibresStanding, "fibres-standing"},
    {analytics::Quantity::ownGrade, "own-grade"},
    {analytics::Quantity::ownNumber, "own-number"},
    {analytics::Quantity::ownYesNo, "own-yes-no"},
};

constexpr WordRow<analytics::Bound> kBound[] = {
    {analytics::Bound::atLeast, "at-least"},
    {analytics::Bound::atMost, "at-most"},
    {analytics::Bound::within, "within"},
    {analytics::Bound::is, "is"},
};

constexpr WordRow<analytics::CrackClass> kCrackClass[] = {
    {analytics::CrackClass::noCrack, "no-crack"},
    {analytics::CrackClass::hairline, "hairline"},
    {analytics::CrackClass::breaks, "breaks"},
    {analytics::CrackClass::powders, "powders"},
};

constexpr WordRow<PrintEnd> kPrintEnd[] = {
    {PrintEnd::usedUp, "used-up"},
    {PrintEnd::thrownAway, "thrown-away"},
    {PrintEnd::shipped, "shipped"},
    {PrintEnd::lost, "lost"},
};

constexpr WordRow<TestKind> kTestKind[] = {
    {TestKind::stretch, "stretch"}, {TestKind::rub, "rub"},
    {TestKind::wash, "wash"},       {TestKind::bleedWatch, "bleed-watch"},
    {TestKind::shrink, "shrink"},   {TestKind::waterDrop, "water-drop"},
    {TestKind::tape, "tape"},       {TestKind::solventRub, "solvent-rub"},
    {TestKind::split, "split"},     {TestKind::own, "own"},
};

constexpr WordRow<PictureSide> kPictureSide[] = {
    {PictureSide::whole, "whole"},
    {PictureSide::unwashed, "unwashed"},
    {PictureSide::washed, "washed"},
};

constexpr WordRow<TestOutcome> kTestOutcome[] = {
    {TestOutcome::passed, "passed"},
    {TestOutcome::failed, "failed"},
    {TestOutcome::noted, "noted"},
    {TestOutcome::inAVoidLoad, "in-a-void-load"},
};

constexpr WordRow<LoadWord> kLoadWord[] = {
    {LoadWord::valid, "valid"},
    {LoadWord::tooHarsh, "too-harsh"},
    {LoadWord::tooGentle, "too-gentle"},
    {LoadWord::noWitness, "no-witness"},
};

constexpr WordRow<CountBasis> kCountBasis[] = {
    {CountBasis::counter, "counter"},
    {CountBasis::rateAndTime, "rate-and-time"},
    {CountBasis::typed, "typed"},
};

constexpr WordRow<HoldCause> kHoldCause[] = {
    {HoldCause::reading, "reading"},
    {HoldCause::test, "test"},
    {HoldCause::complaint, "complaint"},
    {HoldCause::instrument, "instrument"},
    {HoldCause::missedReading, "missed-reading"},
    {HoldCause::beltStopped, "belt-stopped"},
};

constexpr WordRow<DecisionWord> kDecisionWord[] = {
    {DecisionWord::released, "released"},
    {DecisionWord::reRun, "re-run"},
    {DecisionWord::scrapped, "scrapped"},
    {DecisionWord::recalled, "recalled"},
};

constexpr WordRow<PiecePlace> kPiecePlace[] = {
    {PiecePlace::shipped, "shipped"},
    {PiecePlace::retained, "retained"},
    {PiecePlace::tested, "tested"},
    {PiecePlace::scrapped, "scrapped"},
};

constexpr WordRow<DueReadingKind> kDueReadingKind[] = {
    {DueReadingKind::first, "first"}, {DueReadingKind::pieces, "pieces"},     {DueReadingKind::minutes, "minutes"},
    {DueReadingKind::last, "last"},   {DueReadingKind::position, "position"},
};

constexpr WordRow<ComplaintKind> kComplaintKind[] = {
    {ComplaintKind::washedOut, "washed-out"},
    {ComplaintKind::cracked, "cracked"},
    {ComplaintKind::peeled, "peeled"},
    {ComplaintKind::bled, "bled"},
    {ComplaintKind::scorched, "scorched"},
    {ComplaintKind::rubbedOff, "rubbed-off"},
    {ComplaintKind::feel, "feel"},
    {ComplaintKind::other, "other"},
};

} // namespace

std::span<const WordRow<analytics::Quantity>> tableOf(analytics::Quantity) noexcept {
    return kQuantity;
}

std::span<const WordRow<analytics::Bound>> tableOf(analytics::Bound) noexcept {
    return kBound;
}

std::span<const WordRow<analytics::CrackClass>> tableOf(analytics::CrackClass) noexcept {
    return kCrackClass;
}

std::span<const WordRow<PrintEnd>> tableOf(PrintEnd) noexcept {
    return kPrintEnd;
}

std::span<const WordRow<TestKind>> tableOf(TestKind) noexcept {
    return kTestKind;
}

std::span<const WordRow<PictureSide>> tableOf(PictureSide) noexcept {
    return kPictureSide;
}

std::span<const WordRow<TestOutcome>> tableOf(TestOutcome) noexcept {
    return kTestOutcome;
}

std::span<const WordRow<LoadWord>> tableOf(LoadWord) noexcept {
    return kLoadWord;
}

std::span<const WordRow<CountBasis>> tableOf(CountBasis) noexcept {
    return kCountBasis;
}

std::span<const WordRow<HoldCause>> tableOf(HoldCause) noexcept {
    return kHoldCause;
}

std::span<const WordRow<DecisionWord>> tableOf(DecisionWord) noexcept {
    return kDecisionWord;
}

std::span<const WordRow<PiecePlace>> tableOf(PiecePlace) noexcept {
    return kPiecePlace;
}

std::span<const WordRow<DueReadingKind>> tableOf(DueReadingKind) noexcept {
    return kDueReadingKind;
}

std::span<const WordRow<ComplaintKind>> tableOf(ComplaintKind) noexcept {
    return kComplaintKind;
}

} // namespace holdfast::kiosk::records
