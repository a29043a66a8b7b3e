#pragma once

#include "drivers/catalogue/description.hpp"
#include "drivers/clock/clock.hpp"
#include "drivers/link/address.hpp"
#include "drivers/link/link_state.hpp"
#include "drivers/link/port_opener.hpp"
#include "drivers/link/sample.hpp"

#include <QObject>
#include <QString>
#include <QVector>

#include <string>

namespace holdfast::drivers {

/// One instrument: opens its port, makes sure that it is the right one, stamps what it sends, and after any fault opens
/// it again by itself. Lives in a thread with an event loop (LinkThread); everything crosses by queued signal.
///
/// A gap shows in the stamps and nowhere else. Stamps of one link always rise. A sample flagged `unreadable` stands for
/// a line that was damaged on the way; it does not count as a sign of life.
class InstrumentLink final : public QObject {
    Q_OBJECT
public:
    /// `clock` and `opener` must outlive the link. `instrumentSerial`, if not empty, must be what the instrument says.
    InstrumentLink(InstrumentDescription description, Address address, const Clock& clock, PortOpener& opener,
                   std::string instrumentSerial = {});
    ~InstrumentLink() override;

    /// The age of the last sample beyond which an instrument is lost: four intervals, at least 2 s, at most 5 s
    /// (decisions 3, gap).
    [[nodiscard]] static MonotonicTime quietLimit(const InstrumentDescription& description) noexcept;

public slots:
    void start();
    /// Closes the port; the state becomes absent without a cause. start() may be called again.
    void stop();

signals:
    /// In the order read; never empty.
    void sampled(const QVector<holdfast::drivers::Sample>& samples);
    /// Only when something changed.
    void statusChanged(const holdfast::drivers::LinkStatus& status);
    /// No usable reading for longer than quietLimit(): also goes out as `lost`.
    void wentQuiet(qint64 lastSampleMicroseconds);
    /// A SCPI instrument's own error, for the log.
    void instrumentError(int number, const QString& text);

private:
    class Work;
    Work* m_work; ///< a child object
};

} // namespace holdfast::drivers
