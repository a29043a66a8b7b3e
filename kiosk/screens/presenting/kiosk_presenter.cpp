#include "kiosk/screens/presenting/kiosk_presenter.hpp"

#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/screens/presenting/dryer_presenter.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/refusal_presenter.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/presenting/strip_presenter.hpp"
#include "kiosk/shop/planning/replan.hpp"

#include <QPointer>

namespace holdfast::kiosk::screens {

namespace {

constexpr int kClockTickMilliseconds = 250;
constexpr int kTicketWidth = 4;
constexpr const char* kThemeKey = "theme";
constexpr const char* kUnitKey = "unit";
constexpr const char* kLanguageKey = "language";
constexpr const char* kPanelKey = "panel_inch";
constexpr const char* kLabelPrinterKey = "label_printer";
constexpr const char* kSheetPrinterKey = "sheet_printer";

PlaceState place(const char* id, const wording::Speech& speech) {
    PlaceState out;
    out.id = QString::fromLatin1(id);
    out.label = toQString(speech.text(std::string{"place."} + id));
    return out;
}

} // namespace

KioskPresenter::KioskPresenter(shop::ProvingDesk& desk, const ledger::Book& book, const drivers::Clock& clock,
                               KioskModel& model, std::filesystem::path data, QObject* parent)
    : QObject{parent}, m_desk{desk}, m_book{book}, m_clock{clock}, m_model{model}, m_data{std::move(data)},
      m_studies{book}, m_places{model}, m_shelf{reports::PrintSettings{m_data / "print"}} {
    connect(&m_desk, &shop::ProvingDesk::changed, this, &KioskPresenter::stateChanged);
    connect(&m_model, &KioskModel::actionTriggered, this, &KioskPresenter::act);
    connect(&m_model, &KioskModel::codeEntered, this, &KioskPresenter::scan);
    connect(&m_model, &KioskModel::fieldEntered, this, &KioskPresenter::enter);
    m_clockTick.setInterval(kClockTickMilliseconds);
    connect(&m_clockTick, &QTimer::timeout, this, &KioskPresenter::show);
    show();
}

void KioskPresenter::start() {
    readSettings();
    makePlaces();
    if (const auto reason = m_book.readOnlyReason()) {
        m_notice = wording::noticeOf(*reason, wording::Kept::book, m_speech);
    }
    reloadLists();
    show();
    m_clockTick.start();
}

void KioskPresenter::readSettings() {
    const auto textOf = [this](const char* key) {
        const auto found = records::setting(m_book.reader(), key);
        const auto* text = found && *found ? std::get_if<std::string>(&**found) : nullptr;
        return text != nullptr ? *text : std::string{};
    };
    m_model.setDark(textOf(kThemeKey) == "dark");
    speakLanguage(textOf(kLanguageKey));
    m_speech.figures.unit =
        textOf(kUnitKey) == "C" ? analytics::TemperatureUnit::celsius : analytics::TemperatureUnit::fahrenheit;
    m_labelPrinter = textOf(kLabelPrinterKey);
    m_sheetPrinter = textOf(kSheetPrinterKey);
    const auto inch = records::setting(m_book.reader(), kPanelKey);
    const auto* number = inch && *inch ? std::get_if<double>(&**inch) : nullptr;
    if (number != nullptr && *number != m_panelInch) { // what the command line says stands until the shop says more
        m_panelInch = *number;
        m_model.setPanelDiagonalInch(*number);
    }
}

void KioskPresenter::speakLanguage(const std::string& code) {
    m_speech.language = &wording::Language::ofCode(code);
    m_model.setLanguage(toQString(code == "es" ? "es" : "en"));
}

void KioskPresenter::scanUnreadable() {
    scan({});
}

void KioskPresenter::scan(const QString& text) {
    m_view = {};
    m_notice.reset();
    if (scannedByPlace(text.toStdString())) {
        show();
        return;
    }
    m_desk.send(shop::ScannedText{text.toStdString()});
    afterScan();
}

void KioskPresenter::act(const QString& id) {
    if (actOnPage(id) || actOnStrip(id) || actOnFloor(id) || actOnPlaces(id)) {
        show();
    }
}

bool KioskPresenter::actOnPage(const QString& id) {
    if (id == QLatin1String("scan")) {
        m_model.openScanEntry(true);
    } else if (id == QLatin1String("again")) {
        m_view = {};
        m_desk.send(shop::NextPressed{}); // the run stays, its window waits for another ride
        emit rideExpected();
    } else if (id == QLatin1String("dryer")) {
        goTo("dryer");
    } else if (id == QLatin1String("run")) {
        goTo(m_desk.state().run ? "run" : "runs");
    } else if (id.startsWith(toQString(std::string{kPicture}))) {
        const auto sha256 = id.mid(static_cast<int>(kPicture.size())).toStdString();
        m_model.openPicture({pictureUrl(sha256), toQString(m_speech.text("action.close"))});
    } else if (id == QLatin1String("why")) {
        m_view.why = !m_view.why;
    } else if (id == QLatin1String("stop")) {
        m_desk.send(shop::StopPressed{});
    } else if (id == QLatin1String("retake")) {
        m_desk.send(shop::RetakePressed{});
        emit rideExpected();
    } else if (id == QLatin1String("retry")) {
        m_desk.send(shop::RetryPressed{});
    } else if (id == QLatin1String("next")) {
        m_view = {};
        m_desk.send(shop::NextPressed{});
        m_onRun = false;
    } else if (id == QLatin1String("unit.celsius")) {
        m_desk.send(shop::UnitAnswered{analytics::TemperatureUnit::celsius});
    } else if (id == QLatin1String("unit.fahrenheit")) {
        m_desk.send(shop::UnitAnswered{analytics::TemperatureUnit::fahrenheit});
    } else if (id == QLatin1String("refusal.close")) {
        m_notice.reset();
        m_desk.send(shop::RefusalClosed{});
    } else if (id == QLatin1String("bin.label")) {
        if (const auto* bracket = shop::shownBracket(m_desk.state()); bracket != nullptr) {
            print({PrintWish::What::binLabel, bracket->bin, {}});
        }
    } else if (id.startsWith(QLatin1String("way."))) {
        takeWayOut(id.mid(4).toUInt());
    } else if (id.startsWith(QLatin1String("open."))) {
        scan(toQString(drivers::encode(drivers::TicketKind::run, id.mid(5).toULongLong(), kTicketWidth)));
    } else {
        return false;
    }
    return true;
}

void KioskPresenter::takeWayOut(std::size_t index) {
    const auto& state = m_desk.state();
    if (!state.run || !state.window || index >= state.window->waysOut.size()) {
        return;
    }
    const auto& run = state.run->onFile;
    const auto number = static_cast<std::uint64_t>(run.plan.number);
    m_desk.keep({shop::recordsOfWayOut(run, state.window->waysOut[index], state.families, m_desk.newId())},
                [self = QPointer{this}, this, number](const std::optional<ledger::Failure>& failure) {
                    if (!self) { // the desk outlives this
                        return;
                    }
                    if (failure) {
                        m_notice = wording::noticeOf(*failure, wording::Kept::book, m_speech);
                        show();
                        return;
                    }
                    scan(toQString(drivers::encode(drivers::TicketKind::run, number, kTicketWidth)));
                });
}

bool KioskPresenter::actOnStrip(const QString& id) {
    if (id == QLatin1String("strip")) {
        m_desk.send(shop::StripOpened{});
    } else if (id == QLatin1String("strip.keep")) {
        m_desk.send(shop::StripKept{});
    } else if (id == QLatin1String("strip.leave")) {
        m_desk.send(shop::StripLeft{});
    } else if (id == QLatin1String("strip.unsure")) {
        m_desk.send(shop::StripUnsureTouched{});
    } else if (id == QLatin1String("strip.used")) {
        m_desk.send(shop::StripUsedTouched{});
    } else if (id == QLatin1String("strip.wet")) {
        m_desk.send(shop::PlacementChosen{analytics::Placement::wetInk});
    } else if (id == QLatin1String("strip.taped")) {
        m_desk.send(shop::PlacementChosen{analytics::Placement::tapedOnFilm});
    } else if (id == QLatin1String("strip.cloth")) {
        m_desk.send(shop::PlacementChosen{analytics::Placement::inOrUnderCloth});
    } else if (id.startsWith(QLatin1String("step."))) {
        m_desk.send(shop::StripStepTouched{id.mid(5).toInt()});
    } else if (id == QLatin1String("position.left")) {
        m_desk.send(shop::PositionTouched{records::BeltPosition::left});
    } else if (id == QLatin1String("position.centre")) {
        m_desk.send(shop::PositionTouched{records::BeltPosition::centre});
    } else if (id == QLatin1String("position.right")) {
        m_desk.send(shop::PositionTouched{records::BeltPosition::right});
    } else {
        return false;
    }
    return true;
}

void KioskPresenter::stateChanged() {
    const auto stage = shop::stageOf(m_desk.state());
    followPages();
    if (stage != m_stage) {
        // A run that was scanned, a ride that began or ended: the person is shown it without a touch.
        m_onRun = m_onRun || stage == shop::Stage::window || stage == shop::Stage::recording;
        m_stage = stage;
    }
    if (m_desk.state().run != m_run) {
        m_run = m_desk.state().run;
        m_onRun = m_onRun || m_run != nullptr;
        emit rideExpected();
    }
    reloadLists();
    show();
}

void KioskPresenter::reloadLists() {
    const auto head = m_book.head();
    if (!head || head->sequence == m_sequence) {
        return;
    }
    m_sequence = head->sequence;
    m_places.reload();
    m_facts = floorFactsOf(m_book, m_clock.wall(), m_speech);
}

Place KioskPresenter::placeNow() const {
    if (m_desk.state().strip) {
        return Place::strip;
    }
    return m_onRun ? Place::run : Place::dryer;
}

KioskState KioskPresenter::frame() const {
    const auto& state = m_desk.state();
    KioskState frame;
    const auto now = placeNow();
    frame.place = now == Place::strip       ? QStringLiteral("strip")
                  : !m_places.now().empty() ? toQString(m_places.now())
                  : now == Place::run       ? QStringLiteral("run")
                                            : QStringLiteral("dryer");
    frame.barPlace = frame.place == QLatin1String("runs")      ? QStringLiteral("run")
                     : frame.place == QLatin1String("reading") ? QStringLiteral("dryer")
                                                               : frame.place;
    frame.header = headerOf(now, state, m_facts, m_speech);
    if (frame.place != QLatin1String("strip") && !m_places.now().empty()) {
        const auto& sheet = m_model.sheet()->state();
        tellOfPlace(frame.header, sheet.head, sheet.headHow, m_facts, m_speech);
    }
    frame.scanEntry.title = toQString(m_speech.text("pad.title"));
    frame.scanEntry.hint = toQString(m_speech.text("pad.hint"));
    frame.scanEntry.enter = toQString(m_speech.text("pad.enter"));
    frame.scanEntry.erase = toQString(m_speech.text("pad.erase"));
    frame.scanEntry.leave = toQString(m_speech.text("action.close"));
    frame.places = {place("dryer", m_speech), place("run", m_speech)};
    for (const auto& id : m_places.bar()) {
        frame.places.append(place(id.c_str(), m_speech));
    }
    if (shop::touchLocked(state)) {
        frame.touchLocked = toQString(m_speech.text("floor.wiping"));
    }
    const auto notice = state.refusal ? std::optional{wording::noticeOf(*state.refusal, m_speech)} : m_notice;
    if (notice) {
        frame.refusal = refusalOf(*notice, "refusal.close", "action.close", m_speech);
    }
    return frame;
}

void KioskPresenter::show() {
    const auto wall = m_clock.wall();
    m_facts.wallMilliseconds = wall.millisecondsSinceEpoch;
    m_facts.utcOffsetMinutes = wall.utcOffsetMinutes;
    const auto& state = m_desk.state();
    if (!m_places.now().empty() && placeNow() != Place::strip) {
        m_places.tick();
        m_places.show();
        m_model.setState(frame());
        return;
    }
    switch (placeNow()) {
    case Place::dryer:
        m_model.dryer()->setState(dryerPageOf(state, m_facts, m_speech));
        break;
    case Place::run:
        m_model.run()->setState(runPageOf(state, m_facts, m_view, m_speech));
        break;
    case Place::strip:
        m_model.strip()->setState(stripPageOf(state, m_speech));
        break;
    }
    m_model.setState(frame());
}

} // namespace holdfast::kiosk::screens
