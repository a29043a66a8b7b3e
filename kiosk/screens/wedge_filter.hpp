#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/protocol/wedge_framer.hpp"

#include <QObject>
#include <QTimer>

class QKeyEvent;

namespace holdfast::kiosk::screens {

/// The one filter on the application that tells a keyboard-wedge scanner from a person. Install it on the application:
/// `app.installEventFilter(&filter)`. Keys that turn out to be typed are sent on, in order, to whoever has the focus.
class WedgeFilter final : public QObject {
    Q_OBJECT
public:
    /// `clock` must run in real time, not sped up, and outlive the filter.
    explicit WedgeFilter(const drivers::Clock& clock, QObject* parent = nullptr);

    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void scanned(const QString& code);
    /// A scan that could not be used; only wording says why.
    void unusable(holdfast::drivers::ScanFault fault);

private:
    bool takeKey(QKeyEvent& event);
    bool finish(const drivers::WedgeStep& step);
    void expire();
    void send(const std::string& typed);

    const drivers::Clock& m_clock;
    drivers::WedgeFramer m_framer;
    QTimer m_timer;
    QObject* m_focus = nullptr; ///< only compared and sent to while its key is handled
    bool m_sending = false;
};

} // namespace holdfast::kiosk::screens
