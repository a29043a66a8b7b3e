#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::kiosk::ledger {

using Bytes = std::vector<std::uint8_t>;

/// SHA-256 (FIPS 180-4).
using Digest = std::array<std::uint8_t, 32>;

[[nodiscard]] Digest sha256(std::span<const std::uint8_t> bytes);
[[nodiscard]] Digest sha256(std::string_view text);

/// 64 lower-case hexadecimal digits.
[[nodiscard]] std::string toHex(const Digest& digest);
/// Exactly 64 hexadecimal digits of either case; nothing otherwise.
[[nodiscard]] std::optional<Digest> fromHex(std::string_view text);

/// SHA-256 fed piece by piece. Copyable, so that a prefix can be hashed once.
class Hasher {
public:
    Hasher();
    void add(std::span<const std::uint8_t> bytes);
    void add(std::string_view text);
    /// Eight bytes, little-endian, two's complement.
    void addInteger(std::int64_t value);
    /// The length as addInteger, then the bytes.
    void addPrefixed(std::string_view text);
    void addPrefixed(std::span<const std::uint8_t> bytes);
    /// The digest of all that was added; the hasher may not be used afterwards.
    [[nodiscard]] Digest finish();

private:
    alignas(16) std::array<std::uint8_t, 128> m_state{}; ///< room for libsodium's state (104 bytes)
};

} // namespace holdfast::kiosk::ledger
