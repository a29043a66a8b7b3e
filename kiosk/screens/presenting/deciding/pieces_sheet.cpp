#include "kiosk/screens/presenting/deciding/pieces_sheet.hpp"

#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::screens {
namespace {

using records::PiecePlace;

constexpr std::string_view kAdd = "holds.pieces.add.";
constexpr std::string_view kCounted = "holds.pieces.counted.";
constexpr std::string_view kEntry = "holds.pieces.entry.";
constexpr std::array kPlaces{PiecePlace::shipped, PiecePlace::retained, PiecePlace::tested, PiecePlace::scrapped};

} // namespace

void PiecesSheet::reload() {
    auto lot = lotShown(*needs().book, m_lot.row.id);
    if (!lot) {
        tell(lot.error());
    } else if (*lot) {
        m_lot = std::move(**lot);
        m_histories = shop::deciding::historiesOf(m_lot.moves);
    }
}

const shop::deciding::MoveHistory* PiecesSheet::shownHistory() const {
    for (const auto& history : m_histories) {
        if (history.chain.front().entry == m_entry) {
            return &history;
        }
    }
    return nullptr;
}

bool PiecesSheet::act(const std::string& id) {
    const auto today = wording::dateText(drivers::localDay(needs().clock->wall()));
    if (const auto to = restOf(id, kAdd)) {
        for (const auto place : kPlaces) {
            if (wording::nameOf(place) == *to) {
                m_move.emplace();
                m_move->to = place;
                m_move->day = today;
                m_move->customer = place == PiecePlace::shipped ? m_lot.plan.customer : std::string{};
            }
        }
        m_entry.clear();
    } else if (id == "holds.pieces.count") {
        m_count.emplace();
        m_entry.clear();
    } else if (const auto counted = restOf(id, kCounted)) {
        for (const auto& row : m_lot.counts) {
            if (row.entry == *counted) {
                m_count = shop::deciding::correctionOf(row);
            }
        }
        m_entry.clear();
    } else if (const auto entry = restOf(id, kEntry)) {
        m_entry = *entry == m_entry ? std::string{} : *entry;
    } else if (id == "holds.pieces.correct" && shownHistory() != nullptr) {
        m_move = shop::deciding::correctionOf(shownHistory()->chain.front());
    } else if (id == "holds.pieces.keep" && (m_move || m_count)) {
        m_move ? keepMove() : keepCount();
        return true;
    } else if (id == "holds.pieces.leave") {
        m_move.reset();
        m_count.reset();
    } else {
        return false;
    }
    m_said.clear();
    m_faults.clear();
    return true;
}

