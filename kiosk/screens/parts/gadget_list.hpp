#pragma once

#include <QVariantList>

namespace holdfast::kiosk::screens {

/// A list of value types as QML repeaters take it.
template <typename T>
[[nodiscard]] QVariantList gadgetList(const QList<T>& items) {
    QVariantList list;
    list.reserve(items.size());
    for (const T& item : items) {
        list.append(QVariant::fromValue(item));
    }
    return list;
}

} // namespace holdfast::kiosk::screens
