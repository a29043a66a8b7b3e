#pragma once

#include "analytics/cure/advice/advice.hpp"
#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

/// A plan while it is being written: everything as typed, checked at once and as a whole.
namespace holdfast::kiosk::shop {

struct DraftLayer final {
    std::string colour{};
    std::string ink{}; ///< name of a family; a bucket's family or mix if buckets are named
    std::vector<std::int64_t> buckets{};
    bool underbase = false;
    bool operator==(const DraftLayer&) const = default;
};

struct PlanDraft final {
    std::string run{}; ///< id; empty: a new one
    records::PlanKind kind = records::PlanKind::run;
    std::int64_t number = 0;
    std::string title{};
    std::string customer{};
    std::string reference{};
    std::string garmentColour{};
    std::string clothLot{};
    std::string finish{};
    std::string pieces{}; ///< as typed; empty: not known
    std::string dryer{};  ///< id; empty: any
    std::string fabric{};
    std::vector<DraftLayer> layers{}; ///< bottom first
    bool childrensWear = false;
    bool operator==(const PlanDraft&) const = default;
};

enum class PlanFaultCause {
    titleMissing,
    fabricMissing,
    fabricUnknown, ///< text
    noLayer,
    tooManyLayers,    ///< more than `kMostLayers`
    inkMissing,       ///< layer
    inkUnknown,       ///< layer, text
    bucketUnknown,    ///< text: its number
    bucketClosed,     ///< text: its number
    bucketInkUnknown, ///< text: its number; nobody knows what it is made of
    piecesNotANumber, ///< text: no whole number from 1 to 1,000,000
    textTooLong,      ///< text: the field's first signs
    controlSign,      ///< a sign that no printer prints
};

struct PlanFault final {
    PlanFaultCause cause{};
    std::string field{}; ///< "title", "pieces", "layer.2.ink"; positions from 1 at the bottom
    std::string text{};
    std::optional<int> layer{};
    bool operator==(const PlanFault&) const = default;
};

inline constexpr std::size_t kMostLayers = 12;

struct StockBucket final {
    std::int64_t number = 0;
    std::string name{}; ///< the family's or the mix's
    std::string colour{};
    std::vector<records::InkPart> parts{}; ///< the families in it, by mass
    analytics::Ink ink{};
    std::optional<analytics::BucketFault> trouble{};
};

/// What may be printed with and on: the newest revisions, the buckets that the draft names, and how the shop prints.
struct Stock final {
    std::vector<analytics::InkFamily> families{};
    std::vector<analytics::Fabric> fabrics{};
    std::vector<StockBucket> buckets{};
    analytics::PrintingHabits habits{};
};

/// Null: none of that number.
[[nodiscard]] const StockBucket* bucketOf(const Stock& stock, std::int64_t number);

[[nodiscard]] PlanDraft draftOf(const records::RunPlanned& plan);

/// Every fault at once, in the order of the form. Names of inks and cloths are taken in any case of letters and with
/// blanks at the ends; the plan holds them as the book spells them. A layer that names buckets is of the families in
/// them.
[[nodiscard]] tl::expected<records::RunPlanned, std::vector<PlanFault>> planFrom(const PlanDraft& draft,
                                                                                 const Stock& stock);

/// run.planned for a new one. For one that stands in the book run.replanned, and if layers or cloth changed under an
/// open lot, that lot closed and the next opened (decisions 5).
[[nodiscard]] std::vector<records::Record> recordsOfPlan(const records::RunPlanned& plan,
                                                         const records::RunOnFile* before,
                                                         const std::vector<analytics::InkFamily>& newest,
                                                         const std::string& freshLot);

/// The open lot closed and run.finished.
[[nodiscard]] std::vector<records::Record> recordsOfFinish(const records::RunOnFile& run, std::optional<int> made,
                                                           std::optional<int> spoiled);

} // namespace holdfast::kiosk::shop
