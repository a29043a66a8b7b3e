#include "kiosk/screens/strip/strip_page_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"

namespace holdfast::kiosk::screens {

StripPageModel::StripPageModel(QObject* parent) : QObject(parent) {}

void StripPageModel::setState(const StripPageState& state) {
    const StripPageState old = m_state;
    m_state = state;
    if (old.title != state.title || old.progress != state.progress) {
        emit titleChanged();
    }
    if (old.steps != state.steps) {
        emit stepsChanged();
    }
    if (old.scale != state.scale) {
        emit scaleChanged();
    }
    if (old.preview != state.preview) {
        emit previewChanged();
    }
    if (old.positions != state.positions || old.positionsHeading != state.positionsHeading ||
        old.marks != state.marks || old.placements != state.placements) {
        emit positionsChanged();
    }
    if (old.keep != state.keep || old.footNote != state.footNote || old.leave != state.leave) {
        emit keepChanged();
    }
}

QVariantList StripPageModel::progress() const {
    return gadgetList(m_state.progress);
}
QVariantList StripPageModel::steps() const {
    return gadgetList(m_state.steps);
}
QVariantList StripPageModel::positions() const {
    return gadgetList(m_state.positions);
}

QVariantList StripPageModel::marks() const {
    return gadgetList(m_state.marks);
}

QVariantList StripPageModel::placements() const {
    return gadgetList(m_state.placements);
}

} // namespace holdfast::kiosk::screens
