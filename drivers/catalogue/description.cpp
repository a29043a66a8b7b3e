#include "drivers/catalogue/description.hpp"

namespace holdfast::drivers {

namespace {

template <class Read>
const auto& ask(const InstrumentDescription& description, Read read) {
    if (const auto* dialogue = std::get_if<ScpiDialogue>(&description.protocol)) {
        return read(dialogue->rules);
    }
    return read(std::get<LineRules>(description.protocol));
}

} // namespace

const CountScale& InstrumentDescription::scale() const noexcept {
    return ask(*this, [](const auto& rules) -> const CountScale& { return rules.scale; });
}

const ReadingRange& InstrumentDescription::range() const noexcept {
    return ask(*this, [](const auto& rules) -> const ReadingRange& { return rules.range; });
}

const std::string& InstrumentDescription::terminator() const noexcept {
    return ask(*this, [](const auto& rules) -> const std::string& { return rules.terminator; });
}

std::size_t InstrumentDescription::longestLine() const noexcept {
    return ask(*this, [](const auto& rules) -> const std::size_t& { return rules.longestLine; });
}

} // namespace holdfast::drivers
