#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <QObject>

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>

namespace holdfast::kiosk::screens {

/// The worker of long studies (PlaceNeeds::study): one at a time, in the order they were asked for. Made, asked and
/// ended in the main thread; ending it asks what runs to stop and waits for it.
class StudyRoom final : public QObject {
    Q_OBJECT
public:
    explicit StudyRoom(const ledger::Book& book, QObject* parent = nullptr);
    StudyRoom(const StudyRoom&) = delete;
    StudyRoom& operator=(const StudyRoom&) = delete;
    ~StudyRoom() override;

    /// Nothing is told once the stop source given back was asked to stop.
    [[nodiscard]] std::stop_source ask(StudyWork work, StudyDone then);

private:
    struct Job final {
        StudyWork work;
        StudyDone then;
        std::stop_source stop;
    };
    void run(const std::stop_token& closing);
    void tell(Job& job, std::optional<ledger::Failure> failure);

    const ledger::Book& m_book;
    std::mutex m_mutex;
    std::condition_variable_any m_asked;
    std::deque<Job> m_jobs;
    std::stop_source m_running{std::nostopstate};
    std::jthread m_thread; ///< last: it uses all of the above
};

} // namespace holdfast::kiosk::screens
