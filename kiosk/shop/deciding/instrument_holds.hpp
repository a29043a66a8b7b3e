#pragma once

#include "analytics/lots/instrument_error.hpp"
#include "analytics/lots/lot_standing.hpp"
#include "kiosk/records/kinds.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// An instrument failed a check: what its readings were worth, and which lots wait for a decision because of it
/// (decisions 5).
namespace holdfast::kiosk::shop::deciding {

/// A reading that counts, as last corrected.
struct DoubtfulReading final {
    std::string id{}; ///< of its first entry
    std::int64_t takenAt = 0;
    records::ReadingTaken taken{};
    /// How it is judged again; absent: it cannot be (its trace is gone, or its plan has changed since).
    std::optional<analytics::ReadingInDoubt> doubt{};
    std::optional<analytics::Calibration> calibration{}; ///< as it stood on that day
};

struct LotInDoubt final {
    std::string lot{}; ///< id
    analytics::LotStanding standing = analytics::LotStanding::cleared;
    std::optional<int> made{};
};

struct InstrumentDoubt final {
    std::string check{}; ///< id that the failed check's entry will have
    analytics::ErrorFound found{};
    analytics::DoubtfulTime time{};
    analytics::GuardSetting guard{};
    std::vector<DoubtfulReading> readings{};
    std::vector<LotInDoubt> lots{};
};

struct InstrumentHolds final {
    std::vector<records::Record> list{}; ///< correction.made of each reading, then hold.placed of each lot
    int looked = 0;                      ///< cured readings in the time of doubt
    int noLongerCured = 0;
    int notComputed = 0;             ///< could not be judged again; their lots are held all the same
    std::vector<std::string> lots{}; ///< ids of those put on hold
};

/// Only readings that were cured are asked about; set-up ones hold nothing. A scrapped lot is held no more. With an
/// error too large to be one (analytics::ErrorFault::tooLarge) every such reading counts as not computed. The holds
/// have neither ids nor bins yet, so that this may be asked on any thread.
[[nodiscard]] InstrumentHolds instrumentHolds(const InstrumentDoubt& doubt);
/// Gives each hold its id and its bin, from `nextBin` on.
void number(InstrumentHolds& holds, const std::function<std::string()>& newId, std::int64_t nextBin);

/// The check that failed by most; absent: none failed, or none says what it read.
[[nodiscard]] std::optional<std::size_t> worstFailed(const std::vector<records::CheckDone>& checks);

/// The error that a failed check found: indicated + correction − reference; nothing if the check passed or does not say
/// what it read.
[[nodiscard]] std::optional<analytics::ErrorFound> errorFound(const records::CheckDone& check,
                                                              const analytics::Calibration& calibration);

} // namespace holdfast::kiosk::shop::deciding
