#include "kiosk/screens/run/run_page_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"

namespace holdfast::kiosk::screens {

RunPageModel::RunPageModel(QObject* parent) : QObject(parent) {}

void RunPageModel::setState(const RunPageState& state) {
    const RunPageState old = m_state;
    m_state = state;
    if (old.band != state.band) {
        emit bandChanged();
    }
    if (old.print != state.print) {
        emit printChanged();
    }
    if (old.scale != state.scale) {
        emit scaleChanged();
    }
    if (old.waysOutHeading != state.waysOutHeading || old.waysOut != state.waysOut ||
        old.waysOutMore != state.waysOutMore || old.advice != state.advice) {
        emit adviceChanged();
    }
    if (old.lot != state.lot) {
        emit lotChanged();
    }
    if (old.caution != state.caution || old.cautionShort != state.cautionShort) {
        emit cautionChanged();
    }
    if (old.actions != state.actions) {
        emit actionsChanged();
    }
}

void RunPageModel::appendTracePoint(const TracePoint& point) {
    m_state.scale.trace.append(point);
    emit scaleChanged();
}

void RunPageModel::setBand(const BandState& band) {
    if (band != m_state.band) {
        m_state.band = band;
        emit bandChanged();
    }
}

QVariantList RunPageModel::layers() const {
    return gadgetList(m_state.print.layers);
}
QVariantList RunPageModel::waysOut() const {
    return gadgetList(m_state.waysOut);
}
QVariantList RunPageModel::advice() const {
    return gadgetList(m_state.advice);
}
QVariantList RunPageModel::readings() const {
    return gadgetList(m_state.lot.readings);
}
QVariantList RunPageModel::actions() const {
    return gadgetList(m_state.actions);
}

QString RunPageModel::cautionShort() const {
    return m_state.cautionShort.isEmpty() ? m_state.caution : m_state.cautionShort;
}

} // namespace holdfast::kiosk::screens
