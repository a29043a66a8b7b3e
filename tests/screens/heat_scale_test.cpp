#include "kiosk/screens/parts/heat_scale_paint.hpp"
#include "kiosk/screens/parts/trace_columns.hpp"
#include "tests/screens/designed/gallery_parts.hpp"
#include "tests/screens/kiosk_view.hpp"

#include <QElapsedTimer>
#include <QImage>
#include <QPainter>
#include <catch2/catch.hpp>

#include <limits>
#include <random>

using namespace holdfast::kiosk::screens;
using holdfast::tests::ensureApplication;

namespace {

const QRectF kPlot(56.0, 0.0, 464.0, 414.0);
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

HeatScaleMapping mapped(const HeatScaleState& state, HeatScaleForm form = HeatScaleForm::Full) {
    return mapHeatScale(state, kPlot, form);
}

QImage painted(const HeatScaleState& state, const QSize& size = {520, 452}, HeatScaleForm form = HeatScaleForm::Full) {
    ensureApplication();
    QImage image(size, QImage::Format_RGB32);
    image.fill(lightPalette().paper);
    QPainter painter(&image);
    paintHeatScale(painter, state, {.palette = lightPalette(), .form = form}, QRectF(image.rect()));
    return image;
}

HeatScaleLayout laidOut(const HeatScaleState& state, const QSizeF& size = {520, 452}) {
    ensureApplication();
    return layoutHeatScale(state, {.palette = lightPalette()}, QRectF(QPointF(0, 0), size));
}

} // namespace

TEST_CASE("the scale never turns back: hotter is higher", "[screens][heatscale]") {
    for (const HeatScaleForm form : {HeatScaleForm::Full, HeatScaleForm::Home, HeatScaleForm::List}) {
        const HeatScaleMapping map = mapped(invented::windowScale(), form);
        double before = map.y(-1000.0);
        for (double t = -100.0; t < 500.0; t += 0.25) {
            const double y = map.y(t);
            REQUIRE(y <= before);
            REQUIRE(y >= kPlot.top());
            REQUIRE(y <= kPlot.bottom());
            before = y;
        }
        REQUIRE(map.y(286.0) < map.y(285.0)); // and strictly so around the limits
    }
}

TEST_CASE("the knee lies 8 °F under gel and takes the bottom fifth", "[screens][heatscale]") {
    const HeatScaleMapping map = mapped(invented::windowScale()); // gel 255 °F
    REQUIRE(map.kneeShown == Approx(247.0));                      // look.md, "Heat scale": gel − 8 °F
    REQUIRE(map.y(247.0) == Approx(kPlot.bottom() - 0.2 * kPlot.height()));
    REQUIRE(map.y(246.999) == Approx(map.y(247.001)).margin(0.01)); // no step at the knee
    REQUIRE(map.topShown == Approx(308.0));                         // 8 °F over the highest line
    REQUIRE(map.y(70.0) == kPlot.bottom());
}

TEST_CASE("without a gel the knee lies 40 °F under cure, in a list 18 °F", "[screens][heatscale]") {
    HeatScaleState state = invented::windowScale();
    state.gel.reset();
    REQUIRE(mapped(state).kneeShown == Approx(245.0));
    REQUIRE(mapped(state, HeatScaleForm::List).kneeShown == Approx(267.0));
    REQUIRE(mapped(state, HeatScaleForm::List).kneeY == Approx(kPlot.bottom() - 0.1 * kPlot.height()));
}

TEST_CASE("°C and °F give the same picture", "[screens][heatscale]") {
    HeatScaleState celsius = invented::windowScale();
    const auto c = [](double f) { return (f - 32.0) * 5.0 / 9.0; };
    celsius.celsius = true;
    celsius.cures[0].atShown = c(285);
    celsius.bleedCeiling->atShown = c(300);
    celsius.gel->atShown = c(255);
    celsius.room.atShown = c(70);
    const HeatScaleMapping f = mapped(invented::windowScale());
    const HeatScaleMapping m = mapped(celsius);
    for (double t = 60.0; t < 320.0; t += 7.0) {
        REQUIRE(m.y(c(t)) == Approx(f.y(t)).margin(1e-6));
    }
}

