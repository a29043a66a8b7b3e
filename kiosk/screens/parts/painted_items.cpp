#include "kiosk/screens/parts/painted_items.hpp"

#include "kiosk/screens/parts/heat_scale_paint.hpp"

#include <QPainter>

namespace holdfast::kiosk::screens {
namespace {

HeatScaleForm formOf(HeatScale::Form form) {
    switch (form) {
    case HeatScale::Home:
        return HeatScaleForm::Home;
    case HeatScale::List:
        return HeatScaleForm::List;
    case HeatScale::Full:
        break;
    }
    return HeatScaleForm::Full;
}

/// What the ground depends on: a running trace does not move words, so it is left out.
HeatScaleState groundPart(HeatScaleState state) {
    if (state.traceEnd == TraceEnd::Running) {
        state.trace.clear();
    }
    return state;
}

} // namespace

InkItem::InkItem(QQuickItem* parent) : QQuickPaintedItem(parent) {}

void InkItem::setInks(const InkPalette& inks) {
    if (inks != m_inks) {
        m_inks = inks;
        emit inksChanged();
        update();
    }
}

void InkItem::setUnit(double unit) {
    if (unit > 0.0 && unit != m_unit) {
        m_unit = unit;
        emit unitChanged();
        update();
    }
}

VerdictMark::VerdictMark(QQuickItem* parent) : InkItem(parent) {}

void VerdictMark::setKind(MarkKind kind) {
    if (kind != m_kind) {
        m_kind = kind;
        emit kindChanged();
        update();
    }
}

void VerdictMark::paint(QPainter* painter) {
    paintVerdictMark(*painter, m_kind, QRectF(0.0, 0.0, width(), height()), {.palette = inks()});
}

CoreCell::CoreCell(QQuickItem* parent) : InkItem(parent) {}

void CoreCell::setKind(MarkKind kind) {
    if (kind != m_kind) {
        m_kind = kind;
        emit kindChanged();
        update();
    }
}

void CoreCell::setCloth(bool cloth) {
    if (cloth != m_cloth) {
        m_cloth = cloth;
        emit clothChanged();
        update();
    }
}

void CoreCell::paint(QPainter* painter) {
    const QRectF cell(0.0, 0.0, width(), height());
    if (m_cloth) {
        paintCloth(*painter, cell, inks());
    } else {
        paintCoreLayer(*painter, m_kind, cell, inks(), unit());
    }
}

HeatScale::HeatScale(QQuickItem* parent) : InkItem(parent) {}

void HeatScale::setScaleState(const HeatScaleState& state) {
    if (state != m_state) {
        m_state = state;
        emit scaleStateChanged();
        update();
    }
}

void HeatScale::setForm(Form form) {
    if (form != m_form) {
        m_form = form;
        emit formChanged();
        update();
    }
}

void HeatScale::setFamily(const QString& family) {
    if (family != m_family) {
        m_family = family;
        emit familyChanged();
        update();
    }
}

bool HeatScale::groundStands(const HeatScaleLayout& layout, const HeatScaleStyle& style) const {
    return !m_ground.isNull() && style == m_groundStyle && layout.mapping == m_groundMapping &&
           groundPart(m_state) == m_groundState;
}

void HeatScale::paintGroundImage(const HeatScaleLayout& layout, const HeatScaleStyle& style) {
    m_groundState = groundPart(m_state);
    m_groundStyle = style;
    m_groundMapping = layout.mapping;
    m_ground = QImage(QSizeF(width(), height()).toSize(), QImage::Format_ARGB32_Premultiplied);
    m_ground.fill(Qt::transparent);
    QPainter painter(&m_ground);
    paintHeatScaleGround(painter, m_state, style, layout);
}

void HeatScale::paint(QPainter* painter) {
    const HeatScaleStyle style{.palette = inks(), .form = formOf(m_form), .unit = unit(), .family = m_family};
    const HeatScaleLayout layout = layoutHeatScale(m_state, style, QRectF(0.0, 0.0, width(), height()));
    if (!groundStands(layout, style)) {
        paintGroundImage(layout, style);
    }
    painter->drawImage(QPointF(0.0, 0.0), m_ground);
    paintHeatScaleReading(*painter, m_state, style, layout);
}

} // namespace holdfast::kiosk::screens
