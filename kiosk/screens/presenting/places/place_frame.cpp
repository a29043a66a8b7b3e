#include "kiosk/screens/presenting/places/place_frame.hpp"

#include "kiosk/screens/presenting/shown.hpp"

#include <utility>

namespace holdfast::kiosk::screens {

namespace {

constexpr std::string_view kFieldPrefix = "field.";

const SheetField* fieldNamed(const SheetPageState& sheet, const QString& id) {
    for (const auto& block : sheet.blocks) {
        for (const auto& field : block.fields) {
            if (field.id == id) {
                return &field;
            }
        }
    }
    return nullptr;
}

} // namespace

void PlaceFrame::add(std::string id, std::unique_ptr<SheetPlace> place, bool inBar) {
    m_order.push_back(id);
    if (inBar) {
        m_bar.push_back(id);
    }
    m_places.insert_or_assign(std::move(id), std::move(place));
}

bool PlaceFrame::open(const std::string& id) {
    if (!has(id)) {
        return false;
    }
    turnTo(id, false);
    reload();
    return true;
}

void PlaceFrame::turnTo(const std::string& id, bool byScan) {
    const auto under = std::exchange(m_under, {});
    const auto before = std::exchange(m_now, id);
    for (const auto& behind : {before, under}) {
        auto* place = behind == id ? nullptr : placeNamed(behind);
        if (place == nullptr) {
            continue;
        }
        place->left();
        if (byScan && place->isWriting() && m_tells.keptBehind) {
            m_tells.keptBehind(behind);
        }
    }
}

void PlaceFrame::cover(const std::string& id) {
    if (m_now != id && has(id)) {
        m_under = std::exchange(m_now, id); // what lies under is not left
        m_cover = id;
        reload();
    }
}

void PlaceFrame::uncover() {
    if (m_cover.empty() || m_now != m_cover) {
        return; // something else has come to the screen
    }
    m_cover.clear();
    m_now = std::exchange(m_under, {});
    reload();
}

SheetPlace* PlaceFrame::placeNamed(const std::string& id) const {
    const auto found = m_places.find(id);
    return found == m_places.end() ? nullptr : found->second.get();
}

bool PlaceFrame::act(const std::string& id, const wording::Speech& speech) {
    if (id.compare(0, kFieldPrefix.size(), kFieldPrefix) == 0) {
        openPad(id.substr(kFieldPrefix.size()), speech);
        return true;
    }
    auto* place = placeNow();
    return place != nullptr && place->act(id);
}

void PlaceFrame::openPad(const std::string& field, const wording::Speech& speech) {
    const auto* place = placeNow();
    const auto sheet = place != nullptr ? place->sheet() : SheetPageState{};
    const auto* found = fieldNamed(sheet, toQString(field));
    if (found == nullptr) {
        return;
    }
    TypePadState pad;
    pad.id = found->id;
    pad.label = found->label;
    pad.hint = found->hint;
    pad.keys = found->keys;
    pad.text = found->keys == SheetKinds::Secret ? QString{} : found->value;
    pad.enter = toQString(speech.text("pad.enter"));
    pad.erase = toQString(speech.text("pad.erase"));
    pad.leave = toQString(speech.text("action.close"));
    pad.space = toQString(speech.text("pad.space"));
    pad.shift = toQString(speech.text("pad.capitals"));
    pad.letters = toQString(speech.text("pad.letters"));
    m_padOf = m_now;
    m_model.openPad(pad);
}

bool PlaceFrame::enter(const std::string& field, const std::string& text) {
    auto* now = placeNow();
    auto* asked = placeNamed(m_padOf); // a scan may have turned the screen while somebody typed
    return (now != nullptr && now->enter(field, text)) ||
           (asked != nullptr && asked != now && asked->enter(field, text));
}

bool PlaceFrame::scanned(const drivers::TicketCode& code) {
    auto* first = placeNow();
    if (first != nullptr && first->scanned(code, true)) {
        return true;
    }
    if (first != nullptr && code.kind == drivers::TicketKind::person) {
        if (m_tells.badgeUnasked) {
            m_tells.badgeUnasked();
        }
        return true;
    }
    for (const auto& id : m_order) {
        auto* place = m_places.at(id).get();
        if (place != first && place->scanned(code, false)) {
            turnTo(id, true);
            return true;
        }
    }
    return false;
}

void PlaceFrame::reload() {
    if (auto* place = placeNow()) {
        place->reload();
    }
}

void PlaceFrame::tick() {
    if (auto* place = placeNow()) {
        place->tick();
    }
}

void PlaceFrame::show() {
    if (const auto* place = placeNow()) {
        m_model.sheet()->setState(place->sheet());
    }
}

} // namespace holdfast::kiosk::screens