TEST_CASE("the scale stays finite for empty, upside-down and absurd states", "[screens][heatscale]") {
    HeatScaleState hot = invented::windowScale();
    hot.room.atShown = 400.0; // a room hotter than the gel
    HeatScaleState absurd = invented::windowScale();
    absurd.trace = {{0, 70}, {1, 1e12}, {2, kNan}, {3, -1e12}};
    absurd.expectedSeconds = kNan;
    for (const HeatScaleState& state : {HeatScaleState{}, hot, absurd}) {
        const HeatScaleMapping map = mapped(state);
        for (const double t : {-1e300, 0.0, 285.0, 1e300, kNan, std::numeric_limits<double>::infinity()}) {
            REQUIRE(std::isfinite(map.y(t)));
            REQUIRE(std::isfinite(map.x(t)));
        }
        REQUIRE(!painted(state).isNull());
    }
    // One faulty sample does not press the window flat: 100 °F over the lines is the most.
    REQUIRE(mapped(absurd).topShown <= 300.0 + 100.0 + 8.0 + 1e-9);
}

TEST_CASE("no sample draws no line, one sample a dot", "[screens][heatscale]") {
    const HeatScaleMapping map = mapped(invented::windowScale());
    REQUIRE(traceLines({}, map).isEmpty());
    REQUIRE(!lastDrawn({}).has_value());
    const QList<QLineF> one = traceLines({{10.0, 200.0}}, map);
    REQUIRE(one.size() == 1);
    REQUIRE(one[0].p1() == one[0].p2());
}

TEST_CASE("a gap, a break and a sample that is no number part the line", "[screens][heatscale]") {
    const HeatScaleMapping map = mapped(invented::windowScale());
    const QList<TracePoint> broken = {{0, 100},   {10, 150}, {20, 200, true}, {30, 250},
                                      {40, kNan}, {50, 260}, {60, 240}};
    for (const QLineF& line : traceLines(broken, map)) {
        REQUIRE_FALSE((line.x1() < map.x(15) && line.x2() > map.x(15)));
        REQUIRE_FALSE((line.x1() < map.x(40) && line.x2() > map.x(40)));
    }
    REQUIRE(lastDrawn(broken)->seconds == 60.0);
    REQUIRE(lastDrawn({{0, 100}, {10, kNan}})->seconds == 0.0);
}

