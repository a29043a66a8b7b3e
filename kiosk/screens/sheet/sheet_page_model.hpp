#pragma once

#include "kiosk/screens/sheet/sheet_block_model.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// What a sheet shows. Everything pressed leaves by `triggered`; of a field "field." and its id.
class SheetPageModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("owned by KioskModel")
    Q_PROPERTY(QString heading READ heading NOTIFY frameChanged)
    Q_PROPERTY(QString listNone READ listNone NOTIFY frameChanged)
    Q_PROPERTY(QAbstractItemModel* list READ list CONSTANT)
    Q_PROPERTY(bool hasList READ hasList NOTIFY listChanged)
    Q_PROPERTY(int chosenIndex READ chosenIndex NOTIFY listChanged)
    Q_PROPERTY(QVariantList listActions READ listActions NOTIFY listActionsChanged)
    Q_PROPERTY(QString title READ title NOTIFY frameChanged)
    Q_PROPERTY(QAbstractItemModel* blocks READ blocks CONSTANT)
    Q_PROPERTY(QVariantList actions READ actions NOTIFY actionsChanged)
    Q_PROPERTY(QAbstractItemModel* beside READ beside CONSTANT)
    Q_PROPERTY(bool hasBeside READ hasBeside NOTIFY besideChanged)
    Q_PROPERTY(QVariantList besideActions READ besideActions NOTIFY besideChanged)
    Q_PROPERTY(bool detailOnly READ detailOnly NOTIFY frameChanged)
    Q_PROPERTY(holdfast::kiosk::screens::ActionState back READ back NOTIFY frameChanged)
public:
    explicit SheetPageModel(QObject* parent = nullptr);

    /// Nothing happens if it is the same state; else the views hear only of the pieces that differ.
    void setState(const SheetPageState& state);
    [[nodiscard]] const SheetPageState& state() const { return m_state; }

    [[nodiscard]] QString heading() const { return m_state.heading; }
    [[nodiscard]] QString listNone() const { return m_state.listNone; }
    [[nodiscard]] QAbstractItemModel* list() { return &m_list; }
    /// Heading, rows or actions: without any the blocks have the whole page.
    [[nodiscard]] bool hasList() const;
    /// −1: none is chosen.
    [[nodiscard]] int chosenIndex() const;
    [[nodiscard]] QVariantList listActions() const;
    [[nodiscard]] QString title() const { return m_state.title; }
    [[nodiscard]] QAbstractItemModel* blocks() { return &m_blocks; }
    [[nodiscard]] QVariantList actions() const;
    [[nodiscard]] QAbstractItemModel* beside() { return &m_beside; }
    [[nodiscard]] bool hasBeside() const { return !m_state.beside.isEmpty(); }
    [[nodiscard]] QVariantList besideActions() const;
    [[nodiscard]] bool detailOnly() const { return m_state.detailOnly; }
    [[nodiscard]] ActionState back() const { return m_state.back; }

    Q_INVOKABLE void trigger(const QString& id) { emit triggered(id); }

signals:
    void triggered(const QString& id);
    void frameChanged();
    void listChanged();
    void listActionsChanged();
    void actionsChanged();
    void besideChanged();
    /// Not a row of the list before is in it: it is read from its chosen row or its beginning.
    void listReplaced();
    /// Another row is chosen; not told when the chosen one only moves.
    void choiceReplaced();
    /// Another thing stands at the right: it is read from its beginning.
    void detailReplaced();

private:
    void setBlocks(GadgetModel<SheetBlockModel*>& shown, const QList<SheetBlock>& blocks);

    SheetPageState m_state;
    GadgetModel<SheetRow> m_list;
    GadgetModel<SheetBlockModel*> m_blocks;
    GadgetModel<SheetBlockModel*> m_beside;
};

} // namespace holdfast::kiosk::screens
