#include "kiosk/screens/charts/trend_layout.hpp"
#include "tests/screens/designed/invented_charts.hpp"
#include "tests/screens/kiosk_view.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <random>
#include <set>

using namespace holdfast::kiosk::screens;
using holdfast::tests::ensureApplication;

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinite = std::numeric_limits<double>::infinity();

TrendLayout laid(const TrendChartState& state, double width = 808.0, double height = 0.0, double unit = 1.0) {
    ensureApplication();
    return layoutTrendChart(state, {.palette = lightPalette(), .unit = unit}, {width, height});
}

QList<TrendChartState> everyKind() {
    using namespace invented;
    return {marginChart(), stripChart(), failureChart(),  sharedChart(), sinceChart(), survivalChart(),
            ladderChart(), driftChart(), briefingChart(), denseChart(),  emptyChart(), longChart()};
}

TrendPoint point(double x, double y, int rule = 0) {
    return {.id = QString::number(x), .x = x, .y = y, .mark = MarkKind::Cured, .rule = rule};
}

TrendChartState ofPoints(QList<TrendPoint> points) {
    TrendChartState state;
    state.points = std::move(points);
    return state;
}

QList<TrendWord> allWords(const TrendLayout& layout) {
    return layout.words + layout.numbers;
}

void requireApart(const TrendLayout& layout) {
    const QList<TrendWord> words = allWords(layout);
    for (qsizetype i = 0; i < words.size(); ++i) {
        for (qsizetype j = 0; j < i; ++j) {
            INFO(words[i].text.toStdString()
                 << " at " << words[i].box.left() << ", " << words[i].box.top() << " over "
                 << words[j].text.toStdString() << " at " << words[j].box.left() << ", " << words[j].box.top());
            REQUIRE(!words[i].box.adjusted(0, 5, 0, -5).intersects(words[j].box.adjusted(0, 5, 0, -5)));
        }
    }
}

void requireInside(const TrendLayout& layout) {
    const QRectF all = QRectF(0, 0, layout.width, layout.height).adjusted(-0.5, -0.5, 0.5, 0.5);
    const QRectF plot = layout.plot.adjusted(-0.01, -0.01, 0.01, 0.01);
    for (const TrendWord& word : allWords(layout)) {
        INFO(word.text.toStdString() << " " << word.box.left() << ".." << word.box.right() << " of " << layout.width
                                     << ", " << word.box.bottom() << " of " << layout.height);
        REQUIRE(all.contains(word.box));
    }
    for (const TrendMark& mark : layout.marks) {
        REQUIRE(plot.contains(mark.at));
    }
    for (const TrendCurve& curve : layout.curves) {
        for (const QPolygonF& part : curve.parts) {
            REQUIRE(plot.contains(part.boundingRect().topLeft()));
            REQUIRE(plot.contains(part.boundingRect().bottomRight()));
        }
    }
    for (const TrendBlock& bar : layout.bars) {
        REQUIRE(all.contains(bar.box.topLeft()));
        REQUIRE(all.contains(bar.box.bottomRight()));
        REQUIRE(bar.box.height() >= 0.0);
    }
    for (const TrendTarget& target : layout.targets) {
        REQUIRE(all.contains(target.at));
    }
}

bool says(const TrendLayout& layout, const QString& text) {
    return std::any_of(layout.words.begin(), layout.words.end(),
                       [&](const TrendWord& word) { return word.text == text; });
}

} // namespace

TEST_CASE("in every kind of chart, at every width, words stand apart and all stands inside", "[screens][trends]") {
    for (const TrendChartState& state : everyKind()) {
        for (const double width : {400.0, 560.0, 808.0, 1232.0, 1850.0}) {
            for (const double unit : {1.0, 1.35}) {
                INFO(state.title.toStdString() << ", " << width << " wide, unit " << unit);
                const TrendLayout layout = laid(state, width, 0.0, unit);
                requireApart(layout);
                requireInside(layout);
            }
        }
    }
}

TEST_CASE("a given height is kept where the words leave room for it", "[screens][trends]") {
    for (const TrendChartState& state : everyKind()) {
        INFO(state.title.toStdString());
        const TrendLayout layout = laid(state, 1200.0, 720.0);
        if (state.rows.isEmpty()) {
            REQUIRE(layout.height == Approx(720.0).margin(2.0));
        }
        REQUIRE(laid(state, 1200.0, 10.0).height > 10.0); // nothing is squeezed to nothing
    }
}

