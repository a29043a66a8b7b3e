#pragma once

#include "drivers/protocol/line_parser.hpp"
#include "drivers/protocol/protocol_fault.hpp"
#include "drivers/protocol/reading.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <string_view>

/// Answers of instruments that speak IEEE 488.2 and SCPI-99, without their terminator.
namespace holdfast::drivers {

/// IEEE 488.2-1992, 8.7.2 to 8.7.4: integer, with a point, with a point and an exponent.
enum class NumericForm { nr1, nr2, nr3 };

/// The numbers that mean something else (SCPI-99 volume 1, 7.2.1): ±9.9E37 is beyond what can be read, 9.91E37 is no
/// number at all.
enum class ScpiSpecial { none, overHigh, overLow, notANumber };

struct ScpiNumber {
    double value = 0.0; ///< as sent, special numbers too
    NumericForm form = NumericForm::nr1;
    ScpiSpecial special = ScpiSpecial::none;
};

/// A numeric answer in one of the strict forms: "1E3" and ".5" are not valid answers (IEEE 488.2-1992, 8.7).
[[nodiscard]] tl::expected<ScpiNumber, ProtocolFault> parseScpiNumber(std::string_view answer);

/// The four fields of the answer to *IDN? (IEEE 488.2-1992, 10.14); "0" stands for what the maker left out.
struct ScpiIdentity {
    std::string maker;
    std::string model;
    std::string serialNumber; ///< empty if the answer says "0"
    std::string firmware;
    bool operator==(const ScpiIdentity&) const = default;
};
[[nodiscard]] tl::expected<ScpiIdentity, ProtocolFault> parseScpiIdentity(std::string_view answer);

/// An answer to SYST:ERR? (SCPI-99 volume 2, 21.8): 0,"No error" when the queue is empty, negative for the standard's
/// own errors, positive for the maker's.
struct ScpiError {
    int number = 0;
    std::string text;
    bool operator==(const ScpiError&) const = default;
};
[[nodiscard]] tl::expected<ScpiError, ProtocolFault> parseScpiError(std::string_view answer);

/// How a SCPI instrument's readings become counts, described as data.
struct ScpiRules {
    std::string terminator = "\n";
    std::size_t longestLine = 256;
    CountScale scale;
    ReadingRange range;
    SampleFlag overload = SampleFlag::outOfRange; ///< what 9.9E37 means to this instrument
    bool operator==(const ScpiRules&) const = default;
};

/// One answer to the reading query. Rounded to the step: these instruments send more digits than they resolve.
[[nodiscard]] tl::expected<LineReading, ProtocolFault> parseScpiReading(const ScpiRules& rules,
                                                                        std::string_view answer);

} // namespace holdfast::drivers
