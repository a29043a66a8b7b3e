#include "kiosk/screens/kiosk_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"

namespace holdfast::kiosk::screens {

KioskModel::KioskModel(QObject* parent) : QObject(parent) {
    connect(&m_run, &RunPageModel::actionTriggered, this, &KioskModel::trigger);
    connect(&m_dryer, &DryerPageModel::actionTriggered, this, &KioskModel::trigger);
    connect(&m_strip, &StripPageModel::actionTriggered, this, &KioskModel::trigger);
    connect(&m_sheet, &SheetPageModel::triggered, this, &KioskModel::trigger);
}

void KioskModel::setState(const KioskState& state) {
    const KioskState old = m_state;
    m_state = state;
    m_header.setState(state.header);
    if (old.place != state.place) {
        openPad({});
        openPicture({});
        emit placeChanged();
    }
    if (old.places != state.places) {
        emit placesChanged();
    }
    if (old.refusal != state.refusal) {
        emit refusalChanged();
    }
    if (old.scanEntry != state.scanEntry) {
        emit scanEntryChanged();
    }
    if (old.touchLocked != state.touchLocked) {
        emit touchLockedChanged();
    }
}

void KioskModel::setDark(bool dark) {
    if (dark != m_dark) {
        m_dark = dark;
        emit themeChanged();
    }
}

void KioskModel::setPanelDiagonalInch(double inch) {
    if (inch > 0.0 && inch != m_panelDiagonalInch) {
        m_panelDiagonalInch = inch;
        emit panelChanged();
    }
}

void KioskModel::setLanguage(const QString& language) {
    if (language != m_language) {
        m_language = language;
        emit languageChanged();
    }
}

void KioskModel::openScanEntry(bool open) {
    if (open != m_scanEntryOpen) {
        m_scanEntryOpen = open;
        emit scanEntryOpenChanged();
    }
}

void KioskModel::openPad(const TypePadState& pad) {
    if (pad != m_typePad) {
        m_typePad = pad;
        emit typePadChanged();
    }
}

void KioskModel::openPicture(const PictureShown& picture) {
    if (picture != m_picture) {
        m_picture = picture;
        emit pictureChanged();
    }
}

QVariantList KioskModel::places() const {
    return gadgetList(m_state.places);
}

QVariantList KioskModel::refusalActions() const {
    QVariantList actions;
    for (const ActionState& action : {m_state.refusal.help, m_state.refusal.leave}) {
        if (!action.id.isEmpty()) {
            actions.append(QVariant::fromValue(action));
        }
    }
    return actions;
}

void KioskModel::trigger(const QString& id) {
    emit actionTriggered(id);
}

void KioskModel::padEntered(const QString& text) {
    const QString field = m_typePad.id;
    openPad({});
    if (!field.isEmpty()) {
        emit fieldEntered(field, text);
    }
}

void KioskModel::typed(const QString& code) {
    openScanEntry(false);
    emit codeEntered(code);
}

} // namespace holdfast::kiosk::screens
