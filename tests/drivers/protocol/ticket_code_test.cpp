#include "drivers/protocol/ticket_code.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <limits>
#include <set>
#include <string>
#include <vector>

using namespace holdfast::drivers;

namespace {

// house.md, "Ids": R run, W window, K bucket, N instrument, A action, P person, T print, L bin.
constexpr std::array kKinds = {TicketKind::run,    TicketKind::window, TicketKind::bucket, TicketKind::instrument,
                               TicketKind::action, TicketKind::person, TicketKind::print,  TicketKind::bin};

std::vector<std::string> someCodes() {
    std::vector<std::string> codes;
    for (const TicketKind kind : kKinds) {
        for (const std::uint64_t number : {0ULL, 1ULL, 30ULL, 31ULL, 4711ULL, 923520ULL, 28629150ULL}) {
            codes.push_back(encode(kind, number, 5));
        }
        codes.push_back(encode(kind, std::numeric_limits<std::uint64_t>::max(), 5));
    }
    return codes;
}

} // namespace

TEST_CASE("the 31 signs are digits and capitals without B I O S Z", "[drivers][ticket]") {
    // house.md, "Ids".
    CHECK(kTicketSigns.size() == 31);
    CHECK(std::set<char>(kTicketSigns.begin(), kTicketSigns.end()).size() == 31);
    CHECK(kTicketSigns.find_first_of("BIOSZ") == std::string_view::npos);
}

TEST_CASE("a code reads back as what it was made from", "[drivers][ticket]") {
    for (const TicketKind kind : kKinds) {
        for (std::uint64_t number = 0; number < 40'000; number += 7) {
            const std::string code = encode(kind, number, 4);
            REQUIRE(code.front() == static_cast<char>(kind));
            REQUIRE(decode(code) == TicketCode{kind, number});
        }
    }
}

TEST_CASE("every substitution of one sign is caught", "[drivers][ticket]") {
    std::size_t tried = 0;
    for (const std::string& code : someCodes()) {
        for (std::size_t place = 0; place < code.size(); ++place) {
            for (const char sign : kTicketSigns) {
                if (sign == code[place]) {
                    continue;
                }
                std::string wrong = code;
                wrong[place] = sign;
                REQUIRE(decode(wrong) == tl::unexpected(TicketFault::badCheck));
                ++tried;
            }
        }
    }
    CHECK(tried > 10'000);
}

TEST_CASE("every exchange of two different signs is caught, neighbours or not", "[drivers][ticket]") {
    std::size_t tried = 0;
    for (std::uint64_t number = 0; number < 100'000; number += 13) {
        const std::string code = encode(TicketKind::run, number, 6);
        for (std::size_t a = 0; a < code.size(); ++a) {
            for (std::size_t b = a + 1; b < code.size(); ++b) {
                std::string wrong = code;
                std::swap(wrong[a], wrong[b]);
                if (wrong != code) {
                    REQUIRE(decode(wrong) == tl::unexpected(TicketFault::badCheck));
                    ++tried;
                }
            }
        }
    }
    CHECK(tried > 100'000);
}

TEST_CASE("small letters and blanks at the ends do not matter", "[drivers][ticket]") {
    const std::string code = encode(TicketKind::bucket, 90210, 5);
    std::string small = code;
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char sign) { return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign; });
    CHECK(decode("  " + small + "\t\r\n") == TicketCode{TicketKind::bucket, 90210});
}

TEST_CASE("a width asks for leading zeros and never cuts a number", "[drivers][ticket]") {
    CHECK(encode(TicketKind::run, 1, 5).size() == 7);
    CHECK(encode(TicketKind::run, 923521, 2).size() == 7); // 31^4 needs five signs
    CHECK(decode(encode(TicketKind::run, 923521, 2)) == TicketCode{TicketKind::run, 923521});
    CHECK(decode(encode(TicketKind::bin, 3, -4)) == TicketCode{TicketKind::bin, 3});
    CHECK(encode(TicketKind::bin, 3, 1000).size() == 15);
}

TEST_CASE("what is no code is refused with a name", "[drivers][ticket]") {
    CHECK(decode("") == tl::unexpected(TicketFault::tooShort));
    CHECK(decode("  ") == tl::unexpected(TicketFault::tooShort));
    CHECK(decode("R0") == tl::unexpected(TicketFault::tooShort));
    CHECK(decode("R00-01") == tl::unexpected(TicketFault::badSign));
    CHECK(decode("ROOO1") == tl::unexpected(TicketFault::badSign)); // O is not 0
    CHECK(decode("R\xC3\xA4"
                 "01") == tl::unexpected(TicketFault::badSign));
    CHECK(decode(std::string(16, '0')) == tl::unexpected(TicketFault::tooLong));
    CHECK(decode(std::string(100'000, 'R')) == tl::unexpected(TicketFault::tooLong));
    CHECK(decode("0000") == tl::unexpected(TicketFault::unknownKind)); // its check sign fits, its kind does not
}

TEST_CASE("a number above 64 bits is refused though its check sign fits", "[drivers][ticket]") {
    std::string front = "R" + std::string(13, 'Y');
    std::size_t refused = 0;
    for (const char check : kTicketSigns) {
        const auto code = decode(front + check);
        REQUIRE_FALSE(code);
        refused += code.error() == TicketFault::tooLong ? 1 : 0;
    }
    CHECK(refused == 1); // the one with the right check sign
}
