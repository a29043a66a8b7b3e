#pragma once

#include "kiosk/screens/parts/chart_states.hpp"
#include "kiosk/screens/parts/chart_style.hpp"
#include "kiosk/screens/parts/painted_items.hpp"

/// The drawings of tests and lots as items. Their height is what they need at their width.
namespace holdfast::kiosk::screens {

/// A drawing with texts in it. Its implicit height follows its width.
class ChartItem : public holdfast::kiosk::screens::InkItem {
    Q_OBJECT
    QML_ANONYMOUS
    Q_PROPERTY(QString family READ family WRITE setFamily NOTIFY familyChanged)
public:
    explicit ChartItem(QQuickItem* parent = nullptr);
    [[nodiscard]] QString family() const { return m_family; }
    void setFamily(const QString& family);

signals:
    void familyChanged();

protected:
    [[nodiscard]] ChartStyle style() const;
    [[nodiscard]] virtual double heightNeeded() const = 0;
    void geometryChange(const QRectF& now, const QRectF& before) override;
    /// What is drawn has changed: its height may have too.
    virtual void relay();

private:
    QString m_family = QStringLiteral("B612");
};

/// Grades against cycles.
class GradeChart : public holdfast::kiosk::screens::ChartItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::GradeChartState chartState READ chartState WRITE setChartState NOTIFY
                   chartStateChanged)
public:
    using ChartItem::ChartItem;
    [[nodiscard]] GradeChartState chartState() const { return m_state; }
    void setChartState(const GradeChartState& state);
    void paint(QPainter* painter) override;

signals:
    void chartStateChanged();

protected:
    [[nodiscard]] double heightNeeded() const override;

private:
    GradeChartState m_state;
};

/// The pieces of a run.
class PieceBar : public holdfast::kiosk::screens::ChartItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::PieceBarState barState READ barState WRITE setBarState NOTIFY barStateChanged)
public:
    using ChartItem::ChartItem;
    [[nodiscard]] PieceBarState barState() const { return m_state; }
    void setBarState(const PieceBarState& state);
    void paint(QPainter* painter) override;

signals:
    void barStateChanged();

protected:
    [[nodiscard]] double heightNeeded() const override;

private:
    PieceBarState m_state;
};

/// How a pulled film looks; `planned`: it is not pulled yet, a dashed box.
class CrackSwatch : public holdfast::kiosk::screens::InkItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::CrackKind crack READ crack WRITE setCrack NOTIFY crackChanged)
    Q_PROPERTY(bool planned READ planned WRITE setPlanned NOTIFY plannedChanged)
public:
    explicit CrackSwatch(QQuickItem* parent = nullptr);
    [[nodiscard]] CrackKind crack() const { return m_crack; }
    void setCrack(CrackKind crack);
    [[nodiscard]] bool planned() const { return m_planned; }
    void setPlanned(bool planned);
    void paint(QPainter* painter) override;

signals:
    void crackChanged();
    void plannedChanged();

private:
    CrackKind m_crack = CrackKind::Whole;
    bool m_planned = false;
};

/// The frame of what is due.
class DashedBox : public holdfast::kiosk::screens::InkItem {
    Q_OBJECT
    QML_ELEMENT
public:
    explicit DashedBox(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;
};

} // namespace holdfast::kiosk::screens
