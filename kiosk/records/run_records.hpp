#pragma once

#include "analytics/quantity/temperature.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::records {

/// A part of a layer's ink: one family alone is a pure ink, several are a mix by mass.
struct InkPart final {
    std::string family; ///< name; the newest revision at the lot's opening counts
    double mass = 1.0;
};

struct PlannedLayer final {
    std::string colour{};                ///< may be empty: then it counts as at risk of bleed
    std::string ink{};                   ///< what people call it: the family's or the mix's name
    std::vector<InkPart> parts{};        ///< at least one
    std::vector<std::int64_t> buckets{}; ///< numbers of the buckets it is printed from, if they were scanned
    bool underbase = false;              ///< printed under the others and flashed, not seen
};

enum class PlanKind {
    run,
    windowCard, ///< one of the shop's usual windows: enough to judge a ride, the run may be named later
};

/// run.planned, and with the same body run.replanned: the newest plan of a run counts.
struct RunPlanned final {
    std::string run{}; ///< id
    PlanKind kind = PlanKind::run;
    std::int64_t number = 0;     ///< as people say it, "20418"; the ticket's code R… or W… says the same number
    std::string title{};         ///< "red jerseys"
    std::string customer{};      ///< may be empty
    std::string reference{};     ///< the customer's own order number; may be empty
    std::string garmentColour{}; ///< "red"; may be empty
    std::string clothLot{};      ///< the mill's or the supplier's, as on the carton; may be empty
    std::string finish{};        ///< of the cloth: "softener", "water repellent"; may be empty
    std::optional<int> pieces;
    std::string dryer;                ///< id; empty: any
    std::string fabric;               ///< name
    std::vector<PlannedLayer> layers; ///< bottom first
    bool childrensWear = false;
};

/// run.replanned
struct RunReplanned final {
    RunPlanned plan;
};

/// run.finished: the last piece has gone through; its open lot is closed with it.
struct RunFinished final {
    std::string run{}; ///< id
    std::optional<int> made{};
    std::optional<int> spoiled{};
};

/// Names the exact revision that counts for a lot or that a verdict used.
struct RevisionUsed final {
    std::string name;
    int revision = 1;
    bool operator==(const RevisionUsed&) const = default;
};

struct RevisionsUsed final {
    std::vector<RevisionUsed> families; ///< each once, by name
    RevisionUsed fabric;
    bool operator==(const RevisionsUsed&) const = default;
};

/// lot.opened
struct LotOpened final {
    std::string lot;   ///< id
    std::string run{}; ///< id
    int number = 1;    ///< within the run
    std::string dryer;
    std::optional<int> firstPiece;
    RevisionsUsed revisions;
    std::optional<analytics::AuthoredTemperature> setPoint;
    std::optional<double> beltMetresPerMinute;
};

enum class LotEnd { runEnded, newRevision, otherBucket, dryerChanged };

/// lot.closed
struct LotClosed final {
    std::string lot; ///< id
    std::optional<int> lastPiece;
    LotEnd why = LotEnd::runEnded;
};

} // namespace holdfast::kiosk::records
