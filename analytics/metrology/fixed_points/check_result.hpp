#pragma once

#include "analytics/metrology/calibration.hpp"
#include "analytics/metrology/fixed_points/reference.hpp"
#include "analytics/metrology/fixed_points/stability.hpp"

/// Whether an instrument passed in a bath of known temperature.
namespace holdfast::analytics {

enum class CheckLimitKind { classTolerance, statedTolerance, certificate };

/// The largest error allowed.
struct CheckLimit final {
    TemperatureDifference limit;
    CheckLimitKind kind = CheckLimitKind::classTolerance;
};

/// With a certificate in date that has a point within 25 °C: twice the common standard uncertainty its budget claims
/// there (about 95 %, JCGM 100:2008, 6.3.3), since only an error within it keeps that budget true; but never more than
/// the tolerance, if one is known. Otherwise the tolerance of class or maker there. Absent when neither says a finite
/// figure.
[[nodiscard]] std::optional<CheckLimit> checkLimitAt(const Calibration& calibration, Temperature reference) noexcept;

/// Simple in form, guarded in both directions (JCGM 106:2012, 8.3.2 and 8.3.3; ISO 14253-1:2017), g = z·u with the
/// shop's risk: passed when |error| ≤ limit − g, failed when |error| ≥ limit + g, else not decided; equality counts as
/// met, passed first.
enum class CheckOutcome { passed, failed, notDecided };

[[nodiscard]] CheckOutcome decideCheck(TemperatureDifference error, TemperatureDifference limit,
                                       TemperatureDifference guard) noexcept;

enum class CheckFault {
    notForBath, ///< a strip or a surface gun
    notFinite,
    noLimit,
    intervalInvalid ///< below one day or above ten years
};

struct CheckRequest final {
    CheckKind kind = CheckKind::ice;
    BathReference reference;
    SteadyReading reading;
    std::chrono::days interval{30};
    GuardSetting setting{};
};

struct CheckResult final {
    CheckKind kind = CheckKind::ice;
    Temperature indicated = Temperature::fromCelsius(0);
    TemperatureDifference correction;
    Temperature reference = Temperature::fromCelsius(0);
    TemperatureDifference error; ///< indicated + correction − reference
    CheckLimit limit;
    std::vector<BudgetLine> lines; ///< of the reference, then resolution (step/√12) and stability
    TemperatureDifference u;       ///< √Σu²
    TemperatureDifference guard;   ///< z·u
    bool canPass = true;           ///< limit ≥ guard: otherwise no reading could pass, the bath is known too badly
    CheckOutcome outcome = CheckOutcome::notDecided;
    Date date;
    Date due; ///< date + interval when passed, else the same day
};

[[nodiscard]] tl::expected<CheckResult, CheckFault> judgeCheck(const Calibration& calibration,
                                                               const CheckRequest& request);

/// The check as the instrument keeps it; absent while nothing is decided.
[[nodiscard]] std::optional<Check> toCheck(const CheckResult& result) noexcept;

} // namespace holdfast::analytics
