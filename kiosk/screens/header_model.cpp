#include "kiosk/screens/header_model.hpp"

namespace holdfast::kiosk::screens {

HeaderModel::HeaderModel(QObject* parent) : QObject(parent) {}

void HeaderModel::setState(const HeaderState& state) {
    if (state == m_state) {
        return;
    }
    m_state = state;
    emit changed();
}

} // namespace holdfast::kiosk::screens
