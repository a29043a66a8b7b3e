#include "kiosk/screens/presenting/places/study_room.hpp"

#include <exception>
#include <utility>

namespace holdfast::kiosk::screens {

StudyRoom::StudyRoom(const ledger::Book& book, QObject* parent)
    : QObject{parent}, m_book{book}, m_thread{[this](const std::stop_token& closing) { run(closing); }} {}

StudyRoom::~StudyRoom() {
    const std::lock_guard lock{m_mutex};
    for (auto& job : m_jobs) {
        job.stop.request_stop();
    }
    m_running.request_stop();
    m_thread.request_stop();
}

std::stop_source StudyRoom::ask(StudyWork work, StudyDone then) {
    std::stop_source stop;
    {
        const std::lock_guard lock{m_mutex};
        m_jobs.push_back({std::move(work), std::move(then), stop});
    }
    m_asked.notify_one();
    return stop;
}

void StudyRoom::run(const std::stop_token& closing) {
    while (true) {
        Job job;
        {
            std::unique_lock lock{m_mutex};
            if (!m_asked.wait(lock, closing, [this] { return !m_jobs.empty(); })) {
                return;
            }
            job = std::move(m_jobs.front());
            m_jobs.pop_front();
            m_running = job.stop;
        }
        if (job.stop.stop_requested()) {
            continue;
        }
        const auto reader = m_book.openReader(); // a fresh look at the book each time
        if (!reader) {
            tell(job, reader.error());
            continue;
        }
        try {
            job.work(**reader, job.stop.get_token());
            tell(job, std::nullopt);
        } catch (const std::exception& error) {
            tell(job, ledger::Failure{ledger::FailureCode::damaged, error.what()});
        }
    }
}

void StudyRoom::tell(Job& job, std::optional<ledger::Failure> failure) {
    QMetaObject::invokeMethod(
        this,
        [then = std::move(job.then), stop = job.stop, failure = std::move(failure)] {
            if (!stop.stop_requested()) {
                then(failure);
            }
        },
        Qt::QueuedConnection);
}

} // namespace holdfast::kiosk::screens
