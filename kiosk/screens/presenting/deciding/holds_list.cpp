// What Holds shows.
#include "kiosk/screens/presenting/deciding/holds_place.hpp"
#include "kiosk/screens/presenting/deciding/shelf_sheet.hpp"
#include "kiosk/shop/deciding/decision.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/testing_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

SheetRow headingRow(const std::string& title) {
    auto row = factRow(title, {});
    row.strong = true;
    return row;
}

} // namespace

std::string HoldsPlace::day(std::int64_t at) const {
    const auto now = m_needs.clock->wall();
    return wording::dayText(drivers::localDay({at, now.utcOffsetMinutes}), drivers::localDay(now), m_needs.speech());
}

SheetRow HoldsPlace::rowOf(const records::HoldRow& hold) const {
    const auto& speech = m_needs.speech();
    const auto why = wording::word(hold.placed.cause, speech);
    const bool back = hold.recall.has_value();
    const auto told = back ? text("holds.list.called-back", {{"why", why}})
                           : text("holds.list.since", {{"why", why}, {"since", day(hold.at)}});
    auto row = factRow(
        text("holds.list.row", {{"run", std::to_string(hold.runNumber)}, {"lot", std::to_string(hold.lotNumber)}}), {},
        hold.placed.bin > 0 ? text("holds.list.in-bin", {{"bin", std::to_string(hold.placed.bin)}, {"told", told}})
                            : told);
    if (const auto pieces = shop::deciding::piecesOfHold(hold.placed, std::nullopt)) {
        row.value = toQString(text("holds.list.pieces", {{"count", std::to_string(*pieces)}}));
    }
    row.id = toQString(std::string{kHoldsHold} + hold.placed.hold);
    row.chosen = m_hold == hold.placed.hold && m_lot;
    row.strong = hold.shipped && !back;
    return row;
}

void HoldsPlace::addList(SheetPageState& page) const {
    const auto isRecall = [&](const records::HoldRow& hold) { return hold.shipped; };
    for (const bool recalls : {true, false}) {
        bool any = false;
        if (!recalls && !m_heldBare.empty()) {
            page.list.append(headingRow(text("holds.list.holds")));
            any = true;
        }
        for (const auto& hold : m_open) {
            if (isRecall(hold) != recalls) {
                continue;
            }
            if (!any) {
                page.list.append(headingRow(text(recalls ? "holds.list.recalls" : "holds.list.holds")));
            }
            any = true;
            page.list.append(rowOf(hold));
        }
    }
    for (const auto& held : m_heldBare) {
        auto row = factRow(
            text("holds.list.row", {{"run", std::to_string(held.runNumber)}, {"lot", std::to_string(held.lot.number)}}),
            {},
            text("holds.list.since", {{"why", held.word ? wording::word(*held.word, m_needs.speech()) : held.runTitle},
                                      {"since", day(held.since)}}));
        row.id = toQString(std::string{kHoldsLot} + held.lot.id);
        row.marked = held.word.has_value();
        row.mark = held.word ? filmMark(*held.word) : MarkKind::Blank;
        row.chosen = m_lot && m_hold.empty() && m_lot->row.id == held.lot.id;
        page.list.append(row);
    }
    if (!m_unproven.empty()) {
        page.list.append(headingRow(text("holds.list.unproven")));
    }
    for (const auto& lot : m_unproven) {
        auto row = factRow(
            text("holds.list.row", {{"run", std::to_string(lot.runNumber)}, {"lot", std::to_string(lot.row.number)}}),
            {}, text("holds.list.unproven-detail", {{"title", lot.title}}));
        row.id = toQString(std::string{kHoldsLot} + lot.row.id);
        row.marked = true;
        row.mark = MarkKind::NotProven;
        row.chosen = m_lot && m_hold.empty() && m_lot->row.id == lot.row.id;
        page.list.append(row);
    }
}

void HoldsPlace::addActions(SheetPageState& page) const {
    const auto standing = m_lot->facts.standing;
    const auto* hold = m_lot->hold(m_hold);
    const auto add = [&](const char* id, const char* key, bool primary = false) {
        page.actions.append(pressOf(id, text(key), primary));
    };
    if (standing == analytics::LotStanding::unproven && !m_lot->facts.childrensWear) {
        add("holds.release-unproven", "holds.release-unproven", true);
        add("holds.decide", "holds.decide");
    } else if (standing != analytics::LotStanding::scrapped) {
        add("holds.decide", "holds.decide", true);
    }
    add("holds.pieces", "holds.pieces-form");
    if (hold != nullptr && hold->placed.bin > 0) {
        add("holds.label", "holds.label");
    }
    if (m_lot->pieces.shipped > 0) {
        add("holds.recall", "holds.recall-list");
    }
    add("holds.trace", "holds.trace");
    add("holds.certificate", "holds.certificate");
}

void HoldsPlace::addChosen(SheetPageState& page) const {
    if (!m_lot) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.pick")));
        return;
    }
    page.title = toQString(text("holds.title", {{"run", std::to_string(m_lot->plan.number)},
                                                {"lot", std::to_string(m_lot->row.number)},
                                                {"title", m_lot->plan.title}}));
    addLot(page.blocks, *m_lot, m_hold, how());
    addActions(page);
}

SheetPageState HoldsPlace::sheet() const {
    SheetPageState page;
    const auto bins = binsOf(m_open);
    std::int64_t pieces = 0;
    for (const auto& bin : bins) {
        pieces += bin.pieces.value_or(0);
    }
    page.head = page.heading = toQString(text("holds.heading"));
    page.headHow = toQString(bins.empty() ? text("holds.bins-none")
                                          : text("holds.bins", {{"count", std::to_string(bins.size())},
                                                                {"pieces", std::to_string(pieces)}}));
    page.listNone = toQString(text("holds.none"));
    addList(page);
    page.listActions = {pressOf("holds.shelf", text("holds.to-shelf")), pressOf("holds.mock", text("holds.to-mock")),
                        pressOf("holds.clue", text("holds.to-trace"))};
    page.back = pressOf("holds.back", text("holds.back"));
    page.detailOnly = m_page || (m_lot && !m_byItself);
    if (m_page) {
        m_page->addTo(page);
        return page;
    }
    if (!m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, m_said));
    }
    addChosen(page);
    return page;
}

} // namespace holdfast::kiosk::screens
