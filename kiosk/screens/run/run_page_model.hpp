#pragma once

#include "kiosk/screens/run/run_page_state.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// What Run shows, in the pieces the page binds to. A signal is emitted only for a piece that differs, so a live trace
/// does not rebuild the rest of the page.
class RunPageModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made in main")
    Q_PROPERTY(holdfast::kiosk::screens::BandState band READ band NOTIFY bandChanged)
    Q_PROPERTY(QString printHeading READ printHeading NOTIFY printChanged)
    Q_PROPERTY(QVariantList layers READ layers NOTIFY printChanged)
    Q_PROPERTY(holdfast::kiosk::screens::ClothState cloth READ cloth NOTIFY printChanged)
    Q_PROPERTY(QString windowHeading READ windowHeading NOTIFY printChanged)
    Q_PROPERTY(QString windowText READ windowText NOTIFY printChanged)
    Q_PROPERTY(holdfast::kiosk::screens::HeatScaleState scale READ scale NOTIFY scaleChanged)
    Q_PROPERTY(QString waysOutHeading READ waysOutHeading NOTIFY adviceChanged)
    Q_PROPERTY(QVariantList waysOut READ waysOut NOTIFY adviceChanged)
    Q_PROPERTY(QString waysOutMore READ waysOutMore NOTIFY adviceChanged)
    Q_PROPERTY(QVariantList advice READ advice NOTIFY adviceChanged)
    Q_PROPERTY(QString readingsHeading READ readingsHeading NOTIFY lotChanged)
    Q_PROPERTY(QVariantList readings READ readings NOTIFY lotChanged)
    Q_PROPERTY(QString lotHeading READ lotHeading NOTIFY lotChanged)
    Q_PROPERTY(QString lotState READ lotState NOTIFY lotChanged)
    Q_PROPERTY(QString lotNote READ lotNote NOTIFY lotChanged)
    Q_PROPERTY(QString caution READ caution NOTIFY cautionChanged)
    Q_PROPERTY(QString cautionShort READ cautionShort NOTIFY cautionChanged)
    Q_PROPERTY(QVariantList actions READ actions NOTIFY actionsChanged)
public:
    explicit RunPageModel(QObject* parent = nullptr);

    void setState(const RunPageState& state);
    [[nodiscard]] const RunPageState& state() const { return m_state; }

    /// A new live sample: cheaper than setState, and the same in effect.
    void appendTracePoint(const TracePoint& point);
    /// The band alone (live figure and what it says), at the rate of the samples.
    void setBand(const BandState& band);

    [[nodiscard]] BandState band() const { return m_state.band; }
    [[nodiscard]] QString printHeading() const { return m_state.print.heading; }
    [[nodiscard]] QVariantList layers() const;
    [[nodiscard]] ClothState cloth() const { return m_state.print.cloth; }
    [[nodiscard]] QString windowHeading() const { return m_state.print.windowHeading; }
    [[nodiscard]] QString windowText() const { return m_state.print.windowText; }
    [[nodiscard]] HeatScaleState scale() const { return m_state.scale; }
    [[nodiscard]] QString waysOutHeading() const { return m_state.waysOutHeading; }
    [[nodiscard]] QVariantList waysOut() const;
    [[nodiscard]] QString waysOutMore() const { return m_state.waysOutMore; }
    [[nodiscard]] QVariantList advice() const;
    [[nodiscard]] QString readingsHeading() const { return m_state.lot.readingsHeading; }
    [[nodiscard]] QVariantList readings() const;
    [[nodiscard]] QString lotHeading() const { return m_state.lot.lotHeading; }
    [[nodiscard]] QString lotState() const { return m_state.lot.lotState; }
    [[nodiscard]] QString lotNote() const { return m_state.lot.lotNote; }
    [[nodiscard]] QString caution() const { return m_state.caution; }
    [[nodiscard]] QString cautionShort() const;
    [[nodiscard]] QVariantList actions() const;

    /// The page's one verb: an action was chosen by touch or key.
    Q_INVOKABLE void trigger(const QString& id) { emit actionTriggered(id); }

signals:
    void actionTriggered(const QString& id);
    void bandChanged();
    void printChanged();
    void scaleChanged();
    void adviceChanged();
    void lotChanged();
    void cautionChanged();
    void actionsChanged();

private:
    RunPageState m_state;
};

} // namespace holdfast::kiosk::screens
