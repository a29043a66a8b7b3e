#pragma once

#include <QAbstractListModel>
#include <QList>

#include <algorithm>

namespace holdfast::kiosk::screens {

/// Value types as a list model with the one role `entry`. Setting a list again tells the views only what differs, so
/// that rows which stay keep their delegates, their focus and their place.
template <typename T>
class GadgetModel : public QAbstractListModel {
public:
    using QAbstractListModel::QAbstractListModel;

    [[nodiscard]] const QList<T>& items() const { return m_items; }

    void set(const QList<T>& items) {
        const qsizetype both = std::min(m_items.size(), items.size());
        qsizetype head = 0;
        while (head < both && m_items[head] == items[head]) {
            ++head;
        }
        qsizetype tail = 0;
        while (tail < both - head && m_items[m_items.size() - 1 - tail] == items[items.size() - 1 - tail]) {
            ++tail;
        }
        const qsizetype before = m_items.size() - head - tail;
        const qsizetype after = items.size() - head - tail;
        replace(items, head, std::min(before, after));
        resize(items, head + std::min(before, after), before, after);
    }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return parent.isValid() ? 0 : static_cast<int>(m_items.size());
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override {
        const bool known = index.isValid() && index.row() < m_items.size() && role == Qt::UserRole;
        return known ? QVariant::fromValue(m_items[index.row()]) : QVariant{};
    }
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override { return {{Qt::UserRole, "entry"}}; }

private:
    void replace(const QList<T>& items, qsizetype from, qsizetype count) {
        for (qsizetype i = from; i < from + count; ++i) {
            if (m_items[i] != items[i]) {
                m_items[i] = items[i];
                const QModelIndex here = index(static_cast<int>(i));
                emit dataChanged(here, here, {Qt::UserRole});
            }
        }
    }
    void resize(const QList<T>& items, qsizetype from, qsizetype before, qsizetype after) {
        const int first = static_cast<int>(from);
        if (after > before) {
            beginInsertRows({}, first, static_cast<int>(from + after - before) - 1);
            for (qsizetype i = from; i < from + after - before; ++i) {
                m_items.insert(i, items[i]);
            }
            endInsertRows();
        } else if (before > after) {
            beginRemoveRows({}, first, static_cast<int>(from + before - after) - 1);
            m_items.remove(from, before - after);
            endRemoveRows();
        }
    }

    QList<T> m_items;
};

} // namespace holdfast::kiosk::screens