TEST_CASE("the sentence leads, its words are all there", "[screens][trends]") {
    const TrendChartState state = invented::longChart();
    const TrendLayout layout = laid(state, 560.0);
    QString said;
    for (const TrendWord& word : layout.words) {
        if (word.lead) {
            said += (said.isEmpty() ? "" : " ") + word.text;
            REQUIRE(word.box.bottom() < layout.plot.top());
        }
    }
    REQUIRE(said == state.title);
}

TEST_CASE("what is drawn of trends.png stands as drawn", "[screens][trends]") {
    const TrendLayout layout = laid(invented::marginChart());
    REQUIRE(layout.marks.size() == 40);
    REQUIRE(layout.proofY.value() == Approx(layout.scale.y(0.0)));
    for (const char* word : {"high", "usual", "low", "cure", "+10", "0 °F", "Sep", "Oct", "Nov",
                             "12 runs in a row below usual", "20335, cold start", "family revised"}) {
        INFO(word);
        REQUIRE(says(layout, QString::fromUtf8(word)));
    }
    REQUIRE(layout.events.size() == 2);
    REQUIRE(layout.brackets.size() == 1);
    REQUIRE(layout.brackets.first().boundingRect().left() < layout.scale.x(invented::marginChart().points[28].x));
}

TEST_CASE("bold figures of an axis stay, the others thin out evenly", "[screens][trends]") {
    TrendChartState state = ofPoints({point(0, 1), point(51, 2)});
    for (int week = 0; week < 52; ++week) {
        state.x.ticks.append({static_cast<double>(week), QStringLiteral("week %1").arg(week), week == 50});
    }
    const TrendLayout layout = laid(state);
    std::set<double> middles;
    for (const TrendWord& word : layout.words) {
        if (!word.bold) {
            middles.insert(word.box.center().x());
        }
    }
    REQUIRE(says(layout, QStringLiteral("week 50")));
    REQUIRE(middles.size() >= 4);
    const double step = *std::next(middles.begin(), 2) - *std::next(middles.begin(), 1);
    for (auto at = std::next(middles.begin(), 2); std::next(at) != middles.end(); ++at) {
        REQUIRE(*std::next(at) - *at == Approx(step).margin(0.01));
    }
}

TEST_CASE("a press finds the nearest point within 15 mm and nothing further away", "[screens][trends][touch]") {
    TrendChartState state = ofPoints({point(0, 0), point(1, 5), point(2, 10)});
    const TrendLayout layout = laid(state);
    REQUIRE(layout.targets.size() == 3);
    const QPointF middle = layout.targets[1].at;
    // screens.md: 15 mm; look.md: 3.809 px a mm. A mark is 20 x 16 px.
    const double reach = 7.5 * 3.809;
    REQUIRE(targetAt(layout, middle, 1.0) == 1);
    REQUIRE(targetAt(layout, middle + QPointF(10.0 + reach - 0.1, 0.0), 1.0) == 1);
    REQUIRE(targetAt(layout, middle + QPointF(10.0 + reach + 0.1, 0.0), 1.0) == -1);
    REQUIRE(targetAt(layout, (layout.targets[0].at * 0.9 + middle * 0.1), 1.0) == -1); // 808 px: they stand far apart
    REQUIRE(targetAt(laid({}), {1.0, 1.0}, 1.0) == -1);
}

TEST_CASE("of two near points the nearer one is pressed", "[screens][trends][touch]") {
    TrendChartState state = ofPoints({point(0, 0), point(50, 5), point(52, 5), point(100, 10)});
    const TrendLayout layout = laid(state);
    const QPointF left = layout.targets[1].at;
    const QPointF right = layout.targets[2].at;
    REQUIRE(right.x() - left.x() < 20.0);
    REQUIRE(targetAt(layout, left - QPointF(2.0, 0.0), 1.0) == 1);
    REQUIRE(targetAt(layout, right + QPointF(2.0, 0.0), 1.0) == 2);
}

