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
    Q_PROPERTY(holdfast::kiosk::screens::GradeChartState chart READ chart NOTIFY chartChanged)
    Q_PROPERTY(holdfast::kiosk::screens::PieceBarState pieces READ pieces NOTIFY chartChanged)
    Q_PROPERTY(QAbstractItemModel* pictures READ pictures CONSTANT)
    Q_PROPERTY(bool underChart READ underChart NOTIFY chartChanged)
    Q_PROPERTY(holdfast::kiosk::screens::HalvesState halves READ halves NOTIFY halvesChanged)
    Q_PROPERTY(QVariantList cracks READ cracks NOTIFY cracksChanged)
    Q_PROPERTY(QVariantList pulls READ pulls NOTIFY pullsChanged)
    Q_PROPERTY(QString result READ result NOTIFY pullsChanged)
    Q_PROPERTY(QString resultNote READ resultNote NOTIFY pullsChanged)
    Q_PROPERTY(QAbstractItemModel* ticks READ ticks CONSTANT)
    Q_PROPERTY(QAbstractItemModel* trail READ trail CONSTANT)
    Q_PROPERTY(holdfast::kiosk::screens::TrendChartState trend READ trend NOTIFY trendChanged)
    Q_PROPERTY(bool ruled READ ruled NOTIFY ruledChanged)
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
    [[nodiscard]] GradeChartState chart() const { return m_block.chart; }
    [[nodiscard]] PieceBarState pieces() const { return m_block.pieces; }
    [[nodiscard]] QAbstractItemModel* pictures() { return &m_pictures; }
    [[nodiscard]] bool underChart() const { return m_block.underChart; }
    [[nodiscard]] HalvesState halves() const { return m_block.halves; }
    [[nodiscard]] QVariantList cracks() const;
    [[nodiscard]] QVariantList pulls() const;
    [[nodiscard]] QString result() const { return m_block.result; }
    [[nodiscard]] QString resultNote() const { return m_block.resultNote; }
    [[nodiscard]] QAbstractItemModel* ticks() { return &m_ticks; }
    [[nodiscard]] QAbstractItemModel* trail() { return &m_trail; }
    [[nodiscard]] TrendChartState trend() const { return m_block.trend; }
    /// A thin rule parts it from the block above.
    [[nodiscard]] bool ruled() const { return m_ruled; }
    void setRuled(bool ruled);

    /// Of Pictures under a chart: where each stands so that its middle lies under its cycle, from the plot's left edge;
    /// empty: they do not fit there side by side, `each` wide and `gap` apart.
    Q_INVOKABLE [[nodiscard]] QList<double> pictureLefts(double width, double unit, const QString& family, double each,
                                                         double gap) const;
    /// The widest word that stands in a picture's place, and the widest label under one: no wider than a fifth and a
    /// third of a page, beyond that they wrap.
    Q_INVOKABLE [[nodiscard]] double pictureWordWidth(double unit, const QString& family) const;
    Q_INVOKABLE [[nodiscard]] double pictureLabelWidth(double unit, const QString& family) const;

signals:
    void textChanged();
    void trunksChanged();
    void actionsChanged();
    void chosenChanged();
    void scaleChanged();
    void chartChanged();
    void halvesChanged();
    void cracksChanged();
    void pullsChanged();
    void trendChanged();
    void ruledChanged();

private:
    void setLists(const SheetBlock& block);

    SheetBlock m_block;
    GadgetModel<SheetRow> m_rows;
    GadgetModel<SheetField> m_fields;
    GadgetModel<PictureEntry> m_pictures;
    GadgetModel<TickEntry> m_ticks;
    GadgetModel<TrailEntry> m_trail;
    QList<int> m_trunks;
    bool m_ruled = false;
};

} // namespace holdfast::kiosk::screens
