#include "kiosk/screens/presenting/places/inks_form.hpp"

#include "kiosk/screens/presenting/places/inks_words.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

SheetField InksForm::field(const std::string& name, const std::string& label, const std::string& value,
                           SheetKinds::Keys keys, const wording::Speech& speech, const std::string& hint) const {
    auto shown = fieldOf(std::string{kInksField} + name, label, value, hint, keys);
    const auto fault =
        std::find_if(m_faults.begin(), m_faults.end(), [&](const auto& one) { return one.field == name; });
    if (fault != m_faults.end()) {
        shown.fault = toQString(wording::sentence(*fault, speech));
    }
    return shown;
}

void InksForm::addOtherFaults(QList<SheetBlock>& blocks, const std::vector<std::string>& names,
                              const wording::Speech& speech) const {
    std::vector<std::string> shown; // the first fault of each field stands there
    for (const auto& fault : m_faults) {
        const bool atField = std::find(names.begin(), names.end(), fault.field) != names.end() &&
                             std::find(shown.begin(), shown.end(), fault.field) == shown.end();
        if (atField) {
            shown.push_back(fault.field);
        } else {
            blocks.append(textBlock(SheetKinds::Lead, wording::sentence(fault, speech)));
        }
    }
}

} // namespace holdfast::kiosk::screens
