#pragma once

#include "kiosk/screens/dryer/dryer_page_state.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// What Dryer shows, in the pieces the page binds to.
class DryerPageModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made in main")
    Q_PROPERTY(holdfast::kiosk::screens::ActionState scan READ scan NOTIFY scanChanged)
    Q_PROPERTY(holdfast::kiosk::screens::BeltState belt READ belt NOTIFY beltChanged)
    Q_PROPERTY(QString earlierHeading READ earlierHeading NOTIFY earlierChanged)
    Q_PROPERTY(QString earlierNone READ earlierNone NOTIFY earlierChanged)
    Q_PROPERTY(QVariantList earlier READ earlier NOTIFY earlierChanged)
    Q_PROPERTY(QString dueHeading READ dueHeading NOTIFY dueChanged)
    Q_PROPERTY(QString dueNone READ dueNone NOTIFY dueChanged)
    Q_PROPERTY(QVariantList due READ due NOTIFY dueChanged)
    Q_PROPERTY(QString holdHeading READ holdHeading NOTIFY holdsChanged)
    Q_PROPERTY(QString holdNone READ holdNone NOTIFY holdsChanged)
    Q_PROPERTY(QVariantList holds READ holds NOTIFY holdsChanged)
    Q_PROPERTY(QString caution READ caution NOTIFY cautionChanged)
    Q_PROPERTY(QVariantList actions READ actions NOTIFY actionsChanged)
public:
    explicit DryerPageModel(QObject* parent = nullptr);

    void setState(const DryerPageState& state);
    [[nodiscard]] const DryerPageState& state() const { return m_state; }

    [[nodiscard]] ActionState scan() const { return m_state.scan; }
    [[nodiscard]] BeltState belt() const { return m_state.belt; }
    [[nodiscard]] QString earlierHeading() const { return m_state.earlierHeading; }
    [[nodiscard]] QString earlierNone() const { return m_state.earlierNone; }
    [[nodiscard]] QVariantList earlier() const;
    [[nodiscard]] QString dueHeading() const { return m_state.dueHeading; }
    [[nodiscard]] QString dueNone() const { return m_state.dueNone; }
    [[nodiscard]] QVariantList due() const;
    [[nodiscard]] QString holdHeading() const { return m_state.holdHeading; }
    [[nodiscard]] QString holdNone() const { return m_state.holdNone; }
    [[nodiscard]] QVariantList holds() const;
    [[nodiscard]] QString caution() const { return m_state.caution; }
    [[nodiscard]] QVariantList actions() const;

    Q_INVOKABLE void trigger(const QString& id) { emit actionTriggered(id); }

signals:
    /// An action, or a row's id.
    void actionTriggered(const QString& id);
    void scanChanged();
    void beltChanged();
    void earlierChanged();
    void dueChanged();
    void holdsChanged();
    void cautionChanged();
    void actionsChanged();

private:
    DryerPageState m_state;
};

} // namespace holdfast::kiosk::screens
