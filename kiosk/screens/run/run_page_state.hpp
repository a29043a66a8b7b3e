#pragma once

#include "kiosk/screens/parts/heat_scale_state.hpp"
#include "kiosk/screens/parts/page_parts.hpp"

namespace holdfast::kiosk::screens {

/// A way out of a closed window, easiest first. The first one is the black one.
struct WayOutState {
    Q_GADGET
    QML_VALUE_TYPE(wayOutState)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
public:
    QString id{};     ///< emitted as an action
    QString title{};  ///< "Black in low-cure"
    QString detail{}; ///< "window 285–300 · 2 buckets here"

    bool operator==(const WayOutState&) const = default;
};

/// A reading of the lot.
struct ReadingRow {
    Q_GADGET
    QML_VALUE_TYPE(readingRow)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QString where MEMBER where)
    Q_PROPERTY(QString margin MEMBER margin)
    Q_PROPERTY(bool current MEMBER current)
public:
    MarkKind mark = MarkKind::Blank;
    QString where{};      ///< "Left"
    QString margin{};     ///< "+5 °F"
    bool current = false; ///< the reading the band speaks of: its place is bold

    bool operator==(const ReadingRow&) const = default;
};

/// The lot and its readings, the right column when nothing is wrong. Not shown while `readings` is empty.
struct LotState {
    QString readingsHeading{}; ///< "Readings of lot 1"
    QList<ReadingRow> readings{};
    QString lotHeading{}; ///< "Lot 1 · pieces 1–36"
    QString lotState{};   ///< "Cleared"
    QString lotNote{};    ///< "Lot 2 opens with piece 37."

    bool operator==(const LotState&) const = default;
};

/// Everything Run shows. The right column shows ways out if there are any, else advice if there is any, else the lot.
struct RunPageState {
    BandState band{};
    PrintState print{};
    HeatScaleState scale{};
    QString waysOutHeading{}; ///< "Ways out, easiest first"
    QList<WayOutState> waysOut{};
    QString waysOutMore{}; ///< what else: "3 more are not shown.", a bleed watch, another cloth; may be empty
    QList<AdviceSection> advice{};
    LotState lot{};
    QString caution{};      ///< two lines in the right column
    QString cautionShort{}; ///< one line for portrait; empty: `caution`
    QList<ActionState> actions{};

    bool operator==(const RunPageState&) const = default;
};

} // namespace holdfast::kiosk::screens
