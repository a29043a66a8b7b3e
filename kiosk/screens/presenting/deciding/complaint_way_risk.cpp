// What of a complaint's page is worked out beside it: what else is at risk, what to do, why, since when.
#include "kiosk/screens/presenting/deciding/complaint_way.hpp"
#include "kiosk/screens/presenting/deciding/large_first.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using records::LotState;

constexpr std::size_t kLotsShown = 8;

} // namespace

std::string ComplaintWay::lotDetail(const LotAtRisk& lot) const {
    const auto& facts = *m_found->facts;
    std::vector<std::string> parts;
    if (!lot.shipments.empty()) {
        const auto& out = facts.shipments[static_cast<std::size_t>(lot.shipments.front())];
        const bool named = !out.cartons.empty() && lotOf(lot).id == m_chosenLot; // they are many: of the chosen one
        parts.push_back(say(named ? "lot-shipped-cartons" : "lot-shipped",
                            {{"count", std::to_string(out.pieces)},
                             {"day", wording::dayOf(out.at, facts.utcOffsetMinutes)},
                             {"customer", out.customer.empty() ? text("holds.recall.no-customer") : out.customer},
                             {"cartons", shop::namesJoined(out.cartons)}}));
    }
    if (lot.shipments.size() > 1) {
        parts.push_back(say("lot-shipped-more", {{"count", std::to_string(lot.shipments.size() - 1)}}));
    }
    if (!lot.here) {
        parts.push_back(say("lot-not-counted"));
    } else if (*lot.here > 0) {
        parts.push_back(
            say(lot.state == LotState::onHold ? "lot-here-hold" : "lot-here", {{"count", std::to_string(*lot.here)}}));
    }
    if (lot.badTests > 0) {
        parts.push_back(
            say("lot-failed-tests", {{"count", std::to_string(lot.badTests)}, {"of", std::to_string(lot.tests)}}));
    } else if (lot.failed) {
        parts.push_back(say("lot-failed"));
    }
    if (lot.bad && lot.pieces) {
        parts.push_back(wording::badText(*lot.bad, *lot.pieces, speech()));
    }
    if (lot.asked) {
        parts.push_back(say("lot-asked"));
    }
    return joined(parts, " · ");
}

SheetRow ComplaintWay::lotRow(const LotAtRisk& lot) const {
    auto margin = lot.margin ? speech().figures.signedDifference(*lot.margin) : std::string{};
    auto mark = lot.worst ? filmMark(*lot.worst) : MarkKind::Blank;
    if (lot.asked && !lot.worst && m_thenAndNow) { // none of its readings was drawn, but it was read
        margin = wording::marginText(m_thenAndNow->now.margin, speech());
        mark = filmMark(m_thenAndNow->now.word);
    }
    auto row = factRow(lotText("run-lot", lot.lot), margin, lotDetail(lot));
    row.id = toQString("complaint.at-risk." + lotOf(lot).id);
    row.marked = true;
    row.mark = mark;
    row.chosen = lotOf(lot).id == m_chosenLot;
    row.strong = lot.asked;
    return row;
}

void ComplaintWay::addLots(SheetPageState& page) const {
    const auto& lots = risk()->lots;
    const auto shown = m_allLots ? lots.size() : std::min(lots.size(), kLotsShown);
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < shown; ++i) {
        rows.push_back(lotRow(lots[i]));
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    if (shown < lots.size()) {
        page.blocks.append(pressBlock(
            {pressOf("complaint.all-lots", say("lots-more", {{"count", std::to_string(lots.size() - shown)}}))}));
    }
}

void ComplaintWay::addAtRisk(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("at-risk-heading")));
    const auto& risk = *this->risk();
    const auto lots = say("lots", {{"count", std::to_string(risk.lots.size())}});
    const auto pieces =
        risk.pieces > 0 ? say("pieces", {{"count", std::to_string(risk.pieces)}}) : say("pieces-uncounted");
    auto figure = textBlock(SheetKinds::Figure, say("lots-pieces", {{"lots", lots}, {"pieces", pieces}}));
    int onHold = 0;
    for (const auto& lot : risk.lots) {
        onHold += lot.state == LotState::onHold ? lot.here.value_or(0) : 0;
    }
    const auto shares = risk.suspect
                            ? say("at-risk-shares", {{"level", wording::levelText(risk.suspect->level, speech())}})
                            : say(risk.lots.size() > 1 ? "at-risk-episode" : "at-risk-alone");
    figure.note = toQString(shares + " · " +
                            say(onHold > 0 ? "where-hold" : "where", {{"shipped", std::to_string(risk.shipped)},
                                                                      {"here", std::to_string(risk.here)},
                                                                      {"hold", std::to_string(onHold)}}));
    page.blocks.append(figure);
    page.blocks.append(
        textBlock(SheetKinds::Sentence,
                  risk.bad ? say("bad-sentence", {{"bad", wording::badText(*risk.bad, risk.pieces, speech())}})
                           : say("bad-unknown", {{"why", wording::whyText(risk.bad.error(), speech())}})));
    const auto caveat = risk.bad ? wording::caveatText(risk.caveat, speech()) : std::string{};
    if (!caveat.empty()) {
        page.blocks.append(textBlock(SheetKinds::Note, caveat));
    }
    addLots(page);
}

