#include "kiosk/ledger/writer.hpp"

#include "kiosk/ledger/book.hpp"

#include <utility>

namespace holdfast::kiosk::ledger {

Writer::Writer(Book& book) : m_book(book), m_thread([this](const std::stop_token& stop) { run(stop); }) {}

Writer::~Writer() {
    m_thread.request_stop();
    m_thread.join();
}

void Writer::submit(CommitRequest request, std::function<void(Result<CommitReceipt>)> done) {
    post([this, request = std::move(request), done = std::move(done)] {
        auto receipt = m_book.commit(request);
        if (done) {
            done(std::move(receipt));
        }
    });
}

void Writer::post(std::function<void()> work) {
    {
        const std::lock_guard lock{m_mutex};
        m_queue.push_back(std::move(work));
    }
    m_wake.notify_one();
}

void Writer::run(const std::stop_token& stop) {
    std::unique_lock lock{m_mutex};
    for (;;) {
        m_wake.wait(lock, stop, [this] { return !m_queue.empty(); });
        if (m_queue.empty()) {
            return; // asked to stop, and all is done
        }
        const auto work = std::move(m_queue.front());
        m_queue.pop_front();
        lock.unlock();
        work();
        lock.lock();
        if (m_queue.empty()) {
            lock.unlock();
            m_book.rest();
            lock.lock();
        }
    }
}

} // namespace holdfast::kiosk::ledger
