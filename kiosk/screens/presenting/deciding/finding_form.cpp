#include "kiosk/screens/presenting/deciding/finding_form.hpp"

#include "kiosk/screens/presenting/deciding/large_first.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

using shop::trending::CureCause;

constexpr std::string_view kFoundCause = "complaint.finding.cause.";

std::optional<CureCause> causeNamed(const std::string& name) {
    for (std::size_t i = 0; i < shop::trending::kCureCauses; ++i) {
        const auto cause = static_cast<CureCause>(i);
        if (wording::nameOf(cause) == name) {
            return cause;
        }
    }
    return std::nullopt;
}

} // namespace

shop::deciding::FindingDraft FindingForm::draft() const {
    auto made = m_draft;
    if (m_cause && *m_cause != CureCause::other) {
        const auto remark = shop::trimmed(m_draft.cause);
        made.cause = std::string{shop::trending::wordOf(*m_cause)} + (remark.empty() ? "" : ": " + remark);
    }
    return made;
}

bool FindingForm::isClosed() const {
    const auto now = records::complaintById(needs().book->reader(), m_row.taken.complaint);
    return now && *now && (*now)->finding.has_value();
}

bool FindingForm::act(const std::string& id) {
    if (id == "complaint.finding.sign") {
        const auto finding = shop::deciding::findingFrom(draft(), m_row.taken, isClosed(), {});
        m_faults = finding ? shop::deciding::Faults{} : finding.error();
        std::erase_if(m_faults,
                      [](const auto& fault) { return fault.cause == shop::deciding::Cause::needsEntitledSigner; });
        if (m_faults.empty()) {
            signAfresh(shop::Right::decideHolds, 0, [this](std::int64_t person) { sign(person); });
        }
        return true;
    }
    if (const auto cause = restOf(id, kFoundCause)) {
        m_cause = causeNamed(*cause);
        m_touched = true;
        m_faults.clear();
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
    auto finding = shop::deciding::findingFrom(draft(), m_row.taken, isClosed(), {person});
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
    std::vector<Choice> causes;
    for (std::size_t i = 0; i < shop::trending::kCureCauses; ++i) {
        const auto cause = static_cast<CureCause>(i);
        causes.push_back({std::string{kFoundCause} + wording::nameOf(cause),
                          largeFirst(wording::word(cause, speech())).toStdString()});
    }
    page.blocks.append(choicesBlock(text("holds.risk.cause-choose"), causes,
                                    m_cause ? std::string{kFoundCause} + wording::nameOf(*m_cause) : std::string{}));
    if (m_cause) {
        page.blocks.append(textBlock(SheetKinds::Note, wording::decidesText(*m_cause, speech())));
    }
    page.blocks.append(
        fieldsBlock({fieldWith("complaint.finding.cause", "cause", text("holds.complaint.finding-cause"), m_draft.cause,
                               SheetKinds::Text, text("holds.risk.cause-remark")),
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
