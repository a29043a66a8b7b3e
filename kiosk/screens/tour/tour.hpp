#pragma once

#include "analytics/quantity/temperature.hpp"
#include "kiosk/screens/tour/stop.hpp"

#include <QByteArray>
#include <QStringList>

#include <map>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

struct Tour final {
    std::vector<Stop> stops{};
    std::map<QString, QByteArray> pictures{}; ///< JPEG of the prints' pictures, by hash
    QStringList missed{}; ///< what the walk wanted to press, type or see and did not find, one sentence each
};

/// Walks the kiosk as it is shipped, but for ports and windows, through every place: presenters over a real book of an
/// invented shop in a folder that is gone afterwards, with a clock that only the walk moves. Each time the same. Needs
/// a QGuiApplication.
[[nodiscard]] Tour walkTour(const std::string& language, analytics::TemperatureUnit unit);

} // namespace holdfast::kiosk::screens
