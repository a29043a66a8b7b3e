#include "kiosk/screens/presenting/floor/floor_place.hpp"

#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kHand = "reading.hand.";
constexpr std::string_view kStrip = "reading.strip.";
constexpr std::string_view kOff = "reading.off.";
constexpr std::string_view kLayer = "reading.layer.";

bool begins(const std::string& id, std::string_view prefix) {
    return id.compare(0, prefix.size(), prefix) == 0;
}

std::string rest(const std::string& id, std::string_view prefix) {
    return id.substr(prefix.size());
}

SheetRow listRow(const std::string& id, const std::string& title, const std::string& detail, bool chosen) {
    auto row = factRow(title, {}, detail);
    row.id = toQString(id);
    row.chosen = chosen;
    return row;
}

} // namespace

QList<SheetRow> FloorPlace::list() const {
    const auto& state = m_needs.floor();
    const auto& speech = m_needs.speech();
    const bool typing = state.hand || state.flash;
    QList<SheetRow> rows;
    const auto* probe = shop::shownProbe(state);
    rows.append(listRow("reading.ride", speech.text("readings.list.ride"), probe != nullptr ? probe->name : "",
                        !typing && m_page == Page::ride));
    for (const auto& one : state.instruments) {
        const bool chosen = state.hand && state.hand->instrument.name == one.name;
        if (!one.calibration) {
            continue;
        }
        if (one.kind == analytics::InstrumentKind::spot) {
            rows.append(listRow("reading.hand." + one.name, one.name, speech.text("readings.list.spot"), chosen));
        } else if (one.kind == analytics::InstrumentKind::gun) {
            rows.append(listRow("reading.hand." + one.name, one.name, speech.text("readings.list.gun"), chosen));
        } else if (one.kind == analytics::InstrumentKind::strip) {
            rows.append(listRow("reading.strip." + one.name, one.name, speech.text("readings.list.strip"), false));
        }
    }
    rows.append(listRow("reading.flash", speech.text("readings.list.flash"), speech.text("readings.list.flash-how"),
                        state.flash.has_value()));
    rows.append(listRow("reading.dryer", speech.text("readings.list.dryer"), m_needs.facts().dryerName,
                        !typing && m_page == Page::dryer));
    rows.append(listRow("reading.hand-over", speech.text("floor.hand-over"), speech.text("readings.list.hand-over"),
                        !typing && m_page == Page::handOver));
    return rows;
}

SheetPageState FloorPlace::sheet() const {
    const auto& state = m_needs.floor();
    const auto& speech = m_needs.speech();
    SheetPageState page;
    page.heading = toQString(speech.text("readings.heading"));
    page.list = list();
    page.detailOnly = !m_listShown;
    page.back = pressOf("reading.list", speech.text("readings.list"));
    if (state.hand) {
        showHandSheet(page, state, m_typed, speech);
    } else if (state.flash) {
        showFlashSheet(page, state, m_typed, speech);
    } else if (m_page == Page::dryer) {
        showDryerSheet(page, state, m_needs.facts(), m_typed, speech);
    } else if (m_page == Page::handOver) {
        showHandOverSheet(page, state, m_needs.facts(), speech);
    } else {
        showRideSheet(page, state, speech);
    }
    return page;
}

void FloorPlace::leaveEntry() {
    m_typed.clear();
    const bool typing = m_needs.floor().hand || m_needs.floor().flash;
    if (m_needs.floor().hand) {
        m_needs.send(shop::HandLeft{});
    } else if (m_needs.floor().flash) {
        m_needs.send(shop::FlashLeft{});
    }
    if (typing) {
        m_needs.go("reading"); // what was typed closed the sheet with it
    }
}

bool FloorPlace::turnTo(const std::string& id) {
    if (id == "reading.list") {
        m_listShown = true;
        return true;
    }
    if (id == "reading.ride" || id == "reading.dryer" || id == "reading.hand-over") {
        leaveEntry();
        m_page = id == "reading.ride" ? Page::ride : id == "reading.dryer" ? Page::dryer : Page::handOver;
    } else if (begins(id, kHand)) {
        m_typed.clear();
        m_needs.send(shop::HandOpened{rest(id, kHand)});
    } else if (begins(id, kStrip)) {
        m_typed.clear();
        m_needs.send(shop::StripOpened{rest(id, kStrip)});
    } else if (id == "reading.flash") {
        m_typed.clear();
        m_needs.send(shop::FlashOpened{});
    } else {
        return false;
    }
    m_listShown = false;
    return true;
}

bool FloorPlace::actOnRide(const std::string& id) {
    using analytics::Placement;
    using records::ReadingReason;
    if (id == "reading.placement.wet") {
        m_needs.send(shop::PlacementChosen{Placement::wetInk});
    } else if (id == "reading.placement.taped") {
        m_needs.send(shop::PlacementChosen{Placement::tapedOnFilm});
    } else if (id == "reading.placement.cloth") {
        m_needs.send(shop::PlacementChosen{Placement::inOrUnderCloth});
    } else if (id == "reading.reason.drawn") {
        m_needs.send(shop::ReasonChosen{ReadingReason::drawn});
    } else if (id == "reading.reason.worry") {
        m_needs.send(shop::ReasonChosen{ReadingReason::worry});
    } else if (id == "reading.reason.map") {
        m_needs.send(shop::ReasonChosen{ReadingReason::map});
    } else if (id == "reading.reason.study") {
        m_needs.send(shop::ReasonChosen{ReadingReason::study});
    } else if (id == "reading.reason.set-up") {
        m_needs.send(shop::ReasonChosen{ReadingReason::setUp});
    } else if (begins(id, kOff)) {
        m_needs.send(shop::BeltLeft{rest(id, kOff)});
    } else {
        return false;
    }
    return true;
}

