#include "kiosk/screens/parts/chart_items.hpp"

#include "kiosk/screens/parts/chart_paint.hpp"

#include <QPainter>

namespace holdfast::kiosk::screens {

ChartItem::ChartItem(QQuickItem* parent) : InkItem(parent) {
    connect(this, &InkItem::unitChanged, this, &ChartItem::relay);
}

void ChartItem::setFamily(const QString& family) {
    if (family != m_family) {
        m_family = family;
        emit familyChanged();
        relay();
    }
}

ChartStyle ChartItem::style() const {
    return {.palette = inks(), .unit = unit(), .family = m_family};
}

void ChartItem::geometryChange(const QRectF& now, const QRectF& before) {
    InkItem::geometryChange(now, before);
    if (now.width() != before.width()) {
        relay();
    }
}

void ChartItem::relay() {
    setImplicitHeight(heightNeeded());
    update();
}

void GradeChart::setChartState(const GradeChartState& state) {
    if (state != m_state) {
        m_state = state;
        emit chartStateChanged();
        relay();
    }
}

double GradeChart::heightNeeded() const {
    return layoutGradeChart(m_state, style(), width()).height;
}

void GradeChart::paint(QPainter* painter) {
    paintGradeChart(*painter, m_state, style(), width());
}

void PieceBar::setBarState(const PieceBarState& state) {
    if (state != m_state) {
        m_state = state;
        emit barStateChanged();
        relay();
    }
}

double PieceBar::heightNeeded() const {
    return layoutPieceBar(m_state, style(), width()).height;
}

void PieceBar::paint(QPainter* painter) {
    paintPieceBar(*painter, m_state, style(), width());
}

CrackSwatch::CrackSwatch(QQuickItem* parent) : InkItem(parent) {}

void CrackSwatch::setCrack(CrackKind crack) {
    if (crack != m_crack) {
        m_crack = crack;
        emit crackChanged();
        update();
    }
}

void CrackSwatch::setPlanned(bool planned) {
    if (planned != m_planned) {
        m_planned = planned;
        emit plannedChanged();
        update();
    }
}

void CrackSwatch::paint(QPainter* painter) {
    const QRectF box(0.0, 0.0, width(), height());
    const ChartStyle style{.palette = inks(), .unit = unit()};
    if (m_planned) {
        paintDashedBox(*painter, box, style);
    } else {
        paintCrack(*painter, m_crack, box, style);
    }
}

DashedBox::DashedBox(QQuickItem* parent) : InkItem(parent) {}

void DashedBox::paint(QPainter* painter) {
    paintDashedBox(*painter, QRectF(0.0, 0.0, width(), height()), {.palette = inks(), .unit = unit()});
}

} // namespace holdfast::kiosk::screens
