#pragma once

#include <vector>

namespace holdfast::analytics::statistics {

/// Resistivities of 12 wafers, NIST/SEMATECH e-Handbook 7.2.6.2.
inline const std::vector<double> kWafers{95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610,
                                         95.1591, 95.1195, 95.1065, 95.0925, 95.1990, 95.1682};

} // namespace holdfast::analytics::statistics
