#pragma once

#include "kiosk/screens/presenting/places/inks_form.hpp"
#include "kiosk/screens/presenting/places/inks_words.hpp"

#include <algorithm>

/// What the forms of the Inks share: a draft, its fields, its choices.
namespace holdfast::kiosk::screens {

template <class Draft>
struct InksFieldRow final {
    const char* name;
    std::string Draft::*typed;
    SheetKinds::Keys keys;
    const char* hint = "";
};

template <class Draft, std::size_t n>
bool enterInto(const InksFieldRow<Draft> (&rows)[n], Draft& draft, const std::string& field, const std::string& text) {
    const auto name = behindPrefix(field, kInksField);
    const auto* row =
        name ? std::find_if(std::begin(rows), std::end(rows), [&](const auto& one) { return one.name == *name; })
             : std::end(rows);
    if (row == std::end(rows)) {
        return false;
    }
    draft.*row->typed = text;
    return true;
}

template <class E>
bool setFrom(const std::string& id, const char* name, E& value) {
    const auto word = behindPrefix(id, std::string{kInksSet} + name + ".");
    const auto read = word ? records::fromWord<E>(*word) : std::nullopt;
    value = read.value_or(value);
    return read.has_value();
}

inline bool setFrom(const std::string& id, const char* name, bool& value) {
    const auto word = behindPrefix(id, std::string{kInksSet} + name + ".");
    if (word != "yes" && word != "no") {
        return false;
    }
    value = *word == "yes";
    return true;
}

template <class E>
[[nodiscard]] SheetBlock choiceOf(const char* name, const char* label, E chosen, const wording::Speech& speech) {
    const auto prefix = std::string{kInksSet} + name + ".";
    std::vector<Choice> choices;
    for (const auto& row : records::tableOf(E{})) {
        choices.push_back({prefix + std::string{row.word}, wording::word(row.value, speech)});
    }
    return choicesBlock(speech.text(label), choices, prefix + std::string{records::toWord(chosen)});
}

[[nodiscard]] inline SheetBlock yesNo(const std::string& name, bool chosen, const wording::Speech& speech) {
    const auto prefix = std::string{kInksSet} + name + ".";
    return choicesBlock(
        speech.text("inks.choose." + name),
        {{prefix + "no", speech.text("inks." + name + ".no")}, {prefix + "yes", speech.text("inks." + name + ".yes")}},
        prefix + (chosen ? "yes" : "no"));
}

/// What the forms share: a draft and its fields.
template <class Draft, std::size_t n>
class DraftForm : public InksForm {
public:
    DraftForm(Draft draft, const InksFieldRow<Draft> (&rows)[n]) : m_draft{std::move(draft)}, m_rows{rows} {}

    bool enter(const std::string& field, const std::string& text) override {
        return enterInto(m_rows, m_draft, field, text);
    }

protected:
    /// Without the name of what is revised.
    void addFields(QList<SheetBlock>& blocks, bool withName, analytics::TemperatureUnit unit,
                   const wording::Speech& speech, const std::vector<std::string>& alsoShown = {}) const {
        std::vector<SheetField> fields;
        auto names = alsoShown;
        for (const auto& row : m_rows) {
            const std::string name{row.name};
            if (name == "name" && !withName) {
                continue;
            }
            names.push_back(name);
            const auto label = speech.text("inks.field." + name, {{"unit", wording::Figures{unit, 0}.unitSign()}});
            fields.push_back(field(name, label, m_draft.*row.typed, row.keys, speech,
                                   *row.hint == '\0' ? std::string{} : speech.text(row.hint)));
        }
        addOtherFaults(blocks, names, speech);
        blocks.append(fieldsBlock(fields));
    }
    /// Notes faults, or gives the record.
    template <class Made>
    std::optional<records::Record> taken(tl::expected<Made, std::vector<shop::StockFault>> made) {
        m_faults = made ? std::vector<shop::StockFault>{} : std::move(made.error());
        return made ? std::optional<records::Record>{std::move(*made)} : std::nullopt;
    }

    Draft m_draft;

private:
    const InksFieldRow<Draft> (&m_rows)[n];
};

} // namespace holdfast::kiosk::screens
