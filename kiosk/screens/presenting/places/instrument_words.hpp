#pragma once

#include "kiosk/records/words.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/shop/instruments/form_reader.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

#include <algorithm>
#include <string>
#include <vector>

/// What the instrument place's pieces share.
namespace holdfast::kiosk::screens {

inline constexpr std::string_view kInstrumentPick = "instruments.pick."; ///< then its id
inline constexpr std::string_view kInstrumentLine = "instruments.line."; ///< then the name of a link

[[nodiscard]] inline std::string wordOf(analytics::InstrumentKind kind, const wording::Speech& speech) {
    return speech.text("instruments.kind." + std::string{records::toWord(kind)});
}
[[nodiscard]] inline std::string wordOf(analytics::Placement placement, const wording::Speech& speech) {
    return speech.text("instruments.placement." + std::string{records::toWord(placement)});
}
[[nodiscard]] inline std::string wordOf(analytics::CheckKind kind, const wording::Speech& speech) {
    return speech.text("instruments.check-kind." + std::string{records::toWord(kind)});
}

/// The rest of an id behind a prefix; nothing if it begins otherwise.
[[nodiscard]] inline std::optional<std::string> behind(const std::string& id, std::string_view prefix) {
    return id.compare(0, prefix.size(), prefix) == 0 ? std::optional{id.substr(prefix.size())} : std::nullopt;
}

[[nodiscard]] inline std::string unitSignOf(analytics::TemperatureUnit unit) {
    return wording::Figures{unit, 0}.unitSign();
}

/// Field "instruments.NAME" with the first fault that was found there.
[[nodiscard]] inline SheetField instrumentField(const std::string& name, const std::string& label,
                                                const std::string& value, const std::string& hint,
                                                SheetKinds::Keys keys,
                                                const std::vector<shop::instruments::FormFault>& faults,
                                                const wording::Speech& speech) {
    auto field = fieldOf("instruments." + name, label, value, hint, keys);
    const auto fault = std::find_if(faults.begin(), faults.end(), [&](const auto& one) { return one.field == name; });
    if (fault != faults.end()) {
        field.fault = toQString(wording::sentence(*fault, speech));
    }
    return field;
}

} // namespace holdfast::kiosk::screens
