// What KioskPresenter does for the places that are drawn as sheets, and at the dryer.
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/screens/presenting/deciding/deciding_places.hpp"
#include "kiosk/screens/presenting/floor/floor_place.hpp"
#include "kiosk/screens/presenting/kiosk_presenter.hpp"
#include "kiosk/screens/presenting/places/inks_place.hpp"
#include "kiosk/screens/presenting/places/instruments_place.hpp"
#include "kiosk/screens/presenting/places/print_wishes.hpp"
#include "kiosk/screens/presenting/places/runs_place.hpp"
#include "kiosk/screens/presenting/places/shop_place.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/presenting/testing/picture_provider.hpp"
#include "kiosk/screens/presenting/testing/tests_place.hpp"
#include "kiosk/screens/presenting/trending/trends_place.hpp"
#include "kiosk/shop/testing/print_code.hpp"

#include <QPointer>

#include <array>
#include <utility>

namespace holdfast::kiosk::screens {

namespace {

struct FloorPress final {
    const char* id;
    shop::ActionCard card;
};

/// Presses that do what an action card does.
constexpr std::array<FloorPress, 13> kFloorPresses{{
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
    {"floor.ready", shop::ActionCard::ready},
}};

constexpr const char* kClaim = "floor.claim.";
constexpr const char* kReading = "reading"; ///< the floor's sheets

/// A spot, a gun or a flash is being typed.
bool isTyping(const shop::ProvingState& state) {
    return state.hand || state.flash;
}

} // namespace

void KioskPresenter::makePlaces() {
    // Planned runs stand behind "Run" while none is announced.
    m_places.add("runs", std::make_unique<RunsPlace>(placeNeeds()), false);
    m_waitingPictures = std::make_shared<WaitingPictures>();
    m_places.add("tests", std::make_unique<TestsPlace>(placeNeeds(), m_waitingPictures));
    auto deciding = decidingPlaces(placeNeeds());
    m_trace = deciding.trace.get();
    m_places.add("holds", std::move(deciding.holds));
    m_places.add("trends", std::make_unique<TrendsPlace>(placeNeeds()));
    m_places.add("complaint", std::move(deciding.complaint));
    m_places.add("trace", std::move(deciding.trace), false);
    m_places.add("inks", std::make_unique<InksPlace>(placeNeeds()));
    m_places.add("instruments", std::make_unique<InstrumentsPlace>(placeNeeds()));
    m_places.add("shop", std::make_unique<ShopPlace>(placeNeeds()));
    auto floor = std::make_unique<FloorPlace>(floorNeeds());
    m_floor = floor.get();
    m_places.add(kReading, std::move(floor), false);
    auto signIn = std::make_unique<SignInPlace>(placeNeeds(), [this] { m_places.uncover(); });
    m_signIn = signIn.get();
    m_places.add("sign-in", std::move(signIn), false);
    m_places.tellBy(
        {[this] { tellBadgeUnasked(); },
         [this](const std::string& place) {
             const bool runs = place == "runs"; // behind "Run", once nothing is announced
             const auto name = m_speech.text(runs ? "place.run" : "place." + place);
             m_notice = wording::Notice{
                 m_speech.text(runs ? "place.kept-behind-runs" : "place.kept-behind", {{"place", name}}), {}, {}};
         }});
}

PlaceNeeds KioskPresenter::placeNeeds() {
    PlaceNeeds needs;
    needs.book = &m_book;
    needs.clock = &m_clock;
    needs.exchange = m_data / "exchange";
    needs.floor = [this]() -> const shop::ProvingState& { return m_desk.state(); };
    needs.speech = [this]() -> const wording::Speech& { return m_speech; };
    needs.newId = [this] { return m_desk.newId(); };
    needs.keep = [this](Keeping keeping, KeepDone then) { keepForPlace(std::move(keeping), std::move(then)); };
    needs.tell = [this](wording::Notice notice) { m_notice = std::move(notice); };
    needs.go = [this](const std::string& place) { goTo(place); };
    needs.trace = [this](const std::string& run) {
        goTo("trace");
        m_trace->showRun(run);
    };
    needs.scan = [this](const std::string& code) { scan(toQString(code)); };
    needs.sign = [this](shop::Right right, std::function<void(std::int64_t)> then) {
        m_signIn->ask(right, std::move(then));
        if (m_signIn->isOpen()) {
            m_places.cover("sign-in");
        }
    };
    needs.signAfresh = [this](shop::Right right, std::int64_t other, std::function<void(std::int64_t)> then) {
        m_signIn->askAfresh(right, other, std::move(then));
        m_places.cover("sign-in");
    };
    needs.inCheck = [this](const std::string& probe, bool inCheck) {
        m_desk.send(shop::InstrumentInCheck{probe, inCheck});
    };
    needs.show = [this] { show(); };
    needs.study = [this](StudyWork work, StudyDone then) { return m_studies.ask(std::move(work), std::move(then)); };
    needs.print = [this](const PrintWish& wish) { print(wish); };
    return needs;
}

std::unique_ptr<QQuickImageProvider> KioskPresenter::makePictures() const {
    return std::make_unique<PictureProvider>(m_book, m_waitingPictures);
}

void KioskPresenter::afterScan() {
    if (m_desk.state().refusal) { // a scan that does nothing leaves what is being written
        return;
    }
    if (isTyping(m_desk.state())) {
        m_places.open(kReading); // it was about the entry: where on the belt, or another instrument
    } else {
        m_places.close();
    }
}

FloorNeeds KioskPresenter::floorNeeds() {
    FloorNeeds needs;
    needs.floor = [this]() -> const shop::ProvingState& { return m_desk.state(); };
    needs.facts = [this]() -> const FloorFacts& { return m_facts; };
    needs.speech = [this]() -> const wording::Speech& { return m_speech; };
    needs.send = [this](const shop::ProvingEvent& event) { m_desk.send(event); };
    needs.go = [this](const std::string& place) { goTo(place); };
    return needs;
}

void KioskPresenter::followPages() {
    if (m_floor == nullptr) {
        return;
    }
    const bool typing = isTyping(m_desk.state());
    const bool before = std::exchange(m_typing, typing);
    if (typing && !before) { // only then: who looks at another place meanwhile is left there
        m_places.open(kReading);
    } else if (before && !typing && m_places.now() == kReading) {
        m_places.close();
        m_onRun = true;
    }
    const bool handOver = m_desk.state().floor.handOver;
    if (handOver && !m_handOver) {
        m_floor->showHandOver();
        m_places.open(kReading);
    } else if (!handOver && m_handOver && m_places.now() == kReading) {
        m_places.close();
        m_onRun = false;
    }
    m_handOver = handOver;
}

void KioskPresenter::keepForPlace(Keeping keeping, KeepDone then) {
    // The desk outlives this and its places, and may answer after them.
    const auto kept = [self = QPointer{this}, this,
                       then = std::move(then)](const std::optional<ledger::Failure>& failure) {
        if (!self) {
            return;
        }
        if (!failure) {
            m_desk.reload(); // inks, instruments and settings may have changed
            readSettings();
        }
        then(failure);
        reloadLists();
        show();
    };
    shop::DeskKeeping desk{
        std::move(keeping.list), std::move(keeping.ids), std::move(keeping.blobs), {}, keeping.person};
    if (keeping.name) {
        desk.persons.push_back(std::move(*keeping.name));
    }
    m_desk.keep(desk, kept);
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
        m_places.leave();
        m_onRun = place != "dryer";
    }
}

