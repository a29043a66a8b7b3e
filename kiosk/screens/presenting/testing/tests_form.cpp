#include "kiosk/screens/presenting/testing/tests_form.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::screens {

std::optional<std::size_t> indexBehind(const std::string& id, std::string_view prefix) {
    const auto rest = behind(id, prefix);
    std::size_t index = 0;
    if (!rest) {
        return std::nullopt;
    }
    const auto [end, error] = std::from_chars(rest->data(), rest->data() + rest->size(), index);
    return error == std::errc{} && end == rest->data() + rest->size() ? std::optional{index} : std::nullopt;
}

SheetField TestsForm::field(const std::string& name, const std::string& label, const std::string& value,
                            SheetKinds::Keys keys, const std::string& hint) const {
    auto shown = fieldOf(std::string{kTestsField} + name, label, value, hint, keys);
    const auto fault =
        std::find_if(m_faults.begin(), m_faults.end(), [&](const auto& one) { return one.field == name; });
    if (fault != m_faults.end()) {
        shown.fault = toQString(wording::sentence(*fault, now(), speech()));
    }
    return shown;
}

void TestsForm::addFaultOf(QList<SheetBlock>& blocks, const std::string& name) const {
    for (const auto& fault : m_faults) {
        if (fault.field == name) {
            blocks.append(textBlock(SheetKinds::Lead, wording::sentence(fault, now(), speech())));
        }
    }
}

void TestsForm::addWholeFaults(QList<SheetBlock>& blocks) const {
    addFaultOf(blocks, {});
}

SheetBlock gradeKeys(const std::string& text, const std::string& note, const std::string& prefix,
                     const std::string& chosen) {
    auto block = textBlock(SheetKinds::GradeKeys, text);
    block.note = toQString(note);
    for (std::size_t step = analytics::Grade::kSteps; step > 0; --step) {
        const auto grade = shop::numberTyped(analytics::Grade::fromStep(step - 1).number());
        block.actions.append(pressOf(prefix + grade, grade));
    }
    const auto grade = analytics::Grade::fromText(chosen);
    block.chosenId = grade ? toQString(prefix + shop::numberTyped(grade->number())) : QString{};
    return block;
}

CrackKind crackKindOf(analytics::CrackClass seen) noexcept {
    switch (seen) {
    case analytics::CrackClass::noCrack:
        return CrackKind::Whole;
    case analytics::CrackClass::hairline:
        return CrackKind::Hairline;
    case analytics::CrackClass::breaks:
        return CrackKind::Breaks;
    case analytics::CrackClass::powders:
        break;
    }
    return CrackKind::Powders;
}

SheetBlock crackKeys(const std::string& text, const std::string& note, const std::string& prefix,
                     const std::string& chosen, const wording::Speech& speech) {
    auto block = textBlock(SheetKinds::CrackKeys, text);
    block.note = toQString(note);
    for (const auto& row : records::tableOf(analytics::CrackClass{})) {
        CrackKey key;
        key.id = toQString(prefix + std::string{row.word});
        key.label = toQString(wording::word(row.value, speech));
        key.crack = crackKindOf(row.value);
        block.cracks.append(key);
    }
    block.chosenId = chosen.empty() ? QString{} : toQString(prefix + chosen);
    return block;
}

SheetBlock yesNoKeys(const std::string& text, const std::string& prefix, const std::string& chosen,
                     const wording::Speech& speech) {
    return choicesBlock(text,
                        {{prefix + "no", speech.text("tests.no")},
                         {prefix + "yes", speech.text("tests.yes")},
                         {prefix, speech.text("tests.choose.not-looked")}},
                        prefix + chosen);
}

} // namespace holdfast::kiosk::screens
