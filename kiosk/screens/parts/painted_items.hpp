#pragma once

#include "kiosk/screens/parts/heat_scale_layout.hpp"
#include "kiosk/screens/parts/mark_paint.hpp"

#include <QImage>
#include <QQuickPaintedItem>

/// The drawings of the look as items. Painted items, since geometry nodes draw nothing on the software renderer.
namespace holdfast::kiosk::screens {

/// What every drawing needs from Theme.qml. Its heirs write its name in full: Qt 6.4's type files need that.
class InkItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ANONYMOUS
    Q_PROPERTY(holdfast::kiosk::screens::InkPalette inks READ inks WRITE setInks NOTIFY inksChanged)
    Q_PROPERTY(double unit READ unit WRITE setUnit NOTIFY unitChanged)
public:
    explicit InkItem(QQuickItem* parent = nullptr);
    [[nodiscard]] InkPalette inks() const { return m_inks; }
    void setInks(const InkPalette& inks);
    [[nodiscard]] double unit() const { return m_unit; }
    void setUnit(double unit);

signals:
    void inksChanged();
    void unitChanged();

private:
    InkPalette m_inks = lightPalette();
    double m_unit = 1.0;
};

/// The verdict mark, or the sign of the closed window.
class VerdictMark : public holdfast::kiosk::screens::InkItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind kind READ kind WRITE setKind NOTIFY kindChanged)
public:
    explicit VerdictMark(QQuickItem* parent = nullptr);
    [[nodiscard]] MarkKind kind() const { return m_kind; }
    void setKind(MarkKind kind);
    void paint(QPainter* painter) override;

signals:
    void kindChanged();

private:
    MarkKind m_kind = MarkKind::Blank;
};

/// One layer of the print's core; `cloth` draws the weave instead.
class CoreCell : public holdfast::kiosk::screens::InkItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind kind READ kind WRITE setKind NOTIFY kindChanged)
    Q_PROPERTY(bool cloth READ cloth WRITE setCloth NOTIFY clothChanged)
public:
    explicit CoreCell(QQuickItem* parent = nullptr);
    [[nodiscard]] MarkKind kind() const { return m_kind; }
    void setKind(MarkKind kind);
    [[nodiscard]] bool cloth() const { return m_cloth; }
    void setCloth(bool cloth);
    void paint(QPainter* painter) override;

signals:
    void kindChanged();
    void clothChanged();

private:
    MarkKind m_kind = MarkKind::Blank;
    bool m_cloth = false;
};

/// The heat scale. What stands still is kept as an image; a sample that arrives repaints only trace and figures.
class HeatScale : public holdfast::kiosk::screens::InkItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(holdfast::kiosk::screens::HeatScaleState scaleState READ scaleState WRITE setScaleState NOTIFY
                   scaleStateChanged)
    Q_PROPERTY(Form form READ form WRITE setForm NOTIFY formChanged)
    Q_PROPERTY(QString family READ family WRITE setFamily NOTIFY familyChanged)
public:
    enum Form { Full, Home, List };
    Q_ENUM(Form)

    explicit HeatScale(QQuickItem* parent = nullptr);
    [[nodiscard]] HeatScaleState scaleState() const { return m_state; }
    void setScaleState(const HeatScaleState& state);
    [[nodiscard]] Form form() const { return m_form; }
    void setForm(Form form);
    [[nodiscard]] QString family() const { return m_family; }
    void setFamily(const QString& family);
    void paint(QPainter* painter) override;

signals:
    void scaleStateChanged();
    void formChanged();
    void familyChanged();

private:
    [[nodiscard]] bool groundStands(const HeatScaleLayout& layout, const HeatScaleStyle& style) const;
    void paintGroundImage(const HeatScaleLayout& layout, const HeatScaleStyle& style);

    HeatScaleState m_state;
    Form m_form = Full;
    QString m_family = QStringLiteral("B612");

    QImage m_ground;
    HeatScaleState m_groundState; ///< without trace while it runs
    HeatScaleStyle m_groundStyle;
    HeatScaleMapping m_groundMapping;
};

} // namespace holdfast::kiosk::screens
