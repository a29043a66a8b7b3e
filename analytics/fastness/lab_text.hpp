#pragma once

#include "analytics/fastness/colour.hpp"

#include <string_view>
#include <variant>

/// A colour as a person or an instrument writes it in one line.
namespace holdfast::analytics {

enum class LabTextFault {
    empty,
    notThreeNumbers, ///< without letters: more or fewer than three numbers
    letterMissing,   ///< with letters: one of L, a, b has no number
    letterTwice,
    notANumber,
    commasUnclear ///< "52,31,4,2,−3,0": the comma could part numbers or be the decimal sign
};

/// Why a line is no colour: it cannot be read, or it reads as a colour no surface has.
using LabLineFault = std::variant<LabTextFault, ColourFault>;

/// Three numbers in the order L*, a*, b*, or numbers each behind its letter in any order: "52.31 4.20 -3.05",
/// "L*=52,31; a*=4,20; b*=-3,05", "a 4.2, b -3.05, L 52.31, C 5.2, h 324". Letters are L, a, b, great or small, also
/// with a star; with them, numbers behind other words (C, h, dE, X …) are passed over. Without them words are passed
/// over. Numbers are parted by spaces, tabs, semicolons or commas; no exponents. A comma between two digits is the
/// decimal sign if the line has no decimal point and either has letters or parts its numbers by something else; else it
/// parts.
[[nodiscard]] tl::expected<Lab, LabLineFault> labFromText(std::string_view line);

} // namespace holdfast::analytics
