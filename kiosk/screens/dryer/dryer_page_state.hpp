#pragma once

#include "kiosk/screens/parts/heat_scale_state.hpp"
#include "kiosk/screens/parts/page_parts.hpp"

namespace holdfast::kiosk::screens {

/// What runs here now. `showScale` false: nothing to draw, the word may take the whole width.
struct BeltState {
    Q_GADGET
    QML_VALUE_TYPE(beltState)
    Q_PROPERTY(QString heading MEMBER heading)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString note MEMBER note)
    Q_PROPERTY(QString sentence MEMBER sentence)
    Q_PROPERTY(bool showScale MEMBER showScale)
    Q_PROPERTY(holdfast::kiosk::screens::HeatScaleState scale MEMBER scale)
    Q_PROPERTY(QString actionId MEMBER actionId)
public:
    QString heading{}; ///< "On the belt · run 20418, red jerseys"
    MarkKind mark = MarkKind::Blank;
    QString word{};     ///< "Cured", "Nothing yet today"
    QString note{};     ///< bold line under the word, "+6 °F · lot 1 cleared"
    QString sentence{}; ///< plain sentence under the word, "Scan a ticket and send the probe through. …"
    bool showScale = false;
    HeatScaleState scale{};
    QString actionId{}; ///< touching the block triggers it; empty: not touchable

    bool operator==(const BeltState&) const = default;
};

/// A run of today (or yesterday), newest first.
struct EarlierRow {
    Q_GADGET
    QML_VALUE_TYPE(earlierRow)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString verdictWord MEMBER verdictWord)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(holdfast::kiosk::screens::HeatScaleState scale MEMBER scale)
    Q_PROPERTY(QString margin MEMBER margin)
    Q_PROPERTY(QString time MEMBER time)
public:
    QString id{}; ///< action id
    MarkKind mark = MarkKind::Blank;
    QString title{};        ///< "Run 20417"
    QString verdictWord{};  ///< "Cured"
    QString detail{};       ///< "96 navy hoodies, blend"
    HeatScaleState scale{}; ///< drawn small: limits and peak, or strip, or gun
    QString margin{};       ///< "+5 °F"
    QString time{};         ///< "12:48"

    bool operator==(const EarlierRow&) const = default;
};

struct DueRow {
    Q_GADGET
    QML_VALUE_TYPE(dueRow)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(QString when MEMBER when)
    Q_PROPERTY(bool next MEMBER next)
public:
    QString id{};      ///< action id
    QString title{};   ///< "Reading, piece 72"
    QString detail{};  ///< "run 20418"
    QString when{};    ///< "11 min"
    bool next = false; ///< what comes first: `when` is bold

    bool operator==(const DueRow&) const = default;
};

struct HoldRow {
    Q_GADGET
    QML_VALUE_TYPE(holdRow)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
public:
    QString id{}; ///< action id
    MarkKind mark = MarkKind::NotProven;
    QString title{};  ///< "Run 20413, lot 2"
    QString detail{}; ///< "24 pieces · since 09:15"

    bool operator==(const HoldRow&) const = default;
};

struct DryerPageState {
    ActionState scan{}; ///< the black block: id, "Scan a run", hint "ticket, badge, bucket or probe · or touch to type"
    BeltState belt{};
    QString earlierHeading{}; ///< "Earlier today"
    QString earlierNone{};    ///< shown when `earlier` is empty
    QList<EarlierRow> earlier{};
    QString dueHeading{};
    QString dueNone{};
    QList<DueRow> due{};
    QString holdHeading{}; ///< "On hold · Mara or Teo decides"
    QString holdNone{};    ///< "Nothing is on hold."
    QList<HoldRow> holds{};
    QString caution{};
    QList<ActionState> actions{}; ///< "Problem", "Print a ticket"; none primary

    bool operator==(const DryerPageState&) const = default;
};

} // namespace holdfast::kiosk::screens
