#include "drivers/protocol/wedge_framer.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

namespace {

/// Types each sign `apart` after the one before; what was let through meanwhile.
std::string type(WedgeFramer& framer, const std::string& text, MonotonicTime& at, MonotonicTime apart) {
    std::string released;
    for (const char sign : text) {
        at += apart;
        const WedgeStep step = framer.key(std::string(1, sign), at);
        CHECK(step.swallow);
        released += step.released;
    }
    return released;
}

} // namespace

TEST_CASE("keys under 30 ms apart ended by Enter are a scan", "[drivers][wedge]") {
    // contracts.md, "Attachment": keys under 30 ms apart ended by Enter.
    WedgeFramer framer;
    MonotonicTime at = 1s;
    CHECK(type(framer, "R00A1", at, 29999us).empty());
    const WedgeStep step = framer.enter(at + 29999us);
    CHECK(step.scan == "R00A1");
    CHECK(step.released.empty());
    CHECK(step.swallow);
    CHECK_FALSE(framer.isHolding());
}

TEST_CASE("what a person types comes through whole and in order", "[drivers][wedge]") {
    WedgeFramer framer;
    MonotonicTime at = 1s;
    std::string released = type(framer, "hello", at, 30ms); // exactly 30 ms apart is a person
    const WedgeStep step = framer.enter(at + 30ms);
    CHECK_FALSE(step.scan);
    CHECK_FALSE(step.swallow);
    CHECK(released + step.released == "hello");
}

TEST_CASE("a person's last key is let through when the pace has passed", "[drivers][wedge]") {
    WedgeFramer framer;
    CHECK(framer.key("7", 1s).swallow);
    CHECK(framer.expire(1s + 29ms).released.empty());
    CHECK(framer.expire(1s + 30ms).released == "7");
    CHECK(framer.expire(2s).released.empty());
}

TEST_CASE("a scan right behind a person's key leaves that key alone", "[drivers][wedge]") {
    WedgeFramer framer;
    CHECK(framer.key("x", 1s).released.empty());
    MonotonicTime at = 1s + 100ms;
    CHECK(type(framer, "W0C3", at, 5ms) == "x");
    CHECK(framer.enter(at + 5ms).scan == "W0C3");
}

TEST_CASE("one or two keys and a quick Enter are a person", "[drivers][wedge]") {
    WedgeFramer framer;
    CHECK(framer.key("1", 1s).swallow);
    const WedgeStep step = framer.enter(1s + 10ms);
    CHECK_FALSE(step.scan);
    CHECK(step.released == "1");
}

TEST_CASE("letters beyond ASCII survive a scan, control characters refuse it", "[drivers][wedge]") {
    WedgeFramer framer;
    CHECK(framer.key("\xC3\xA4", 1s).swallow);
    CHECK(framer.key("b", 1s + 1ms).swallow);
    CHECK(framer.key("c", 1s + 2ms).swallow);
    CHECK(framer.enter(1s + 3ms).scan == "\xC3\xA4"
                                         "bc");
    MonotonicTime at = 2s;
    CHECK(type(framer,
               "a\x1d"
               "c",
               at, 1ms)
              .empty());
    CHECK(framer.enter(at + 1ms).fault == ScanFault::controlSign);
}

TEST_CASE("an endless scan is dropped and named, not kept", "[drivers][wedge]") {
    WedgeFramer framer;
    MonotonicTime at = 1s;
    CHECK(type(framer, std::string(10'001, 'a'), at, 1ms).empty());
    const WedgeStep step = framer.enter(at + 1ms);
    CHECK(step.fault == ScanFault::tooLong);
    CHECK(step.released.empty());
    CHECK(type(framer, "R00A1", at, 1ms).empty());
    CHECK(framer.enter(at + 1ms).scan == "R00A1");
}

TEST_CASE("the text of a scan is checked", "[drivers][scan]") {
    CHECK(checkScan("  R00A1 \r") == std::string{"R00A1"});
    CHECK(checkScan(" \r\n") == tl::unexpected(ScanFault::empty));
    CHECK(checkScan(std::string(10'000, 'a')) == std::string(10'000, 'a'));
    CHECK(checkScan(std::string(10'001, 'a')) == tl::unexpected(ScanFault::tooLong));
    CHECK(checkScan("a\x1b[2J") == tl::unexpected(ScanFault::controlSign));
    CHECK(checkScan(std::string("a\0b", 3)) == tl::unexpected(ScanFault::controlSign));
    CHECK(checkScan("a\xC2\x85"
                    "b") == tl::unexpected(ScanFault::controlSign)); // U+0085, a C1 control
    // RFC 3629, sections 3 and 10: overlong NUL, a surrogate, beyond U+10FFFF, a lone continuation, a cut sequence.
    for (const std::string text : {"\xC0\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80", "\xE2\x82"}) {
        CHECK(checkScan("a" + text) == tl::unexpected(ScanFault::notUtf8));
    }
    CHECK(checkScan("\xE2\x82\xAC \xF0\x9F\x98\x80") == std::string{"\xE2\x82\xAC \xF0\x9F\x98\x80"});
}
