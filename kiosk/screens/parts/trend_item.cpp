#include "kiosk/screens/parts/trend_item.hpp"

#include "kiosk/screens/charts/trend_paint.hpp"

#include <QKeyEvent>
#include <QMouseEvent>

namespace holdfast::kiosk::screens {

TrendChart::TrendChart(QQuickItem* parent) : ChartItem(parent) {
    setAcceptedMouseButtons(Qt::LeftButton);
}

void TrendChart::setChartState(const TrendChartState& state) {
    if (state == m_state) {
        return;
    }
    const QString held = m_point >= 0 ? m_layout.targets[m_point].id : QString{};
    m_state = state;
    m_down = -1;
    m_point = -1;
    emit chartStateChanged();
    relay();
    for (int i = 0; i < targets() && !held.isEmpty() && m_point < 0; ++i) {
        m_point = m_layout.targets[i].id == held ? i : -1;
    }
    emit pointChanged();
}

QString TrendChart::spokenPoint() const {
    return m_point >= 0 ? m_layout.targets[m_point].spoken : QString{};
}

QRectF TrendChart::pointBox() const {
    return m_point >= 0 ? m_layout.targets[m_point].box : QRectF{};
}

double TrendChart::heightNeeded() const {
    m_layout = layoutTrendChart(m_state, style(), {width(), 0.0});
    return m_layout.height;
}

void TrendChart::paint(QPainter* painter) {
    paintTrendChart(*painter, m_layout, style());
    if (m_down >= 0) {
        paintTrendFocus(*painter, m_layout, style(), m_down, true);
    } else if (hasActiveFocus()) {
        paintTrendFocus(*painter, m_layout, style(), m_point, false);
    }
}

void TrendChart::mousePressEvent(QMouseEvent* event) {
    m_down = targetAt(m_layout, event->position(), unit());
    event->setAccepted(m_down >= 0);
    update();
}

void TrendChart::mouseReleaseEvent(QMouseEvent* event) {
    const int released = targetAt(m_layout, event->position(), unit());
    const bool same = m_down >= 0 && released == m_down;
    m_down = -1;
    update();
    if (same) {
        emit pointPressed(m_layout.targets[released].id);
    }
}

void TrendChart::mouseUngrabEvent() {
    m_down = -1;
    update();
}

int TrendChart::steppedTo(int key) const {
    switch (key) {
    case Qt::Key_Right:
    case Qt::Key_Down:
        return targetAfter(m_layout, m_point, 1);
    case Qt::Key_Left:
    case Qt::Key_Up:
        return targetAfter(m_layout, m_point, -1);
    case Qt::Key_Home:
        return targetAfter(m_layout, -1, 1);
    case Qt::Key_End:
        return targetAfter(m_layout, -1, -1);
    case Qt::Key_PageDown:
        return ruledAfter(m_layout, m_point, 1);
    case Qt::Key_PageUp:
        return ruledAfter(m_layout, m_point, -1);
    default:
        return -1;
    }
}

void TrendChart::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    const bool enters = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space;
    if (enters && m_point >= 0 && !event->isAutoRepeat()) {
        emit pointPressed(m_layout.targets[m_point].id);
        return;
    }
    const int stepped = steppedTo(key);
    event->setAccepted(enters || stepped >= 0);
    if (stepped >= 0) {
        setPoint(stepped);
    }
}

void TrendChart::focusInEvent(QFocusEvent* event) {
    ChartItem::focusInEvent(event);
    setPoint(m_point >= 0 ? m_point : targetAfter(m_layout, -1, 1));
}

void TrendChart::focusOutEvent(QFocusEvent* event) {
    ChartItem::focusOutEvent(event);
    update();
}

void TrendChart::setPoint(int point) {
    if (point != m_point) {
        m_point = point;
        emit pointChanged();
    }
    update();
}

} // namespace holdfast::kiosk::screens