bool FloorPlace::actOnTyped(const std::string& id) {
    const bool flash = m_needs.floor().flash.has_value();
    if (id == "reading.keep") {
        if (m_typed.empty()) { // a text that is no figure stands there with its fault
            flash ? m_needs.send(shop::FlashKept{}) : m_needs.send(shop::HandKept{});
        }
    } else if (id == "reading.leave") {
        m_typed.clear();
        flash ? m_needs.send(shop::FlashLeft{}) : m_needs.send(shop::HandLeft{});
    } else if (id == "reading.shot.outfeed") {
        m_needs.send(shop::ShotPlaceChosen{analytics::ShotPlace::outfeed});
    } else if (id == "reading.shot.tunnel") {
        m_needs.send(shop::ShotPlaceChosen{analytics::ShotPlace::inTunnelHottest});
    } else if (begins(id, kLayer)) {
        m_needs.send(shop::FlashLayerChosen{std::stoi("0" + rest(id, kLayer))});
    } else {
        return false;
    }
    return true;
}

bool FloorPlace::act(const std::string& id) {
    return turnTo(id) || actOnRide(id) || actOnTyped(id);
}

void FloorPlace::turnBelt(double metresPerMinute) {
    const auto& floor = m_needs.floor().floor;
    const auto now = floor.dryer ? floor.dryer->beltMetresPerMinute : std::nullopt;
    if (now && *now == metresPerMinute) {
        return;
    }
    const bool wasFaster = floor.lastAction && floor.lastAction->action.action == records::FloorAction::beltFaster;
    shop::ActionPressed turned;
    turned.card =
        (now ? metresPerMinute > *now : wasFaster) ? shop::ActionCard::beltFaster : shop::ActionCard::beltSlower;
    turned.beltMetresPerMinute = metresPerMinute;
    m_needs.send(turned);
}

void FloorPlace::turnSetPoint(const analytics::AuthoredTemperature& setPoint) {
    const auto& floor = m_needs.floor().floor;
    const auto now = floor.dryer ? floor.dryer->setPoint : std::nullopt;
    if (now && now->temperature() == setPoint.temperature()) {
        return;
    }
    const bool wasCooler = floor.lastAction && floor.lastAction->action.action == records::FloorAction::cooler;
    shop::ActionPressed turned;
    turned.card = (now ? setPoint.temperature() < now->temperature() : wasCooler) ? shop::ActionCard::cooler
                                                                                  : shop::ActionCard::hotter;
    turned.setPoint = setPoint;
    m_needs.send(turned);
}

void FloorPlace::pull(const std::string& field, const std::string& text) {
    const auto pieces = shop::numberFrom(text);
    if (!pieces || *pieces != std::floor(*pieces) || *pieces < 1 || *pieces > 9999) {
        m_typed[field] = text;
        return;
    }
    shop::ActionPressed pulled;
    pulled.card = shop::ActionCard::pulled;
    pulled.pieces = static_cast<int>(*pieces);
    m_needs.send(pulled);
}

void FloorPlace::count(const std::string& field, const std::string& text, double figure) {
    if (figure != std::floor(figure) || figure < -1e9 || figure > 1e9) {
        m_typed[field] = text; // half a piece: what was typed stays
        return;
    }
    m_needs.send(shop::PiecesTyped{{}, static_cast<int>(figure)});
    if (m_needs.floor().refusal) {
        m_typed[field] = text;
    }
}

bool FloorPlace::enter(const std::string& field, const std::string& typedText) {
    if (!begins(field, "reading.")) {
        return false;
    }
    const auto text = shop::trimmed(typedText);
    m_typed.erase(field);
    const auto figure = shop::numberFrom(text);
    if (!text.empty() && !figure) {
        m_typed[field] = text;
    }
    std::optional<analytics::AuthoredTemperature> t;
    if (figure) {
        t = analytics::AuthoredTemperature{*figure, m_needs.speech().figures.unit};
    }
    if (field == "reading.value") {
        m_needs.send(shop::HandTyped{t});
    } else if (field == "reading.before") {
        m_needs.send(shop::HandBeforeTyped{t});
    } else if (field == "reading.peak") {
        m_needs.send(shop::FlashTyped{t});
    } else if (field == "reading.belt" && figure) {
        // A belt that is told 0 stands: that is another card. Over this no belt of a print shop runs (MEM).
        constexpr double kFastest = 60.0;
        *figure > 0.0 && *figure <= kFastest ? turnBelt(*figure) : void(m_typed[field] = text);
    } else if (field == "reading.set-point" && t) {
        shop::isPossible(*t) ? turnSetPoint(*t) : void(m_typed[field] = text);
    } else if (field == "reading.pulled" && !text.empty()) {
        pull(field, text);
    } else if (field == "reading.made" && figure) {
        count(field, text, *figure);
    }
    return true;
}

} // namespace holdfast::kiosk::screens
