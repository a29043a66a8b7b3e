#include "drivers/link/address.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace holdfast::drivers;

TEST_CASE("an address is a USB identity, else a socket, else a path", "[drivers][address]") {
    // contracts.md, "Attachment"
    const auto usb = addressFromText("usb:0403:6001:A50285BI");
    REQUIRE(usb);
    CHECK(usb->usb == UsbIdentity{0x0403, 0x6001, "A50285BI"});
    CHECK(addressFromText("usb:0403:6001")->usb == UsbIdentity{0x0403, 0x6001, ""});
    CHECK(addressFromText("socket:1-1.4")->topology == "1-1.4");
    CHECK(addressFromText("/tmp/probe") == Address::atPath("/tmp/probe"));
}

TEST_CASE("an address reads back from its text", "[drivers][address]") {
    for (const std::string text : {"usb:0403:6001:A50285BI", "usb:10c4:ea60", "socket:1-1.4", "/dev/serial/x"}) {
        CHECK(toText(*addressFromText(text)) == text);
    }
}

TEST_CASE("text that is no address is none", "[drivers][address]") {
    for (const std::string text : {"", "usb:", "usb:0403", "usb:0403:", "usb:xyz:6001", "usb:10403:6001", "socket:"}) {
        INFO(text);
        CHECK_FALSE(addressFromText(text));
    }
}
