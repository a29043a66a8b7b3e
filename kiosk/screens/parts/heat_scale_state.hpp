#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QList>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>

/// What the heat scale draws. Every temperature here is a plain double in the unit the screen shows (°F or °C): pixels
/// to be, already converted by whoever fills the state, never compared or computed with. Every word is finished text.
namespace holdfast::kiosk::screens {

/// A limit that must be reached: one per different cure temperature, in any order. The highest is the window's foot.
struct CureLine {
    double atShown = 0.0;
    double guardShown = 0.0; ///< half-width of the dots on both sides; 0: none drawn
    QString axisText{};      ///< figure at the axis, "285"
    QString word{};          ///< inside the plot under the line, "cure · low-cure"; may be empty
    bool culprit = false;    ///< closed window: this one crossed the ceiling (ink block label)

    bool operator==(const CureLine&) const = default;
};

/// A limit that must not be passed.
struct CeilingLine {
    double atShown = 0.0;
    double guardShown = 0.0; ///< width of the dots below the line; 0: none drawn
    QString axisText{};
    QString word{};       ///< "too hot for polyester"; closed: "cloth bears 300 °F"
    bool culprit = false; ///< closed window: this one was crossed (framed label)

    bool operator==(const CeilingLine&) const = default;
};

/// A line or mark with its axis figure and word: gel, aim, room.
struct ScaleNote {
    double atShown = 0.0;
    QString axisText{};
    QString word{};

    bool operator==(const ScaleNote&) const = default;
};

struct TracePoint {
    double seconds = 0.0;     ///< from the start of the recording, not decreasing
    double atShown = 0.0;     ///< a non-finite value draws nothing and parts the line
    bool breakBefore = false; ///< gap, jump or fault: never bridged

    bool operator==(const TracePoint&) const = default;
};

/// The ring at the sustained peak, the large figure, and the seconds over cure under the arch.
struct PeakNote {
    double seconds = 0.0;
    double atShown = 0.0;
    QString text{};               ///< "291 °F"
    QString secondsOverText{};    ///< "18 s"; empty: not shown
    double secondsOverFrom = 0.0; ///< where the trace rises over cure; equal to `secondsOverTo`: unknown
    double secondsOverTo = 0.0;

    bool operator==(const PeakNote&) const = default;
};

/// A strip's interval, its tolerance already inside. No `low`: none dark. No `high`: all dark.
struct StripInterval {
    std::optional<double> lowShown{};
    std::optional<double> highShown{};
    QString text{}; ///< "284–301"

    bool operator==(const StripInterval&) const = default;
};

/// A surface gun's reading: a bar with an arrow down only, "at most".
struct GunBar {
    double atShown = 0.0;
    QString text{};

    bool operator==(const GunBar&) const = default;
};

/// The run's own heat scale and the reading on it.
struct HeatScaleState {
    Q_GADGET
    QML_VALUE_TYPE(heatScaleState)
    Q_PROPERTY(QString spoken MEMBER spoken)
public:
    bool celsius = false; ///< the shown unit is °C; only scales the fixed 8 °F distances of the look
    QList<CureLine> cures{};
    std::optional<CeilingLine> hardCeiling{};
    std::optional<CeilingLine> bleedCeiling{};
    std::optional<ScaleNote> gel{};
    std::optional<ScaleNote> aim{};
    ScaleNote room{70.0, QStringLiteral("70"), {}}; ///< the foot of the scale
    bool closed = false;                            ///< cross-hatch between ceiling and the crossing cure

    QList<TracePoint> trace{};
    TraceEnd traceEnd = TraceEnd::Complete;
    double expectedSeconds = 85.0; ///< time axis is at least this long
    bool timed = true;             ///< false: a strip or a gun, which show no time, so no time axis
    QString secondsUnit = QStringLiteral("s");
    std::optional<PeakNote> peak{};
    std::optional<StripInterval> strip{};
    std::optional<GunBar> gun{};
    MarkKind verdict = MarkKind::Blank; ///< colour of the trace over cure, the peak figure, the interval
    QString windowNote{};               ///< a word in the clear paper, "dots: P-3 cannot tell"; may be empty
    QString spoken{};                   ///< the whole picture in a sentence, for a screen reader

    bool operator==(const HeatScaleState&) const = default;
};

} // namespace holdfast::kiosk::screens