TEST_CASE("a hundred thousand samples keep every column's lowest and highest, in few lines", "[screens][heatscale]") {
    HeatScaleState state = invented::windowScale();
    std::mt19937 random(7);
    std::uniform_real_distribution<double> noise(-2.0, 2.0);
    double highest = 0.0;
    for (int i = 0; i < 100'000; ++i) {
        const double t = 250.0 + 40.0 * std::sin(i / 100'000.0 * 3.14) + noise(random);
        highest = std::max(highest, t);
        state.trace.append({i * 85.0 / 100'000.0, t});
    }
    const HeatScaleMapping map = mapped(state);
    const QList<QLineF> lines = traceLines(state.trace, map);
    REQUIRE(lines.size() <= 4 * (464 + 1));
    double top = kPlot.bottom();
    for (const QLineF& line : lines) {
        top = std::min({top, line.y1(), line.y2()});
    }
    REQUIRE(top == Approx(map.y(highest)).margin(1e-9));
}

TEST_CASE("labels overlap neither each other nor the finished trace", "[screens][heatscale]") {
    for (const double peak : {262.0, 277.0, 286.0, 291.0, 297.0, 306.0}) {
        const HeatScaleState state = invented::judgedScale(peak, MarkKind::Cured, "291 °F", "17 s", 41.6, 58.9);
        for (const QSizeF size : {QSizeF(520, 452), QSizeF(752, 460), QSizeF(380, 330)}) {
            INFO(peak << " at " << size.width());
            const HeatScaleLayout layout = laidOut(state, size);
            const QList<ScaleLabel> all = layout.labels + layout.reading;
            REQUIRE(layout.reading.size() >= 1);
            for (qsizetype i = 0; i < all.size(); ++i) {
                REQUIRE(layout.mapping.plot.adjusted(-1, -1, 1, 1).contains(all[i].box));
                for (qsizetype j = i + 1; j < all.size(); ++j) {
                    REQUIRE(!all[i].box.intersects(all[j].box));
                }
                for (const TracePoint& point : state.trace) {
                    REQUIRE(!all[i].box.contains(layout.mapping.at(point)));
                }
            }
        }
    }
}

TEST_CASE("only the window is clear paper", "[screens][heatscale]") {
    const HeatScaleState state = invented::windowScale();
    const QImage image = painted(state);
    const HeatScaleMapping map = laidOut(state).mapping;
    const auto at = [&](double shown) { return image.pixelColor(500, static_cast<int>(map.y(shown))); };
    const auto clearShare = [&](double low, double high) {
        int clear = 0, all = 0;
        for (int y = static_cast<int>(map.y(high)) + 3; y < static_cast<int>(map.y(low)) - 3; ++y) {
            for (int x = 300; x < 360; ++x, ++all) {
                clear += image.pixelColor(x, y) == lightPalette().clear ? 1 : 0;
            }
        }
        return static_cast<double>(clear) / all;
    };
    REQUIRE(at(275.0) == lightPalette().tint);
    REQUIRE(clearShare(290.5, 291.8) == 1.0); // between the dots, under the aim
    REQUIRE(clearShare(286, 289) < 0.95);     // dotted
    REQUIRE(clearShare(260, 284) == 0.0);
    REQUIRE(clearShare(301, 307) == 0.0);
}

TEST_CASE("a closed window has no clear paper between the limit and the cure that crossed it", "[screens][heatscale]") {
    HeatScaleState state = invented::windowScale();
    state.closed = true;
    state.aim.reset();
    state.cures = {{.atShown = 320, .axisText = "320", .culprit = true}, {.atShown = 285, .axisText = "285"}};
    state.bleedCeiling = CeilingLine{.atShown = 300, .axisText = "300", .culprit = true};
    const QImage image = painted(state);
    const HeatScaleLayout layout = laidOut(state);
    REQUIRE(!layout.timeAxis);
    int clear = 0;
    for (int y = static_cast<int>(layout.mapping.y(318)); y < static_cast<int>(layout.mapping.y(302)); ++y) {
        clear += image.pixelColor(400, y) == lightPalette().clear ? 1 : 0;
    }
    REQUIRE(clear == 0);
    REQUIRE(image.pixelColor(400, static_cast<int>(layout.mapping.y(292))) == lightPalette().clear);
}

TEST_CASE("an empty state and every form can be painted at any size", "[screens][heatscale]") {
    for (const HeatScaleForm form : {HeatScaleForm::Full, HeatScaleForm::Home, HeatScaleForm::List}) {
        for (const QSize size : {QSize(1, 1), QSize(20, 10), QSize(112, 56), QSize(1400, 900)}) {
            REQUIRE(!painted(HeatScaleState{}, size, form).isNull());
            REQUIRE(!painted(invented::judgedScale(291, MarkKind::Cured, "291 °F", "17 s", 41.6, 58.9), size, form)
                         .isNull());
        }
    }
}

TEST_CASE("strips and guns may be open at either end", "[screens][heatscale]") {
    HeatScaleState state = invented::windowScale();
    state.timed = false;
    for (const StripInterval& strip :
         {StripInterval{283.6, 301.4, "283.6–301.4"}, StripInterval{std::nullopt, 284.0, "at most 284"},
          StripInterval{296.0, std::nullopt, "at least 296"}, StripInterval{}}) {
        state.strip = strip;
        const QImage image = painted(state, {400, 280});
        REQUIRE(image != painted(invented::windowScale(), {400, 280}));
        for (const ScaleLabel& label : laidOut(state, {400, 280}).reading) {
            REQUIRE(label.box.right() <= 400.5);
        }
    }
}
