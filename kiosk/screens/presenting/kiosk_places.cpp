// What KioskPresenter does for the places that are drawn as sheets, and at the dryer.
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/screens/presenting/kiosk_presenter.hpp"
#include "kiosk/screens/presenting/places/inks_place.hpp"
#include "kiosk/screens/presenting/places/instruments_place.hpp"
#include "kiosk/screens/presenting/places/print_wishes.hpp"
#include "kiosk/screens/presenting/places/runs_place.hpp"
#include "kiosk/screens/presenting/places/shop_place.hpp"
#include "kiosk/screens/presenting/shown.hpp"

#include <array>

namespace holdfast::kiosk::screens {

namespace {

struct FloorPress final {
    const char* id;
    shop::ActionCard card;
};

/// Presses that do what an action card does.
constexpr std::array<FloorPress, 12> kFloorPresses{{
    {"floor.slower", shop::ActionCard::beltSlower},
    {"floor.faster", shop::ActionCard::beltFaster},
    {"floor.hotter", shop::ActionCard::hotter},
    {"floor.cooler", shop::ActionCard::cooler},
    {"floor.stopped", shop::ActionCard::feedStopped},
    {"floor.started", shop::ActionCard::started},
    {"floor.pulled", shop::ActionCard::pulled},
    {"floor.problem", shop::ActionCard::problem},
    {"floor.taken-over", shop::ActionCard::takenOver},
    {"floor.wipe", shop::ActionCard::wipe},
    {"floor.also", shop::ActionCard::alsoOnBelt},
    {"floor.set-up", shop::ActionCard::setUp},
}};

constexpr const char* kClaim = "floor.claim.";

} // namespace

void KioskPresenter::makePlaces() {
    // Planned runs stand behind "Run" while none is announced.
    m_places.add("runs", std::make_unique<RunsPlace>(placeNeeds()), false);
    m_places.add("inks", std::make_unique<InksPlace>(placeNeeds()));
    m_places.add("instruments", std::make_unique<InstrumentsPlace>(placeNeeds()));
    m_places.add("shop", std::make_unique<ShopPlace>(placeNeeds()));
    auto signIn = std::make_unique<SignInPlace>(placeNeeds(), [this] { m_places.uncover(); });
    m_signIn = signIn.get();
    m_places.add("sign-in", std::move(signIn), false);
}

PlaceNeeds KioskPresenter::placeNeeds() {
    PlaceNeeds needs;
    needs.book = &m_book;
    needs.clock = &m_clock;
    needs.exchange = m_data / "exchange";
    needs.floor = [this]() -> const shop::ProvingState& { return m_desk.state(); };
    needs.speech = [this]() -> const wording::Speech& { return m_speech; };
    needs.newId = [this] { return m_desk.newId(); };
    needs.keep = [this](std::vector<records::Record> list, std::function<void(std::optional<ledger::Failure>)> then) {
        keepForPlace(std::move(list), then, {});
    };
    needs.keepPerson = [this](std::vector<records::Record> list, ledger::PersonName name,
                              std::function<void(std::optional<ledger::Failure>)> then) {
        keepForPlace(std::move(list), then, {std::move(name)});
    };
    needs.tell = [this](wording::Notice notice) { m_notice = std::move(notice); };
    needs.go = [this](const std::string& place) { goTo(place); };
    needs.scan = [this](const std::string& code) { scan(toQString(code)); };
    needs.sign = [this](shop::Right right, std::function<void(std::int64_t)> then) {
        m_signIn->ask(right, std::move(then));
        if (m_signIn->isOpen()) {
            m_places.cover("sign-in");
        }
    };
    needs.print = [this](const PrintWish& wish) { print(wish); };
    return needs;
}

void KioskPresenter::keepForPlace(std::vector<records::Record> list,
                                  const std::function<void(std::optional<ledger::Failure>)>& then,
                                  const std::vector<ledger::PersonName>& persons) {
    const auto kept = [this, then](const std::optional<ledger::Failure>& failure) {
        if (!failure) {
            m_desk.reload(); // inks, instruments and settings may have changed
            readSettings();
        }
        then(failure);
        reloadLists();
        show();
    };
    m_desk.keep(list, kept, persons);
}

void KioskPresenter::print(const PrintWish& wish) {
    auto report = reportFor(wish, m_book, m_clock.wall(), m_speech);
    if (!report) {
        return; // the thing has gone from the list meanwhile
    }
    if (!*report) {
        m_notice = reports::noticeOf(report->error(), m_speech);
        return;
    }
    m_shelf.change({m_data / "print", isLabel(wish) ? m_labelPrinter : m_sheetPrinter});
    m_shelf.print(std::move(**report), [this](const reports::PrintOutcome& outcome) {
        if (outcome.fault) {
            m_notice = reports::noticeOf(*outcome.fault, m_speech);
            show();
        }
    });
}

void KioskPresenter::goTo(const std::string& place) {
    m_notice.reset();
    if (place == "dryer" || place == "run" || !m_places.open(place)) {
        m_places.close();
        m_onRun = place != "dryer";
    }
}

bool KioskPresenter::scannedByPlace(const std::string& text) {
    const auto code = drivers::decode(text);
    return code && m_places.scanned(*code);
}

bool KioskPresenter::actOnPlaces(const QString& id) {
    const auto name = id.toStdString();
    if (m_places.has(name)) {
        goTo(name);
        return true;
    }
    return m_places.act(name, m_speech);
}

void KioskPresenter::enter(const QString& field, const QString& text) {
    if (m_places.enter(field.toStdString(), text.toStdString())) {
        show();
    }
}

bool KioskPresenter::actOnFloor(const QString& id) {
    for (const auto& press : kFloorPresses) {
        if (id == QLatin1String(press.id)) {
            shop::ActionPressed pressed;
            pressed.card = press.card;
            m_desk.send(pressed);
            return true;
        }
    }
    if (id.startsWith(QLatin1String(kClaim))) {
        m_desk.send(
            shop::ClaimPressed{id.mid(static_cast<qsizetype>(std::char_traits<char>::length(kClaim))).toStdString()});
        return true;
    }
    return false;
}

} // namespace holdfast::kiosk::screens
