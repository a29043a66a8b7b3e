#pragma once

#include "analytics/metrology/instrument.hpp"

#include <optional>
#include <string>
#include <vector>

/// What can be wrong with something that QA wants kept, and the fields it is read from.
namespace holdfast::kiosk::shop::deciding {

enum class Cause {
    // a decision
    noWord,
    nothingToDecide,
    scrappedIsFinal,
    childrensWearUnderCured,
    childrensWearNotProven,
    needsReason,
    needsEntitledSigner,
    needsSecondEntitledSigner,
    laboratoryReportMissing,
    holdGone,       ///< somebody decided it meanwhile
    noHoldChosen,   ///< a decision about a lot on hold names at least one of its holds
    nothingShipped, ///< nothing to call back
    // anything typed
    textTooLong, ///< text: its first signs
    controlSign,
    notADay, ///< text
    // pieces
    countMissing,
    notACount, ///< text
    countBelowZero,
    countOfNone,
    countTooLarge,
    countRunsBackwards, ///< text: the count as it stood
    lotScrapped,        ///< its pieces go nowhere any more
    entryCorrected,     ///< a later one stands for it already
    // a complaint and its finding
    customerMissing,
    whatMissing,
    complaintClosed,
    causeMissing,
    tooManyPictures, ///< text: how many are kept
    // a reading
    alreadyStruck,
    refusedReading,
    nothingSeen, ///< neither a trace nor a picture shows the cause
};

struct Fault final {
    Cause cause{};
    std::string field{}; ///< "reason", "laboratory", "count"; empty: of the whole
    std::string text{};
    bool operator==(const Fault&) const = default;
};
using Faults = std::vector<Fault>;

[[nodiscard]] bool has(const Faults& faults, Cause cause) noexcept;

/// Reads a form field by field and notes every fault.
class Fields final {
public:
    /// Trimmed; at most kLongestText characters and without control signs.
    [[nodiscard]] std::string text(const std::string& typed, const std::string& field);
    /// A whole number from 0 to analytics::kMostPieces; nothing for an empty field.
    [[nodiscard]] std::optional<int> count(const std::string& typed, const std::string& field);
    /// The same, and an empty field or 0 is a fault.
    [[nodiscard]] std::optional<int> countOfSome(const std::string& typed, const std::string& field);
    /// Written as 2026-03-01; nothing for an empty field.
    [[nodiscard]] std::optional<analytics::Date> day(const std::string& typed, const std::string& field);
    /// Parted by commas, each once.
    [[nodiscard]] std::vector<std::string> names(const std::string& typed, const std::string& field);
    void fault(Cause cause, const std::string& field = {}, const std::string& text = {});

    [[nodiscard]] const Faults& faults() const noexcept { return m_faults; }

private:
    Faults m_faults;
};

} // namespace holdfast::kiosk::shop::deciding
