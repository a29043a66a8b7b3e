#pragma once

#include "kiosk/ledger/failure.hpp"

#include <cstdint>
#include <filesystem>
#include <map>

/// Wrong PINs in a file beside the book, so that a restart does not forget them. Whoever can write to the kiosk's disk
/// can forget them; whoever stands before its screen or pulls its plug cannot.
namespace holdfast::kiosk::shop {

struct PinTries final {
    int inARow = 0;                   ///< wrong ones since the last right one, whoever's
    std::map<std::int64_t, int> of{}; ///< by person, since that person's last right one
    bool operator==(const PinTries&) const = default;
};

inline constexpr const char* kPinTriesFile = "pin-tries";

/// None if there is no such file, or one that nobody can read: a damaged file locks nobody out.
[[nodiscard]] PinTries readPinTries(const std::filesystem::path& folder);

/// Whole or not at all, and on the disk when it returns.
[[nodiscard]] ledger::Result<void> writePinTries(const std::filesystem::path& folder, const PinTries& tries);

} // namespace holdfast::kiosk::shop
