#include "kiosk/ledger/trace_codec.hpp"

#include "tests/kiosk/ledger/fixture.hpp"

#include <limits>
#include <random>

using namespace holdfast::kiosk::ledger;
using test::outcome;

namespace {

/// A ride at ten samples a second: a rise to 165 °C in steps of 0.1 °C, and a fall.
std::vector<TracePoint> ride(std::size_t count) {
    std::mt19937_64 chance{20240229};
    std::uniform_int_distribution<int> jitter{-900, 900};
    std::vector<TracePoint> points;
    for (std::size_t i = 0; i < count; ++i) {
        const auto step = static_cast<std::int64_t>(i);
        const auto half = static_cast<std::int64_t>(count / 2);
        const std::int64_t counts = 250 + 1400 * (half - std::abs(step - half)) / half;
        points.push_back({1'000'000 + step * 100'000 + jitter(chance), counts, static_cast<std::uint8_t>(i % 97 == 0)});
    }
    return points;
}

} // namespace

TEST_CASE("a trace reads back as it was, whatever stands in it", "[ledger][trace]") {
    constexpr auto least = std::numeric_limits<std::int64_t>::min();
    constexpr auto most = std::numeric_limits<std::int64_t>::max();
    const std::vector<std::vector<TracePoint>> traces{
        {},
        {{0, 0, 0}},
        {{least, most, 255}, {most, least, 0}, {0, -1, 7}, {0, -1, 7}, {-5, 1, 1}, {least, least, 128}},
        ride(5000),
    };
    for (const auto& points : traces) {
        CHECK(test::must(decodeTrace(encodeTrace(points))) == points);
    }
}

TEST_CASE("random traces read back as they were", "[ledger][trace]") {
    std::mt19937_64 chance{7};
    for (int round = 0; round < 200; ++round) {
        std::vector<TracePoint> points(chance() % 50);
        for (TracePoint& point : points) {
            point = {static_cast<std::int64_t>(chance() >> (chance() % 64)),
                     static_cast<std::int64_t>(0 - (chance() >> (chance() % 64))), static_cast<std::uint8_t>(chance())};
        }
        REQUIRE(test::must(decodeTrace(encodeTrace(points))) == points);
    }
}

// Common practice: a four-minute ride at ten a second is 2400 samples of 17 bytes.
TEST_CASE("a ride takes much less room than its samples", "[ledger][trace]") {
    const auto points = ride(2400);
    CHECK(encodeTrace(points).size() < 2400 * 17 / 6);
}

TEST_CASE("a trace cut anywhere is damaged, never shorter", "[ledger][trace]") {
    const Bytes whole = encodeTrace(ride(40));
    for (std::size_t length = 0; length < whole.size(); ++length) {
        REQUIRE(outcome(decodeTrace(std::span{whole}.first(length))) == "damaged");
    }
    Bytes longer = whole;
    longer.push_back(0);
    CHECK(outcome(decodeTrace(longer)) == "damaged");
}

TEST_CASE("a trace with any byte altered does not read back as another trace", "[ledger][trace]") {
    const auto points = ride(40);
    const Bytes whole = encodeTrace(points);
    for (std::size_t at = 0; at < whole.size(); ++at) {
        for (const int bit : {0, 3, 7}) {
            Bytes altered = whole;
            altered[at] = static_cast<std::uint8_t>(altered[at] ^ (1U << static_cast<unsigned>(bit)));
            const auto read = decodeTrace(altered);
            REQUIRE((!read || *read == points)); // some bits of a zstd header mean nothing
        }
    }
}

TEST_CASE("a trace that claims more points than it has, or than may be, is refused", "[ledger][trace]") {
    Bytes more = encodeTrace(ride(40));
    more[5] = 41; // number of points, lowest byte
    CHECK(outcome(decodeTrace(more)) == "damaged");
    Bytes fewer = encodeTrace(ride(40));
    fewer[5] = 39;
    CHECK(outcome(decodeTrace(fewer)) == "damaged");
    Bytes huge = encodeTrace({});
    huge[5] = huge[6] = huge[7] = huge[8] = 0xff;
    CHECK(outcome(decodeTrace(huge)) == "damaged");
}

TEST_CASE("a trace of a later format says so", "[ledger][trace]") {
    Bytes later = encodeTrace(ride(3));
    later[4] = 2;
    CHECK(outcome(decodeTrace(later)) == "newerBook");
    later[4] = 0;
    CHECK(outcome(decodeTrace(later)) == "damaged");
}

TEST_CASE("random bytes behind the header are damaged", "[ledger][trace]") {
    std::mt19937_64 chance{99};
    for (int round = 0; round < 2000; ++round) {
        Bytes bytes{'H', 'F', 'T', 'R', 1, 10, 0, 0, 0, 0x28, 0xb5, 0x2f, 0xfd};
        for (std::size_t i = chance() % 60; i > 0; --i) {
            bytes.push_back(static_cast<std::uint8_t>(chance()));
        }
        REQUIRE(outcome(decodeTrace(bytes)) == "damaged");
    }
}
