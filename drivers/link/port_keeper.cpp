#include "drivers/link/port_keeper.hpp"

#include <utility>

namespace holdfast::drivers {

PortKeeper::PortKeeper(Address address, SerialSettings settings, const Clock& clock, PortOpener& opener)
    : m_address{std::move(address)}, m_settings{settings}, m_clock{clock}, m_opener{opener}, m_retry{this} {
    m_retry.setSingleShot(true);
    m_retry.setTimerType(Qt::PreciseTimer);
    connect(&m_retry, &QTimer::timeout, this, &PortKeeper::tryOpen);
}

PortKeeper::~PortKeeper() {
    letGo();
}

void PortKeeper::start() {
    if (!m_device && !m_retry.isActive()) {
        tryOpen();
    }
}

void PortKeeper::stop() {
    m_retry.stop();
    letGo();
}

void PortKeeper::reopen() {
    letGo();
    m_retry.start(realDelay(m_clock, kRetry));
}

void PortKeeper::send(const QByteArray& bytes) {
    if (m_device && m_device->write(bytes) != bytes.size() && m_device) {
        gone();
    }
}

void PortKeeper::tryOpen() {
    auto port = m_opener.open(m_address, m_settings);
    if (!port) {
        m_retry.start(realDelay(m_clock, kRetry));
        emit failed(port.error().fault);
        return;
    }
    m_device = std::move(port->device);
    connect(m_device.get(), &QIODevice::readyRead, this, &PortKeeper::read);
    connect(m_device.get(), &QIODevice::aboutToClose, this, &PortKeeper::gone);
    emit opened(QString::fromStdString(port->path));
}

void PortKeeper::read() {
    const QByteArray bytes = m_device ? m_device->readAll() : QByteArray{};
    if (!bytes.isEmpty()) {
        emit received(bytes);
    }
}

void PortKeeper::gone() {
    letGo();
    m_retry.start(realDelay(m_clock, kRetry));
    emit unplugged();
}

void PortKeeper::letGo() {
    if (!m_device) {
        return;
    }
    QIODevice* device = m_device.release();
    disconnect(device, nullptr, this, nullptr);
    if (device->isOpen()) {
        device->close();
    }
    device->deleteLater(); // may be in one of its own signals
}

} // namespace holdfast::drivers
