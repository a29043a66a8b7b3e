#pragma once

#include "analytics/cure/ink_family.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

/// Why what was entered about a print, a test, a wash load or a method cannot be kept.
enum class TestFaultCause {
    // texts
    nameMissing,
    nameTaken,
    textTooLong,
    controlSign,
    notANumber, ///< text
    notWhole,   ///< text
    notADate,   ///< text
    notATime,   ///< text: neither 14:05 nor 2026-03-01 14:05
    // naming and keeping a print
    printUnknown,     ///< text: no print has these signs, or the check sign does not fit
    runMissing,       ///< no run was named
    runUnknown,       ///< text
    lotMissing,       ///< the run has no lot yet
    pieceNotPositive, ///< text
    printedInFuture,
    printedBeforeLot,
    noNumberLeft, ///< all 923,521 are given
    shelfMissing,
    // what stands in the way of a test
    lotScrapped,
    printEnded,
    methodWithdrawn,
    beforeRest,       ///< at: from when
    notForChemistry,  ///< chemistries: of the print, that it is not valid for
    chemistryUnknown, ///< the ink is not in the book
    nothingEntered,
    answerMissing, ///< the rule asks for it
    // cycles and hours
    cycleMissing,
    cycleUnlikely, ///< number: the most
    cycleTwice,    ///< number
    cycleOrder,    ///< number: the one that is next
    beforeItsHour, ///< number: hours; at: from when
    hourNotAsked,  ///< number: hours
    // loads
    loadMissing,
    loadNotJudged,       ///< number: of the load
    notInLoad,           ///< number: of the load
    loadOfAnotherMethod, ///< number: of the load
    loadBeforeRest,      ///< number: of the load; at: from when
    // values
    gradeUnreadable, ///< text
    gradeOffScale,   ///< text
    gradeOffHalfSteps,
    wordUnknown, ///< text: no word for what may be seen
    labIncomplete,
    lightnessImpossible, ///< text
    colourImpossible,    ///< text
    gaugeMissing,
    gaugeNotPositive,
    lengthNotPositive,
    stretchedBelowOriginal,
    relaxedAboveStretched,
    nothingStretched,
    pullNotPositive,
    pullNotLast, ///< the lengths belong to the furthest pull, and nothing was seen there
    // a load while it is made or judged
    machineMissing,
    programmeMissing,
    drumEmpty,
    printNotRested, ///< text: its signs; at
    printGone,      ///< text: its signs; ended or scrapped
    printWrongKind, ///< text: its signs; the programme is not valid for its ink
    temperatureUnlikely,
    witnessGradeOffScale, ///< text
    limitsContradict,     ///< the good swatch's limit lies below the weak one's
    // a method while it is described
    methodInUse,     ///< text: its name
    methodOfProgram, ///< a starter is withdrawn, not deleted
    cyclesNotPositive,
    hoursNotAscending, ///< text
    pullsNotAscending, ///< text
    stepsMissing,
    quantityNameMissing,
    limitUnreadable, ///< text
    boundUnfit,      ///< "at least" of a yes or no
    placeUnfit,      ///< a cycle below 0, an elongation not above 0
};

struct TestFault final {
    TestFaultCause cause{};
    std::string field{}; ///< name of the field it stands at; empty: of the whole
    std::string text{};
    std::optional<std::int64_t> number{};
    std::optional<std::int64_t> at{}; ///< wall milliseconds
    std::vector<analytics::Chemistry> chemistries{};
};

using TestFaults = std::vector<TestFault>;

} // namespace holdfast::kiosk::shop
