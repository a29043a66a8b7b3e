#include "analytics/cure/findings.hpp"

#include "analytics/metrology/conformance.hpp"

#include <algorithm>
#include <utility>

namespace holdfast::analytics::judging {
namespace {

ReasonCode codeOf(CalibrationFault fault) noexcept {
    switch (fault) {
    case CalibrationFault::noCertificateOrCheckInDate:
        return ReasonCode::noCertificateOrCheckInDate;
    case CalibrationFault::correctionBeyondClassFarFromLimit:
        return ReasonCode::correctionBeyondClass;
    case CalibrationFault::stripExpired:
        return ReasonCode::stripExpired;
    case CalibrationFault::noTolerance:
        break;
    }
    return ReasonCode::noToleranceKnown;
}

ReasonCode codeOf(BucketFault fault) noexcept {
    switch (fault) {
    case BucketFault::pastPotLife:
        return ReasonCode::bucketPastPotLife;
    case BucketFault::expired:
        return ReasonCode::bucketExpired;
    case BucketFault::additiveOutsideBand:
        break;
    }
    return ReasonCode::bucketAdditiveOutsideBand;
}

void addCalibrationFault(const Frame& frame, Temperature limit, Findings& findings) {
    if (const auto reason = whyNotInDate(*frame.calibration, limit)) {
        addOnce(findings.hindered, *reason);
    }
}

void append(std::vector<Reason>& all, const std::vector<Reason>& some) {
    all.insert(all.end(), some.begin(), some.end());
}

/// Smallest of the layers' margins: known at its low end only if every layer's is.
void takeSmallestMargin(Verdict& verdict) {
    MarginRange smallest;
    bool allLow = !verdict.layers.empty();
    const LayerVerdict* decisive = nullptr;
    for (const auto& layer : verdict.layers) {
        const auto margin = layer.margin.value_or(MarginRange{});
        allLow = allLow && margin.low.has_value();
        if (margin.low && (!smallest.low || *margin.low < *smallest.low)) {
            smallest.low = margin.low;
            decisive = &layer;
        }
        if (margin.high && (!smallest.high || *margin.high < *smallest.high)) {
            smallest.high = margin.high;
        }
    }
    if (!allLow) {
        smallest.low.reset();
    }
    verdict.margin = smallest.low || smallest.high ? std::optional{smallest} : std::nullopt;
    if (!decisive && !verdict.layers.empty()) {
        decisive = &*std::max_element(
            verdict.layers.begin(), verdict.layers.end(),
            [](const LayerVerdict& a, const LayerVerdict& b) { return a.limit.limit < b.limit.limit; });
    }
    verdict.guard = decisive ? decisive->limit.guard : TemperatureDifference{};
}

} // namespace

Word Findings::word() const noexcept {
    if (!tooCool.empty()) {
        return Word::underCured;
    }
    if (!tooHot.empty()) {
        return Word::overheated;
    }
    return hindered.empty() && open.empty() ? Word::cured : Word::notProven;
}

Reason because(ReasonCode code) {
    Reason reason;
    reason.code = code;
    return reason;
}

Reason because(ReasonCode code, int layer) {
    Reason reason = because(code);
    reason.layer = layer;
    return reason;
}

Reason because(ReasonCode code, Temperature value, const GuardedLimit& limit) {
    Reason reason = because(code);
    reason.value = value;
    reason.limit = limit.limit;
    reason.guard = limit.guard;
    return reason;
}

Reason because(ReasonCode code, int layer, Temperature value, const GuardedLimit& limit) {
    Reason reason = because(code, value, limit);
    reason.layer = layer;
    return reason;
}

void addOnce(std::vector<Reason>& reasons, const Reason& reason) {
    const bool known = std::any_of(reasons.begin(), reasons.end(), [&](const Reason& other) {
        return other.code == reason.code && other.layer == reason.layer && other.subject == reason.subject;
    });
    if (!known) {
        reasons.push_back(reason);
    }
}

std::optional<Reason> whyNotInDate(const Calibration& calibration, Temperature limit) {
    const auto fault = calibration.faultAt(limit);
    if (!fault) {
        return std::nullopt;
    }
    Reason reason = because(codeOf(*fault));
    reason.subject = calibration.instrument().name;
    return reason;
}

std::optional<Frame> frameOf(const RunPlan& plan, const Calibration& calibration, const GuardSetting& guard) {
    auto window = windowOf(plan, &calibration, guard);
    if (!window) {
        return std::nullopt;
    }
    return Frame{&plan, &calibration, guard, std::move(*window)};
}

Temperature guardedAt(const LayerRequirement& layer) noexcept {
    return layer.pairs ? layer.pairs->hotter.temperature : layer.cure.limit;
}

void addStandingHindrances(const Frame& frame, Findings& findings) {
    const auto& window = frame.window;
    if (window.state == WindowState::closed) {
        Reason closed = because(ReasonCode::windowClosed);
        closed.value = window.lower;
        closed.limit = window.upper;
        findings.hindered.push_back(closed);
    }
    for (const auto& layer : window.layers) {
        addCalibrationFault(frame, guardedAt(layer), findings);
    }
    if (window.upperHard) {
        addCalibrationFault(frame, window.upperHard->limit, findings);
    }
    if (window.state == WindowState::notProvable) {
        for (const auto& reason : window.whyNotProvable) {
            addOnce(findings.hindered, reason);
        }
    }
    for (std::size_t i = 0; i < frame.plan->layers.size(); ++i) {
        if (const auto& trouble = frame.plan->layers[i].bucketTrouble) {
            Reason reason = because(codeOf(trouble->fault), static_cast<int>(i) + 1);
            reason.subject = trouble->bucket;
            findings.hindered.push_back(reason);
        }
    }
    for (const int position : window.bleeds) {
        findings.notes.push_back(because(ReasonCode::bleedsAnyway, position));
    }
}

void conclude(const Frame& frame, Findings findings, Verdict& verdict) {
    verdict.word = findings.word();
    verdict.curedButForMargin =
        findings.tooCool.empty() && findings.tooHot.empty() && findings.hindered.empty() && !verdict.layers.empty();
    verdict.couldProve = verdict.couldProve && frame.window.state == WindowState::open;
    verdict.bleedWatchDue = verdict.bleedWatchDue || verdict.bleedNotRuledOut || !frame.window.bleeds.empty();
    for (std::size_t i = 0; i < verdict.layers.size(); ++i) {
        auto& layer = verdict.layers[i];
        if (layer.word == Word::cured && frame.plan->layers[i].bucketTrouble) {
            layer.word = Word::notProven;
        }
    }
    takeSmallestMargin(verdict);

    std::vector<Reason> deciding;
    switch (verdict.word) {
    case Word::underCured:
        deciding = findings.tooCool;
        break;
    case Word::overheated:
        deciding = findings.tooHot;
        break;
    default:
        deciding = findings.hindered;
        append(deciding, findings.open);
    }
    verdict.remedies = remediesFor(deciding);
    if (verdict.bleedWatchDue) {
        verdict.remedies.push_back(Remedy::watchForBleed);
    }
    verdict.reasons = std::move(findings.tooCool);
    for (const auto* list : {&findings.tooHot, &findings.hindered, &findings.open, &findings.met, &findings.notes}) {
        append(verdict.reasons, *list);
    }
}

Verdict refused(Reason reason) {
    Verdict verdict;
    verdict.word = Word::refused;
    verdict.couldProve = false;
    verdict.remedies = remediesFor({reason});
    verdict.reasons.push_back(std::move(reason));
    return verdict;
}

Reason overCeiling(const Frame& frame, ReasonCode code, Temperature peak, const GuardedLimit& ceiling) {
    Reason reason = because(code, peak, ceiling);
    reason.subject = frame.plan->fabric.name;
    const auto position = frame.window.upperHardLayer;
    const bool isHard = frame.window.upperHard && ceiling.limit == frame.window.upperHard->limit;
    if (position && isHard && code != ReasonCode::aboveBleedCeiling) {
        reason.layer = position;
        reason.subject = frame.plan->layers[static_cast<std::size_t>(*position - 1)].ink.requirement.name;
    }
    return reason;
}

std::vector<LayerVerdict> blankLayers(const Frame& frame) {
    std::vector<LayerVerdict> layers;
    layers.reserve(frame.window.layers.size());
    for (std::size_t i = 0; i < frame.window.layers.size(); ++i) {
        const auto& layer = frame.plan->layers[i];
        layers.push_back({frame.window.layers[i].position, layer.colour, layer.ink.requirement.name, Word::notProven,
                          std::nullopt, frame.window.layers[i].cure});
    }
    return layers;
}

std::optional<Probability> conformanceOf(const Frame& frame, const Verdict& verdict,
                                         std::optional<Temperature> hottest) {
    const LayerVerdict* decisive = nullptr;
    for (const auto& layer : verdict.layers) {
        const bool isPoint = layer.margin && layer.margin->low && layer.margin->high;
        if (!isPoint) {
            return std::nullopt;
        }
        if (!decisive || *layer.margin->low < *decisive->margin->low) {
            decisive = &layer;
        }
    }
    if (!decisive) {
        return std::nullopt;
    }
    const auto& requirement = frame.window.layers[static_cast<std::size_t>(decisive->position - 1)];
    const auto uLower = frame.calibration->uncertaintyAt(guardedAt(requirement)).ofMean();
    const auto lower = conformanceProbability(decisive->limit.limit + *decisive->margin->low, uLower,
                                              {decisive->limit.limit, std::nullopt});
    if (!frame.window.upperHard || !hottest || !lower) {
        return lower;
    }
    const auto ceiling = frame.window.upperHard->limit;
    const auto upper =
        conformanceProbability(*hottest, frame.calibration->uncertaintyAt(ceiling).ofMean(), {std::nullopt, ceiling});
    return upper ? std::optional{Probability::fromFraction(std::max(0.0, upper->fraction() + lower->fraction() - 1.0))}
                 : std::nullopt;
}

} // namespace holdfast::analytics::judging
