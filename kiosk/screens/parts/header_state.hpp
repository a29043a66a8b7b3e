#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

namespace holdfast::kiosk::screens {

/// One cell of the head: bold what, plain how. Touching it triggers `place` as an action id; empty: it opens nothing.
struct HeaderCell {
    Q_GADGET
    QML_VALUE_TYPE(headerCell)
    Q_PROPERTY(QString what MEMBER what)
    Q_PROPERTY(QString how MEMBER how)
    Q_PROPERTY(QString place MEMBER place)
public:
    QString what{};
    QString how{};
    QString place{};

    bool operator==(const HeaderCell&) const = default;
};

/// The head of every page. With `demo` the word DEMO stands under the clock, whatever `clock.how` says.
struct HeaderState {
    HeaderCell title{};
    HeaderCell crew{};
    HeaderCell probe{};
    HeaderCell due{};
    HeaderCell hold{};
    HeaderCell clock{};
    bool demo = false;

    bool operator==(const HeaderState&) const = default;
};

} // namespace holdfast::kiosk::screens
