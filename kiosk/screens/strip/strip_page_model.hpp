#pragma once

#include "kiosk/screens/strip/strip_page_state.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// What the entry of a strip shows, in the pieces the page binds to.
class StripPageModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made in main")
    Q_PROPERTY(QString title READ title NOTIFY titleChanged)
    Q_PROPERTY(QVariantList progress READ progress NOTIFY titleChanged)
    Q_PROPERTY(QVariantList steps READ steps NOTIFY stepsChanged)
    Q_PROPERTY(holdfast::kiosk::screens::HeatScaleState scale READ scale NOTIFY scaleChanged)
    Q_PROPERTY(holdfast::kiosk::screens::StripPreview preview READ preview NOTIFY previewChanged)
    Q_PROPERTY(QString positionsHeading READ positionsHeading NOTIFY positionsChanged)
    Q_PROPERTY(QVariantList positions READ positions NOTIFY positionsChanged)
    Q_PROPERTY(QVariantList marks READ marks NOTIFY positionsChanged)
    Q_PROPERTY(QVariantList placements READ placements NOTIFY positionsChanged)
    Q_PROPERTY(holdfast::kiosk::screens::ActionState keep READ keep NOTIFY keepChanged)
    Q_PROPERTY(QString footNote READ footNote NOTIFY keepChanged)
    Q_PROPERTY(holdfast::kiosk::screens::ActionState leave READ leave NOTIFY keepChanged)
public:
    explicit StripPageModel(QObject* parent = nullptr);

    void setState(const StripPageState& state);
    [[nodiscard]] const StripPageState& state() const { return m_state; }

    [[nodiscard]] QString title() const { return m_state.title; }
    [[nodiscard]] QVariantList progress() const;
    [[nodiscard]] QVariantList steps() const;
    [[nodiscard]] HeatScaleState scale() const { return m_state.scale; }
    [[nodiscard]] StripPreview preview() const { return m_state.preview; }
    [[nodiscard]] QString positionsHeading() const { return m_state.positionsHeading; }
    [[nodiscard]] QVariantList positions() const;
    [[nodiscard]] QVariantList marks() const;
    [[nodiscard]] QVariantList placements() const;
    [[nodiscard]] ActionState keep() const { return m_state.keep; }
    [[nodiscard]] QString footNote() const { return m_state.footNote; }
    [[nodiscard]] ActionState leave() const { return m_state.leave; }

    Q_INVOKABLE void trigger(const QString& id) { emit actionTriggered(id); }

signals:
    /// A step, a place on the belt, keep or leave.
    void actionTriggered(const QString& id);
    void titleChanged();
    void stepsChanged();
    void scaleChanged();
    void previewChanged();
    void positionsChanged();
    void keepChanged();

private:
    StripPageState m_state;
};

} // namespace holdfast::kiosk::screens
