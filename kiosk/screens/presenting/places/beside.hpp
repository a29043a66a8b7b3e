#pragma once

#include <QObject>

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace holdfast::kiosk::screens {

/// Work that takes long, on a thread of its own, one piece after another. Made, asked and destroyed in the main thread.
/// Only values cross: a piece owns what it needs, and returns what is to be done with its answer in the main thread.
class Beside final {
public:
    using Answer = std::function<void()>;

    Beside() = default;
    /// Waits for the piece under way; no other is begun, and nobody is answered any more.
    ~Beside() = default;
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;

    /// Returns at once. `work` runs on the thread and must not throw; its answer comes by queued call.
    void run(std::function<Answer()> work);

private:
    void serve(const std::stop_token& stop);

    QObject m_home; ///< answers go to its thread, and die with it
    std::mutex m_mutex;
    std::condition_variable_any m_wake;
    std::deque<std::function<Answer()>> m_queue;
    std::jthread m_thread; ///< last: it ends before what it uses; started by the first piece
};

} // namespace holdfast::kiosk::screens
