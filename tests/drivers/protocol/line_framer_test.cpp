#include "drivers/protocol/line_framer.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace holdfast::drivers;

namespace {

std::vector<std::string> texts(const std::vector<FramedLine>& lines) {
    std::vector<std::string> found;
    for (const FramedLine& line : lines) {
        found.push_back(line ? *line : "(too long)");
    }
    return found;
}

using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("a frame split across two reads yields one line", "[drivers][framing]") {
    LineFramer framer{"\r\n", 40};
    CHECK(texts(framer.feed("+0160")).empty());
    CHECK(framer.pendingBytes() == 5);
    CHECK(texts(framer.feed(".4 C SN1\r")).empty());
    CHECK(texts(framer.feed("\n+01")) == Texts{"+0160.4 C SN1"});
}

TEST_CASE("lines come out the same however the bytes are cut", "[drivers][framing]") {
    const std::string stream = "+0026.90 G U\r\n+0456.51 G U\r\n\r\n" + std::string(90, 'x') + "\r\n+1.0 G S\r\n";
    LineFramer whole{"\r\n", 40};
    const Texts expected = texts(whole.feed(stream));
    REQUIRE(expected == Texts{"+0026.90 G U", "+0456.51 G U", "(too long)", "+1.0 G S"});
    for (std::size_t size = 1; size < stream.size(); ++size) {
        LineFramer framer{"\r\n", 40};
        Texts found;
        for (std::size_t at = 0; at < stream.size(); at += size) {
            const Texts part = texts(framer.feed(std::string_view{stream}.substr(at, size)));
            found.insert(found.end(), part.begin(), part.end());
        }
        REQUIRE(found == expected);
        REQUIRE(framer.droppedBytes() == 91); // its CR too
    }
}

TEST_CASE("the line under way when a port is opened is never read", "[drivers][framing]") {
    LineFramer framer{"\r\n", 40};
    framer.reset(true);
    // the end of +0160.4 read from its middle would be a whole and wrong number
    CHECK(texts(framer.feed("60.4 C SN1\r\n+0160.5 C SN1\r\n")) == Texts{"+0160.5 C SN1"});
}

TEST_CASE("a line of just the longest length passes, with either line end", "[drivers][framing]") {
    for (const std::string end : {"\r\n", "\n"}) {
        LineFramer framer{"\r\n", 8};
        CHECK(texts(framer.feed("12345678" + end)) == Texts{"12345678"});
        CHECK(texts(framer.feed("123456789" + end)) == Texts{"(too long)"});
    }
}

TEST_CASE("a flood without a line end holds no memory and is counted", "[drivers][framing]") {
    LineFramer framer{"\n", 80};
    for (int i = 0; i < 1000; ++i) {
        CHECK(framer.feed(std::string(1000, 'z')).empty());
        REQUIRE(framer.pendingBytes() <= 81);
    }
    CHECK(framer.droppedBytes() == 1'000'000);
    CHECK(texts(framer.feed("\nok\n")) == Texts{"(too long)", "ok"});
}

TEST_CASE("without a terminator any line end ends a scan", "[drivers][framing]") {
    LineFramer framer{"", 80};
    CHECK(texts(framer.feed("R00A\rR00C\nR00D\r\n")) == Texts{"R00A", "R00C", "R00D"});
}
