#include "kiosk/screens/presenting/deciding/decision_form.hpp"

#include "kiosk/wording/deciding_sentences.hpp"

#include <cstdlib>

namespace holdfast::kiosk::screens {
namespace {

using records::DecisionWord;
using shop::deciding::Cause;

constexpr std::string_view kWord = "holds.form.word.";
constexpr std::string_view kEnds = "holds.form.ends.";
constexpr std::string_view kReason = "holds.form.reason.";

} // namespace

DecisionForm::DecisionForm(const PlaceNeeds& needs, Done done, LotShown lot, std::vector<std::string> reasons)
    : HoldsPage{needs, std::move(done)}, m_lot{std::move(lot)}, m_reasons{std::move(reasons)}, m_ids{needs.newId(),
                                                                                                     needs.newId()} {
    m_draft.holds = shop::deciding::openHoldsOf(m_lot.facts);
}

void DecisionForm::reload() {
    auto lot = lotShown(*needs().book, m_lot.row.id);
    if (!lot) {
        tell(lot.error());
    } else if (*lot) {
        m_lot = std::move(**lot);
    }
}

bool DecisionForm::asksForReport() const {
    return m_lot.facts.childrensWear && m_draft.word == DecisionWord::released;
}

void DecisionForm::toggleHold(const std::string& hold) {
    if (std::erase(m_draft.holds, hold) == 0) {
        m_draft.holds.push_back(hold);
    }
}

bool DecisionForm::act(const std::string& id) {
    if (id == "holds.form.sign") {
        sign();
        return true;
    }
    if (const auto word = restOf(id, kWord)) {
        for (const auto one : shop::deciding::wordsFor(m_lot.facts)) {
            if (wording::nameOf(one) == *word) {
                m_draft.word = one;
            }
        }
    } else if (const auto hold = restOf(id, kEnds)) {
        toggleHold(*hold);
    } else if (const auto at = restOf(id, kReason)) {
        const auto index = static_cast<std::size_t>(std::atoi(at->c_str()));
        if (index < m_reasons.size()) {
            m_draft.reason = m_reasons[index];
        }
    } else {
        return false;
    }
    m_touched = true;
    m_faults.clear();
    return true;
}

bool DecisionForm::enter(const std::string& field, const std::string& typed) {
    if (field == "holds.form.reason") {
        m_draft.reason = typed;
    } else if (field == "holds.form.laboratory") {
        m_draft.laboratoryReport = typed;
    } else {
        return false;
    }
    m_touched = true;
    m_faults.clear();
    return true;
}

void DecisionForm::signUnproven() {
    m_draft.word = DecisionWord::released;
    m_draft.reason = text("holds.unproven-reason");
    sign();
}

void DecisionForm::sign() {
    reload();
    m_draft.signers.clear();
    m_faults = shop::deciding::faultsBeforeSigning(m_draft, m_lot.facts);
    if (m_faults.empty()) {
        signAfresh(shop::Right::decideHolds, 0, [this](std::int64_t person) { signedBy(person); });
    }
}

void DecisionForm::signedBy(std::int64_t person) {
    reload(); // others may have decided while somebody typed a PIN
    m_draft.signers.push_back(person);
    m_faults = shop::deciding::faultsOf(m_draft, m_lot.facts);
    if (m_faults.empty()) {
        write();
    } else if (m_draft.signers.size() == 1 && m_faults.size() == 1 &&
               shop::deciding::has(m_faults, Cause::needsSecondEntitledSigner)) {
        signAfresh(shop::Right::decideHolds, person, [this](std::int64_t second) { signedBy(second); });
    }
}

void DecisionForm::write() {
    auto list = shop::deciding::decisionFrom(m_draft, m_lot.facts, m_ids);
    if (!list) {
        m_faults = list.error();
        return;
    }
    const auto word = *m_draft.word;
    const int lot = m_lot.facts.reRun.number;
    Keeping keeping;
    keeping.list = std::move(*list);
    keeping.person = m_draft.signers.front();
    HoldsPage::write(std::move(keeping), [this, word, lot] {
        m_touched = false;
        done(word == DecisionWord::reRun ? text("holds.said.re-run", {{"lot", std::to_string(lot)}})
                                         : text("holds.said.decided", {{"word", wording::word(word, speech())}}));
    });
}

void DecisionForm::addWord(SheetPageState& page) const {
    std::vector<Choice> choices;
    const auto words = shop::deciding::wordsFor(m_lot.facts);
    for (const auto word : words) {
        choices.push_back({std::string{kWord} + wording::nameOf(word), wording::chosenText(word, speech())});
    }
    page.blocks.append(
        choicesBlock(text("holds.form.word"), choices,
                     m_draft.word ? std::string{kWord} + wording::nameOf(*m_draft.word) : std::string{}));
    const bool mayRelease = std::find(words.begin(), words.end(), DecisionWord::released) != words.end();
    if (!mayRelease) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.form.never-released")));
    }
    if (m_draft.word && *m_draft.word != DecisionWord::released) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.form." + wording::nameOf(*m_draft.word))));
    }
    if (m_draft.word == DecisionWord::reRun) {
        page.blocks.append(textBlock(SheetKinds::Note, text("holds.form.caution-re-run")));
    }
}