void KioskPresenter::tellBadgeUnasked() {
    m_notice = wording::Notice{m_speech.text("place.badge-unasked"), m_speech.text("place.badge-unasked-kept"),
                               m_speech.text("place.badge-unasked-to-do")};
}

bool KioskPresenter::scannedByPlace(const std::string& text) {
    auto code = drivers::decode(text);
    if (!code && m_places.now() == "tests") { // a print is typed as it is written on the garment, without its T
        if (const auto number = shop::printTyped(text)) {
            code = drivers::TicketCode{drivers::TicketKind::print, static_cast<std::uint64_t>(*number)};
        }
    }
    if (code && code->kind == drivers::TicketKind::person && m_desk.state().strip) {
        tellBadgeUnasked(); // the steps stand on the screen, and stay
        return true;
    }
    return code && m_places.scanned(*code);
}

bool KioskPresenter::actOnPlaces(const QString& id) {
    const auto name = id.toStdString();
    if (m_places.has(name)) {
        goTo(name);
        return true;
    }
    auto read = std::exchange(m_notice, {}); // it covers the page: who presses something beside it wants to see that
    if (m_places.act(name, m_speech)) {
        return true;
    }
    m_notice = std::move(read);
    return false;
}

void KioskPresenter::enter(const QString& field, const QString& text) {
    if (m_places.enter(field.toStdString(), text.toStdString())) {
        show();
    }
}

bool KioskPresenter::actOnFloor(const QString& id) {
    if (id == QLatin1String("reading.open")) {
        m_floor->showRide();
        goTo(kReading);
        return true;
    }
    if (id == QLatin1String("floor.dryer")) {
        m_floor->showDryer();
        goTo(kReading);
        return true;
    }
    if (id == QLatin1String("floor.hand-over")) {
        m_floor->showHandOver();
        goTo(kReading);
        return true;
    }
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
