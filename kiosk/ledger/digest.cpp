#include "kiosk/ledger/digest.hpp"

#include <new>
#include <sodium.h>
#include <type_traits>

namespace holdfast::kiosk::ledger {

namespace {

using State = crypto_hash_sha256_state;
static_assert(sizeof(State) <= 128 && alignof(State) <= 16 && std::is_trivially_copyable_v<State>);

State& stateIn(std::array<std::uint8_t, 128>& room) {
    return *std::launder(reinterpret_cast<State*>(room.data()));
}

std::span<const std::uint8_t> bytesOf(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

int valueOfDigit(char digit) {
    if (digit >= '0' && digit <= '9') {
        return digit - '0';
    }
    if (digit >= 'a' && digit <= 'f') {
        return digit - 'a' + 10;
    }
    if (digit >= 'A' && digit <= 'F') {
        return digit - 'A' + 10;
    }
    return -1;
}

} // namespace

Hasher::Hasher() {
    new (m_state.data()) State;
    crypto_hash_sha256_init(&stateIn(m_state));
}

void Hasher::add(std::span<const std::uint8_t> bytes) {
    crypto_hash_sha256_update(&stateIn(m_state), bytes.data(), bytes.size());
}

void Hasher::add(std::string_view text) {
    add(bytesOf(text));
}

void Hasher::addInteger(std::int64_t value) {
    std::array<std::uint8_t, 8> bytes{};
    auto rest = static_cast<std::uint64_t>(value);
    for (auto& byte : bytes) {
        byte = static_cast<std::uint8_t>(rest & 0xff);
        rest >>= 8;
    }
    add(bytes);
}

void Hasher::addPrefixed(std::string_view text) {
    addPrefixed(bytesOf(text));
}

void Hasher::addPrefixed(std::span<const std::uint8_t> bytes) {
    addInteger(static_cast<std::int64_t>(bytes.size()));
    add(bytes);
}

Digest Hasher::finish() {
    Digest digest{};
    crypto_hash_sha256_final(&stateIn(m_state), digest.data());
    return digest;
}

Digest sha256(std::span<const std::uint8_t> bytes) {
    Digest digest{};
    crypto_hash_sha256(digest.data(), bytes.data(), bytes.size());
    return digest;
}

Digest sha256(std::string_view text) {
    return sha256(bytesOf(text));
}

std::string toHex(const Digest& digest) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    text.reserve(2 * digest.size());
    for (const std::uint8_t byte : digest) {
        text += digits[byte >> 4];
        text += digits[byte & 0xf];
    }
    return text;
}

std::optional<Digest> fromHex(std::string_view text) {
    Digest digest{};
    if (text.size() != 2 * digest.size()) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < digest.size(); ++i) {
        const int high = valueOfDigit(text[2 * i]);
        const int low = valueOfDigit(text[2 * i + 1]);
        if (high < 0 || low < 0) {
            return std::nullopt;
        }
        digest[i] = static_cast<std::uint8_t>(high * 16 + low);
    }
    return digest;
}

} // namespace holdfast::kiosk::ledger
