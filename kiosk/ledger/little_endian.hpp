#pragma once

#include "kiosk/ledger/digest.hpp"

#include <cstddef>
#include <cstdint>
#include <span>

namespace holdfast::kiosk::ledger {

/// Appends the `Count` low bytes of the value, lowest first.
template <std::size_t Count>
void putLittle(Bytes& bytes, std::uint64_t value) {
    for (std::size_t i = 0; i < Count; ++i) {
        bytes.push_back(static_cast<std::uint8_t>((value >> (8 * i)) & 0xff));
    }
}

/// Reads `Count` bytes at `at`; the caller has looked that they are there.
template <std::size_t Count>
[[nodiscard]] std::uint64_t getLittle(std::span<const std::uint8_t> bytes, std::size_t at) {
    std::uint64_t value = 0;
    for (std::size_t i = 0; i < Count; ++i) {
        value |= static_cast<std::uint64_t>(bytes[at + i]) << (8 * i);
    }
    return value;
}

} // namespace holdfast::kiosk::ledger
