#include "kiosk/shop/deciding/instrument_holds.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::deciding {
namespace {

using analytics::Word;

bool isAsked(const DoubtfulReading& reading, const analytics::DoubtfulTime& time) {
    const auto& taken = reading.taken;
    return time.holds(reading.takenAt) && taken.lot && taken.verdict && taken.verdict->word == Word::cured &&
           taken.reason != records::ReadingReason::setUp;
}

records::CorrectionMade correctionOf(const DoubtfulReading& reading, analytics::Verdict verdict,
                                     const std::string& check) {
    records::CorrectionMade made;
    made.corrects = reading.id;
    made.check = check;
    made.reading = reading.taken;
    if (auto* seen = std::get_if<records::TraceSeen>(&made.reading.evidence)) {
        seen->sustainedPeak = verdict.sustained ? std::optional{verdict.sustained->t} : std::nullopt;
        seen->rawPeak = verdict.raw ? std::optional{verdict.raw->t} : std::nullopt;
    }
    made.reading.verdict = std::move(verdict);
    return made;
}

const LotInDoubt* lotOf(const InstrumentDoubt& doubt, const std::string& lot) {
    const auto found =
        std::find_if(doubt.lots.begin(), doubt.lots.end(), [&](const LotInDoubt& one) { return one.lot == lot; });
    return found == doubt.lots.end() ? nullptr : &*found;
}

void addHolds(const InstrumentDoubt& doubt, InstrumentHolds& holds) {
    std::erase_if(holds.lots, [&](const std::string& lot) {
        const auto* known = lotOf(doubt, lot);
        return known != nullptr && known->standing == analytics::LotStanding::scrapped;
    });
    for (const auto& lot : holds.lots) {
        const auto* known = lotOf(doubt, lot);
        records::HoldPlaced hold;
        hold.lot = lot;
        hold.cause = records::HoldCause::instrument;
        hold.because = doubt.check;
        hold.count = known != nullptr ? known->made : std::nullopt;
        holds.list.emplace_back(std::move(hold));
    }
}

} // namespace

InstrumentHolds instrumentHolds(const InstrumentDoubt& doubt) {
    InstrumentHolds holds;
    const auto holdLot = [&](const std::string& lot) {
        if (std::find(holds.lots.begin(), holds.lots.end(), lot) == holds.lots.end()) {
            holds.lots.push_back(lot);
        }
    };
    for (const auto& reading : doubt.readings) {
        if (!isAsked(reading, doubt.time)) {
            continue;
        }
        ++holds.looked;
        auto anew = tl::expected<analytics::Recomputed, analytics::ErrorFault>{
            tl::unexpected(analytics::ErrorFault::noSuchPass)};
        if (reading.doubt && reading.calibration) {
            anew = analytics::recompute(*reading.doubt, doubt.found, *reading.calibration, doubt.guard);
        }
        if (!anew) {
            ++holds.notComputed;
            holdLot(*reading.taken.lot);
        } else if (!anew->stillCured()) {
            ++holds.noLongerCured;
            holds.list.emplace_back(correctionOf(reading, std::move(anew->verdict), doubt.check));
            holdLot(*reading.taken.lot);
        }
    }
    addHolds(doubt, holds);
    return holds;
}

void number(InstrumentHolds& holds, const std::function<std::string()>& newId, std::int64_t nextBin) {
    for (auto& record : holds.list) {
        if (auto* hold = std::get_if<records::HoldPlaced>(&record)) {
            hold->hold = newId();
            hold->bin = nextBin++;
        }
    }
}

std::optional<std::size_t> worstFailed(const std::vector<records::CheckDone>& checks) {
    std::optional<std::size_t> worst;
    auto most = analytics::TemperatureDifference{};
    for (std::size_t i = 0; i < checks.size(); ++i) {
        const auto& check = checks[i];
        if (check.check.passed || !check.indicated || !check.reference) {
            continue;
        }
        const auto error = (check.indicated->temperature() - check.reference->temperature()).magnitude();
        if (!worst || error > most) {
            worst = i;
            most = error;
        }
    }
    return worst;
}

std::optional<analytics::ErrorFound> errorFound(const records::CheckDone& check,
                                                const analytics::Calibration& calibration) {
    if (check.check.passed || !check.indicated || !check.reference) {
        return std::nullopt;
    }
    const auto at = check.reference->temperature();
    return analytics::ErrorFound{at, calibration.corrected(check.indicated->temperature()) - at};
}

} // namespace holdfast::kiosk::shop::deciding