void DecisionForm::addHolds(SheetPageState& page) const {
    const auto open = m_lot.openHolds();
    if (open.size() < 2 || m_draft.word == DecisionWord::recalled) {
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.form.holds")));
    std::vector<SheetRow> rows;
    for (const auto* hold : open) {
        auto row = factRow(wording::sentence(hold->placed.cause, speech()), {},
                           wording::piecesText(hold->placed, m_lot.pieces.made, speech()));
        row.id = toQString(std::string{kEnds} + hold->placed.hold);
        row.chosen = std::find(m_draft.holds.begin(), m_draft.holds.end(), hold->placed.hold) != m_draft.holds.end();
        rows.push_back(row);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
}

void DecisionForm::addReason(SheetPageState& page) const {
    std::vector<SheetField> fields{fieldWith("holds.form.reason", "reason", text("holds.form.reason"), m_draft.reason,
                                             SheetKinds::Text, text("holds.form.reason-hint"))};
    if (asksForReport()) {
        fields.push_back(fieldWith("holds.form.laboratory", "laboratory", text("holds.form.laboratory"),
                                   m_draft.laboratoryReport, SheetKinds::Text));
    }
    page.blocks.append(fieldsBlock(fields));
    if (!m_reasons.empty()) {
        std::vector<Choice> choices;
        std::string chosen;
        for (std::size_t i = 0; i < m_reasons.size(); ++i) {
            const auto id = std::string{kReason} + std::to_string(i);
            choices.push_back({id, m_reasons[i]});
            chosen = m_draft.reason == m_reasons[i] ? id : chosen;
        }
        page.blocks.append(choicesBlock(text("holds.form.reasons"), choices, chosen));
    }
}

void DecisionForm::addTo(SheetPageState& page) const {
    page.title = toQString(text(
        "holds.form.title", {{"run", std::to_string(m_lot.plan.number)}, {"lot", std::to_string(m_lot.row.number)}}));
    std::vector<std::string> shown{"reason"};
    if (asksForReport()) {
        shown.emplace_back("laboratory");
    }
    addOtherFaults(page.blocks, shown);
    addWord(page);
    addHolds(page);
    addReason(page);
    if (m_draft.word) {
        page.blocks.append(
            textBlock(SheetKinds::Sentence,
                      text(shop::deciding::takesTwo(m_draft, m_lot.facts) ? "holds.form.two" : "holds.form.one")));
    }
    if (m_lot.facts.childrensWear) {
        page.blocks.append(textBlock(SheetKinds::Note, text("holds.form.caution-children")));
    }
    page.actions = {pressOf("holds.form.sign", text("holds.form.sign"), true),
                    pressOf("holds.back", text("holds.leave"))};
}

} // namespace holdfast::kiosk::screens
