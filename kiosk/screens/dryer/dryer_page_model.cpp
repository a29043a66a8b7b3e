#include "kiosk/screens/dryer/dryer_page_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"

namespace holdfast::kiosk::screens {

DryerPageModel::DryerPageModel(QObject* parent) : QObject(parent) {}

void DryerPageModel::setState(const DryerPageState& state) {
    const DryerPageState old = m_state;
    m_state = state;
    if (old.scan != state.scan) {
        emit scanChanged();
    }
    if (old.belt != state.belt) {
        emit beltChanged();
    }
    if (old.earlier != state.earlier || old.earlierHeading != state.earlierHeading ||
        old.earlierNone != state.earlierNone) {
        emit earlierChanged();
    }
    if (old.due != state.due || old.dueHeading != state.dueHeading || old.dueNone != state.dueNone) {
        emit dueChanged();
    }
    if (old.holds != state.holds || old.holdHeading != state.holdHeading || old.holdNone != state.holdNone) {
        emit holdsChanged();
    }
    if (old.caution != state.caution) {
        emit cautionChanged();
    }
    if (old.actions != state.actions) {
        emit actionsChanged();
    }
}

QVariantList DryerPageModel::earlier() const {
    return gadgetList(m_state.earlier);
}
QVariantList DryerPageModel::due() const {
    return gadgetList(m_state.due);
}
QVariantList DryerPageModel::holds() const {
    return gadgetList(m_state.holds);
}
QVariantList DryerPageModel::actions() const {
    return gadgetList(m_state.actions);
}

} // namespace holdfast::kiosk::screens
