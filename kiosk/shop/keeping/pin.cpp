#include "kiosk/shop/keeping/pin.hpp"

#include <sodium.h>

#include <algorithm>
#include <array>

namespace holdfast::kiosk::shop {
namespace {

constexpr int kDigits = 10;

bool stepsBy(std::string_view pin, int step) {
    for (std::size_t i = 1; i < pin.size(); ++i) {
        if ((pin[i - 1] - '0' + step + kDigits) % kDigits != pin[i] - '0') {
            return false;
        }
    }
    return true;
}

bool ready() {
    static const bool kReady = sodium_init() >= 0;
    return kReady;
}

} // namespace

std::optional<PinFault> pinFault(std::string_view pin) {
    if (!std::all_of(pin.begin(), pin.end(), [](char sign) { return sign >= '0' && sign <= '9'; })) {
        return PinFault::notDigits;
    }
    if (pin.size() < kFewestDigits) {
        return PinFault::tooShort;
    }
    if (pin.size() > kMostDigits) {
        return PinFault::tooLong;
    }
    if (stepsBy(pin, 0)) {
        return PinFault::allEqual;
    }
    return stepsBy(pin, 1) || stepsBy(pin, -1) ? std::optional{PinFault::sequence} : std::nullopt;
}

std::optional<std::string> hashPin(std::string_view pin) {
    std::array<char, crypto_pwhash_STRBYTES> out{};
    if (!ready() || crypto_pwhash_str_alg(out.data(), pin.data(), pin.size(), crypto_pwhash_OPSLIMIT_INTERACTIVE,
                                          crypto_pwhash_MEMLIMIT_INTERACTIVE, crypto_pwhash_ALG_ARGON2ID13) != 0) {
        return std::nullopt;
    }
    return std::string{out.data()};
}

bool verifyPin(const std::string& hash, std::string_view pin) {
    // A longer string is none of ours; libsodium itself reads up to its zero.
    return !hash.empty() && hash.size() < crypto_pwhash_STRBYTES && ready() &&
           crypto_pwhash_str_verify(hash.c_str(), pin.data(), pin.size()) == 0;
}

} // namespace holdfast::kiosk::shop
