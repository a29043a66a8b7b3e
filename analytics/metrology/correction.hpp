#pragma once

#include "analytics/metrology/instrument.hpp"

#include <optional>

/// A certificate's points as a curve: what it says between, at and beyond them. Every function expects a certificate
/// that isUsable().
namespace holdfast::analytics {

/// A calibration point this near, ends included, speaks for a limit.
inline constexpr TemperatureDifference kPointReach = TemperatureDifference::fromCelsius(25.0);

/// True when nothing in the certificate itself is at fault: see validate().
[[nodiscard]] bool isUsable(const Certificate& certificate);

/// From its date up to and including the due day.
[[nodiscard]] bool isInDate(const Certificate& certificate, Date today) noexcept;

/// Correction at a reading: linear between the points, flat outside.
[[nodiscard]] TemperatureDifference correctionFrom(const Certificate& certificate, Temperature raw) noexcept;

/// Expanded uncertainty there: the larger of the two points the correction is read between (the end point outside).
[[nodiscard]] TemperatureDifference expandedUncertaintyFrom(const Certificate& certificate, Temperature at) noexcept;

/// e: how far the correction extended along its last segment leaves the flat one; 0 between the points. Absent with a
/// single point, which has no segment.
[[nodiscard]] std::optional<TemperatureDifference> extensionError(const Certificate& certificate,
                                                                  Temperature at) noexcept;

/// Whether a calibration point lies within kPointReach of `at`.
[[nodiscard]] bool hasPointNear(const Certificate& certificate, Temperature at) noexcept;

/// Largest |correction| of the points.
[[nodiscard]] TemperatureDifference largestCorrection(const Certificate& certificate) noexcept;

/// d: the largest change of the correction between two certificates, read at those points of the newer that have a
/// point of the older within kPointReach, since only there did both look. Absent when none of these points is within
/// kPointReach of `limit`.
[[nodiscard]] std::optional<TemperatureDifference> driftBetween(const Certificate& older, const Certificate& newer,
                                                                Temperature limit) noexcept;

} // namespace holdfast::analytics
