#include "kiosk/screens/wedge_filter.hpp"

#include <QCoreApplication>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QWindow>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::chrono::milliseconds kGrace{2}; // the timer must not fire before the pace has passed

bool makesText(const QKeyEvent& event) {
    const Qt::KeyboardModifiers command = Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier;
    return !event.text().isEmpty() && event.text().front().isPrint() && !(event.modifiers() & command) &&
           !event.isAutoRepeat();
}

bool isModifier(int key) {
    return key == Qt::Key_Shift || key == Qt::Key_Control || key == Qt::Key_Alt || key == Qt::Key_AltGr ||
           key == Qt::Key_Meta || key == Qt::Key_CapsLock || key == Qt::Key_NumLock;
}

int keyOf(QChar sign) {
    const QChar upper = sign.toUpper();
    return upper.unicode() >= 0x20 && upper.unicode() < 0x7F ? upper.unicode() : static_cast<int>(Qt::Key_unknown);
}

} // namespace

WedgeFilter::WedgeFilter(const drivers::Clock& clock, QObject* parent) : QObject(parent), m_clock(clock) {
    m_timer.setSingleShot(true);
    m_timer.setTimerType(Qt::PreciseTimer);
    m_timer.setInterval(drivers::WedgeFramer::kScanPace + kGrace);
    connect(&m_timer, &QTimer::timeout, this, &WedgeFilter::expire);
}

bool WedgeFilter::eventFilter(QObject* watched, QEvent* event) {
    // A key goes to the window first and from there to the item with the focus: take it once, at the window.
    if (event->type() != QEvent::KeyPress || m_sending || !watched->isWindowType()) {
        return false;
    }
    m_focus = watched;
    return takeKey(*static_cast<QKeyEvent*>(event));
}

bool WedgeFilter::takeKey(QKeyEvent& event) {
    if (isModifier(event.key())) {
        return false;
    }
    const drivers::MonotonicTime now = m_clock.now();
    if (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter) {
        return finish(m_framer.enter(now));
    }
    if (makesText(event)) {
        const bool swallow = finish(m_framer.key(event.text().toStdString(), now));
        m_timer.start();
        return swallow;
    }
    return finish(m_framer.expire(now));
}

bool WedgeFilter::finish(const drivers::WedgeStep& step) {
    send(step.released);
    if (step.scan) {
        m_timer.stop();
        emit scanned(QString::fromStdString(*step.scan));
    }
    if (step.fault) {
        m_timer.stop();
        emit unusable(*step.fault);
    }
    return step.swallow;
}

void WedgeFilter::expire() {
    m_focus = QGuiApplication::focusWindow();
    finish(m_framer.expire(m_clock.now()));
    if (m_framer.isHolding()) {
        m_timer.start();
    }
}

void WedgeFilter::send(const std::string& typed) {
    if (typed.empty() || m_focus == nullptr) {
        return;
    }
    m_sending = true;
    for (const QChar sign : QString::fromStdString(typed)) {
        for (const QEvent::Type type : {QEvent::KeyPress, QEvent::KeyRelease}) {
            QKeyEvent key(type, keyOf(sign), Qt::NoModifier, QString(sign));
            QCoreApplication::sendEvent(m_focus, &key);
        }
    }
    m_sending = false;
}

} // namespace holdfast::kiosk::screens
