#pragma once

#include "analytics/cure/ink_family.hpp"
#include "analytics/cure/trace_facts.hpp"

#include <optional>
#include <vector>

namespace holdfast::analytics {

/// Heat worth how many seconds at T1, for a film with two equal-cure statements (decisions 4, Pairs).
///
/// E = R·ln(τ2/τ1)/(1/T2 − 1/T1), rate(T) = exp(E/R·(1/T1 − 1/T)), kelvin; T1, τ1 the hotter, shorter statement
/// (Arrhenius law with a reference temperature; Levenspiel, Chemical Reaction Engineering, 3rd ed., 2.3).
/// Domain: pairs that faultsOf(InkFamily) accepts.
class EqualCureLaw final {
public:
    explicit EqualCureLaw(const EqualCurePairs& pairs) noexcept;

    /// E, with R = 8.314462618 J/(mol·K) (CODATA 2018).
    [[nodiscard]] double activationEnergyJoulePerMole() const noexcept;
    /// Seconds at T1 that one second at `t` is worth.
    [[nodiscard]] double rateAt(Temperature t) const noexcept;
    /// τ1: the dose that cures.
    [[nodiscard]] Duration needed() const noexcept { return m_pairs.hotter.time; }

    /// Dose along the joined lines of a trace lowered by `lowered`, the rate above T1 being that of T1 and nothing
    /// counting below T2; gaps and breaks add nothing. 0 for fewer than two samples. Each line is integrated
    /// to a relative error below 1e-6 (trapezoid with end slopes, Abramowitz & Stegun, 23.1.30; Gauss–Legendre where
    /// steep or at an end of the band, 25.4.29).
    [[nodiscard]] Duration cautiousDose(const Pass& pass, TemperatureDifference lowered) const noexcept;

    /// Dose along the joined lines of a trace raised by `raised`, at full rate above `gelLow` and nothing below it, and
    /// each of `hidden` whole at its top + raised if that lies above gelLow.
    [[nodiscard]] Duration generousDose(const Pass& pass, const std::vector<HiddenTop>& hidden,
                                        TemperatureDifference raised, Temperature gelLow) const noexcept;

    /// The most by which the whole trace could be lowered (negative: must be raised) for its cautious dose to be τ1.
    /// `reachedAtGuard`: whether the cautious dose at `guard` reaches τ1; the margin lies on the side of the guard that
    /// this says. Absent when the trace is shorter than τ1, so that no shift would do. To 1e-7 °C from below.
    [[nodiscard]] std::optional<TemperatureDifference> margin(const Pass& pass, TemperatureDifference guard,
                                                              bool reachedAtGuard) const;

private:
    /// Where a line counts at which rate.
    struct Band final {
        double from = 0.0; ///< °C; nothing counts below
        double cap = 0.0;  ///< T1 in °C, above which the rate stays 1; infinite for none
    };
    [[nodiscard]] double doseOfLine(double from, double to, double seconds, const Band& band) const noexcept;
    [[nodiscard]] double integral(double low, double high) const noexcept;
    struct Worth final {
        double dose = 0.0;          ///< s at T1
        double lossPerKelvin = 0.0; ///< by which the dose falls as the trace is lowered; about
    };
    struct Rate final {
        double rate = 0.0;
        double slope = 0.0; ///< a kelvin
    };
    [[nodiscard]] double lossOfLine(double from, double to, double seconds, const Band& band) const noexcept;
    [[nodiscard]] Worth worth(const Pass& pass, double shift, const Band& band) const noexcept;
    [[nodiscard]] static double nextShift(double at, const Worth& got, double needed) noexcept;
    [[nodiscard]] double rate(double celsius) const noexcept;
    [[nodiscard]] Rate rateAndSlope(double celsius) const noexcept;

    EqualCurePairs m_pairs;
    double m_theta = 0.0;        ///< E/R, K
    double m_inverseAtHot = 0.0; ///< 1/T1, 1/K
};

} // namespace holdfast::analytics
