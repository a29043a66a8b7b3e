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

namespace {

template <class Draft>
struct FieldRow final {
    const char* name;
    std::string Draft::*typed;
    SheetKinds::Keys keys;
    const char* hint = "";
};

using shop::FabricDraft;
using shop::FamilyDraft;

constexpr FieldRow<FamilyDraft> kFamilyFields[] = {
    {"name", &FamilyDraft::name, SheetKinds::Text},
    {"cure", &FamilyDraft::cure, SheetKinds::Number},
    {"hold", &FamilyDraft::hold, SheetKinds::Number},
    {"gel-low", &FamilyDraft::gelLow, SheetKinds::Number},
    {"gel-high", &FamilyDraft::gelHigh, SheetKinds::Number},
    {"ceiling", &FamilyDraft::ceiling, SheetKinds::Number},
    {"ease", &FamilyDraft::ease, SheetKinds::Number},
    {"hotter", &FamilyDraft::hotter, SheetKinds::Number},
    {"hotter-time", &FamilyDraft::hotterTime, SheetKinds::Number},
    {"cooler", &FamilyDraft::cooler, SheetKinds::Number},
    {"cooler-time", &FamilyDraft::coolerTime, SheetKinds::Number},
    {"pot-life", &FamilyDraft::potLife, SheetKinds::Number},
    {"band-low", &FamilyDraft::bandLow, SheetKinds::Number},
    {"band-high", &FamilyDraft::bandHigh, SheetKinds::Number},
    {"rest", &FamilyDraft::rest, SheetKinds::Number},
    {"source", &FamilyDraft::source, SheetKinds::Text, "inks.hint.source"},
};

constexpr FieldRow<FabricDraft> kFabricFields[] = {
    {"name", &FabricDraft::name, SheetKinds::Text},
    {"hard-ceiling", &FabricDraft::hardCeiling, SheetKinds::Number},
    {"bleed-ceiling", &FabricDraft::bleedCeiling, SheetKinds::Number},
    {"colours", &FabricDraft::coloursNotAtRisk, SheetKinds::Text, "inks.hint.colours"},
    {"source", &FabricDraft::source, SheetKinds::Text, "inks.hint.source"},
};

constexpr FieldRow<shop::BucketDraft> kBucketFields[] = {
    {"colour", &shop::BucketDraft::colour, SheetKinds::Text},
    {"batch", &shop::BucketDraft::batch, SheetKinds::Text},
    {"expiry", &shop::BucketDraft::expiry, SheetKinds::Date, "inks.hint.expiry"},
    {"additive", &shop::BucketDraft::additive, SheetKinds::Number},
};

constexpr FieldRow<shop::MixDraft> kMixFields[] = {
    {"name", &shop::MixDraft::name, SheetKinds::Text},
    {"colour", &shop::MixDraft::colour, SheetKinds::Text},
    {"additive", &shop::MixDraft::additive, SheetKinds::Number},
};

template <class Draft, std::size_t n>
bool enterInto(const FieldRow<Draft> (&rows)[n], Draft& draft, const std::string& field, const std::string& text) {
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

bool setFrom(const std::string& id, const char* name, bool& value) {
    const auto word = behindPrefix(id, std::string{kInksSet} + name + ".");
    if (word != "yes" && word != "no") {
        return false;
    }
    value = *word == "yes";
    return true;
}

template <class E>
SheetBlock choiceOf(const char* name, const char* label, E chosen, const wording::Speech& speech) {
    const auto prefix = std::string{kInksSet} + name + ".";
    std::vector<Choice> choices;
    for (const auto& row : records::tableOf(E{})) {
        choices.push_back({prefix + std::string{row.word}, wording::word(row.value, speech)});
    }
    return choicesBlock(speech.text(label), choices, prefix + std::string{records::toWord(chosen)});
}

SheetBlock yesNo(const std::string& name, bool chosen, const wording::Speech& speech) {
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
    DraftForm(Draft draft, const FieldRow<Draft> (&rows)[n]) : m_draft{std::move(draft)}, m_rows{rows} {}

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
    const FieldRow<Draft> (&m_rows)[n];
};

class FamilyForm final : public DraftForm<FamilyDraft, std::size(kFamilyFields)> {
public:
    FamilyForm(FamilyDraft draft, std::vector<std::string> names)
        : DraftForm{std::move(draft), kFamilyFields}, m_names{std::move(names)} {}

    std::string title(const wording::Speech& speech) const override {
        return m_draft.before ? speech.text("inks.form-revise", {{"name", m_draft.before->name}})
                              : speech.text("inks.form-family");
    }
    QList<SheetBlock> blocks(const wording::Speech& speech) const override {
        QList<SheetBlock> blocks;
        if (m_draft.before) {
            blocks.append(textBlock(SheetKinds::Note, speech.text("inks.revise-note")));
        } else {
            blocks.append(choiceOf("chemistry", "inks.choose.chemistry", m_draft.chemistry, speech));
        }
        addFields(blocks, !m_draft.before, m_draft.unit, speech);
        blocks.append(yesNo("unbroken", m_draft.unbroken, speech));
        blocks.append(choiceOf("bleed", "inks.choose.bleed", m_draft.bleedResistance, speech));
        blocks.append(choiceOf("mark", "inks.choose.mark", m_draft.mark, speech));
        blocks.append(textBlock(SheetKinds::Note, speech.text("inks.caution")));
        return blocks;
    }
    bool act(const std::string& id) override {
        return (!m_draft.before && setFrom(id, "chemistry", m_draft.chemistry)) ||
               setFrom(id, "unbroken", m_draft.unbroken) || setFrom(id, "bleed", m_draft.bleedResistance) ||
               setFrom(id, "mark", m_draft.mark);
    }
    std::optional<records::Record> record() override { return taken(shop::familyFrom(m_draft, m_names)); }
    bool isSigned() const override { return true; }

private:
    std::vector<std::string> m_names;
};

class FabricForm final : public DraftForm<FabricDraft, std::size(kFabricFields)> {
public:
    FabricForm(FabricDraft draft, std::vector<std::string> names)
        : DraftForm{std::move(draft), kFabricFields}, m_names{std::move(names)} {}

    std::string title(const wording::Speech& speech) const override {
        return m_draft.before ? speech.text("inks.form-revise", {{"name", m_draft.before->name}})
                              : speech.text("inks.form-cloth");
    }
    QList<SheetBlock> blocks(const wording::Speech& speech) const override {
        QList<SheetBlock> blocks;
        if (m_draft.before) {
            blocks.append(textBlock(SheetKinds::Note, speech.text("inks.revise-note")));
        }
        addFields(blocks, !m_draft.before, m_draft.unit, speech);
        blocks.append(choiceOf("need", "inks.choose.need", m_draft.need, speech));
        blocks.append(choiceOf("mark", "inks.choose.mark", m_draft.mark, speech));
        return blocks;
    }
    bool act(const std::string& id) override {
        return setFrom(id, "need", m_draft.need) || setFrom(id, "mark", m_draft.mark);
    }
    std::optional<records::Record> record() override { return taken(shop::fabricFrom(m_draft, m_names)); }
    bool isSigned() const override { return true; }

private:
    std::vector<std::string> m_names;
};

class BucketForm final : public DraftForm<shop::BucketDraft, std::size(kBucketFields)> {
public:
    BucketForm(std::vector<std::string> families, std::function<std::int64_t()> now)
        : DraftForm{shop::BucketDraft{}, kBucketFields}, m_families{std::move(families)}, m_now{std::move(now)} {}

    std::string title(const wording::Speech& speech) const override { return speech.text("inks.form-bucket"); }
    QList<SheetBlock> blocks(const wording::Speech& speech) const override {
        const auto prefix = std::string{kInksSet} + "family.";
        std::vector<Choice> choices;
        for (const auto& family : m_families) {
            choices.push_back({prefix + family, family});
        }
        QList<SheetBlock> blocks;
        blocks.append(choicesBlock(speech.text("inks.choose.family"), choices, prefix + m_draft.family));
        addFields(blocks, true, speech.figures.unit, speech);
        blocks.append(yesNo("catalysed", m_draft.catalysedNow, speech));
        blocks.append(textBlock(SheetKinds::Note, speech.text("inks.caution")));
        return blocks;
    }
    bool act(const std::string& id) override {
        const auto family = behindPrefix(id, std::string{kInksSet} + "family.");
        m_draft.family = family.value_or(m_draft.family);
        return family || setFrom(id, "catalysed", m_draft.catalysedNow);
    }
    std::optional<records::Record> record() override { return taken(shop::bucketFrom(m_draft, m_families, m_now())); }

private:
    std::vector<std::string> m_families;
    std::function<std::int64_t()> m_now;
};

class MixForm final : public DraftForm<shop::MixDraft, std::size(kMixFields)> {
public:
    using StockOf = std::function<shop::MixStock(const std::vector<std::int64_t>&)>;
    MixForm(std::int64_t number, std::vector<records::BucketOnFile> open, StockOf stock)
        : DraftForm{shop::MixDraft{}, kMixFields}, m_open{std::move(open)}, m_stock{std::move(stock)} {
        m_draft.number = number;
    }

    std::string title(const wording::Speech& speech) const override {
        return speech.text("inks.form-mix", {{"bucket", std::to_string(m_draft.number)}});
    }

    QList<SheetBlock> blocks(const wording::Speech& speech) const override {
        const auto stock = stockNow();
        std::vector<SheetField> masses;
        std::vector<std::string> names;
        for (const auto& part : m_draft.parts) {
            const auto name = "part." + std::to_string(part.bucket);
            if (std::find(names.begin(), names.end(), name) != names.end()) {
                continue;
            }
            names.push_back(name);
            const auto tree = stock.trees.find(part.bucket);
            const bool known = tree != stock.trees.end();
            masses.push_back(field(name,
                                   speech.text(known ? "inks.field.mass" : "inks.field.mass-unknown",
                                               {{"bucket", std::to_string(part.bucket)},
                                                {"name", known ? tree->second.bucket.name : std::string{}}}),
                                   part.mass, SheetKinds::Number, speech, speech.text("inks.hint.mass")));
        }
        QList<SheetBlock> blocks;
        addFields(blocks, true, speech.figures.unit, speech, names);
        blocks.append(textBlock(SheetKinds::Heading, speech.text("inks.parts")));
        blocks.append(masses.empty() ? textBlock(SheetKinds::Sentence, speech.text("inks.parts-none"))
                                     : fieldsBlock(masses));
        for (const auto& warning : shop::warningsOf(m_draft, stock)) {
            blocks.append(textBlock(SheetKinds::Sentence, wording::sentence(warning, speech)));
        }
        addMore(blocks, speech);
        blocks.append(yesNo("catalysed", m_draft.catalysedNow, speech));
        blocks.append(textBlock(SheetKinds::Note, speech.text("inks.caution")));
        return blocks;
    }

    bool act(const std::string& id) override {
        if (id == "inks.remove-part") {
            if (!m_draft.parts.empty()) {
                m_draft.parts.pop_back();
            }
            m_faults.clear();
            return true;
        }
        if (const auto number = numberBehind(id, kAddPart)) {
            return addBucket(*number);
        }
        return setFrom(id, "catalysed", m_draft.catalysedNow);
    }
    bool enter(const std::string& field, const std::string& text) override {
        const auto number = numberBehind(field, std::string{kInksField} + "part.");
        const auto part = std::find_if(m_draft.parts.begin(), m_draft.parts.end(),
                                       [&](const auto& one) { return one.bucket == number; });
        if (!number || part == m_draft.parts.end()) {
            return DraftForm::enter(field, text);
        }
        part->mass = text;
        return true;
    }
    /// One that stands there already is told at once; a second row would only hide it.
    bool addBucket(std::int64_t number) override {
        m_faults.clear();
        const bool twice = std::any_of(m_draft.parts.begin(), m_draft.parts.end(),
                                       [&](const auto& one) { return one.bucket == number; });
        if (twice) {
            shop::StockFault fault{shop::StockFaultCause::bucketTwice, "parts"};
            fault.bucket = number;
            m_faults.push_back(std::move(fault));
        } else {
            m_draft.parts.push_back({number, {}});
        }
        return true;
    }
    std::optional<records::Record> record() override { return taken(shop::mixFrom(m_draft, stockNow())); }

private:
    static constexpr std::string_view kAddPart = "inks.add-part.";

    shop::MixStock stockNow() const {
        std::vector<std::int64_t> numbers;
        for (const auto& part : m_draft.parts) {
            numbers.push_back(part.bucket);
        }
        return m_stock(numbers);
    }
    void addMore(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
        std::vector<Choice> choices;
        for (const auto& bucket : m_open) {
            const bool in = std::any_of(m_draft.parts.begin(), m_draft.parts.end(),
                                        [&](const auto& one) { return one.bucket == bucket.number; });
            if (!in) {
                const auto number = std::to_string(bucket.number);
                choices.push_back({std::string{kAddPart} + number,
                                   speech.text("inks.bucket-row", {{"bucket", number}, {"name", bucket.name}})});
            }
        }
        if (!choices.empty()) {
            blocks.append(choicesBlock(speech.text("inks.choose.part"), choices, {}));
        }
        if (!m_draft.parts.empty()) {
            blocks.append(pressBlock({pressOf("inks.remove-part", speech.text("inks.remove-part"))}));
        }
    }

    std::vector<records::BucketOnFile> m_open;
    StockOf m_stock;
};

} // namespace

std::unique_ptr<InksForm> familyForm(shop::FamilyDraft draft, std::vector<std::string> taken) {
    return std::make_unique<FamilyForm>(std::move(draft), std::move(taken));
}

std::unique_ptr<InksForm> fabricForm(shop::FabricDraft draft, std::vector<std::string> taken) {
    return std::make_unique<FabricForm>(std::move(draft), std::move(taken));
}

std::unique_ptr<InksForm> bucketForm(std::vector<std::string> families, std::function<std::int64_t()> now) {
    return std::make_unique<BucketForm>(std::move(families), std::move(now));
}

std::unique_ptr<InksForm> mixForm(std::int64_t number, std::vector<records::BucketOnFile> open,
                                  std::function<shop::MixStock(const std::vector<std::int64_t>&)> stock) {
    return std::make_unique<MixForm>(number, std::move(open), std::move(stock));
}

} // namespace holdfast::kiosk::screens
