#pragma once

#include "analytics/quantity/temperature.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace holdfast::kiosk::records {

/// book.opened: the first entry of every book.
struct BookOpened final {
    std::string shop;    ///< name of the shop, as reports print it
    std::string kiosk;   ///< name of this kiosk, as people say it
    std::string program; ///< version that made the book
    bool demo = false;   ///< the invented shop: marked DEMO everywhere
};

enum class Role { operatorAtDryer, qualityAssurance, owner };

/// person.added: the name itself stands outside the chain (ledger::PersonName).
struct PersonAdded final {
    std::int64_t number = 0; ///< ≥ 1
    std::string badge;       ///< code, P…; may be empty
    std::vector<Role> roles{};
};

/// person.changed: the whole of it, as it is from now on.
struct PersonChanged final {
    std::int64_t number = 0;
    std::string badge{}; ///< code, P…; may be empty
    std::vector<Role> roles{};
    bool left = false; ///< no longer works here
};

/// pin.set: only its Argon2id string (RFC 9106, as libsodium writes it); empty: the person has no PIN any more.
struct PinSet final {
    std::int64_t number = 0; ///< of the person
    std::string hash{};
};

/// crew.changed: who stands at the dryer from now on.
struct CrewChanged final {
    std::vector<std::int64_t> persons;
    int unnamed = 0; ///< hands without a number
};

/// dryer.described: the newest one of a dryer counts.
struct DryerDescribed final {
    std::string dryer; ///< id
    std::string name;
    std::optional<double> heatedLengthMetres;
    std::optional<double> beltMetresPerMinute;
    std::optional<analytics::AuthoredTemperature> setPoint;
    std::optional<double> slowestMetresPerMinute{}; ///< what the belt can do
    std::optional<double> fastestMetresPerMinute{};
    std::optional<analytics::AuthoredTemperature> highestSetPoint{};
    std::optional<double> piecesPerMetre{}; ///< on the belt
    bool withdrawn = false;
};

using SettingValue = std::variant<bool, std::int64_t, double, std::string>;

/// setting.changed: the newest value of a key counts.
struct SettingChanged final {
    std::string key; ///< "language", "unit", "panel_inch", "risk_percent", …
    SettingValue value;
};

} // namespace holdfast::kiosk::records
