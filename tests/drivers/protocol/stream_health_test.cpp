#include "drivers/protocol/stream_health.hpp"

#include <catch2/catch.hpp>

#include <random>
#include <string>

using namespace holdfast::drivers;

TEST_CASE("random bytes look like a wrong speed, text does not", "[drivers][health]") {
    std::mt19937 random{7};
    for (int trial = 0; trial < 200; ++trial) {
        StreamHealth health;
        std::string bytes(64, '\0');
        for (char& byte : bytes) {
            byte = static_cast<char>(random() & 0xFFU);
        }
        health.bytes(bytes);
        REQUIRE(health.look() == StreamLook::noise);
    }
    StreamHealth health;
    health.bytes("+0160.4 C SN004217\r\n+0160.4 C SN004217\r\n");
    CHECK(health.look() == StreamLook::text);
}

TEST_CASE("a few bytes say nothing", "[drivers][health]") {
    StreamHealth health;
    health.bytes("\x80\x80\x80");
    CHECK(health.look() == StreamLook::quiet);
}

TEST_CASE("five bad lines in a row are garbled, one good line ends that", "[drivers][health]") {
    StreamHealth health;
    for (int i = 0; i < 5; ++i) {
        CHECK(health.look() != StreamLook::garbled);
        health.bytes("MODE?? 12 34\r\n");
        health.badLine(ProtocolFault::notANumber);
    }
    CHECK(health.look() == StreamLook::garbled);
    health.bytes("+0160.4 C SN1\r\n");
    health.goodLine();
    CHECK(health.look() == StreamLook::text);
}

TEST_CASE("lines in the other unit are named as such", "[drivers][health]") {
    StreamHealth health;
    for (int i = 0; i < 5; ++i) {
        health.bytes("+0320.0 F SN1\r\n");
        health.badLine(ProtocolFault::otherUnit);
    }
    CHECK(health.look() == StreamLook::otherUnit);
}

TEST_CASE("text without any line is garbled after a while", "[drivers][health]") {
    StreamHealth health;
    health.bytes(std::string(511, 'x'));
    CHECK(health.look() == StreamLook::text);
    health.bytes("x");
    CHECK(health.look() == StreamLook::garbled);
}
