#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <QStringList>

#include <chrono>
#include <functional>
#include <string>
#include <vector>

/// An invented shop that needs every page once. Nothing in it is real.
namespace holdfast::kiosk::screens {

inline constexpr const char* kTourProbe = "P-3";
inline constexpr const char* kTourCatalogueId = "line-type-k-celsius";

struct TourShop final {
    std::vector<records::Record> records{}; ///< the book's first entries, in order
    std::vector<ledger::PersonName> names{};
};

/// What its people call the runs, one longer than a list has room for.
[[nodiscard]] QStringList tourTitles();
[[nodiscard]] TourShop tourShop(const std::function<std::string()>& makeId, std::chrono::sys_days today);

} // namespace holdfast::kiosk::screens
