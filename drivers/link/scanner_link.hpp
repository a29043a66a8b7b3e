#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/link/address.hpp"
#include "drivers/link/link_state.hpp"
#include "drivers/link/port_opener.hpp"
#include "drivers/protocol/scan_text.hpp"

#include <QObject>
#include <QString>

namespace holdfast::drivers {

/// A code scanner on a serial line that ends each scan with CR, LF or both. Ready as soon as its port is open: a
/// scanner says nothing of itself. Otherwise it lives and recovers as an InstrumentLink does.
class ScannerLink final : public QObject {
    Q_OBJECT
public:
    /// `clock` and `opener` must outlive the link.
    ScannerLink(Address address, SerialSettings settings, const Clock& clock, PortOpener& opener);
    ~ScannerLink() override;

public slots:
    void start();
    void stop();

signals:
    void scanned(const QString& text);
    /// Something was scanned that is no scan; never silent.
    void unreadable(holdfast::drivers::ScanFault fault);
    void statusChanged(const holdfast::drivers::LinkStatus& status);

private:
    class Work;
    Work* m_work; ///< a child object
};

} // namespace holdfast::drivers
