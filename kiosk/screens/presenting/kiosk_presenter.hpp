#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/reports/printing/print_shelf.hpp"
#include "kiosk/screens/kiosk_model.hpp"
#include "kiosk/screens/presenting/floor/floor_place.hpp"
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/places/place_frame.hpp"
#include "kiosk/screens/presenting/places/sign_in_place.hpp"
#include "kiosk/screens/presenting/places/study_room.hpp"
#include "kiosk/screens/presenting/run_presenter.hpp"
#include "kiosk/shop/proving/proving_desk.hpp"
#include "kiosk/wording/notices.hpp"

#include <QObject>
#include <QTimer>

#include <filesystem>
#include <memory>

class QQuickImageProvider;

namespace holdfast::kiosk::screens {

class TracePlace;
class WaitingPictures;

/// Stands between the proving desk and the pages: state in, page states out; presses in, events out. Main thread.
/// What is printed goes to `data`/print, what is taken over or away lies in `data`/exchange.
class KioskPresenter final : public QObject {
    Q_OBJECT
public:
    KioskPresenter(shop::ProvingDesk& desk, const ledger::Book& book, const drivers::Clock& clock, KioskModel& model,
                   std::filesystem::path data, QObject* parent = nullptr);

    /// Reads the lists from the book and shows everything; lists load after the first frame, so call it then.
    void start();
    /// For the engine that draws the pages, under the name "picture". The book must outlive it.
    [[nodiscard]] std::unique_ptr<QQuickImageProvider> makePictures() const;

public slots:
    /// A scan of the wedge, the serial scanner or the pad.
    void scan(const QString& text);
    /// Something was scanned that is no text: it is refused like an empty one.
    void scanUnreadable();
    void act(const QString& id);
    /// What was typed for a field of a sheet.
    void enter(const QString& field, const QString& text);

signals:
    /// A print should go through now: a run was announced, or another ride was asked for.
    void rideExpected();

private:
    void stateChanged();
    void reloadLists();
    void show();
    [[nodiscard]] bool actOnPage(const QString& id);
    [[nodiscard]] bool actOnStrip(const QString& id);
    [[nodiscard]] bool actOnFloor(const QString& id);
    [[nodiscard]] bool actOnPlaces(const QString& id);
    void makePlaces();
    [[nodiscard]] PlaceNeeds placeNeeds();
    [[nodiscard]] FloorNeeds floorNeeds();
    void afterScan();
    void followPages();
    void keepForPlace(Keeping keeping, KeepDone then);
    void print(const PrintWish& wish);
    void goTo(const std::string& place);
    [[nodiscard]] bool scannedByPlace(const std::string& text);
    void tellBadgeUnasked();
    void takeWayOut(std::size_t index);
    void readSettings();
    void speakLanguage(const std::string& code);
    [[nodiscard]] Place placeNow() const;
    [[nodiscard]] KioskState frame() const;

    shop::ProvingDesk& m_desk;
    const ledger::Book& m_book;
    const drivers::Clock& m_clock;
    KioskModel& m_model;
    std::filesystem::path m_data;
    StudyRoom m_studies; ///< before the places, which ask it
    PlaceFrame m_places;
    SignInPlace* m_signIn = nullptr; ///< one of m_places
    FloorPlace* m_floor = nullptr;   ///< one of m_places
    TracePlace* m_trace = nullptr;   ///< one of m_places
    std::shared_ptr<WaitingPictures> m_waitingPictures;
    reports::PrintShelf m_shelf;
    std::string m_labelPrinter;
    std::string m_sheetPrinter;
    double m_panelInch = 0.0; ///< as the shop set it; 0: it did not
    wording::Speech m_speech;
    FloorFacts m_facts;
    RunView m_view;
    std::optional<wording::Notice> m_notice; ///< something that is no reading could not be written
    QTimer m_clockTick;
    bool m_onRun = false;         ///< the person is on the Run place
    bool m_typing = false;        ///< a spot, gun or flash was being typed at the last change
    bool m_handOver = false;      ///< the hand-over stood there at the last change
    std::int64_t m_sequence = -1; ///< newest entry the lists have seen
    shop::Stage m_stage = shop::Stage::idle;
    std::shared_ptr<const shop::AnnouncedRun> m_run; ///< the last one shown
};

} // namespace holdfast::kiosk::screens
