#pragma once

#include "kiosk/records/instrument_records.hpp"
#include "kiosk/shop/instruments/form_reader.hpp"

#include <tl/expected.hpp>

namespace holdfast::kiosk::shop::instruments {

struct PointDraft final {
    std::string at{};
    std::string correction{}; ///< to be added to a reading there
    std::string uncertainty{};
};

/// A certificate of calibration while it is being copied from paper.
struct CertificateDraft final {
    std::string instrument{}; ///< id
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit;
    std::string date{};
    std::string due{};
    std::string coverageFactor{}; ///< never filled in for the person: a k that nobody read is no k
    std::vector<PointDraft> points{PointDraft{}};
};

inline constexpr std::size_t kMostPoints = 20;

/// Every fault at once, in the order of the form: "date", "due", "k", "points", "point.N.at", "point.N.correction",
/// "point.N.u". Points are not put in order for the person: out of order they were copied wrongly.
[[nodiscard]] tl::expected<records::CertificateAdded, std::vector<FormFault>>
certificateFrom(const CertificateDraft& draft, analytics::Date today);

} // namespace holdfast::kiosk::shop::instruments
