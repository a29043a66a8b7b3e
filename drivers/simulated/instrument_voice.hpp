#pragma once

#include "drivers/catalogue/description.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace holdfast::drivers {

/// What an instrument says, byte for byte, by its description: the parsers read backwards.
class InstrumentVoice final {
public:
    InstrumentVoice(InstrumentDescription description, std::string serialNumber);

    /// A line, or the answer to a reading query, with its terminator. Rounded to the step; a value outside the range is
    /// said with the over-range word where there is one.
    [[nodiscard]] std::string reading(double celsius) const;
    /// A line or answer that says that something is wrong; a reading of 0 if this instrument has no word for it.
    [[nodiscard]] std::string status(SampleFlag flag) const;
    /// The reading in the other unit, with that unit's word: somebody pressed the unit key.
    [[nodiscard]] std::string otherUnit(double celsius) const;
    /// The answer to a SCPI line; empty if it asks for nothing. Keeps an error queue of one.
    [[nodiscard]] std::string answer(std::string_view question, const std::string& readingNow);

private:
    [[nodiscard]] std::string line(const std::string& value, const std::string& unit, const std::string& status) const;
    [[nodiscard]] std::string unitWord(ReadingUnit unit) const;
    [[nodiscard]] std::string statusWord(SampleFlag flag) const;
    [[nodiscard]] std::string number(double value) const;

    InstrumentDescription m_description;
    std::string m_serialNumber;
    int m_error = 0;
};

} // namespace holdfast::drivers
