#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QList>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>

/// What the charts of tests and lots draw. All texts are finished; figures are pixels to be.
namespace holdfast::kiosk::screens {

struct GradePoint {
    int cycle = 0;      ///< 0: as new
    double grade = 5.0; ///< 5 to 1, half steps; anything else is not drawn

    bool operator==(const GradePoint&) const = default;
};

/// One line of the chart; its name stands at its right end.
struct GradeSeries {
    QString name{}; ///< "colour"
    PointShape shape = PointShape::Disc;
    QList<GradePoint> points{}; ///< in any order; of two at a cycle the later one counts

    bool operator==(const GradeSeries&) const = default;
};

/// Grades against cycles. Up to four lines; more are not drawn.
struct GradeChartState {
    Q_GADGET
    QML_VALUE_TYPE(gradeChartState)
    Q_PROPERTY(QString spoken MEMBER spoken)
public:
    QList<GradeSeries> series{};
    std::optional<double> limit{};           ///< the line; below it the paper is tinted
    QString limitWord{};                     ///< in the tint, "below 3.5 the lot goes on hold"
    QString newWord = QStringLiteral("new"); ///< under cycle 0
    int lastCycle = 0;                       ///< the axis reaches at least so far: the cycles asked for, up to 50
    std::optional<int> dueCycle{};           ///< bold under the axis, the axis reaches so far
    QString dueWord{};                       ///< "due", in a dashed box under it; empty: only the bold figure
    QString noneWord{};                      ///< stands in the plot while there is no point
    QString spoken{};                        ///< the whole picture in a sentence, for a screen reader

    bool operator==(const GradeChartState&) const = default;
};

/// Neighbouring pieces of a run with one answer.
struct PieceStretch {
    int first = 1;
    int last = 1; ///< included
    PieceKind kind = PieceKind::Waiting;
    QString text{}; ///< its piece numbers, "37–72"; of a bracket always shown, of others where it fits

    bool operator==(const PieceStretch&) const = default;
};

/// A piece that was read: a film mark over the bar.
struct PieceRead {
    int piece = 1;
    MarkKind mark = MarkKind::NotProven;
    QString text{}; ///< its number, under the bar; left out where there is no room

    bool operator==(const PieceRead&) const = default;
};

/// The pieces of a run as a bar from 1 to `pieces`.
struct PieceBarState {
    Q_GADGET
    QML_VALUE_TYPE(pieceBarState)
    Q_PROPERTY(QString spoken MEMBER spoken)
public:
    int pieces = 1; ///< planned or made, whichever is more
    int made = 0;   ///< where the count stands; beyond it the bar is an outline
    QList<PieceStretch> stretches{};
    QList<PieceRead> reads{};
    QString firstText{}; ///< under the left end, "1"
    QString lastText{};  ///< under the right end, "144"
    QString madeText{};  ///< under the end of what is made, "88 made"; empty: not shown
    QString spoken{};

    bool operator==(const PieceBarState&) const = default;
};

} // namespace holdfast::kiosk::screens