bool PiecesSheet::enter(const std::string& field, const std::string& typed) {
    if (m_move) {
        auto& draft = *m_move;
        if (field == "holds.pieces.field.count") {
            draft.count = typed;
        } else if (field == "holds.pieces.field.day") {
            draft.day = typed;
        } else if (field == "holds.pieces.field.customer") {
            draft.customer = typed;
        } else if (field == "holds.pieces.field.cartons") {
            draft.cartons = typed;
        } else {
            return false;
        }
    } else if (m_count && field == "holds.pieces.field.made") {
        m_count->made = typed;
    } else if (m_count && field == "holds.pieces.field.here") {
        m_count->here = typed;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

void PiecesSheet::keepMove() {
    reload();
    auto kept = shop::deciding::moveFrom(*m_move, m_lot.ofPieces());
    m_faults = kept ? shop::deciding::Faults{} : kept.error();
    if (!kept) {
        return;
    }
    const auto said = text(kept->said.fromHeldLot    ? "holds.said.from-held"
                           : kept->said.moreThanMade ? "holds.said.more-than-made"
                                                     : "holds.said.kept");
    Keeping keeping;
    keeping.list.emplace_back(std::move(kept->move));
    write(std::move(keeping), [this, said] { this->kept(said); });
}

void PiecesSheet::keepCount() {
    reload();
    auto counted = shop::deciding::countFrom(*m_count, m_lot.ofPieces());
    m_faults = counted ? shop::deciding::Faults{} : counted.error();
    if (!counted) {
        return;
    }
    Keeping keeping;
    keeping.list.emplace_back(std::move(*counted));
    write(std::move(keeping), [this] { this->kept(text("holds.said.kept")); });
}

void PiecesSheet::kept(const std::string& said) {
    m_move.reset();
    m_count.reset();
    m_entry.clear();
    m_said = said;
    reload();
}

void PiecesSheet::addMoveForm(SheetPageState& page) const {
    const bool ships = m_move->to == PiecePlace::shipped;
    page.title = toQString(
        text(m_move->corrects ? "holds.move.title-correct" : "holds.move.title." + wording::nameOf(m_move->to)));
    addOtherFaults(page.blocks, ships ? std::vector<std::string>{"count", "day", "customer", "cartons"}
                                      : std::vector<std::string>{"count", "day"});
    std::vector<SheetField> fields{
        fieldWith("holds.pieces.field.count", "count", text("holds.field.count"), m_move->count, SheetKinds::Number),
        fieldWith("holds.pieces.field.day", "day", text("holds.field.day"), m_move->day, SheetKinds::Date,
                  text("holds.field.day-hint"))};
    if (ships) {
        fields.push_back(fieldWith("holds.pieces.field.customer", "customer", text("holds.field.customer"),
                                   m_move->customer, SheetKinds::Text));
        fields.push_back(fieldWith("holds.pieces.field.cartons", "cartons", text("holds.field.cartons"),
                                   m_move->cartons, SheetKinds::Text));
    }
    page.blocks.append(fieldsBlock(fields));
    if (m_move->corrects) {
        page.blocks.append(textBlock(SheetKinds::Note, text("holds.move.zero-takes-back")));
    }
}

void PiecesSheet::addCountForm(SheetPageState& page) const {
    page.title = toQString(text(m_count->corrects ? "holds.move.title-correct" : "holds.move.title-count"));
    addOtherFaults(page.blocks, {"made", "here"});
    page.blocks.append(fieldsBlock(
        {fieldWith("holds.pieces.field.made", "made", text("holds.field.made"), m_count->made, SheetKinds::Number,
                   m_lot.pieces.made ? std::to_string(*m_lot.pieces.made) : std::string{}),
         fieldWith("holds.pieces.field.here", "here", text("holds.field.here"), m_count->here, SheetKinds::Number,
                   m_lot.pieces.here ? std::to_string(*m_lot.pieces.here) : std::string{})}));
}

void PiecesSheet::addMoves(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.moves")));
    std::vector<SheetRow> rows;
    for (const auto& history : m_histories) {
        const auto& now = history.chain.front();
        auto detail =
            now.moved.day ? wording::dateText(*now.moved.day) : wording::dayOf(now.at, how().utcOffsetMinutes);
        if (!now.moved.cartons.empty()) {
            detail += " · " + text("holds.move.cartons", {{"cartons", shop::namesJoined(now.moved.cartons)}});
        }
        auto row = factRow(wording::moveText(now.moved, speech()),
                           history.chain.size() > 1
                               ? text("holds.move.versions", {{"count", std::to_string(history.chain.size())}})
                               : std::string{},
                           detail);
        row.id = toQString(std::string{kEntry} + now.entry);
        row.chosen = now.entry == m_entry;
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("holds.moves-none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
}

void PiecesSheet::addCounts(SheetPageState& page) const {
    if (m_lot.counts.empty()) {
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.counts")));
    std::vector<SheetRow> rows;
    for (const auto& count : m_lot.counts) {
        const bool corrected =
            std::any_of(m_lot.counts.begin(), m_lot.counts.end(),
                        [&](const records::CountRow& other) { return other.counted.corrects == count.entry; });
        auto row = factRow(wording::countText(count.counted, speech()),
                           corrected ? text("holds.count.corrected") : std::string{},
                           wording::whenText(count.at, how().utcOffsetMinutes));
        row.id = corrected ? QString{} : toQString(std::string{kCounted} + count.entry);
        rows.push_back(row);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
}

void PiecesSheet::addHistory(SheetPageState& page) const {
    const auto* history = shownHistory();
    if (history == nullptr) {
        return;
    }
    if (history->chain.size() > 1) {
        page.blocks.append(textBlock(SheetKinds::Heading, text("holds.move.history")));
        SheetBlock trail;
        trail.kind = SheetKinds::Trail;
        for (auto row = history->chain.begin() + 1; row != history->chain.end(); ++row) {
            TrailEntry entry;
            entry.time = toQString(wording::clockText(row->at, how().utcOffsetMinutes));
            entry.day = toQString(wording::dayOf(row->at, how().utcOffsetMinutes));
            entry.title = toQString(wording::moveText(row->moved, speech()));
            entry.detail = toQString(shop::namesJoined(row->moved.cartons));
            trail.trail.append(entry);
        }
        page.blocks.append(trail);
    }
    page.blocks.append(pressBlock({pressOf("holds.pieces.correct", text("holds.move.correct"))}));
}

void PiecesSheet::addTo(SheetPageState& page) const {
    if (m_move || m_count) {
        m_move ? addMoveForm(page) : addCountForm(page);
        page.actions = {pressOf("holds.pieces.keep", text("holds.keep"), true),
                        pressOf("holds.pieces.leave", text("holds.leave"))};
        return;
    }
    page.title = toQString(text(
        "holds.pieces.title", {{"run", std::to_string(m_lot.plan.number)}, {"lot", std::to_string(m_lot.row.number)}}));
    if (!m_said.empty()) {
        page.blocks.append(leadBlock(m_said));
    }
    addPieces(page.blocks, m_lot, how());
    addMoves(page);
    addHistory(page);
    addCounts(page);
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.move.add")));
    std::vector<ActionState> presses;
    for (const auto place : kPlaces) {
        const auto name = wording::nameOf(place);
        presses.push_back(pressOf(std::string{kAdd} + name, text("holds.move.add." + name)));
    }
    page.blocks.append(pressBlock(presses));
    page.actions = {pressOf("holds.pieces.count", text("holds.move.count-them"), true),
                    pressOf("holds.back", text("holds.back"))};
}

} // namespace holdfast::kiosk::screens
