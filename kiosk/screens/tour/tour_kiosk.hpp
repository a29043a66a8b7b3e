#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/protocol/ticket_code.hpp"
#include "drivers/simulated/scenario.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/writer.hpp"
#include "kiosk/screens/presenting/kiosk_presenter.hpp"
#include "kiosk/screens/tour/tour.hpp"
#include "kiosk/shop/proving/proving_desk.hpp"

#include <QTemporaryDir>

#include <functional>
#include <memory>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace holdfast::kiosk::screens {

/// The kiosk of a walk: what a person, a scanner and a probe do to it, and what it shows then. Each deed waits until
/// the book has answered. What cannot be done is noted in the tour and left out.
class TourKiosk final {
public:
    enum class Shop {
        none,     ///< the first start of a new kiosk
        invented, ///< tourShop()
        demo,     ///< with its history
    };
    TourKiosk(Shop shop, Tour& tour);
    ~TourKiosk();
    TourKiosk(const TourKiosk&) = delete;
    TourKiosk& operator=(const TourKiosk&) = delete;

    /// Keeps what is shown now.
    void stop(const char* name);

    /// An action's id as it is offered now; with * at its end the first that begins so.
    void press(const std::string& id);
    /// Only if it is offered.
    void pressIfThere(const std::string& id);
    /// A row of the list or of the blocks whose id begins so and whose title has `words` in it.
    void pressRow(const std::string& idStart, const std::string& words);
    /// A row of the list with the words in either line and nothing at its end.
    void pressDetail(const std::string& idStart, const std::string& words);
    /// Opens the pad of a field of the sheet and enters it.
    void type(const std::string& field, const std::string& text);
    /// Each text into the field `prefix` + its name.
    void typeAll(const std::string& prefix, const std::vector<std::pair<const char*, const char*>>& fields);
    /// Opens the pad and leaves it open.
    void openPad(const std::string& field);
    void scan(drivers::TicketKind kind, std::uint64_t number);
    void scanText(const std::string& text);
    [[nodiscard]] bool offers(const std::string& id);
    /// Until it is offered; another thread works on it.
    void waitFor(const std::string& id);
    /// Until the book has the person's PIN.
    void waitForPin(std::int64_t person);
    /// Until it is offered no more; another thread works on it.
    void waitUntilGone(const std::string& id);
    /// Until what the head tells of as being worked out stands there.
    void waitUntilWorkedOut();
    void send(const shop::ProvingEvent& event);

    /// Time goes by; the probe says five times a second how hot it is.
    void pass(int seconds);
    /// Until the book is asked to keep a reading, or ten minutes at most; the book's answer is not waited for.
    void passUntilWriting();
    /// A print goes in now.
    void ride(double peakFahrenheit);
    /// The probe stands in a bath until the next ride.
    void bath(std::optional<double> celsius);
    void plugged(bool in);
    /// The probe's line, as the driver tells it.
    void link(const char* probe, drivers::LinkState state, drivers::LinkFault fault = drivers::LinkFault::none);
    void moveClock(std::chrono::microseconds span);
    /// As after a power cut: the program ends in the middle and starts again.
    void restart();
    void settle();
    /// The pictures of all tests go into the tour.
    void keepPictures();

    [[nodiscard]] const shop::ProvingState& state() const { return m_desk->state(); }
    [[nodiscard]] std::filesystem::path exchange() const;
    [[nodiscard]] drivers::WallTime wall() const { return m_clock.wall(); }

private:
    void openBook(Shop shop);
    void open();
    void close();
    void second();
    void miss(const std::string& what);
    [[nodiscard]] QStringList offered();

    Tour& m_tour;
    QTemporaryDir m_folder;
    std::mt19937_64 m_chance{20411};
    drivers::ManualClock m_clock;
    drivers::Scenario m_scenario;
    drivers::MonotonicTime m_scenarioBegin{0};
    std::optional<double> m_bath;
    bool m_plugged = true;
    std::int64_t m_sampleNumber = 0;
    QString m_last; ///< name of the last stop, to say where something is missing
    QObject m_context;
    KioskModel m_model;
    std::unique_ptr<ledger::Book> m_book;
    std::unique_ptr<ledger::Writer> m_writer;
    std::unique_ptr<shop::ProvingDesk> m_desk;
    std::unique_ptr<KioskPresenter> m_presenter;
};

} // namespace holdfast::kiosk::screens
