#pragma once

#include "kiosk/screens/charts/trend_layout.hpp"
#include "kiosk/screens/parts/chart_items.hpp"

namespace holdfast::kiosk::screens {

/// A chart of the owner's. It is one stop of the Tab key: arrow keys go along its points, page keys along those that a
/// rule speaks of, Enter presses. A touch presses the point nearest to it within 15 mm.
class TrendChart : public holdfast::kiosk::screens::ChartItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::TrendChartState chartState READ chartState WRITE setChartState NOTIFY
                   chartStateChanged)
    Q_PROPERTY(int targets READ targets NOTIFY layoutChanged)
    Q_PROPERTY(QString spokenPoint READ spokenPoint NOTIFY pointChanged)
    Q_PROPERTY(QRectF pointBox READ pointBox NOTIFY pointChanged)
public:
    explicit TrendChart(QQuickItem* parent = nullptr);
    [[nodiscard]] TrendChartState chartState() const { return m_state; }
    void setChartState(const TrendChartState& state);
    [[nodiscard]] int targets() const { return static_cast<int>(m_layout.targets.size()); }
    /// What stands at the focus, in words; empty: nothing.
    [[nodiscard]] QString spokenPoint() const;
    [[nodiscard]] QRectF pointBox() const;
    [[nodiscard]] const TrendLayout& layout() const { return m_layout; }
    void paint(QPainter* painter) override;

signals:
    void chartStateChanged();
    void layoutChanged();
    void pointChanged();
    void pointPressed(const QString& id);

protected:
    [[nodiscard]] double heightNeeded() const override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void setPoint(int point);
    [[nodiscard]] int steppedTo(int key) const;

    TrendChartState m_state;
    mutable TrendLayout m_layout;
    int m_point = -1; ///< with the focus
    int m_down = -1;  ///< under the finger
};

} // namespace holdfast::kiosk::screens
