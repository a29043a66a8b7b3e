#include "kiosk/screens/presenting/places/describe_form.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/screens/presenting/places/instrument_words.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr const char* kKind = "instruments.kind.";
constexpr const char* kType = "instruments.type.";
constexpr const char* kClass = "instruments.class.";
constexpr const char* kPlacement = "instruments.placement.";
constexpr const char* kCatalogue = "instruments.catalogue.";

bool isSensor(analytics::InstrumentKind kind) {
    return kind == analytics::InstrumentKind::probe || kind == analytics::InstrumentKind::spot;
}

template <class E>
std::string idOf(const char* prefix, const std::optional<E>& value) {
    return prefix + (value ? std::string{records::toWord(*value)} : std::string{});
}

/// Choices of a closed list in the order of its words, after `none` if it is not empty.
template <class E, class Label>
std::vector<Choice> choicesOf(const char* prefix, const std::string& none, Label label) {
    std::vector<Choice> choices;
    if (!none.empty()) {
        choices.push_back({prefix, none});
    }
    for (const auto& row : records::tableOf(E{})) {
        choices.push_back({prefix + std::string{row.word}, label(row.value)});
    }
    return choices;
}

} // namespace

std::optional<records::InstrumentDescribed> DescribeForm::described() {
    auto made = shop::instruments::instrumentFrom(m_draft, m_around);
    m_faults = made ? std::vector<shop::instruments::FormFault>{} : std::move(made.error());
    return made ? std::optional{std::move(*made)} : std::nullopt;
}