TEST_CASE("the keys go along the axis and stop at its ends", "[screens][trends][keys]") {
    TrendChartState state = ofPoints({point(3, 1), point(1, 2, 2), point(2, 3), point(4, 3, 1)});
    const TrendLayout layout = laid(state);
    QStringList order;
    for (const TrendTarget& target : layout.targets) {
        order.append(target.id);
    }
    REQUIRE(order == QStringList{"1", "2", "3", "4"});
    REQUIRE(targetAfter(layout, -1, 1) == 0);
    REQUIRE(targetAfter(layout, -1, -1) == 3);
    REQUIRE(targetAfter(layout, 3, 1) == 3);
    REQUIRE(targetAfter(layout, 0, -1) == 0);
    REQUIRE(ruledAfter(layout, 0, 1) == 3);
    REQUIRE(ruledAfter(layout, 3, 1) == 3);
    REQUIRE(ruledAfter(layout, 2, -1) == 0);
    REQUIRE(targetAfter(laid({}), -1, 1) == -1);
}

TEST_CASE("a million points are thinned by column; extremes and what a rule speaks of stay", "[screens][trends]") {
    std::mt19937 random{20413}; // fixed seed
    TrendChartState state;
    state.points.resize(1'000'000);
    for (int i = 0; i < state.points.size(); ++i) {
        state.points[i].x = i;
        state.points[i].y = static_cast<double>(random() % 10007U) / 1000.0;
    }
    state.points[123'456].y = 999.0;
    state.points[654'321].y = -999.0;
    const std::set<int> ruled{5, 77'777, 500'000, 500'001, 999'999};
    for (const int i : ruled) {
        state.points[i].rule = 1;
        state.points[i].y = 5.0; // neither the highest nor the lowest of its column
    }
    const TrendLayout layout = laid(state);
    REQUIRE(layout.thinned + layout.marks.size() == 1'000'000);
    // By hand: at most a highest and a lowest for each of at most 808 columns, and the five.
    REQUIRE(layout.marks.size() <= 2 * 809 + 5);
    REQUIRE(std::count_if(layout.marks.begin(), layout.marks.end(), [](const auto& mark) { return mark.rule == 1; }) ==
            5);
    const auto [low, high] = std::minmax_element(layout.marks.begin(), layout.marks.end(),
                                                 [](const auto& a, const auto& b) { return a.at.y() < b.at.y(); });
    REQUIRE(low->at.y() == Approx(layout.scale.y(999.0)));
    REQUIRE(high->at.y() == Approx(layout.scale.y(-999.0)));
}

TEST_CASE("of two thousand points on a screen every failure stays a film", "[screens][trends]") {
    const TrendLayout layout = laid(invented::denseChart());
    for (const MarkKind kind : {MarkKind::UnderCured, MarkKind::Overheated}) {
        const auto found = std::find_if(layout.marks.begin(), layout.marks.end(),
                                        [&](const TrendMark& mark) { return mark.mark == kind; });
        REQUIRE(found != layout.marks.end());
        REQUIRE(found->size == TrendSize::Small);
        REQUIRE(found->rule == 1);
    }
}

TEST_CASE("what is no number is left out and counted", "[screens][trends]") {
    TrendChartState state = ofPoints({point(0, kNan), point(kNan, 1), point(1, kInfinite), point(2, 2), point(3, 3)});
    state.points.append({.x = 4, .span = TrendSpan{.low = 5, .high = 1}});               // upside down
    state.points.append({.x = 5, .span = TrendSpan{.openLow = true, .openHigh = true}}); // says nothing
    state.bars.append({.x = 2, .value = kNan});
    REQUIRE(leftOut(state) == 6);
    const TrendLayout layout = laid(state);
    REQUIRE(layout.leftOut == 6);
    REQUIRE(layout.marks.size() == 2);
    REQUIRE(layout.scale.y1 < 4.0); // they do not widen the axis
}

TEST_CASE("no point, one point and equal points are drawn calmly", "[screens][trends]") {
    TrendChartState state;
    state.none = QStringLiteral("Nothing yet.");
    REQUIRE(says(laid(state), QStringLiteral("Nothing yet.")));
    state.points = {point(7, 7)};
    TrendLayout layout = laid(state);
    REQUIRE(!says(layout, QStringLiteral("Nothing yet.")));
    REQUIRE(layout.marks.first().at.y() == Approx(layout.plot.center().y()));
    REQUIRE(layout.marks.first().at.x() == Approx(layout.plot.center().x()));
    state.points = {point(1, 7), point(2, 7), point(3, 7)};
    layout = laid(state);
    for (const TrendMark& mark : layout.marks) {
        REQUIRE(mark.at.y() == Approx(layout.plot.center().y()));
    }
    REQUIRE(layout.marks.last().at.x() > layout.marks.first().at.x());
}

TEST_CASE("a moving average is broken over empty weeks", "[screens][trends]") {
    TrendChartState state = ofPoints({point(0, 1), point(9, 2)});
    state.lines = {{.stroke = TrendStroke::Average, .points = {{0, 1}, {1, 2}, {2, kNan}, {8, 2}, {9, 1}}}};
    REQUIRE(laid(state).curves.first().parts.size() == 2);
}

TEST_CASE("limits that vary are a step for each point, equal neighbours one", "[screens][trends]") {
    TrendChartState state;
    state.lines = {{.stroke = TrendStroke::Limit, .points = {{0, 8}, {1, 8}, {2, 9}, {3, 7}}, .stepped = true}};
    const TrendLayout layout = laid(state);
    const QList<QPolygonF>& parts = layout.curves.first().parts;
    REQUIRE(parts.size() == 3);
    REQUIRE(parts[1].first().x() == Approx(layout.scale.x(1.5))); // by hand: half way from 1 to 2
    REQUIRE(parts[1].last().x() == Approx(layout.scale.x(2.5)));
    REQUIRE(parts[1].first().y() == Approx(layout.scale.y(9.0)));
}

TEST_CASE("a point beyond a given axis stands at its edge with a sign", "[screens][trends]") {
    TrendChartState state = ofPoints({point(0, 5), point(1, 50), point(2, -50)});
    state.y.from = 0.0;
    state.y.to = 10.0;
    const TrendLayout layout = laid(state);
    REQUIRE(layout.marks[0].beyond == 0);
    REQUIRE(layout.marks[1].beyond == 1);
    REQUIRE(layout.marks[2].beyond == -1);
    requireInside(layout);
}

TEST_CASE("a strip is drawn from least to most, an open end with an arrow", "[screens][trends]") {
    TrendChartState state;
    state.points = {{.x = 0, .span = TrendSpan{.low = 2, .high = 6}},
                    {.x = 1, .span = TrendSpan{.low = 2, .openHigh = true}},
                    {.x = 2, .span = TrendSpan{.high = 6, .openLow = true}}};
    const TrendLayout layout = laid(state);
    REQUIRE(layout.marks[0].beam);
    REQUIRE(layout.marks[0].top == Approx(layout.scale.y(6)));
    REQUIRE(layout.marks[0].bottom == Approx(layout.scale.y(2)));
    REQUIRE(layout.marks[1].openTop);
    REQUIRE(layout.marks[1].bottom == Approx(layout.scale.y(2)));
    REQUIRE(layout.marks[1].top < layout.marks[1].bottom);
    REQUIRE(layout.marks[2].openBottom);
    REQUIRE(layout.marks[2].top == Approx(layout.scale.y(6)));
}

TEST_CASE("what was missed stands over what failed, in the same bar", "[screens][trends]") {
    TrendChartState state;
    state.bars = {{.id = "a", .x = 1, .value = 4, .upTo = 7},
                  {.id = "b", .x = 2, .value = 0},
                  {.x = 3, .value = 5, .strong = true}};
    const TrendLayout layout = laid(state);
    const auto& missed = *std::find_if(layout.bars.begin(), layout.bars.end(),
                                       [](const TrendBlock& bar) { return !bar.missed.isEmpty(); });
    REQUIRE(missed.missed.bottom() == Approx(missed.box.top()));
    REQUIRE(missed.missed.top() == Approx(layout.scale.y(7)));
    REQUIRE(missed.box.bottom() == Approx(layout.plot.bottom())); // bars stand on the axis
    REQUIRE(layout.targets.size() == 2);
    REQUIRE(layout.targets.first().box.height() == Approx(layout.plot.height())); // its whole column is pressed
}

TEST_CASE("an event with an id is pressed at its words", "[screens][trends][touch]") {
    const TrendLayout layout = laid(invented::sinceChart());
    REQUIRE(layout.targets.size() == 3);
    REQUIRE(layout.targets[1].id == "trends.event.1"); // along the axis: revised, belt, bucket
    REQUIRE(targetAt(layout, layout.targets[1].box.center(), 1.0) == 1);
    REQUIRE(layout.targets[1].spoken == "belt 12 to 14 ft/min");
}

TEST_CASE("points of one lot are shifted alike, by half of the jitter at most", "[screens][trends]") {
    TrendChartState state;
    for (int i = 0; i < 60; ++i) {
        state.points.append({.x = static_cast<double>(i), .y = 1.0, .group = i % 12});
    }
    state.jitter = 0.2;
    const TrendLayout layout = laid(state);
    std::set<int> heights;
    for (int i = 0; i < 60; ++i) {
        const double y = layout.marks[i].at.y();
        REQUIRE(y == Approx(layout.marks[i % 12].at.y()));
        REQUIRE(y <= layout.scale.y(0.9) + 0.01);
        REQUIRE(y >= layout.scale.y(1.1) - 0.01);
        heights.insert(static_cast<int>(y));
    }
    REQUIRE(heights.size() >= 10); // twelve lots stand apart
}

TEST_CASE("a ranked row keeps its name and its counts, and is pressed as a whole", "[screens][trends]") {
    const TrendLayout layout = laid(invented::sharedChart(), 400.0);
    REQUIRE(layout.targets.size() == 3);
    REQUIRE(layout.shares.size() == 6);
    REQUIRE(says(layout, QStringLiteral("Mixed bucket M-118")));
    REQUIRE(says(layout, QStringLiteral("7 of 9 with it, 11 of 310 without")));
    for (const TrendTarget& target : layout.targets) {
        REQUIRE(target.box.height() >= 57.2); // 15 mm
    }
    // By hand: 7/9 against 11/310.
    REQUIRE(layout.shares[0].box.width() / layout.shares[1].box.width() == Approx(0.778 / 0.035).epsilon(0.01));
    REQUIRE(layout.shares[0].low < layout.shares[0].box.right());
    REQUIRE(layout.shares[0].high > layout.shares[0].box.right());
}

TEST_CASE("whatever the figures, everything stands somewhere inside", "[screens][trends]") {
    std::mt19937 random{118}; // fixed seed
    const auto pick = [&](int least, int most) { return std::uniform_int_distribution<int>{least, most}(random); };
    const QList<double> hostile{0.0,    -0.0,   1.0,  -1.0,      1e300,      -1e300, 1e308,
                                -1e308, 1e-300, kNan, kInfinite, -kInfinite, 42.5,   1e9};
    const auto any = [&] {
        return pick(0, 2) == 0 ? hostile[pick(0, static_cast<int>(hostile.size()) - 1)] : pick(-50, 50) / 3.0;
    };
    for (int round = 0; round < 400; ++round) {
        INFO("round " << round);
        TrendChartState state;
        for (int i = pick(0, 60); i > 0; --i) {
            TrendPoint made = point(any(), any(), pick(0, 9) == 0 ? pick(1, 8) : 0);
            if (pick(0, 5) == 0) {
                made.span = TrendSpan{any(), any(), pick(0, 2) == 0, pick(0, 2) == 0};
            }
            state.points.append(made);
        }
        for (int i = pick(0, 5); i > 0; --i) {
            TrendLine line{.name = QString(pick(0, 30), u'm'), .stroke = static_cast<TrendStroke>(pick(0, 5))};
            for (int j = pick(0, 8); j > 0; --j) {
                line.points.append({any(), any()});
            }
            line.stepped = pick(0, 1) > 0;
            state.lines.append(line);
            state.events.append({.x = any(), .text = QString(pick(0, 60), u'w')});
            state.brackets.append({any(), any(), QString(pick(0, 60), u'w')});
            state.stretches.append({.from = any(), .to = any(), .text = QString(pick(0, 20), u'w')});
            state.notes.append({any(), any(), QString(pick(0, 40), u'w')});
            state.bands.append({.limits = {{any(), any(), any()}, {any(), any(), any()}}});
            state.bars.append({.text = QStringLiteral("7"), .x = any(), .value = any(), .upTo = any()});
            state.x.ticks.append({any(), QString(pick(1, 12), u'x')});
            state.y.ticks.append({any(), QString(pick(1, 12), u'y')});
        }
        const TrendLayout layout = laid(state, pick(300, 1400), pick(0, 1) > 0 ? pick(1, 900) : 0);
        requireInside(layout);
        requireApart(layout);
    }
}