void ComplaintWay::addTonight(SheetPageState& page) const {
    const auto& facts = *m_found->facts;
    if (risk()->wash.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, say("tonight-none")));
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Sentence, say("tonight")));
    std::vector<SheetRow> rows;
    for (const auto& piece : risk()->wash) {
        const auto& print = facts.prints[static_cast<std::size_t>(piece.print)];
        const auto& printLot = facts.lots[static_cast<std::size_t>(piece.lot)];
        const auto run =
            printLot.run == records::kNoFact ? 0 : facts.runs[static_cast<std::size_t>(printLot.run)].number;
        auto row = factRow(say("tonight-row", {{"print", shop::printSigns(print.number)}}),
                           say("tonight-shelf", {{"shelf", piece.shelf}}),
                           say("tonight-chance", {{"run", std::to_string(run)},
                                                  {"lot", std::to_string(printLot.number)},
                                                  {"percent", wording::numberText(100.0 * piece.chance, 0)}}));
        row.id = toQString("complaint.wash." + std::to_string(print.number));
        rows.push_back(row);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
}

void ComplaintWay::addToday(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("today-heading")));
    const auto open = holdable().size();
    page.blocks.append(leadBlock(open == 0 ? say("today-held") : say("today-hold", {{"count", std::to_string(open)}})));
    if (open > 1) {
        page.blocks.append(textBlock(SheetKinds::Note, say("lots-pick")));
    }
    page.blocks.append(textBlock(SheetKinds::Sentence,
                                 risk()->shipped > 0 ? say("today-out", {{"count", std::to_string(risk()->shipped)}})
                                                     : say("today-in")));
    addTonight(page);
}

void ComplaintWay::addWhy(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("why-heading")));
    if (!risk()->suspect) {
        const auto& refusal = risk()->suspect.error();
        const bool looked = refusal.why == shop::trending::NoFigure::noChange; // and found chance alone
        const auto why = largeFirst(wording::whyText(refusal, speech())).toStdString();
        page.blocks.append(textBlock(SheetKinds::Sentence, say("no-suspect") + (looked ? "" : " " + why)));
    } else {
        const auto& suspect = *risk()->suspect;
        page.blocks.append(leadBlock(wording::suspectText(suspect, speech())));
        page.blocks.append(weighed(wording::suspectFor(suspect, speech()), wording::suspectAgainst(suspect, speech())));
        page.blocks.append(
            textBlock(SheetKinds::Sentence, wording::chanceText(suspect.p, speech()) + " " + say("sharing")));
    }
    std::vector<ActionState> presses;
    if (suspects() > 1) {
        const bool last = m_suspect + 1 == suspects();
        presses.push_back(pressOf("complaint.next-suspect", say(last ? "first-suspect" : "next-suspect")));
    }
    presses.push_back(pressOf("complaint.causes", say("causes")));
    page.blocks.append(pressBlock(presses));
}

void ComplaintWay::addSince(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("since-heading")));
    const auto& since = risk()->since;
    const auto& facts = *m_found->facts;
    if (!risk()->suspect) {
        page.blocks.append(textBlock(SheetKinds::Sentence, say("since-no-suspect")));
        return;
    }
    if (!since) {
        const bool none = since.error().why == shop::trending::NoFigure::noChange;
        page.blocks.append(textBlock(
            SheetKinds::Sentence,
            none ? say("since-none") : say("since-unknown", {{"why", wording::whyText(since.error(), speech())}})));
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Sentence, wording::sinceText(*since, facts.utcOffsetMinutes, speech())));
    page.blocks.append(
        textBlock(SheetKinds::Sentence, say(since->events.empty() ? "since-events-none" : "since-events")));
    SheetBlock trail;
    trail.kind = SheetKinds::Trail;
    for (const auto index : since->events) {
        const auto& event = facts.events[static_cast<std::size_t>(index)];
        TrailEntry entry;
        entry.time = toQString(wording::clockText(event.at, facts.utcOffsetMinutes));
        entry.day = toQString(wording::dayOf(event.at, facts.utcOffsetMinutes));
        entry.title = largeFirst(wording::eventText(facts, event, speech()));
        trail.trail.append(entry);
    }
    if (!trail.trail.isEmpty()) {
        page.blocks.append(trail);
    }
}

void ComplaintWay::addFix(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, say("fix-heading")));
    if (!m_found->fix) {
        page.blocks.append(textBlock(SheetKinds::Sentence, say("fix-none")));
        return;
    }
    const auto& fix = *m_found->fix;
    const auto offset = m_found->facts->utcOffsetMinutes;
    page.blocks.append(leadBlock(fix.verdict
                                     ? wording::fixText(*fix.verdict, offset, speech())
                                     : say("fix-unknown", {{"why", wording::whyText(fix.verdict.error(), speech())}})));
    page.blocks.append(textBlock(SheetKinds::Sentence,
                                 say("fix-done", {{"day", wording::dayOf(fix.at, offset)}, {"action", fix.action}})));
    if (fix.verdict) {
        page.blocks.append(textBlock(SheetKinds::Note,
                                     say("fix-counts", {{"before", std::to_string(fix.verdict->complaintsBefore)},
                                                        {"shippedBefore", std::to_string(fix.verdict->shippedBefore)},
                                                        {"after", std::to_string(fix.verdict->complaintsAfter)},
                                                        {"shippedAfter", std::to_string(fix.verdict->shippedAfter)}})));
    }
}

} // namespace holdfast::kiosk::screens
