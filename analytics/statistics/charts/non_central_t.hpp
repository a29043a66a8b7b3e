#pragma once

#include <vector>

namespace holdfast::analytics::statistics {

/// Distribution of s/σ for a standard deviation with ν degrees of freedom, as nodes with their chances: an expectation
/// over it is the weighted sum. Nodes are gathered where `steepAt` lies (there the integrand may jump within about
/// `steepWidth`); pass a width of 0 for a smooth one.
struct SpreadNodes final {
    std::vector<double> ratio;
    std::vector<double> chance;
};
[[nodiscard]] SpreadNodes spreadNodes(double degrees, double steepAt = 0.0, double steepWidth = 0.0);

/// P(T ≤ t) for the non-central t with ν ≥ 1 degrees of freedom and non-centrality δ: ∫Φ(t·s − δ)dF(s), s² being χ²/ν
/// (D. B. Owen, "A survey of properties and applications of the noncentral t-distribution", Technometrics 10, 1968). By
/// quadrature, since series in δ lose their digits for the large δ of large samples; about 1e-12 for any ν up to 10⁷.
[[nodiscard]] double nonCentralTBelow(double t, double degrees, double noncentrality);

} // namespace holdfast::analytics::statistics
