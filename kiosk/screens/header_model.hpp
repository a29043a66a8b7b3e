#pragma once

#include "kiosk/screens/parts/header_state.hpp"

#include <QObject>

namespace holdfast::kiosk::screens {

/// The head of every page.
class HeaderModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made in main")
    Q_PROPERTY(holdfast::kiosk::screens::HeaderCell title READ title NOTIFY changed)
    Q_PROPERTY(holdfast::kiosk::screens::HeaderCell crew READ crew NOTIFY changed)
    Q_PROPERTY(holdfast::kiosk::screens::HeaderCell probe READ probe NOTIFY changed)
    Q_PROPERTY(holdfast::kiosk::screens::HeaderCell due READ due NOTIFY changed)
    Q_PROPERTY(holdfast::kiosk::screens::HeaderCell hold READ hold NOTIFY changed)
    Q_PROPERTY(holdfast::kiosk::screens::HeaderCell clock READ clock NOTIFY changed)
    Q_PROPERTY(bool demo READ demo NOTIFY changed)
public:
    explicit HeaderModel(QObject* parent = nullptr);

    void setState(const HeaderState& state);
    [[nodiscard]] const HeaderState& state() const { return m_state; }

    [[nodiscard]] HeaderCell title() const { return m_state.title; }
    [[nodiscard]] HeaderCell crew() const { return m_state.crew; }
    [[nodiscard]] HeaderCell probe() const { return m_state.probe; }
    [[nodiscard]] HeaderCell due() const { return m_state.due; }
    [[nodiscard]] HeaderCell hold() const { return m_state.hold; }
    [[nodiscard]] HeaderCell clock() const { return m_state.clock; }
    [[nodiscard]] bool demo() const { return m_state.demo; }

signals:
    void changed();

private:
    HeaderState m_state;
};

} // namespace holdfast::kiosk::screens
