#pragma once

#include <cstdint>
#include <optional>
#include <string>

/// Closed lists of what can go wrong while proving; kiosk/wording makes the sentences.
namespace holdfast::kiosk::shop {

/// Why an instrument's value is not to be trusted or not there; the first that applies, in this order.
enum class ProbeTrouble {
    none,
    absent,      ///< its port or USB device is not there
    portBusy,    ///< another program has it
    permission,  ///< this user may not open it
    opening,     ///< the port is being opened
    identifying, ///< open; nothing has yet shown that it is the right one
    unplugged,   ///< it was there and went away
    wrongDevice, ///< something else answers
    silent,      ///< open, and nothing comes
    garbled,     ///< text, but not this instrument's
    wrongBaud,   ///< no text at all: speed or parity
    wrongUnit,   ///< the instrument was switched to the other unit
    openCircuit, ///< the thermocouple is broken or not plugged in
    outOfRange,  ///< over or under what the instrument can read
    instrumentFault,
    unreadable,            ///< the last line was damaged on the way
    impossibleTemperature, ///< a value no print shop has: under −40 °C or over 450 °C (MEM)
    notDescribed,          ///< nobody has told the book what this instrument is: nothing it says proves anything
};

/// Why something that was scanned or pressed was not done. The values a sentence needs stand in Refusal.
enum class RefusalCause {
    unreadableScan,     ///< empty, control signs, no UTF-8, or endless; text cut
    notATicket,         ///< signs that no code has; text
    ticketDamaged,      ///< the check sign does not fit; text
    ticketOfOtherKind,  ///< a good code, but of a kind that does nothing here; text
    runNotFound,        ///< number
    windowCardNotFound, ///< number
    instrumentNotFound, ///< number
    runFinished,        ///< number: nothing more is judged for it
    runUnusable,        ///< number: its plan has no window (an ink or cloth is gone or faulty)
    bookUnreadable,     ///< the look-up failed
    noRunAnnounced,     ///< a strip or a retake needs a run
    stripOnly,          ///< the instrument scanned is no strip; text its name
    stripNotChosen,     ///< keep pressed with nothing chosen
    nothingToStop,
    nothingToRetake,      ///< only a not-proven reading may be taken again
    retakeUsedUp,         ///< once only
    nothingToAnswer,      ///< no unit was asked for
    unknownAction,        ///< an action card this program does not know
    rideStillBeingKept,   ///< wait for the writing, or press again to retry
    badVerdictUnanswered, ///< Next, while a bad verdict waits for what was done; number of its run
    numberUnusable,       ///< pieces pulled: none, or more than a shop has; text as typed
    beltFull,             ///< more runs on one belt than are judged together; number most
    rideNotFound,         ///< the ride to be named is not one without a run, or not in the book
    traceUnreadable,      ///< its trace is gone or damaged: it cannot be judged for another run
    byHandOnly,           ///< the instrument is not one whose value is typed; text its name
    nothingEntered,       ///< keep, and no page of a typed reading is open
    valueMissing,         ///< no value was typed
    valueImpossible,      ///< under −40 °C or over 450 °C; text the figure as typed
    beforeUseMissing,     ///< a spot, and nobody said what it showed after its reset
    stripUsedBefore,      ///< number of the single strip
    flashLayerMissing,    ///< no layer was chosen, or there is none of that number
    flashDoesNotApply,    ///< the layer's ink is not gelled by a flash; text its colour
    countRunsBackwards,   ///< fewer pieces than were counted already; text as typed, number the count
    countUnusable,        ///< pieces so far: below zero, or more than a run has; text as typed
    noRunToCount,         ///< pieces were typed, and their run is not on the belt
};

struct Refusal final {
    RefusalCause cause{};
    std::string text;                    ///< what was scanned, printable, at most 40 signs; or a name
    std::optional<std::uint64_t> number; ///< run, card or instrument
    bool operator==(const Refusal&) const = default;
};

/// Why a spool could not hold a ride; the ride goes on in memory and is committed as usual.
enum class SpoolTrouble { none, diskFull, readOnly, other };

} // namespace holdfast::kiosk::shop
