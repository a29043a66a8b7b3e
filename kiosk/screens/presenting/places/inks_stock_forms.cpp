// Forms of what is signed: families and cloths.
#include "kiosk/screens/presenting/places/inks_draft_form.hpp"

namespace holdfast::kiosk::screens {
namespace {

using shop::FabricDraft;
using shop::FamilyDraft;

constexpr InksFieldRow<FamilyDraft> kFamilyFields[] = {
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

constexpr InksFieldRow<FabricDraft> kFabricFields[] = {
    {"name", &FabricDraft::name, SheetKinds::Text},
    {"hard-ceiling", &FabricDraft::hardCeiling, SheetKinds::Number},
    {"bleed-ceiling", &FabricDraft::bleedCeiling, SheetKinds::Number},
    {"colours", &FabricDraft::coloursNotAtRisk, SheetKinds::Text, "inks.hint.colours"},
    {"source", &FabricDraft::source, SheetKinds::Text, "inks.hint.source"},
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

} // namespace

std::unique_ptr<InksForm> familyForm(shop::FamilyDraft draft, std::vector<std::string> taken) {
    return std::make_unique<FamilyForm>(std::move(draft), std::move(taken));
}

std::unique_ptr<InksForm> fabricForm(shop::FabricDraft draft, std::vector<std::string> taken) {
    return std::make_unique<FabricForm>(std::move(draft), std::move(taken));
}

} // namespace holdfast::kiosk::screens
