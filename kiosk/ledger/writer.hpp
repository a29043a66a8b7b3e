#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/ledger/failure.hpp"

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace holdfast::kiosk::ledger {

class Book;

/// The one thread that writes. What is submitted is done in order; destruction waits until all of it is done.
class Writer {
public:
    /// The book must outlive the writer.
    explicit Writer(Book& book);
    ~Writer();
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    /// `done` is called on the writer's thread when the request is on the disk or has failed; it must not throw. May be
    /// empty.
    void submit(CommitRequest request, std::function<void(Result<CommitReceipt>)> done);
    /// Any other work that belongs to the disk, such as appending to a spool, in order with the commits.
    void post(std::function<void()> work);

private:
    void run(const std::stop_token& stop);

    Book& m_book;
    std::mutex m_mutex;
    std::condition_variable_any m_wake;
    std::deque<std::function<void()>> m_queue;
    std::jthread m_thread; ///< last: starts when everything above is there
};

} // namespace holdfast::kiosk::ledger
