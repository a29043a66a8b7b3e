#pragma once

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <string_view>

/// The codes on tickets, cards and labels (house.md, "Ids").
namespace holdfast::drivers {

/// What a code stands for; the enumerator's value is the code's first sign.
enum class TicketKind : char {
    run = 'R',
    window = 'W',
    bucket = 'K',
    instrument = 'N',
    action = 'A',
    person = 'P',
    print = 'T',
    bin = 'L',
};

/// What a code says: its kind and the number behind it. Leading zeros carry no meaning.
struct TicketCode {
    TicketKind kind = TicketKind::run;
    std::uint64_t number = 0;
    bool operator==(const TicketCode&) const = default;
};

enum class TicketFault {
    badSign,     ///< a sign that no code contains
    badCheck,    ///< misread or mistyped: the check sign does not fit
    tooShort,    ///< fewer than three signs
    tooLong,     ///< more than fifteen signs, or a number above 64 bits
    unknownKind, ///< well formed, but of no kind that is known here
};

/// The 31 signs, in order of value: digits and capitals without B I O S Z, which are mistaken for 8 1 0 5 2.
inline constexpr std::string_view kTicketSigns = "0123456789ACDEFGHJKLMNPQRTUVWXY";

/// The code of `number`: kind, the number in base 31 with at least `width` signs (never cut short), check sign.
///
/// The check sign makes Σ w·v ≡ 0 (mod 31), v a sign's value and w its place counted from the right (check sign 1).
/// Since 31 is prime and the places of up to fifteen signs are distinct and not 0 modulo 31, the sum changes with every
/// single substitution and with every exchange of two different signs, neighbours or not (the ISBN-10 scheme; J.
/// Verhoeff, Error Detecting Decimal Codes, 1969, weighted codes modulo a prime).
[[nodiscard]] std::string encode(TicketKind kind, std::uint64_t number, int width);

/// Reads a code as scanned or typed: small letters count as capitals, blanks at either end are dropped.
[[nodiscard]] tl::expected<TicketCode, TicketFault> decode(std::string_view text);

} // namespace holdfast::drivers
