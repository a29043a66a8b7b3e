#pragma once

#include "analytics/cure/ride/turn.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/shop/proving/recording.hpp"

#include <memory>
#include <optional>
#include <string>

/// Pages of readings that are typed: spot, surface gun, and the note of a flash.
namespace holdfast::kiosk::shop {

/// A spot or a gun held by hand. A preview is never a verdict.
struct HandEntry final {
    KnownInstrument instrument;                                 ///< calibrated for `placement`
    std::optional<analytics::AuthoredTemperature> value;        ///< the held maximum, or the surface, as indicated
    std::optional<analytics::AuthoredTemperature> beforeUse;    ///< of a spot, after reset
    analytics::ShotPlace place = analytics::ShotPlace::outfeed; ///< of a gun
    records::BeltPosition position = records::BeltPosition::centre;
    std::optional<analytics::Placement> placement{}; ///< absent: as the instrument is described
    std::optional<RefusalCause> missing;             ///< what keeps it from being kept; absent: nothing
    std::optional<analytics::Verdict> preview;       ///< the worst of the runs on the belt; absent while `missing`
};

/// A temperature that a print or a dryer can have.
[[nodiscard]] bool isPossible(const analytics::AuthoredTemperature& typed);
/// The figure as typed, with its unit.
[[nodiscard]] std::string typedText(const analytics::AuthoredTemperature& typed);

/// An underbase between screens, for a layer of the run announced.
struct FlashEntry final {
    KnownInstrument instrument;
    std::optional<int> layer;                           ///< position, from 1 at the bottom
    std::optional<analytics::AuthoredTemperature> peak; ///< as indicated
    std::optional<RefusalCause> missing;
    std::optional<analytics::FlashNote> preview; ///< absent while `missing`
};

/// The note made last, shown at once; the book follows.
struct LastFlash final {
    records::FlashNoted note{};
    std::shared_ptr<const AnnouncedRun> run; ///< whose layer it is
    std::string instrumentName{};
    bool kept = false; ///< it stands in the book
};

/// What a ride tells of the dryer. Shared and never changed.
struct RideFacts final {
    tl::expected<analytics::RiseFit, analytics::RiseFault> fit = tl::unexpected{analytics::RiseFault::noPass};
    std::vector<analytics::RideSign> signs;
    analytics::DryerSettings dryer; ///< as it stood then
    std::shared_ptr<const analytics::Calibration> calibration;
};

/// A ride of this dryer with nothing wrong, of which its usual is made.
struct GoodRide final {
    std::int64_t recording = 0; ///< 0: of an earlier session
    int pass = 1;
    analytics::UsualRide ride;
};

} // namespace holdfast::kiosk::shop
