// What a complaint's page shows, in the order that an owner asks in.
#include "kiosk/screens/presenting/deciding/complaint_way.hpp"
#include "kiosk/screens/presenting/deciding/large_first.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

using records::ClueHit;
using shop::deciding::JudgedNow;

const char* nameOf(ClueHit hit) {
    switch (hit) {
    case ClueHit::runNumber:
        return "fit.run-number";
    case ClueHit::reference:
        return "fit.reference";
    case ClueHit::customer:
        return "fit.customer";
    case ClueHit::title:
        return "fit.title";
    case ClueHit::carton:
        return "fit.carton";
    case ClueHit::bucket:
        return "fit.bucket";
    case ClueHit::batch:
        return "fit.batch";
    case ClueHit::print:
        break;
    }
    return "fit.print";
}

TrailEntry weight(const std::string& side, const std::vector<std::string>& parts, const std::string& none) {
    TrailEntry entry;
    entry.time = toQString(side);
    entry.strong = true;
    entry.title = largeFirst(parts.empty() ? none : parts.front());
    QStringList rest;
    for (std::size_t i = 1; i < parts.size(); ++i) {
        rest << largeFirst(parts[i]);
    }
    entry.detail = rest.join(u'\n');
    return entry;
}

} // namespace

SheetBlock ComplaintWay::weighed(const std::vector<std::string>& speaksFor,
                                 const std::vector<std::string>& against) const {
    SheetBlock block;
    block.kind = SheetKinds::Trail;
    block.trail = {weight(say("for"), speaksFor, say("for-none")), weight(say("against"), against, say("for-none"))};
    return block;
}

std::string ComplaintWay::lotText(const char* key, records::FactIndex lot) const {
    const auto& facts = *m_found->facts;
    const auto& row = facts.lots[static_cast<std::size_t>(lot)];
    const auto run = row.run == records::kNoFact ? 0 : facts.runs[static_cast<std::size_t>(row.run)].number;
    return say(key, {{"run", std::to_string(run)}, {"lot", std::to_string(row.number)}});
}

/// The list at the left is the clue and the runs that fit it.
void ComplaintWay::addClue(SheetPageState& page) const {
    const auto& taken = m_row.taken;
    page.heading = toQString(say("clue-heading"));
    auto clue = factRow(
        !taken.clue.empty()    ? taken.clue
        : !taken.words.empty() ? taken.words
                               : wording::word(taken.what, speech()),
        {},
        say("clue-row",
            {{"pieces", taken.pieces ? say("pieces", {{"count", std::to_string(*taken.pieces)}}) : say("clue-untold")},
             {"customer", taken.customer}}));
    clue.title = largeFirst(clue.title.toStdString());
    clue.strong = true;
    clue.id = QStringLiteral("complaint.said");
    page.list.append(clue);
    page.list.append(
        factRow(m_fits.empty() ? say("fits-none") : say("fits", {{"count", std::to_string(m_fits.size())}}), {}));
    for (const auto& fit : m_fits) {
        std::vector<std::string> by;
        for (const auto hit : fit.by) {
            by.push_back(say(nameOf(hit)));
        }
        const bool tied = taken.run == fit.run.run;
        auto row = factRow(say("fits-run", {{"run", std::to_string(fit.run.runNumber)}}), {},
                           say(tied ? by.empty() ? "fits-tied" : "fits-tied-by" : "fits-by",
                               {{"title", fit.run.runTitle}, {"what", joined(by, ", ")}}));
        row.id = toQString("complaint.fits." + fit.run.run);
        row.chosen = fit.run.run == m_run;
        page.list.append(row);
    }
    page.back = pressOf("complaint.clue", say("clue-heading"));
    page.detailOnly = !m_run.empty() && !m_clueShown;
}

void ComplaintWay::addFinding(SheetPageState& page) const {
    const auto& finding = *m_row.finding;
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.complaint.finding")));
    std::vector<SheetRow> facts{
        factRow(text("holds.complaint.finding-cause"),
                wording::causeText(finding.cause, shop::trending::causeOf(finding.cause), speech()))};
    if (!finding.action.empty()) {
        facts.push_back(factRow(text("holds.complaint.finding-action"), finding.action));
    }
    facts.push_back(factRow(
        text("holds.complaint.finding-proven"),
        text(finding.provenLater ? "holds.complaint.finding-proven.yes" : "holds.complaint.finding-proven.no")));
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    page.blocks.append(textBlock(SheetKinds::Note, text("holds.complaint.finding-signed",
                                                        {{"names", namesOf(finding.signers, m_people, speech())}})));
}

void ComplaintWay::addThenAndNow(SheetPageState& page) const {
    if (!m_thenAndNow) {
        page.blocks.append(textBlock(SheetKinds::Sentence, say("no-reading")));
        return;
    }
    const auto& shown = *m_thenAndNow;
    const auto row = [&](const std::string& title, const analytics::Verdict& verdict, const std::string& detail) {
        const auto margin = wording::marginText(verdict.margin, speech());
        const auto verdictWord = wording::word(verdict.word, speech());
        auto made = factRow(
            title, margin.empty() ? verdictWord : say("word-margin", {{"word", verdictWord}, {"margin", margin}}),
            detail);
        made.marked = true;
        made.mark = filmMark(verdict.word);
        return made;
    };
    const auto taken = say("reading-detail", {{"instrument", shown.instrument},
                                              {"day", wording::dayOf(shown.takenAt, how().utcOffsetMinutes)}});
    std::vector<SheetRow> rows;
    if (shown.why == JudgedNow::same) {
        rows.push_back(row(say("only-reading"), shown.now, taken + " · " + wording::nowText(shown, speech())));
    } else {
        rows.push_back(row(say("then"), shown.then, taken));
        rows.push_back(row(say("now"), shown.now, wording::nowText(shown, speech())));
    }
    page.blocks.append(rowsBlock(SheetKinds::Facts, rows));
}

