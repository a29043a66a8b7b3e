#pragma once

#include "kiosk/screens/charts/trend_state.hpp"
#include "kiosk/screens/parts/chart_states.hpp"
#include "kiosk/screens/parts/heat_scale_state.hpp"
#include "kiosk/screens/parts/page_parts.hpp"
#include "kiosk/screens/sheet/test_blocks.hpp"

#include <QList>
#include <QString>
#include <QtQml/qqmlregistration.h>

/// A sheet: a list at the left, the chosen thing at the right as blocks under one another. Runs, Inks, Instruments and
/// Shop are sheets. All texts are finished.
namespace holdfast::kiosk::screens {

/// Closed lists of the sheets. In QML: `SheetKinds.Facts`, `SheetKinds.Number`.
namespace SheetKinds {
Q_NAMESPACE
QML_ELEMENT

enum Block {
    Heading,  ///< `text`, with a rule over it
    Sentence, ///< `text`
    Lead,     ///< `text` at 28, bold: the answer
    Figure,   ///< `text` at 40 with `note` beside it: a live value, a count
    Note,     ///< `text` in second ink: where a value comes from, a caution
    Facts,    ///< `rows`: title left, value right, nothing to press
    Rows,     ///< `rows` to press; `indent` draws a tree
    Fields,   ///< `fields` to fill
    Choices,  ///< `actions`, one chosen, under the label `text`
    Actions,  ///< `actions`: buttons
    Scale,    ///< `scale`, small, with `text` beside it

    // What is graded, bold `text` over `note`, stands left of all of these; without both they have the whole width.
    GradeChart, ///< `chart`
    Pictures,   ///< `pictures` in a row; `underChart`: in the columns of the GradeChart before it, as far as they fit
    Halves,     ///< `halves`
    GradeKeys,  ///< `actions` are the nine grades ("4.5"), `chosenId` the chosen one
    CrackKeys,  ///< `cracks`, `chosenId` the chosen one
    Stretch,    ///< `pulls`; `result` bold at the right over `resultNote`
    Ticks,      ///< `ticks`; under them `text` bold, "3 of 5 bins counted, 41 of 60 pieces", and `note`
    PieceBar,   ///< `pieces`
    Trail,      ///< `trail`, a history

    TrendChart, ///< `trend`; a point pressed triggers its id
};
Q_ENUM_NS(Block)
enum Keys { Text, Number, Code, Secret, Date };
Q_ENUM_NS(Keys)

} // namespace SheetKinds

struct SheetRow {
    Q_GADGET
    QML_VALUE_TYPE(sheetRow)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(bool marked MEMBER marked)
    Q_PROPERTY(holdfast::kiosk::screens::MarkKind mark MEMBER mark)
    Q_PROPERTY(bool chosen MEMBER chosen)
    Q_PROPERTY(bool strong MEMBER strong)
    Q_PROPERTY(int indent MEMBER indent)
public:
    QString id{}; ///< triggered when pressed; empty: nothing to press
    QString title{};
    QString detail{}; ///< second line
    QString value{};  ///< at the right
    bool marked = false;
    MarkKind mark = MarkKind::Blank; ///< drawn before the title if `marked`
    bool chosen = false;
    bool strong = false; ///< bold: asks for something
    int indent = 0;      ///< depth in a tree

    bool operator==(const SheetRow&) const = default;
};

/// Pressed, it triggers "field." and its id, which opens the pad; what was typed comes out of
/// KioskModel::fieldEntered(id, text).
struct SheetField {
    Q_GADGET
    QML_VALUE_TYPE(sheetField)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(QString hint MEMBER hint)
    Q_PROPERTY(QString fault MEMBER fault)
    Q_PROPERTY(holdfast::kiosk::screens::SheetKinds::Keys keys MEMBER keys)
public:
    QString id{};
    QString label{};
    QString value{}; ///< of a secret: dots
    QString hint{};  ///< stands there while the value is empty, and over the pad
    QString fault{}; ///< why what stands there cannot be used, a full sentence under the field
    SheetKinds::Keys keys = SheetKinds::Text;

    bool operator==(const SheetField&) const = default;
};

/// One piece of the right side; what a kind does not name it leaves alone.
struct SheetBlock {
    SheetKinds::Block kind = SheetKinds::Sentence;
    QString text{};
    QString note{};
    QList<SheetRow> rows{};
    QList<SheetField> fields{};
    QList<ActionState> actions{};
    QString chosenId{}; ///< of Choices, GradeKeys, CrackKeys: the id of the chosen action
    HeatScaleState scale{};
    GradeChartState chart{};
    PieceBarState pieces{};
    QList<PictureEntry> pictures{};
    bool underChart = false;
    HalvesState halves{};
    QList<CrackKey> cracks{};
    QList<PullEntry> pulls{};
    QString result{};     ///< "passed"
    QString resultNote{}; ///< "hairline allowed"
    QList<TickEntry> ticks{};
    QList<TrailEntry> trail{};
    TrendChartState trend{};

    bool operator==(const SheetBlock&) const = default;
};

struct SheetPageState {
    QString head{}; ///< what the head of the screen calls it; empty: it goes on telling of the dryer
    QString headHow{};
    QString heading{};                ///< over the list
    QString listNone{};               ///< stands where the list is empty
    QList<SheetRow> list{};           ///< `chosen` marks the one at the right
    QList<ActionState> listActions{}; ///< under the list: "New run"
    QString title{};                  ///< over the blocks
    QList<SheetBlock> blocks{};
    QList<ActionState> actions{}; ///< under the blocks, always in sight; at most one primary
    /// A column of its own, the last third of the page, of a page without a list; portrait: under the blocks.
    QList<SheetBlock> beside{};
    QList<ActionState> besideActions{}; ///< under it, always in sight; the page's primary stands here or in `actions`
    bool detailOnly = false;            ///< portrait: the list is hidden, `back` brings it again
    ActionState back{};                 ///< portrait only

    bool operator==(const SheetPageState&) const = default;
};

/// The pad over the page while a field is open.
struct TypePadState {
    Q_GADGET
    QML_VALUE_TYPE(typePadState)
    Q_PROPERTY(QString id MEMBER id)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString text MEMBER text)
    Q_PROPERTY(QString hint MEMBER hint)
    Q_PROPERTY(holdfast::kiosk::screens::SheetKinds::Keys keys MEMBER keys)
    Q_PROPERTY(QString enter MEMBER enter)
    Q_PROPERTY(QString erase MEMBER erase)
    Q_PROPERTY(QString leave MEMBER leave)
    Q_PROPERTY(QString space MEMBER space)
    Q_PROPERTY(QString shift MEMBER shift)
    Q_PROPERTY(QString letters MEMBER letters)
public:
    QString id{}; ///< of the field; empty: no pad
    QString label{};
    QString text{};
    QString hint{};
    SheetKinds::Keys keys = SheetKinds::Text;
    QString enter = QStringLiteral("Enter");
    QString erase = QStringLiteral("Erase");
    QString leave = QStringLiteral("Close");
    QString space = QStringLiteral("Space");
    QString shift = QStringLiteral("Capitals");
    QString letters = QStringLiteral("abcdefghijklmnopqrstuvwxyz"); ///< of the language: Spanish adds ñ á é í ó ú ü

    bool operator==(const TypePadState&) const = default;
};

} // namespace holdfast::kiosk::screens
