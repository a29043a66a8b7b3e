#pragma once

#include "analytics/statistics/counts/lot_prediction.hpp"
#include "kiosk/shop/trending/suspects.hpp"

namespace holdfast::kiosk::shop::trending {

/// A lot that shares the suspect.
struct LotAtRisk final {
    FactIndex lot = kNoFact;
    FactIndex run = kNoFact;
    bool asked = false;  ///< the lot the complaint is about
    bool failed = false; ///< already, by readings, tests or complaints
    std::optional<int> pieces{};
    int shipped = 0;
    std::optional<int> here{}; ///< pieces less shipped ones; absent: nobody counted
    std::vector<FactIndex> shipments{};
    records::LotState state = records::LotState::open;
    std::optional<analytics::TemperatureDifference> margin{}; ///< of its lowest drawn reading
    std::optional<analytics::Word> worst{};
    std::int64_t badTests = 0;
    std::int64_t tests = 0;
    Figure<analytics::statistics::BadPieces> bad{tl::unexpected(Refusal{})}; ///< 90 %
};

enum class EvidenceKind {
    itsReadingsUnderCured, ///< for: `count` of `of`
    itsReadingsCured,      ///< against: `count` of `of`
    itsReadingsUnproven,   ///< for: `count` of `of` not proven, `missed` missed
    itsTestsFailed,        ///< for
    itsTestsPassed,        ///< against
    otherComplaints,       ///< for: `count` other complaints of the run
    suspectShared,         ///< for: `count` of `of` failed lots have it
    suspectAlsoGood,       ///< against: `count` of `of` good lots have it too
    bucketMislabelled,     ///< for: a bucket of it was closed as mislabelled
    instrumentFailedCheck, ///< for: an instrument that read it failed its next check
    fewCameBack,           ///< against: `count` of `of` pieces were complained about
    noEvidence,            ///< neither readings nor tests
};
struct Evidence final {
    EvidenceKind kind = EvidenceKind::noEvidence;
    bool speaksFor = true; ///< that it is ours
    std::int64_t count = 0;
    std::int64_t of = 0;
    int missed = 0;
    std::optional<FactorLevel> level{};
    std::optional<analytics::TemperatureDifference> margin{};
};
enum class IsItOurs { likely, possible, unlikely, unknown };

/// A retained piece on the shelf, to be washed tonight.
struct PieceToWash final {
    FactIndex print = kNoFact;
    FactIndex lot = kNoFact;
    std::string shelf{};
    double chance = 0.0; ///< that it is bad
};

struct AtRisk final {
    IsItOurs ours = IsItOurs::unknown;
    std::vector<Evidence> evidence{};                   ///< for first
    Figure<Suspect> suspect{tl::unexpected(Refusal{})}; ///< the one the lots share; else they share its episode
    std::vector<Suspect> others{};                      ///< the next ones that the lot carries
    std::vector<LotAtRisk> lots{};                      ///< asked one first, then by chance of bad pieces
    int pieces = 0;                                     ///< of all lots, as far as known
    int shipped = 0;
    int here = 0;
    Figure<analytics::statistics::BadPieces> bad{tl::unexpected(Refusal{})}; ///< of all of them, 90 %
    analytics::statistics::LotModelCaveat caveat = analytics::statistics::LotModelCaveat::None;
    std::vector<PieceToWash> wash{}; ///< at most three
    Figure<SinceWhen> since{tl::unexpected(Refusal{})};
};

struct RiskQuestion final {
    std::optional<std::string> run{};       ///< id
    std::optional<std::string> lot{};       ///< id; else the run's lot that speaks most against it
    std::optional<FactorLevel> suspect{};   ///< absent: the strongest that the lot carries
    std::optional<std::string> complaint{}; ///< id: its own word is no evidence for itself
    TrendFilter filter{};                   ///< what is compared with
    std::uint64_t seed = 1;
};

/// In the owner's order: is it ours; how many, where, at what chance; what to wash tonight; then why and since when.
/// Refusals: noLots where run or lot is unknown.
[[nodiscard]] Figure<AtRisk> atRisk(const TrendFacts& facts, const RiskQuestion& question);

} // namespace holdfast::kiosk::shop::trending
