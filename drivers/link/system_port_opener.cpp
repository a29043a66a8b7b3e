#include "drivers/link/port_opener.hpp"

#include <QSerialPort>
#include <QSerialPortInfo>

#include <filesystem>
#include <optional>

#include <sys/file.h>
#include <unistd.h>

namespace holdfast::drivers {

namespace {

/// Closes itself in its first error handler; see OpenPort.
class SelfClosingPort final : public QSerialPort {
public:
    SelfClosingPort() {
        connect(this, &QSerialPort::errorOccurred, this, [this](QSerialPort::SerialPortError error) {
            const bool harmless = error == QSerialPort::NoError || error == QSerialPort::UnsupportedOperationError;
            if (!harmless && isOpen() && !m_isClosing) {
                m_isClosing = true; // closing a port that has hung up reports errors of its own
                close();
            }
        });
    }

private:
    bool m_isClosing = false;
};

/// The USB socket that a tty hangs on ("1-1.4"), from the device's place in sysfs: the interface's folder is
/// "1-1.4:1.0".
std::string socketOf(const std::string& portName) {
    std::error_code error;
    auto place = std::filesystem::canonical("/sys/class/tty/" + portName + "/device", error);
    for (; !error && place.has_relative_path(); place = place.parent_path()) {
        const std::string name = place.filename().string();
        const auto colon = name.find(':');
        if (colon != std::string::npos && name.find('-') < colon) {
            return name.substr(0, colon);
        }
    }
    return {};
}

bool isAt(const QSerialPortInfo& port, const Address& address) {
    if (!address.usb) {
        return socketOf(port.portName().toStdString()) == address.topology;
    }
    const UsbIdentity& usb = *address.usb;
    return port.hasVendorIdentifier() && port.hasProductIdentifier() && port.vendorIdentifier() == usb.vendor &&
           port.productIdentifier() == usb.product && port.serialNumber().toStdString() == usb.serial;
}

std::optional<std::string> pathOf(const Address& address) {
    if (!address.usb && address.topology.empty()) {
        return address.path.empty() ? std::nullopt : std::optional{address.path};
    }
    for (const QSerialPortInfo& port : QSerialPortInfo::availablePorts()) {
        if (isAt(port, address)) {
            return port.systemLocation().toStdString();
        }
    }
    return std::nullopt;
}

QSerialPort::Parity parityOf(Parity parity) {
    switch (parity) {
    case Parity::none:
        return QSerialPort::NoParity;
    case Parity::even:
        return QSerialPort::EvenParity;
    case Parity::odd:
        return QSerialPort::OddParity;
    case Parity::mark:
        return QSerialPort::MarkParity;
    case Parity::space:
        return QSerialPort::SpaceParity;
    }
    return QSerialPort::NoParity;
}

QSerialPort::FlowControl flowOf(FlowControl flow) {
    switch (flow) {
    case FlowControl::none:
        return QSerialPort::NoFlowControl;
    case FlowControl::hardware:
        return QSerialPort::HardwareControl;
    case FlowControl::software:
        return QSerialPort::SoftwareControl;
    }
    return QSerialPort::NoFlowControl;
}

void configure(QSerialPort& port, const SerialSettings& settings) {
    port.setBaudRate(settings.baud);
    port.setDataBits(static_cast<QSerialPort::DataBits>(settings.dataBits));
    port.setParity(parityOf(settings.parity));
    port.setStopBits(settings.stopBits == 2 ? QSerialPort::TwoStop : QSerialPort::OneStop);
    port.setFlowControl(flowOf(settings.flow));
}

LinkFault faultOf(const QSerialPort& port, const std::string& path) {
    if (port.error() == QSerialPort::DeviceNotFoundError) {
        return LinkFault::portMissing;
    }
    if (::access(path.c_str(), F_OK) != 0) {
        return LinkFault::portMissing;
    }
    return ::access(path.c_str(), R_OK | W_OK) != 0 ? LinkFault::permission : LinkFault::portBusy;
}

} // namespace

tl::expected<OpenPort, PortFailure> SystemPortOpener::open(const Address& address, const SerialSettings& settings) {
    const auto named = pathOf(address);
    if (!named) {
        return tl::unexpected(PortFailure{LinkFault::portMissing, "No port at " + toText(address)});
    }
    std::error_code error;
    const std::string path = std::filesystem::canonical(*named, error).string(); // locks go by name: no aliases
    if (error) {
        return tl::unexpected(PortFailure{LinkFault::portMissing, "No port at " + *named});
    }
    auto port = std::make_unique<SelfClosingPort>();
    port->setPortName(QString::fromStdString(path));
    configure(*port, settings);
    if (!port->open(QIODevice::ReadWrite)) {
        return tl::unexpected(PortFailure{faultOf(*port, path), path + ": " + port->errorString().toStdString()});
    }
    if (::flock(port->handle(), LOCK_EX | LOCK_NB) != 0) { // the kernel's exclusive mode does not hold for root
        return tl::unexpected(PortFailure{LinkFault::portBusy, path + " is locked by another program"});
    }
    port->clear(QSerialPort::AllDirections);
    return OpenPort{std::move(port), path};
}

std::vector<FoundPort> listPorts() {
    std::vector<FoundPort> found;
    for (const QSerialPortInfo& port : QSerialPortInfo::availablePorts()) {
        FoundPort entry;
        entry.path = port.systemLocation().toStdString();
        entry.description = port.description().toStdString();
        const std::string serial = port.serialNumber().toStdString();
        if (port.hasVendorIdentifier() && port.hasProductIdentifier() && !serial.empty()) {
            entry.address.usb = UsbIdentity{port.vendorIdentifier(), port.productIdentifier(), serial};
        } else {
            entry.address.topology = socketOf(port.portName().toStdString());
            entry.address.path = entry.address.topology.empty() ? entry.path : std::string{};
        }
        found.push_back(std::move(entry));
    }
    return found;
}

} // namespace holdfast::drivers
