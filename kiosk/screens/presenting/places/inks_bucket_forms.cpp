// Forms of what nobody signs: buckets and mixes.
#include "kiosk/screens/presenting/places/inks_draft_form.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr InksFieldRow<shop::BucketDraft> kBucketFields[] = {
    {"colour", &shop::BucketDraft::colour, SheetKinds::Text},
    {"batch", &shop::BucketDraft::batch, SheetKinds::Text},
    {"expiry", &shop::BucketDraft::expiry, SheetKinds::Date, "inks.hint.expiry"},
    {"additive", &shop::BucketDraft::additive, SheetKinds::Number},
};

constexpr InksFieldRow<shop::MixDraft> kMixFields[] = {
    {"name", &shop::MixDraft::name, SheetKinds::Text},
    {"colour", &shop::MixDraft::colour, SheetKinds::Text},
    {"additive", &shop::MixDraft::additive, SheetKinds::Number},
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

std::unique_ptr<InksForm> bucketForm(std::vector<std::string> families, std::function<std::int64_t()> now) {
    return std::make_unique<BucketForm>(std::move(families), std::move(now));
}

std::unique_ptr<InksForm> mixForm(std::int64_t number, std::vector<records::BucketOnFile> open,
                                  std::function<shop::MixStock(const std::vector<std::int64_t>&)> stock) {
    return std::make_unique<MixForm>(number, std::move(open), std::move(stock));
}

} // namespace holdfast::kiosk::screens
