#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

/// PINs of those who sign. Only their Argon2id string (RFC 9106, as libsodium writes it) is ever kept.
namespace holdfast::kiosk::shop {

enum class PinFault {
    tooShort,  ///< under kFewestDigits
    tooLong,   ///< over kMostDigits
    notDigits, ///< something else than 0 to 9
    allEqual,  ///< 0000
    sequence,  ///< 1234, 4321, 7890, 0987: each digit one more, or one less, than the one before; 0 follows 9
};

inline constexpr std::size_t kFewestDigits = 4;
inline constexpr std::size_t kMostDigits = 12;

/// The first fault in the order of PinFault, but other signs before lengths; nothing: it may be set.
[[nodiscard]] std::optional<PinFault> pinFault(std::string_view pin);

/// With a fresh salt and libsodium's INTERACTIVE limits (2 passes over 64 MiB). Nothing if that memory is not there.
/// Takes about a tenth of a second or more.
[[nodiscard]] std::optional<std::string> hashPin(std::string_view pin);

using HashPin = std::function<std::optional<std::string>(std::string_view pin)>;
using VerifyPin = std::function<bool(const std::string& hash, std::string_view pin)>;

/// False for a wrong PIN, an empty or damaged hash, and if the memory is not there.
[[nodiscard]] bool verifyPin(const std::string& hash, std::string_view pin);

} // namespace holdfast::kiosk::shop
