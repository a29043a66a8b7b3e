#pragma once

#include "kiosk/screens/parts/heat_scale_state.hpp"
#include "kiosk/screens/parts/page_parts.hpp"

namespace holdfast::kiosk::screens {

/// One field of the strip, coolest first; the first of the page may be "all light", the last "all dark".
struct StripStepState {
    Q_GADGET
    QML_VALUE_TYPE(stripStepState)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(holdfast::kiosk::screens::StepKind kind MEMBER kind)
    Q_PROPERTY(bool figure MEMBER figure)
public:
    QString id{};    ///< action id
    QString value{}; ///< "290" or "all light"
    QString word{};  ///< "dark", "last dark", "light"
    StepKind kind = StepKind::Unknown;
    bool figure = true; ///< `value` is a temperature (64), not words (28)

    bool operator==(const StripStepState&) const = default;
};

/// A choice among a few: the place on the belt.
struct ChoiceState {
    Q_GADGET
    QML_VALUE_TYPE(choiceState)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(bool chosen MEMBER chosen)
public:
    QString id{}; ///< action id
    QString label{};
    bool chosen = false;

    bool operator==(const ChoiceState&) const = default;
};

/// A preview is never a verdict: it is headed so, and stands at 40.
struct StripPreview {
    Q_GADGET
    QML_VALUE_TYPE(stripPreview)
    Q_PROPERTY(QString heading MEMBER heading)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString margin MEMBER margin)
    Q_PROPERTY(QString sentence MEMBER sentence)
    Q_PROPERTY(QString note MEMBER note)
public:
    QString heading{}; ///< "This would prove"
    MarkKind mark = MarkKind::Blank;
    QString word{};     ///< "Not proven"
    QString margin{};   ///< "−1 to +16 °F"
    QString sentence{}; ///< how the interval comes about
    QString note{};     ///< "A strip shows the peak, never the time."

    bool operator==(const StripPreview&) const = default;
};

struct StripPageState {
    QString title{};               ///< "Last dark step: 290 °F"
    QList<ChoiceState> progress{}; ///< "1 strip", "2 step", "3 keep"; the current one is chosen; not touchable
    QList<StripStepState> steps{};
    HeatScaleState scale{};
    StripPreview preview{};
    QString positionsHeading{}; ///< "Where on the belt · planned"
    QList<ChoiceState> positions{};
    QList<ChoiceState> marks{};      ///< what else is to be seen on it, each on or off: "next half dark"
    QList<ChoiceState> placements{}; ///< how it lay: "in wet ink"
    ActionState keep{};              ///< primary; without an id there is nothing to keep yet and `keep.label` says why
    QString footNote{};              ///< "The strip card carries a code for each step: scan it instead of touching."
    ActionState leave{};             ///< "Leave, keep nothing"

    bool operator==(const StripPageState&) const = default;
};

} // namespace holdfast::kiosk::screens
