#include "kiosk/screens/presenting/places/beside.hpp"

#include <QMetaObject>

#include <utility>

namespace holdfast::kiosk::screens {

void Beside::run(std::function<Answer()> work) {
    {
        const std::lock_guard lock{m_mutex};
        m_queue.push_back(std::move(work));
    }
    m_wake.notify_one();
    if (!m_thread.joinable()) {
        m_thread = std::jthread{[this](const std::stop_token& stop) { serve(stop); }};
    }
}

void Beside::serve(const std::stop_token& stop) {
    while (true) {
        std::function<Answer()> work;
        {
            std::unique_lock lock{m_mutex};
            if (!m_wake.wait(lock, stop, [&] { return !m_queue.empty(); })) {
                return;
            }
            if (stop.stop_requested()) {
                return;
            }
            work = std::move(m_queue.front());
            m_queue.pop_front();
        }
        QMetaObject::invokeMethod(&m_home, work(), Qt::QueuedConnection);
    }
}

} // namespace holdfast::kiosk::screens
