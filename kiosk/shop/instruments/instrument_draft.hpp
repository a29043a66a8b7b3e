#pragma once

#include "kiosk/records/instrument_records.hpp"
#include "kiosk/shop/instruments/form_reader.hpp"

#include <tl/expected.hpp>

namespace holdfast::kiosk::shop::instruments {

/// An instrument while it is being described.
struct InstrumentDraft final {
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit; ///< of all figures
    std::string name{};
    analytics::InstrumentKind kind = analytics::InstrumentKind::probe;
    std::optional<analytics::ThermocoupleType> type{};
    std::optional<analytics::ToleranceClass> toleranceClass{};
    std::string statedTolerance{};
    std::string resolution{};
    std::string rangeLow{};
    std::string rangeHigh{};
    analytics::Placement placement = analytics::Placement::wetInk;
    std::string ownPlacement{};
    std::string steps{}; ///< of a strip: "280 290 300"
    std::string stripTolerance{};
    std::string expiry{};
    std::string packCount{}; ///< numbered singles; empty: the packet has one label
    std::string batch{};
    std::string catalogue{}; ///< id; empty: not attached
    std::string address{};
    std::optional<records::InstrumentDescribed> before{}; ///< absent: a new one
};

/// What stands beside it.
struct Surroundings final {
    struct Other final {
        std::string instrument{}; ///< id
        std::string name{};
        std::string address{};
    };
    std::vector<Other> others{};          ///< in use; may hold the one that is being changed
    std::vector<std::string> catalogue{}; ///< ids
};

[[nodiscard]] InstrumentDraft draftOf(const records::InstrumentDescribed& described, analytics::TemperatureUnit unit);

/// Every fault at once, in the order of the form. What does not belong to the kind is left out (a strip's class, a
/// probe's steps). Figures whose text was not touched stay as they were authored. A new one still lacks its id and
/// number: see numbered().
[[nodiscard]] tl::expected<records::InstrumentDescribed, std::vector<FormFault>>
instrumentFrom(const InstrumentDraft& draft, const Surroundings& around);

/// With its id if it is new, and with numbers if it has none: a pack's singles from `nextNumber` on, then its own.
[[nodiscard]] records::InstrumentDescribed numbered(records::InstrumentDescribed described, const std::string& freshId,
                                                    std::int64_t nextNumber);

} // namespace holdfast::kiosk::shop::instruments
