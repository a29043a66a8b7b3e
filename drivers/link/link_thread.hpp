#pragma once

#include <QObject>
#include <QThread>

#include <memory>
#include <utility>

namespace holdfast::drivers {

/// Gives a link a thread of its own with an event loop. Connect to `link()` before start(): connections made without a
/// type are queued. The destructor stops the link, closes its port and waits for the thread.
template <class Link>
class LinkThread final {
public:
    explicit LinkThread(std::unique_ptr<Link> link) : m_link{link.release()} {
        m_link->moveToThread(&m_thread);
        QObject::connect(&m_thread, &QThread::finished, m_link, &QObject::deleteLater);
    }
    LinkThread(const LinkThread&) = delete;
    LinkThread& operator=(const LinkThread&) = delete;
    ~LinkThread() {
        if (!m_thread.isRunning()) {
            m_thread.start(); // a link belongs to its thread and can only be deleted there
        }
        QMetaObject::invokeMethod(m_link, &Link::stop, Qt::BlockingQueuedConnection);
        m_thread.quit();
        m_thread.wait();
    }

    void start() {
        m_thread.start();
        QMetaObject::invokeMethod(m_link, &Link::start, Qt::QueuedConnection);
    }
    [[nodiscard]] Link& link() const noexcept { return *m_link; }

private:
    QThread m_thread;
    Link* m_link; ///< deleted in its thread
};

} // namespace holdfast::drivers
