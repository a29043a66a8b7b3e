#pragma once

#include "analytics/cure/verdict.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

/// An instrument was found wrong: what its readings were worth (decisions 5).
namespace holdfast::analytics {

/// What a check showed: at the reference `at` the instrument, with its correction, read `error` too high.
struct ErrorFound final {
    Temperature at = Temperature::fromCelsius(0);
    TemperatureDifference error;
};

/// How an error known at one temperature is carried to another.
enum class ErrorShape {
    flat,        ///< the same everywhere
    proportional ///< as the temperature in °C: error × t / at; only from a check above 50 °C
};

/// A check must lie above this for its error to be carried in proportion: below, the ratio magnifies chance.
inline constexpr Temperature kProportionalAbove = Temperature::fromCelsius(50.0);

/// The shapes that are asked about this error: flat, and proportional where the check was above 50 °C.
[[nodiscard]] std::vector<ErrorShape> shapesOf(const ErrorFound& found);

/// What the instrument should have read where it read `indicated`. Proportional is solved for the true temperature:
/// indicated = t + error × t / at. A value that is not finite stays as it is.
[[nodiscard]] Temperature asItWas(Temperature indicated, const ErrorFound& found, ErrorShape shape) noexcept;

/// What was seen, as it was judged first.
using SeenEvidence = std::variant<RawTrace, StripReading, SpotReading, SurfaceReading>;

/// The reading as it was judged then.
struct ReadingInDoubt final {
    RunPlan plan;
    SeenEvidence evidence;
    int pass = 1;                  ///< of a recording, which of its passes it is
    std::optional<Duration> dwell; ///< where it was known
    ReadingContext context;
};

enum class ErrorFault {
    notFinite,
    tooLarge, ///< more than a tenth of the reference above absolute zero: the instrument is broken, not wrong
    noSuchPass
};

struct Recomputed final {
    Verdict verdict;
    ErrorShape shape = ErrorShape::flat;
    [[nodiscard]] bool stillCured() const noexcept { return verdict.word == Word::cured; }
};

/// The reading judged anew with the error taken off what the instrument showed, under each shape; the worse counts:
/// under-cured, then overheated, then not proven, then cured, and of equal words the one that lowers the reading more.
/// So an instrument that read high is judged by the shape that lowers it more (decisions 5), and one that read low also
/// by the one that brings it nearer to its ceilings. `calibration` is the instrument as it stood on the day of the
/// reading, before the check that found it wrong: its correction, guard and range stay. A strip's steps are moved.
[[nodiscard]] tl::expected<Recomputed, ErrorFault> recompute(const ReadingInDoubt& reading, const ErrorFound& found,
                                                             const Calibration& calibration,
                                                             const GuardSetting& guard = {});

/// One look at an instrument, by any clock that only goes forward.
struct InstrumentLook final {
    std::int64_t at = 0;
    bool good = false; ///< a passed check, or a new certificate
};

/// From after `from` (absent: from ever on) up to and including `to` its readings are in doubt.
struct DoubtfulTime final {
    std::optional<std::int64_t> from;
    std::int64_t to = 0;
    [[nodiscard]] constexpr bool holds(std::int64_t takenAt) const noexcept {
        return (!from || takenAt > *from) && takenAt <= to;
    }
    bool operator==(const DoubtfulTime&) const = default;
};

/// Since the last good look before the failed check at `failedAt`, up to that check. Looks in any order.
[[nodiscard]] DoubtfulTime doubtfulTime(const std::vector<InstrumentLook>& looks, std::int64_t failedAt) noexcept;

} // namespace holdfast::analytics
