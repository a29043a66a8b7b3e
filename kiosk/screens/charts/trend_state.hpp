#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QList>
#include <QPointF>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>

/// The owner's charts as plain states: what stands at which figure, and every word already said. One grammar for all of
/// them: points, lines, bands, bars, events, stretches and ranked rows; a chart fills what it needs. Figures are in the
/// unit shown; one that is no number is left out and counted.
namespace holdfast::kiosk::screens {

struct TrendTick {
    double at = 0.0;
    QString text{};
    bool bold = false; ///< the proof line, the week spoken of: never thinned out

    bool operator==(const TrendTick&) const = default;
};

struct TrendAxis {
    QString name{}; ///< over the axis, or under its right end; empty where the texts carry the unit
    double from = 0.0;
    double to = 0.0;          ///< not above `from`: as far as what is drawn
    QList<TrendTick> ticks{}; ///< in rising order; thinned where they would touch
    bool days = false;        ///< figures are days since 1970-01-01 in the shop's time: a table writes dates

    bool operator==(const TrendAxis&) const = default;
};

/// What is known of a value that is no point: a strip. An end that is open has an arrow; its figure is not used.
struct TrendSpan {
    double low = 0.0;
    double high = 0.0;
    bool openLow = false;
    bool openHigh = false;

    bool operator==(const TrendSpan&) const = default;
};

struct TrendPoint {
    QString id{};     ///< triggered when pressed; empty: nothing to press
    QString spoken{}; ///< "run 20391, 16 Oct: −31 °F", said and shown while the point has the focus
    double x = 0.0;
    double y = 0.0; ///< not used if there is a `span`
    std::optional<TrendSpan> span{};
    MarkKind mark = MarkKind::Blank; ///< Blank: a dot of ink
    int rule = 0;                    ///< the rule that speaks of it, in a box with its number; 0: none
    int group = 0;                   ///< its lot: points of a group are shifted alike by `jitter`

    bool operator==(const TrendPoint&) const = default;
};

enum class TrendStroke {
    Centre,  ///< "usual": 2 px
    Limit,   ///< dashed, second ink
    Proof,   ///< margin 0: 3 px over tint; its name is bold
    Average, ///< a moving average: 2 px, broken where a value is no number
    Fit,     ///< 3 px
    Outlook, ///< what a fit says of days to come: dashed, 3 px
};

/// One point: a level over the whole width.
struct TrendLine {
    QString name{}; ///< at its right end: "high", "usual", "low"
    TrendStroke stroke = TrendStroke::Centre;
    QList<QPointF> points{}; ///< in rising x; no number: a gap
    bool stepped = false;    ///< each level reaches half way to its neighbours: limits that vary by point

    bool operator==(const TrendLine&) const = default;
};

struct TrendLimits {
    double x = 0.0;
    double low = 0.0;
    double high = 0.0;

    bool operator==(const TrendLimits&) const = default;
};

/// The limits of a fit.
struct TrendBand {
    QList<TrendLimits> limits{}; ///< in rising x

    bool operator==(const TrendBand&) const = default;
};

struct TrendBar {
    QString id{};
    QString spoken{};
    QString text{}; ///< over it; left out where there is no room, unless `strong`
    double x = 0.0;
    double value = 0.0;
    std::optional<double> upTo{}; ///< what was missed could make it so high: hatched
    bool strong = false;          ///< filled: the one spoken of

    bool operator==(const TrendBar&) const = default;
};

/// A thing that happened: belt speed, family revised, bucket opened.
struct TrendEvent {
    QString id{};
    double x = 0.0;
    QString text{};

    bool operator==(const TrendEvent&) const = default;
};

/// Days that cannot be told apart: a set of dates over the whole height, or at a level (where a fit crosses it).
struct TrendStretch {
    double from = 0.0;
    double to = 0.0;
    std::optional<double> y{};
    QString text{};

    bool operator==(const TrendStretch&) const = default;
};

/// What a rule says, over the points it says it of.
struct TrendBracket {
    double from = 0.0;
    double to = 0.0;
    QString text{};

    bool operator==(const TrendBracket&) const = default;
};

/// Words beside a point.
struct TrendNote {
    double x = 0.0;
    double y = 0.0;
    QString text{};

    bool operator==(const TrendNote&) const = default;
};

struct TrendRule {
    int number = 0;
    QString text{}; ///< under the chart, beside its number in a box

    bool operator==(const TrendRule&) const = default;
};

struct TrendShare {
    double share = 0.0; ///< 0 to 1
    double low = 0.0;
    double high = 0.0; ///< not above `low`: no limits known

    bool operator==(const TrendShare&) const = default;
};

/// One thing that failures share, ranked.
struct TrendRow {
    QString id{};
    QString spoken{};
    QString rank{};   ///< "1"
    QString name{};   ///< "Mixed bucket M-118"
    QString word{};   ///< at the right: "strong", "weak", "by chance"
    QString counts{}; ///< "7 of 9 with it, 11 of 310 without"
    bool strong = false;
    TrendShare with{};
    TrendShare without{};

    bool operator==(const TrendRow&) const = default;
};

/// One chart. With `rows` it is a ranked list and nothing else of it but the words is drawn.
struct TrendChartState {
    Q_GADGET
    QML_VALUE_TYPE(trendChartState)
    Q_PROPERTY(QString spoken MEMBER spoken)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString pressHint MEMBER pressHint)
public:
    QString title{};  ///< the sentence that says what the chart shows
    QString detail{}; ///< a second one under it
    TrendAxis x{};
    TrendAxis y{};
    QList<TrendPoint> points{};
    QList<TrendLine> lines{};
    QList<TrendBand> bands{};
    QList<TrendBar> bars{};
    QList<TrendEvent> events{};
    QList<TrendStretch> stretches{};
    QList<TrendBracket> brackets{};
    QList<TrendNote> notes{};
    QList<TrendRule> rules{};
    QList<TrendRow> rows{};
    double jitter = 0.0;       ///< points of different groups stand up to so far apart, in the unit of y
    double plotHeight = 240.0; ///< px at 1280×800, where the chart may be as high as it needs
    QString none{};            ///< stands in the plot where there is nothing to draw
    QString note{};            ///< under the chart: why there is no curve, a caveat, how many were left out
    QString spoken{};          ///< the whole chart in words, for a screen reader
    QString pressHint{};       ///< said with it if there are points to press: "Arrow keys go along the points."

    bool operator==(const TrendChartState&) const = default;
};

/// How many points, bars and spans have no number to stand at, for the sentence that says so.
[[nodiscard]] int leftOut(const TrendChartState& state);

} // namespace holdfast::kiosk::screens
