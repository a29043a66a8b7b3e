#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QColor>
#include <QList>
#include <QString>
#include <QUrl>
#include <QtQml/qqmlregistration.h>

/// Pieces of the blocks that Tests and Holds are made of. All texts are finished. A picture's `source` is
/// "image://picture/" and its hash; empty or unknown: an empty ground with the entry's own word.
namespace holdfast::kiosk::screens {

/// One picture of a row.
struct PictureEntry {
    Q_GADGET
    QML_VALUE_TYPE(pictureEntry)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(int cycle MEMBER cycle)
    Q_PROPERTY(QUrl source MEMBER source)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString spoken MEMBER spoken)
    Q_PROPERTY(bool due MEMBER due)
public:
    QString id{};    ///< triggered when pressed; empty: nothing to press
    QString label{}; ///< under it: "new", "1", "24 h"
    int cycle = -1;  ///< where it stands under the chart above, if the block says `underChart`
    QUrl source{};
    QString word{};   ///< in its place while there is no picture, "none"; of a due one "due"
    QString spoken{}; ///< "picture after wash 3"; empty: `label` and `word`
    bool due = false; ///< a dashed box with `word`

    bool operator==(const PictureEntry&) const = default;
};

/// One of two halves that are compared.
struct HalfEntry {
    Q_GADGET
    QML_VALUE_TYPE(halfEntry)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString caption MEMBER caption)
    Q_PROPERTY(QUrl source MEMBER source)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QColor colour MEMBER colour)
    Q_PROPERTY(bool measured READ measured)
    Q_PROPERTY(QString figures MEMBER figures)
public:
    QString id{};      ///< triggered when its picture is pressed; empty: nothing to press
    QString caption{}; ///< "unwashed half"
    QUrl source{};
    QString word{};    ///< in its place while there is no picture, "no picture yet"
    QColor colour{};   ///< of its patch, from L*a*b*; invalid: no patch
    QString figures{}; ///< "L* 41.2 · a* 52.0 · b* 30.1"

    [[nodiscard]] bool measured() const { return colour.isValid(); }
    bool operator==(const HalfEntry&) const = default;
};

/// Two halves side by side, the patches touching each other under them, and what was found. Without any picture and
/// word the patches stand alone; without any colour the pictures do.
struct HalvesState {
    Q_GADGET
    QML_VALUE_TYPE(halvesState)
    Q_PROPERTY(holdfast::kiosk::screens::HalfEntry left MEMBER left)
    Q_PROPERTY(holdfast::kiosk::screens::HalfEntry right MEMBER right)
    Q_PROPERTY(QString grade MEMBER grade)
    Q_PROPERTY(QString gradeNote MEMBER gradeNote)
public:
    HalfEntry left{};
    HalfEntry right{};
    QString grade{};     ///< at 40, "4.5"; empty: none yet
    QString gradeNote{}; ///< beside it, "grade of colour by ΔE 1.9, towards the garment's red"

    bool operator==(const HalvesState&) const = default;
};

/// One key of the crack classes, with its drawing. One of them is chosen: the block's chosenId.
struct CrackKey {
    Q_GADGET
    QML_VALUE_TYPE(crackKey)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(holdfast::kiosk::screens::CrackKind crack MEMBER crack)
public:
    QString id{};
    QString label{}; ///< "hairline"
    CrackKind crack = CrackKind::Whole;

    bool operator==(const CrackKey&) const = default;
};

/// One pull of a print.
struct PullEntry {
    Q_GADGET
    QML_VALUE_TYPE(pullEntry)
    Q_PROPERTY(QString elongation MEMBER elongation)
    Q_PROPERTY(QString seen MEMBER seen)
    Q_PROPERTY(holdfast::kiosk::screens::CrackKind crack MEMBER crack)
    Q_PROPERTY(bool done MEMBER done)
public:
    QString elongation{};               ///< "25 %"
    QString seen{};                     ///< "no crack"; of one to come "due"
    CrackKind crack = CrackKind::Whole; ///< drawn on its swatch
    bool done = true;                   ///< false: still to be pulled, a dashed box

    bool operator==(const PullEntry&) const = default;
};

/// A row with a box for what was counted at the shelf.
struct TickEntry {
    Q_GADGET
    QML_VALUE_TYPE(tickEntry)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(bool ticked MEMBER ticked)
public:
    QString id{};
    QString title{};     ///< "Bin 14"
    QString detail{};    ///< "run 20413 · lot 2"
    QString value{};     ///< "24 pieces"
    QString word{};      ///< beside the box: "counted", "not counted"
    bool ticked = false; ///< the box is filled

    bool operator==(const TickEntry&) const = default;
};

/// One line of a history, newest or oldest first as the presenter likes.
struct TrailEntry {
    Q_GADGET
    QML_VALUE_TYPE(trailEntry)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString time MEMBER time)
    Q_PROPERTY(QString day MEMBER day)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(bool marked MEMBER marked)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QUrl source MEMBER source)
    Q_PROPERTY(bool pictured READ pictured)
    Q_PROPERTY(bool strong MEMBER strong)
public:
    QString id{};     ///< triggered when pressed; empty: nothing to press
    QString time{};   ///< "14:02"
    QString day{};    ///< under it, "15 Oct"
    QString title{};  ///< "Wash 3"
    QString detail{}; ///< "colour 4.5, stain 4 · load 118"
    QString value{};  ///< at the right, "passed"
    bool marked = false;
    MarkKind mark = MarkKind::Blank; ///< drawn before the title if `marked`
    QUrl source{};                   ///< a small picture at the right end; empty: none
    bool strong = false;             ///< bold: asks for something

    [[nodiscard]] bool pictured() const { return !source.isEmpty(); }
    bool operator==(const TrailEntry&) const = default;
};

} // namespace holdfast::kiosk::screens
