#include "kiosk/screens/parts/trend_item.hpp"

#include "kiosk/screens/charts/trend_paint.hpp"

#include <QMouseEvent>

#include <algorithm>

namespace holdfast::kiosk::screens {

TrendChart::TrendChart(QQuickItem* parent) : ChartItem(parent) {
    setAcceptedMouseButtons(Qt::LeftButton);
}

void TrendChart::setChartState(const TrendChartState& state) {
    if (state != m_state) {
        m_state = state;
        emit chartStateChanged();
        relay();
    }
}

void TrendChart::setFocused(bool focused) {
    if (focused != m_focused) {
        m_focused = focused;
        emit focusedChanged();
        update();
    }
}

QString TrendChart::spokenPoint() const {
    return m_point >= 0 ? m_layout.targets[m_point].spoken : QString{};
}

QRectF TrendChart::pointBox() const {
    return m_point >= 0 ? m_layout.targets[m_point].box : QRectF{};
}

double TrendChart::heightNeeded() const {
    return m_layout.height;
}

void TrendChart::relay() {
    const QString held = m_point >= 0 ? m_layout.targets[m_point].id : QString{};
    m_layout = layoutTrendChart(m_state, style(), {width(), 0.0});
    m_down = -1;
    const auto found = std::find_if(m_layout.targets.begin(), m_layout.targets.end(),
                                    [&](const TrendTarget& target) { return target.id == held; });
    m_point = found == m_layout.targets.end() ? targetAfter(m_layout, -1, 1)
                                              : static_cast<int>(found - m_layout.targets.begin());
    ChartItem::relay();
    emit layoutChanged();
    emit pointChanged();
}

void TrendChart::paint(QPainter* painter) {
    paintTrendChart(*painter, m_layout, style());
    if (m_down >= 0) {
        paintTrendFocus(*painter, m_layout, style(), m_down, true);
    } else if (m_focused) {
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
        press(released);
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

bool TrendChart::walk(int key, bool repeated) {
    if (m_point < 0) {
        return false;
    }
    if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space) {
        if (!repeated) {
            press(m_point);
        }
        return true;
    }
    const int stepped = steppedTo(key);
    if (stepped >= 0) {
        hold(stepped);
    }
    return stepped >= 0;
}

/// Its answer may be another chart: the id is kept over it.
void TrendChart::press(int point) {
    const QString id = m_layout.targets[point].id;
    emit pointPressed(id);
}

void TrendChart::hold(int point) {
    if (point != m_point) {
        m_point = point;
        emit pointChanged();
        update();
    }
}

} // namespace holdfast::kiosk::screens
