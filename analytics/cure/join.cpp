#include "analytics/cure/findings.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

using namespace judging;

/// Lower comes first: under-cured, overheated, not proven, cured. What could not prove, and what was refused, is left
/// out unless it shows something wrong.
std::optional<int> rankOf(const Verdict& verdict) noexcept {
    switch (verdict.word) {
    case Word::underCured:
        return 0;
    case Word::overheated:
        return 1;
    case Word::notProven:
        return verdict.couldProve ? std::optional{2} : std::nullopt;
    case Word::cured:
        return 3;
    case Word::refused:
        break;
    }
    return std::nullopt;
}

bool sameReason(const Reason& a, const Reason& b) noexcept {
    return a.code == b.code && a.layer == b.layer && a.subject == b.subject && a.value == b.value;
}

void addReasons(const std::vector<Reason>& from, std::vector<Reason>& to) {
    for (const auto& reason : from) {
        if (std::none_of(to.begin(), to.end(), [&](const Reason& known) { return sameReason(known, reason); })) {
            to.push_back(reason);
        }
    }
}

/// The end of a range that faces the other one.
Reason disagreement(const PeakRange& one, const PeakRange& other) {
    Reason reason = because(ReasonCode::readingsDisagree);
    const bool below = one.high && other.low && *one.high < *other.low;
    reason.value = below ? one.high : one.low;
    reason.other = below ? other.low : other.high;
    return reason;
}

std::vector<Reason> disagreements(const std::vector<Verdict>& readings) {
    std::vector<Reason> reasons;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        for (std::size_t j = i + 1; j < readings.size(); ++j) {
            const auto& one = readings[i].peakRange;
            const auto& other = readings[j].peakRange;
            if (one && other && excludeEachOther(*one, *other)) {
                reasons.push_back(disagreement(*one, *other));
            }
        }
    }
    return reasons;
}

/// Nothing that counts: not proven if any of them was a reading at all.
Verdict withoutCounting(const std::vector<Verdict>& readings) {
    Verdict joined;
    joined.couldProve = false;
    const bool allRefused = !readings.empty() && std::all_of(readings.begin(), readings.end(),
                                                             [](const Verdict& v) { return v.word == Word::refused; });
    joined.word = allRefused ? Word::refused : Word::notProven;
    for (const auto& reading : readings) {
        addReasons(reading.reasons, joined.reasons);
    }
    joined.remedies = remediesFor(joined.reasons);
    return joined;
}

} // namespace

bool excludeEachOther(const PeakRange& one, const PeakRange& other) noexcept {
    if (one.fromStrip == other.fromStrip) {
        return false;
    }
    const auto liesBelow = [](const PeakRange& a, const PeakRange& b) {
        return a.high && b.low && !atLeast(*a.high, *b.low);
    };
    return liesBelow(one, other) || liesBelow(other, one);
}

Verdict joinReadings(const std::vector<Verdict>& readings) {
    const Verdict* deciding = nullptr;
    for (const auto& reading : readings) {
        const auto rank = rankOf(reading);
        if (rank && (!deciding || *rank < *rankOf(*deciding))) {
            deciding = &reading;
        }
    }
    if (!deciding) {
        return withoutCounting(readings);
    }
    Verdict joined = *deciding;
    const auto disagree = disagreements(readings);
    addReasons(disagree, joined.reasons);
    if (!disagree.empty()) {
        joined.remedies.push_back(Remedy::checkInstrument);
    }
    for (const auto& reading : readings) {
        const bool counts = rankOf(reading).has_value();
        if (&reading == deciding) {
            continue;
        }
        addReasons(reading.reasons, joined.reasons);
        joined.bleedNotRuledOut = joined.bleedNotRuledOut || (counts && reading.bleedNotRuledOut);
        joined.bleedWatchDue = joined.bleedWatchDue || reading.bleedWatchDue;
        joined.curedButForMargin = joined.curedButForMargin && (!counts || reading.curedButForMargin);
    }
    return joined;
}

} // namespace holdfast::analytics