void ComplaintWay::addRun(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("run-heading")));
    if (!m_plan) {
        page.blocks.append(textBlock(SheetKinds::Sentence, say(m_fits.empty() ? "fits-none" : "pick-run")));
        return;
    }
    const auto asked = lot();
    const records::LotRow* row = nullptr;
    for (const auto& one : m_lots) {
        row = one.id == asked ? &one : row;
    }
    const auto run = std::to_string(m_plan->number);
    page.blocks.append(leadBlock(row == nullptr
                                     ? say("run-only", {{"run", run}})
                                     : say("run-lot", {{"run", run}, {"lot", std::to_string(row->number)}})));
    const auto& first = row != nullptr ? row : m_lots.empty() ? nullptr : &m_lots.front();
    page.blocks.append(textBlock(
        SheetKinds::Note, first == nullptr ? m_plan->title
                                           : say(m_dryer.empty() ? "run-detail-no-dryer" : "run-detail",
                                                 {{"title", m_plan->title},
                                                  {"dryer", m_dryer},
                                                  {"day", wording::dayOf(first->openedAt, how().utcOffsetMinutes)}})));
    if (m_row.taken.run != m_run && !m_row.finding) {
        page.blocks.append(textBlock(SheetKinds::Sentence, say("looking")));
        page.blocks.append(pressBlock({pressOf("complaint.tie", say("tie"))}));
    }
    addThenAndNow(page);
}

void ComplaintWay::addOurs(SheetPageState& page) const {
    if (!records::isPrintFailure(m_row.taken.what)) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.complaint.effect.none")));
        return;
    }
    if (m_working) {
        page.blocks.append(textBlock(SheetKinds::Note, say(m_found ? "working-again" : "working")));
    }
    if (!m_found) {
        if (!m_working) {
            page.blocks.append(textBlock(SheetKinds::Sentence, say("not-worked-out")));
        }
        return;
    }
    if (!m_found->risk) {
        page.blocks.append(textBlock(SheetKinds::Sentence,
                                     say("not-worked-out") + " " +
                                         largeFirst(wording::whyText(m_found->risk.error(), speech())).toStdString()));
        return;
    }
    std::vector<std::string> speaksFor;
    std::vector<std::string> against;
    for (const auto& one : risk()->evidence) {
        (one.speaksFor ? speaksFor : against).push_back(wording::evidenceText(one, speech()));
    }
    page.blocks.append(leadBlock(wording::oursText(risk()->ours, speech())));
    page.blocks.append(weighed(speaksFor, against));
}

void ComplaintWay::addMore(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("said")));
    if (!m_row.taken.words.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, m_row.taken.words));
    }
    if (m_row.versions > 1) {
        page.blocks.append(textBlock(SheetKinds::Note,
                                     text("holds.complaint.changed", {{"count", std::to_string(m_row.versions - 1)}})));
    }
    std::vector<ActionState> presses{pressOf("complaint.said", say(m_row.versions > 1 ? "said-changed" : "said"))};
    if (!m_run.empty()) {
        presses.push_back(pressOf("complaint.trace", text("holds.trace")));
    }
    if (!lot().empty()) {
        presses.push_back(pressOf("complaint.lot", text("holds.complaint.to-hold")));
    }
    page.blocks.append(pressBlock(presses));
}

void ComplaintWay::addActions(SheetPageState& page) const {
    const bool closed = m_row.finding.has_value();
    const auto open = holdable();
    bool primary = closed; // then nothing presses
    for (const auto& lot : risk() != nullptr ? risk()->lots : std::vector<LotAtRisk>{}) {
        const auto& id = lotOf(lot).id;
        const bool alone = open.size() == 1 && id == open.front();
        if (alone || (id == m_chosenLot && canHold(lot))) {
            page.besideActions.append(
                pressOf(alone ? "complaint.hold-all" : "complaint.hold-one", lotText("hold-one", lot.lot), !primary));
            primary = true;
        }
    }
    if (open.size() > 1) {
        page.besideActions.append(
            pressOf("complaint.hold-all", say("hold-all", {{"count", std::to_string(open.size())}}), !primary));
        primary = true;
    }
    if (risk() != nullptr) {
        page.besideActions.append(pressOf("complaint.recall", say("recall")));
    }
    if (!closed) {
        page.actions.append(pressOf("complaint.close", text("holds.complaint.close"), !primary));
        page.listActions.append(pressOf("complaint.change", say("change-clue")));
    }
    page.listActions.append(pressOf("complaint.all", say("all-complaints")));
}

void ComplaintWay::addTo(SheetPageState& page) const {
    const auto& taken = m_row.taken;
    std::vector<std::string> title{wording::word(taken.what, speech())};
    if (taken.pieces) {
        title.push_back(say("pieces", {{"count", std::to_string(*taken.pieces)}}));
    }
    title.push_back(taken.customer);
    page.headHow = largeFirst(joined(title, " · "));
    addClue(page);
    if (m_fault) {
        page.blocks.append(leadBlock(wording::sentence(*m_fault, speech())));
    }
    if (!m_said.empty()) {
        page.blocks.append(leadBlock(m_said));
    }
    if (m_row.finding) {
        addFinding(page);
    }
    addRun(page);
    if (!m_run.empty()) {
        addOurs(page);
    }
    addMore(page);
    if (risk() != nullptr) {
        SheetPageState beside;
        addAtRisk(beside);
        addToday(beside);
        addWhy(beside);
        addSince(beside);
        addFix(beside);
        page.beside = std::move(beside.blocks);
    }
    addActions(page);
}

} // namespace holdfast::kiosk::screens
