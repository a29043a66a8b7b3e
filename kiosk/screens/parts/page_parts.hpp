#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QList>
#include <QString>
#include <QtQml/qqmlregistration.h>

/// Pieces that more than one page is made of. All texts are finished: translated, with units, ready to be set.
namespace holdfast::kiosk::screens {

/// The verdict band. One of `margin` (a figure, 64) or `status` (words, 28) stands at its right end.
struct BandState {
    Q_GADGET
    QML_VALUE_TYPE(bandState)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString margin MEMBER margin)
    Q_PROPERTY(QString status MEMBER status)
    Q_PROPERTY(QString marginNote MEMBER marginNote)
    Q_PROPERTY(QString liveFigure MEMBER liveFigure)
    Q_PROPERTY(QString markNote MEMBER markNote)
public:
    MarkKind mark = MarkKind::Blank;
    QString word{};       ///< "Cured"
    QString margin{};     ///< the reading's margin, "+6 °F"
    QString status{};     ///< "rising", "no answer for 38 s"
    QString marginNote{}; ///< "over cure, sure to ±5"
    QString liveFigure{}; ///< "274 °F", stands in the word's place while recording
    QString markNote{};   ///< under a blank mark, "Writing…"

    bool operator==(const BandState&) const = default;
};

/// A button. `shortLabel` is set where `label` does not fit (portrait). At most one of a page is primary.
struct ActionState {
    Q_GADGET
    QML_VALUE_TYPE(actionState)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString shortLabel MEMBER shortLabel)
    Q_PROPERTY(QString hint MEMBER hint)
    Q_PROPERTY(bool primary MEMBER primary)
public:
    QString id{};
    QString label{};
    bool primary = false;
    QString shortLabel{}; ///< empty: `label`
    QString hint{};       ///< second line, only on the large button of the strip page

    bool operator==(const ActionState&) const = default;
};

/// One layer of the print, as its row and its cell of the core show it.
struct LayerState {
    Q_GADGET
    QML_VALUE_TYPE(layerState)
    Q_PROPERTY(QString colour MEMBER colour)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(bool culprit MEMBER culprit)
public:
    QString colour{}; ///< "Black"
    QString detail{}; ///< "low-cure · 285 °F"
    MarkKind mark = MarkKind::Blank;
    bool culprit = false; ///< closes the window: cross-hatched cell, ink-filled row

    bool operator==(const LayerState&) const = default;
};

struct ClothState {
    Q_GADGET
    QML_VALUE_TYPE(clothState)
    Q_PROPERTY(QString name MEMBER name)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(bool culprit MEMBER culprit)
public:
    QString name{};       ///< "Red polyester"
    QString detail{};     ///< "bears 300 °F"
    bool culprit = false; ///< forbids the window: framed row

    bool operator==(const ClothState&) const = default;
};

/// The left column of Run.
struct PrintState {
    QString heading{};          ///< "The print, as it lies"
    QList<LayerState> layers{}; ///< top film first
    ClothState cloth{};
    QString windowHeading{}; ///< "Window" or "No window"
    QString windowText{};    ///< "285–300 °F" or "320 over 300"

    bool operator==(const PrintState&) const = default;
};

/// One heading with its sentence: Do now, Why, Kept, So far, Lot 1.
struct AdviceSection {
    Q_GADGET
    QML_VALUE_TYPE(adviceSection)
    Q_PROPERTY(QString heading MEMBER heading)
    Q_PROPERTY(QString sentence MEMBER sentence)
    Q_PROPERTY(holdfast::kiosk::screens::AdviceWeight weight MEMBER weight)
public:
    QString heading{};
    QString sentence{};
    AdviceWeight weight = AdviceWeight::Text;

    bool operator==(const AdviceSection&) const = default;
};

/// What cannot be done and why, laid over the page until the next scan. Nothing is shown while `happened` is empty.
struct RefusalState {
    Q_GADGET
    QML_VALUE_TYPE(refusalState)
    Q_PROPERTY(QString happened MEMBER happened)
    Q_PROPERTY(QString keptHeading MEMBER keptHeading)
    Q_PROPERTY(QString kept MEMBER kept)
    Q_PROPERTY(QString toDoHeading MEMBER toDoHeading)
    Q_PROPERTY(QString toDo MEMBER toDo)
    Q_PROPERTY(holdfast::kiosk::screens::ActionState help MEMBER help)
    Q_PROPERTY(holdfast::kiosk::screens::ActionState leave MEMBER leave)
public:
    QString happened{}; ///< "No run 20481 is known here."
    QString keptHeading{};
    QString kept{};
    QString toDoHeading{};
    QString toDo{};
    ActionState help{};  ///< the one that helps; without an id none is shown
    ActionState leave{}; ///< closes the panel, "Close"

    bool operator==(const RefusalState&) const = default;
};

/// A place in the bar at the foot. Only places that exist are listed.
struct PlaceState {
    Q_GADGET
    QML_VALUE_TYPE(placeState)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
public:
    QString id{};
    QString label{};

    bool operator==(const PlaceState&) const = default;
};

} // namespace holdfast::kiosk::screens
