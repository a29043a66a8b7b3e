#include "kiosk/shop/keeping/pin.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop;

TEST_CASE("a PIN is four to twelve digits, neither all the same nor a plain sequence", "[keeping]") {
    CHECK_FALSE(pinFault("1397"));
    CHECK_FALSE(pinFault("739164820571"));
    CHECK(pinFault("") == PinFault::tooShort);
    CHECK(pinFault("139") == PinFault::tooShort);
    CHECK(pinFault("7391648205713") == PinFault::tooLong);
    CHECK(pinFault("13a7") == PinFault::notDigits);
    CHECK(pinFault("1397 ") == PinFault::notDigits);
    CHECK(pinFault("\xD9\xA1\xD9\xA3\xD9\xA9\xD9\xA7") == PinFault::notDigits); // Arabic-Indic digits
    for (const auto* plain : {"0000", "777777"}) {
        CHECK(pinFault(plain) == PinFault::allEqual);
    }
    for (const auto* plain : {"1234", "4321", "0123", "7890", "0987", "123456789012"}) {
        INFO(plain);
        CHECK(pinFault(plain) == PinFault::sequence);
    }
    CHECK_FALSE(pinFault("1235"));
    CHECK_FALSE(pinFault("1357"));
}

TEST_CASE("a hash is Argon2id with its own salt, and only its PIN fits it", "[keeping]") {
    const auto hash = hashPin("1397");
    REQUIRE(hash);
    // RFC 9106: version 0x13; 64 MiB, 2 passes, 1 lane are libsodium 1.0.18's INTERACTIVE limits.
    CHECK(hash->rfind("$argon2id$v=19$m=65536,t=2,p=1$", 0) == 0);
    CHECK(hashPin("1397") != hash);
    CHECK(verifyPin(*hash, "1397"));
    CHECK_FALSE(verifyPin(*hash, "1398"));
    CHECK_FALSE(verifyPin(*hash, ""));
}

TEST_CASE("no damaged hash lets anybody in", "[keeping]") {
    const auto hash = *hashPin("1397");
    CHECK_FALSE(verifyPin("", ""));
    CHECK_FALSE(verifyPin("", "1397"));
    CHECK_FALSE(verifyPin("1397", "1397"));
    CHECK_FALSE(verifyPin(hash.substr(0, hash.size() - 1), "1397"));
    CHECK_FALSE(verifyPin(hash + std::string(10'000, 'A'), "1397"));
    CHECK_FALSE(verifyPin("$argon2id$v=19$m=4294967295,t=1,p=1$AAAA$AAAA", "1397"));
}
