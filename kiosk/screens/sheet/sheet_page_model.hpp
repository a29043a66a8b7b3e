#pragma once

#include "kiosk/screens/sheet/sheet_state.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// What a sheet shows. Everything pressed leaves by `triggered`.
class SheetPageModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("owned by KioskModel")
    Q_PROPERTY(QString heading READ heading NOTIFY changed)
    Q_PROPERTY(QString listNone READ listNone NOTIFY changed)
    Q_PROPERTY(QVariantList list READ list NOTIFY changed)
    Q_PROPERTY(QVariantList listActions READ listActions NOTIFY changed)
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QVariantList blocks READ blocks NOTIFY changed)
    Q_PROPERTY(QVariantList actions READ actions NOTIFY changed)
    Q_PROPERTY(bool detailOnly READ detailOnly NOTIFY changed)
    Q_PROPERTY(holdfast::kiosk::screens::ActionState back READ back NOTIFY changed)
public:
    explicit SheetPageModel(QObject* parent = nullptr);

    /// Nothing happens if it is the same state.
    void setState(const SheetPageState& state);
    [[nodiscard]] const SheetPageState& state() const { return m_state; }

    [[nodiscard]] QString heading() const { return m_state.heading; }
    [[nodiscard]] QString listNone() const { return m_state.listNone; }
    [[nodiscard]] QVariantList list() const;
    [[nodiscard]] QVariantList listActions() const;
    [[nodiscard]] QString title() const { return m_state.title; }
    [[nodiscard]] QVariantList blocks() const;
    [[nodiscard]] QVariantList actions() const;
    [[nodiscard]] bool detailOnly() const { return m_state.detailOnly; }
    [[nodiscard]] ActionState back() const { return m_state.back; }

    Q_INVOKABLE void trigger(const QString& id) { emit triggered(id); }

signals:
    void changed();
    void triggered(const QString& id);

private:
    SheetPageState m_state;
};

} // namespace holdfast::kiosk::screens
