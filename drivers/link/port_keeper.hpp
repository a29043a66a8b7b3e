#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/link/port_opener.hpp"

#include <QByteArray>
#include <QObject>
#include <QTimer>

#include <memory>

namespace holdfast::drivers {

/// Keeps one port open: tries again every 250 ms of clock time, closes at the first error. Lives in its link's thread.
class PortKeeper final : public QObject {
    Q_OBJECT
public:
    static constexpr MonotonicTime kRetry = std::chrono::milliseconds{250};

    PortKeeper(Address address, SerialSettings settings, const Clock& clock, PortOpener& opener);
    ~PortKeeper() override;

    void start();
    void stop();
    /// Closes the port, without telling, and opens it again at the next try.
    void reopen();
    /// A failed or short write closes the port.
    void send(const QByteArray& bytes);

signals:
    void opened(const QString& path);
    void failed(holdfast::drivers::LinkFault fault);
    void received(const QByteArray& bytes);
    void unplugged();

private:
    void tryOpen();
    void read();
    void gone();
    void letGo();

    Address m_address;
    SerialSettings m_settings;
    const Clock& m_clock;
    PortOpener& m_opener;
    std::unique_ptr<QIODevice> m_device;
    QTimer m_retry;
};

} // namespace holdfast::drivers