bool DescribeForm::act(const std::string& id) {
    if (const auto kind = behind(id, kKind)) {
        m_draft.kind = records::fromWord<analytics::InstrumentKind>(*kind).value_or(m_draft.kind);
    } else if (const auto type = behind(id, kType)) {
        m_draft.type = records::fromWord<analytics::ThermocoupleType>(*type);
    } else if (const auto toleranceClass = behind(id, kClass)) {
        m_draft.toleranceClass = records::fromWord<analytics::ToleranceClass>(*toleranceClass);
    } else if (const auto placement = behind(id, kPlacement)) {
        m_draft.placement = records::fromWord<analytics::Placement>(*placement).value_or(m_draft.placement);
    } else if (const auto catalogue = behind(id, kCatalogue)) {
        m_draft.catalogue = *catalogue;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

std::string* DescribeForm::textOfField(const std::string& field) {
    struct Row {
        const char* name;
        std::string* text;
    };
    const Row rows[] = {{"name", &m_draft.name},
                        {"tolerance", &m_draft.statedTolerance},
                        {"resolution", &m_draft.resolution},
                        {"range.low", &m_draft.rangeLow},
                        {"range.high", &m_draft.rangeHigh},
                        {"own-placement", &m_draft.ownPlacement},
                        {"steps", &m_draft.steps},
                        {"strip-tolerance", &m_draft.stripTolerance},
                        {"expiry", &m_draft.expiry},
                        {"count", &m_draft.packCount},
                        {"batch", &m_draft.batch},
                        {"address", &m_draft.address}};
    const auto name = behind(field, "instruments.");
    for (const auto& row : rows) {
        if (name && *name == row.name) {
            return row.text;
        }
    }
    return nullptr;
}

bool DescribeForm::enter(const std::string& field, const std::string& text) {
    auto* value = textOfField(field);
    if (value == nullptr) {
        return false;
    }
    *value = text;
    m_faults.clear();
    return true;
}

SheetField DescribeForm::field(const char* name, const char* label, const std::string& value, const char* hint,
                               SheetKinds::Keys keys, const wording::Speech& speech) const {
    return instrumentField(name, speech.text(label, {{"unit", unitSignOf(m_draft.unit)}}), value,
                           hint != nullptr ? speech.text(hint) : std::string{}, keys, m_faults, speech);
}

QList<SheetBlock> DescribeForm::blocks(const wording::Speech& speech) const {
    QList<SheetBlock> blocks;
    for (const auto& fault : m_faults) {
        if (fault.field == "class" || fault.field == "catalogue") {
            blocks.append(textBlock(SheetKinds::Lead, wording::sentence(fault, speech)));
        }
    }
    blocks.append(
        choicesBlock(speech.text("instruments.choose-kind"),
                     choicesOf<analytics::InstrumentKind>(kKind, {}, [&](auto kind) { return wordOf(kind, speech); }),
                     idOf(kKind, std::optional{m_draft.kind})));
    blocks.append(fieldsBlock({field("name", "instruments.field.name", m_draft.name, "instruments.field.name-hint",
                                     SheetKinds::Text, speech)}));
    if (m_draft.kind == analytics::InstrumentKind::strip) {
        addStrip(blocks, speech);
    } else {
        addSensor(blocks, speech);
        addRange(blocks, speech);
    }
    blocks.append(choicesBlock(
        speech.text("instruments.choose-placement"),
        choicesOf<analytics::Placement>(kPlacement, {}, [&](auto placement) { return wordOf(placement, speech); }),
        idOf(kPlacement, std::optional{m_draft.placement})));
    blocks.append(fieldsBlock({field("own-placement", "instruments.field.own-placement", m_draft.ownPlacement,
                                     "instruments.field.own-placement-hint", SheetKinds::Number, speech)}));
    if (m_draft.kind == analytics::InstrumentKind::probe) {
        addAttachment(blocks, speech);
    }
    return blocks;
}

void DescribeForm::addSensor(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    const auto asWritten = [](auto value) { return std::string{records::toWord(value)}; };
    if (isSensor(m_draft.kind)) {
        blocks.append(
            choicesBlock(speech.text("instruments.choose-type"),
                         choicesOf<analytics::ThermocoupleType>(kType, speech.text("instruments.type-none"), asWritten),
                         idOf(kType, m_draft.type)));
        blocks.append(
            choicesBlock(speech.text("instruments.choose-class"),
                         choicesOf<analytics::ToleranceClass>(kClass, speech.text("instruments.class-none"), asWritten),
                         idOf(kClass, m_draft.toleranceClass)));
    }
    blocks.append(fieldsBlock({field("tolerance", "instruments.field.tolerance", m_draft.statedTolerance,
                                     "instruments.field.tolerance-hint", SheetKinds::Number, speech)}));
}

void DescribeForm::addRange(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    blocks.append(fieldsBlock(
        {field("resolution", "instruments.field.resolution", m_draft.resolution, "instruments.field.resolution-hint",
               SheetKinds::Number, speech),
         field("range.low", "instruments.field.range-low", m_draft.rangeLow, nullptr, SheetKinds::Number, speech),
         field("range.high", "instruments.field.range-high", m_draft.rangeHigh, nullptr, SheetKinds::Number, speech)}));
}

void DescribeForm::addStrip(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    std::vector<SheetField> fields{field("steps", "instruments.field.steps", m_draft.steps,
                                         "instruments.field.steps-hint", SheetKinds::Text, speech),
                                   field("strip-tolerance", "instruments.field.strip-tolerance", m_draft.stripTolerance,
                                         nullptr, SheetKinds::Number, speech),
                                   field("expiry", "instruments.field.expiry", m_draft.expiry,
                                         "instruments.field.date-hint", SheetKinds::Date, speech)};
    if (!m_draft.before) {
        fields.push_back(field("count", "instruments.field.count", m_draft.packCount, "instruments.field.count-hint",
                               SheetKinds::Number, speech));
        fields.push_back(field("batch", "instruments.field.batch", m_draft.batch, nullptr, SheetKinds::Text, speech));
    }
    blocks.append(fieldsBlock(fields));
}

void DescribeForm::addAttachment(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    std::vector<Choice> choices{{kCatalogue, speech.text("instruments.catalogue-none")}};
    for (const auto& id : m_around.catalogue) {
        const auto* found = drivers::findInstrument(id);
        choices.push_back({kCatalogue + id, found != nullptr ? found->name : id});
    }
    blocks.append(choicesBlock(speech.text("instruments.choose-catalogue"), choices, kCatalogue + m_draft.catalogue));
    blocks.append(fieldsBlock({field("address", "instruments.field.address", m_draft.address,
                                     "instruments.field.address-hint", SheetKinds::Text, speech)}));
    blocks.append(textBlock(SheetKinds::Note, speech.text("instruments.line-later")));
}

} // namespace holdfast::kiosk::screens
