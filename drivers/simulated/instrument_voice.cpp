#include "drivers/simulated/instrument_voice.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <utility>

namespace holdfast::drivers {

namespace {

constexpr int kUndefinedHeader = -113; // SCPI-99 volume 2, 21.8.9

double inUnit(double celsius, ReadingUnit unit) noexcept {
    return unit == ReadingUnit::celsius ? celsius : celsius * 9.0 / 5.0 + 32.0;
}

std::string formatted(const char* format, int decimals, double value) {
    std::array<char, 64> text{};
    const int length = std::snprintf(text.data(), text.size(), format, decimals, value);
    return {text.data(), static_cast<std::size_t>(std::clamp(length, 0, static_cast<int>(text.size()) - 1))};
}

} // namespace

InstrumentVoice::InstrumentVoice(InstrumentDescription description, std::string serialNumber)
    : m_description{std::move(description)}, m_serialNumber{std::move(serialNumber)} {}

std::string InstrumentVoice::reading(double celsius) const {
    const CountScale& scale = m_description.scale();
    const double value = std::round(inUnit(celsius, scale.unit) / scale.step) * scale.step;
    if (m_description.isScpi()) {
        return formatted("%+.*E", 8, value) + m_description.terminator();
    }
    if (!m_description.range().contains(value) && !statusWord(SampleFlag::outOfRange).empty()) {
        return status(SampleFlag::outOfRange);
    }
    return line(number(value), unitWord(scale.unit), statusWord(SampleFlag::none));
}

std::string InstrumentVoice::status(SampleFlag flag) const {
    if (m_description.isScpi()) {
        return (flag == SampleFlag::instrumentFault ? "+9.91000000E+37" : "+9.90000000E+37") +
               m_description.terminator();
    }
    const std::string word = statusWord(flag);
    const bool hasField = std::get<LineRules>(m_description.protocol).fields.status.has_value();
    const std::string value = hasField || word.empty() ? number(0.0) : word;
    return line(value, unitWord(m_description.scale().unit), word);
}

std::string InstrumentVoice::otherUnit(double celsius) const {
    const bool isCelsius = m_description.scale().unit == ReadingUnit::celsius;
    const ReadingUnit other = isCelsius ? ReadingUnit::fahrenheit : ReadingUnit::celsius;
    const double step = m_description.scale().step;
    const double value = std::round(inUnit(celsius, other) / step) * step;
    if (m_description.isScpi()) {
        return formatted("%+.*E", 8, value) + m_description.terminator();
    }
    return line(number(value), unitWord(other), statusWord(SampleFlag::none));
}

std::string InstrumentVoice::answer(std::string_view question, const std::string& readingNow) {
    const std::string& end = m_description.terminator();
    const auto& dialogue = std::get<ScpiDialogue>(m_description.protocol);
    if (question == "*IDN?") {
        const IdentityRules& rules = m_description.identity;
        return (rules.maker.empty() ? "SIMULATED" : rules.maker) + "," +
               (rules.model.empty() ? "THERMOMETER" : rules.model) + "," + m_serialNumber + ",1.0" + end;
    }
    if (question == "SYST:ERR?") {
        const int error = std::exchange(m_error, 0);
        return (error == 0 ? std::string{"0,\"No error\""} : std::to_string(error) + ",\"Undefined header\"") + end;
    }
    if (question == dialogue.query || question == "READ?" || question == "MEAS:TEMP?") {
        return readingNow;
    }
    const bool isKnown = question == "*CLS" || question == "*RST" ||
                         std::find(dialogue.setup.begin(), dialogue.setup.end(), question) != dialogue.setup.end();
    m_error = isKnown ? m_error : kUndefinedHeader;
    return {};
}

std::string InstrumentVoice::line(const std::string& value, const std::string& unit, const std::string& status) const {
    const LineFields& fields = std::get<LineRules>(m_description.protocol).fields;
    std::string text;
    for (std::size_t i = 0; i < fields.count; ++i) {
        text += i == 0 ? std::string{} : std::string{fields.separator};
        if (i == fields.value) {
            text += value;
        } else if (fields.unit == i) {
            text += unit;
        } else if (fields.status == i) {
            text += status;
        } else if (fields.serial == i) {
            text += fields.serialPrefix + m_serialNumber;
        } else {
            text += '-';
        }
    }
    return text + m_description.terminator();
}

std::string InstrumentVoice::unitWord(ReadingUnit unit) const {
    for (const auto& [word, meaning] : std::get<LineRules>(m_description.protocol).unitWords) {
        if (meaning == unit) {
            return word;
        }
    }
    return {};
}

std::string InstrumentVoice::statusWord(SampleFlag flag) const {
    for (const auto& [word, meaning] : std::get<LineRules>(m_description.protocol).statusWords) {
        if (meaning == flag) {
            return word;
        }
    }
    return {};
}

std::string InstrumentVoice::number(double value) const {
    int decimals = 0;
    for (double step = m_description.scale().step; decimals < 6 && std::abs(step - std::round(step)) > 1e-9;
         ++decimals) {
        step *= 10.0;
    }
    std::string text = formatted("%+07.*f", decimals, value);
    if (std::get<LineRules>(m_description.protocol).decimalComma) {
        std::replace(text.begin(), text.end(), '.', ',');
    }
    return text;
}

} // namespace holdfast::drivers
