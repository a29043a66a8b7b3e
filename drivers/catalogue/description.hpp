#pragma once

#include "drivers/protocol/line_parser.hpp"
#include "drivers/protocol/scpi_parser.hpp"

#include <chrono>
#include <string>
#include <variant>
#include <vector>

namespace holdfast::drivers {

enum class Parity { none, even, odd, mark, space };
enum class FlowControl { none, hardware, software };

/// How the port is set; whatever a pseudo-terminal or a USB instrument makes of it.
struct SerialSettings {
    int baud = 9600;
    int dataBits = 8; ///< 5 to 8
    Parity parity = Parity::none;
    int stopBits = 1; ///< 1 or 2
    FlowControl flow = FlowControl::none;
    bool operator==(const SerialSettings&) const = default;
};

/// A SCPI instrument is asked for each reading.
struct ScpiDialogue {
    ScpiRules rules;
    std::string query = "READ?";
    std::vector<std::string> setup; ///< commands sent once, after the identity was right
    bool operator==(const ScpiDialogue&) const = default;
};

/// What must be true of the instrument that answers; empty strings ask for nothing. Each stands at the front of the
/// field of the same name (serial numbers of one series, model numbers with a suffix).
struct IdentityRules {
    std::string maker;
    std::string model;
    std::string serialNumber;
    bool operator==(const IdentityRules&) const = default;
};

/// An instrument described as data: one file of drivers/catalogue/instruments, or one of the shop's own.
struct InstrumentDescription {
    std::string id;   ///< small letters, digits and hyphens
    std::string name; ///< for people; a generic trade name
    SerialSettings serial;
    std::chrono::milliseconds interval{200}; ///< between two readings, as sent or as asked for
    std::variant<LineRules, ScpiDialogue> protocol;
    IdentityRules identity;

    [[nodiscard]] bool isScpi() const noexcept { return std::holds_alternative<ScpiDialogue>(protocol); }
    [[nodiscard]] const CountScale& scale() const noexcept;
    [[nodiscard]] const ReadingRange& range() const noexcept; ///< in the instrument's own unit
    [[nodiscard]] const std::string& terminator() const noexcept;
    [[nodiscard]] std::size_t longestLine() const noexcept;
    bool operator==(const InstrumentDescription&) const = default;
};

} // namespace holdfast::drivers
