#include "kiosk/ledger/uuid.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::ledger;

namespace {

// RFC 9562 appendix A.6: unix_ts_ms 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
constexpr std::uint64_t rfcTime = 0x017F22E279B0;
constexpr UuidRandom rfcRandom{0x0C, 0xC3, 0x18, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F};

UuidRandom allOnes() {
    UuidRandom random;
    random.fill(0xff);
    return random;
}

} // namespace

TEST_CASE("the id of RFC 9562 appendix A.6 comes out", "[ledger][uuid]") {
    CHECK(uuid7(rfcTime, rfcRandom) == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
}

// RFC 9562 section 5.7: 48 bits of time, version 0111, variant 10, whatever the random bits are.
TEST_CASE("version and variant stand in every id", "[ledger][uuid]") {
    CHECK(uuid7(0xffff'ffff'ffff, allOnes()) == "ffffffff-ffff-7fff-bfff-ffffffffffff");
    CHECK(uuid7(0, UuidRandom{}) == "00000000-0000-7000-8000-000000000000");
    CHECK(isUuid7(uuid7(0, UuidRandom{})));
    CHECK(isUuid7(uuid7(~0ULL, allOnes())));
}

TEST_CASE("what is no id of version 7 is told apart", "[ledger][uuid]") {
    CHECK_FALSE(isUuid7(""));
    CHECK_FALSE(isUuid7("017f22e2-79b0-4cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(isUuid7("017f22e2-79b0-7cc3-c8c4-dc0c0c07398f"));
    CHECK_FALSE(isUuid7("017F22E2-79B0-7CC3-98C4-DC0C0C07398F"));
    CHECK_FALSE(isUuid7("017f22e2079b0-7cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(isUuid7("017f22e2-79b0-7cc3-98c4-dc0c0c07398"));
}

TEST_CASE("ids rise within a millisecond and when the clock is set back", "[ledger][uuid]") {
    UuidSequence sequence;
    std::string before = sequence.next(rfcTime, rfcRandom);
    CHECK(before == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    const std::string sameMoment = sequence.next(rfcTime, UuidRandom{});
    CHECK(sameMoment == "017f22e2-79b0-7cc3-98c4-dc0c0c073990");
    const std::string clockSetBack = sequence.next(5, UuidRandom{});
    CHECK(clockSetBack == "017f22e2-79b0-7cc3-98c4-dc0c0c073991");
    const std::string later = sequence.next(rfcTime + 1, UuidRandom{});
    CHECK(later > clockSetBack);
    CHECK(later == uuid7(rfcTime + 1, UuidRandom{}));
}

TEST_CASE("when the random bits of a millisecond are used up the next one is taken", "[ledger][uuid]") {
    UuidSequence sequence;
    const std::string last = sequence.next(rfcTime, allOnes());
    const std::string next = sequence.next(rfcTime, allOnes());
    CHECK(next > last);
    CHECK(next == uuid7(rfcTime + 1, UuidRandom{}));
}

TEST_CASE("counting up carries across the variant's bits", "[ledger][uuid]") {
    UuidRandom random{};
    for (std::size_t i = 2; i < random.size(); ++i) {
        random[i] = 0xff;
    }
    UuidSequence sequence;
    const std::string last = sequence.next(1, random);
    CHECK(last == "00000000-0001-7000-bfff-ffffffffffff");
    CHECK(sequence.next(1, random) == "00000000-0001-7001-8000-000000000000");
}
