#include "kiosk/screens/presenting/deciding/finding_form.hpp"

#include "kiosk/wording/deciding_sentences.hpp"

namespace holdfast::kiosk::screens {

bool FindingForm::isClosed() const {
    const auto now = records::complaintById(needs().book->reader(), m_row.taken.complaint);
    return now && *now && (*now)->finding.has_value();
}

bool FindingForm::act(const std::string& id) {
    if (id == "complaint.finding.sign") {
        const auto finding = shop::deciding::findingFrom(m_draft, m_row.taken, isClosed(), {});
        m_faults = finding ? shop::deciding::Faults{} : finding.error();
        std::erase_if(m_faults,
                      [](const auto& fault) { return fault.cause == shop::deciding::Cause::needsEntitledSigner; });
        if (m_faults.empty()) {
            signAfresh(shop::Right::decideHolds, 0, [this](std::int64_t person) { sign(person); });
        }
        return true;
    }
    if (id == "complaint.finding.proven.yes" || id == "complaint.finding.proven.no") {
        m_draft.provenLater = id == "complaint.finding.proven.yes";
        m_touched = true;
        return true;
    }
    return false;
}

bool FindingForm::enter(const std::string& field, const std::string& typed) {
    if (field == "complaint.finding.cause") {
        m_draft.cause = typed;
    } else if (field == "complaint.finding.action") {
        m_draft.action = typed;
    } else {
        return false;
    }
    m_touched = true;
    m_faults.clear();
    return true;
}

void FindingForm::sign(std::int64_t person) {
    auto finding = shop::deciding::findingFrom(m_draft, m_row.taken, isClosed(), {person});
    if (!finding) {
        m_faults = finding.error();
        return;
    }
    Keeping keeping;
    keeping.list.emplace_back(std::move(*finding));
    keeping.person = person;
    write(std::move(keeping), [this] {
        m_touched = false;
        done(text("holds.complaint.kept", {{"number", std::to_string(m_row.taken.number)}}));
    });
}

void FindingForm::addTo(SheetPageState& page) const {
    page.title = toQString(text("holds.complaint.finding"));
    addOtherFaults(page.blocks, {"cause", "action"});
    page.blocks.append(
        fieldsBlock({fieldWith("complaint.finding.cause", "cause", text("holds.complaint.finding-cause"), m_draft.cause,
                               SheetKinds::Text),
                     fieldWith("complaint.finding.action", "action", text("holds.complaint.finding-action"),
                               m_draft.action, SheetKinds::Text)}));
    const std::string proven = "complaint.finding.proven.";
    page.blocks.append(choicesBlock(text("holds.complaint.finding-proven"),
                                    {{proven + "no", text("holds.complaint.finding-proven.no")},
                                     {proven + "yes", text("holds.complaint.finding-proven.yes")}},
                                    proven + (m_draft.provenLater ? "yes" : "no")));
    page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.form.one")));
    page.actions = {pressOf("complaint.finding.sign", text("holds.complaint.finding-sign"), true),
                    pressOf("complaint.back", text("holds.leave"))};
}

} // namespace holdfast::kiosk::screens
