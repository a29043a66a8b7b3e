#pragma once

#include "drivers/protocol/protocol_fault.hpp"
#include "drivers/protocol/reading.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast::drivers {

/// What an instrument states that it can read, in its own unit; both ends are inside.
struct ReadingRange {
    double low = 0.0;
    double high = 0.0;
    [[nodiscard]] bool contains(double value) const noexcept { return value >= low && value <= high; }
    bool operator==(const ReadingRange&) const = default;
};

/// Where things stand in a line; positions count from 0.
struct LineFields {
    char separator = ' '; ///< a blank stands for any run of blanks and tabs
    std::size_t count = 1;
    std::size_t value = 0; ///< a number, or a status word in its place
    std::optional<std::size_t> unit;
    std::optional<std::size_t> status;
    std::optional<std::size_t> serial;
    std::string serialPrefix; ///< stands before the serial number and is not part of it
    bool operator==(const LineFields&) const = default;
};

/// A line protocol, described as data.
struct LineRules {
    std::string terminator = "\r\n";
    std::size_t longestLine = 80;
    LineFields fields;
    bool decimalComma = false;
    CountScale scale;
    ReadingRange range;
    std::map<std::string, ReadingUnit> unitWords;
    std::map<std::string, SampleFlag> statusWords; ///< `none` for a word that says that all is well
    bool operator==(const LineRules&) const = default;
};

/// What one line says.
struct LineReading {
    std::int64_t counts = 0; ///< steps of the instrument; 0 where a status word stands in the number's place
    SampleFlag flags = SampleFlag::none;
    std::string serialNumber; ///< empty if the lines carry none
    bool operator==(const LineReading&) const = default;
};

/// Reads one framed line by the rules. A number outside the range keeps its counts and is flagged outOfRange. A unit
/// word other than the described unit is a fault (otherUnit): nothing is ever converted here.
[[nodiscard]] tl::expected<LineReading, ProtocolFault> parseLine(const LineRules& rules, std::string_view line);

} // namespace holdfast::drivers
