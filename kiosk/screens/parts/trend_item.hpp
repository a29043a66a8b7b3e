#pragma once

#include "kiosk/screens/charts/trend_layout.hpp"
#include "kiosk/screens/parts/chart_items.hpp"

namespace holdfast::kiosk::screens {

/// A chart of the owner's. One of its points is held: arrow keys go along the points, page keys along those that a rule
/// speaks of, Enter presses. A touch presses the point nearest to it within 15 mm.
class TrendChart : public holdfast::kiosk::screens::ChartItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::TrendChartState chartState READ chartState WRITE setChartState NOTIFY
                   chartStateChanged)
    Q_PROPERTY(int targets READ targets NOTIFY layoutChanged)
    Q_PROPERTY(bool focused READ focused WRITE setFocused NOTIFY focusedChanged)
    Q_PROPERTY(QString spokenPoint READ spokenPoint NOTIFY pointChanged)
    Q_PROPERTY(QRectF pointBox READ pointBox NOTIFY pointChanged)
public:
    explicit TrendChart(QQuickItem* parent = nullptr);
    [[nodiscard]] TrendChartState chartState() const { return m_state; }
    void setChartState(const TrendChartState& state);
    [[nodiscard]] int targets() const { return static_cast<int>(m_layout.targets.size()); }
    /// The held point is marked and said on the chart.
    [[nodiscard]] bool focused() const { return m_focused; }
    void setFocused(bool focused);
    /// The held point in words; empty: none.
    [[nodiscard]] QString spokenPoint() const;
    /// Where it stands; of a bar its whole column, of a row the row.
    [[nodiscard]] QRectF pointBox() const;
    [[nodiscard]] const TrendLayout& layout() const { return m_layout; }
    /// Whether the key is one of the chart's.
    Q_INVOKABLE bool walk(int key, bool repeated);
    void paint(QPainter* painter) override;

signals:
    void chartStateChanged();
    void layoutChanged();
    void focusedChanged();
    void pointChanged();
    void pointPressed(const QString& id);

protected:
    [[nodiscard]] double heightNeeded() const override;
    void relay() override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;

private:
    void press(int point);
    void hold(int point);
    [[nodiscard]] int steppedTo(int key) const;

    TrendChartState m_state;
    TrendLayout m_layout;
    int m_point = -1; ///< held; −1: there is none
    bool m_focused = false;
    int m_down = -1; ///< under the finger
};

} // namespace holdfast::kiosk::screens
