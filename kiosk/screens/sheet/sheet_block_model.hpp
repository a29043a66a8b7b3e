#pragma once

#include "kiosk/screens/sheet/gadget_model.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// One block as its part of the page binds to it. Its kind never changes; a live figure changes its text alone.
class SheetBlockModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("owned by SheetPageModel")
    Q_PROPERTY(holdfast::kiosk::screens::SheetKinds::Block kind READ kind CONSTANT)
    Q_PROPERTY(QString text READ text NOTIFY textChanged)
    Q_PROPERTY(QString note READ note NOTIFY textChanged)
    Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
    Q_PROPERTY(QList<int> trunks READ trunks NOTIFY trunksChanged)
    Q_PROPERTY(QAbstractItemModel* fields READ fields CONSTANT)
    Q_PROPERTY(QVariantList actions READ actions NOTIFY actionsChanged)
    Q_PROPERTY(QString chosenId READ chosenId NOTIFY chosenChanged)
    Q_PROPERTY(holdfast::kiosk::screens::HeatScaleState scale READ scale NOTIFY scaleChanged)
    Q_PROPERTY(bool traced READ traced NOTIFY scaleChanged)
public:
    explicit SheetBlockModel(const SheetBlock& block, QObject* parent = nullptr);

    /// `block` is of the same kind.
    void setBlock(const SheetBlock& block);

    [[nodiscard]] SheetKinds::Block kind() const { return m_block.kind; }
    [[nodiscard]] QString text() const { return m_block.text; }
    [[nodiscard]] QString note() const { return m_block.note; }
    [[nodiscard]] QAbstractItemModel* rows() { return &m_rows; }
    /// One int a row: bit d - 1 is set if the trunk at depth d of the tree goes on below the row.
    [[nodiscard]] QList<int> trunks() const { return m_trunks; }
    [[nodiscard]] QAbstractItemModel* fields() { return &m_fields; }
    [[nodiscard]] QVariantList actions() const;
    [[nodiscard]] QString chosenId() const { return m_block.chosenId; }
    [[nodiscard]] HeatScaleState scale() const { return m_block.scale; }
    /// The scale has a trace to show, and not only its limits.
    [[nodiscard]] bool traced() const { return !m_block.scale.trace.isEmpty(); }

signals:
    void textChanged();
    void trunksChanged();
    void actionsChanged();
    void chosenChanged();
    void scaleChanged();

private:
    SheetBlock m_block;
    GadgetModel<SheetRow> m_rows;
    GadgetModel<SheetField> m_fields;
    QList<int> m_trunks;
};

} // namespace holdfast::kiosk::screens
