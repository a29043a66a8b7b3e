#include "kiosk/screens/parts/chart_paint.hpp"
#include "tests/screens/kiosk_view.hpp"

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <catch2/catch.hpp>

#include <random>

using namespace holdfast::kiosk::screens;
using holdfast::tests::ensureApplication;

namespace {

ChartStyle style(double unit = 1.0) {
    ensureApplication();
    return {.palette = lightPalette(), .unit = unit};
}

GradeSeries series(const char* name, PointShape shape, std::initializer_list<double> grades) {
    GradeSeries made{.name = QString::fromUtf8(name), .shape = shape};
    for (const double grade : grades) {
        made.points.append({static_cast<int>(made.points.size()), grade});
    }
    return made;
}

/// The picture of look: tests.png.
GradeChartState drawnExample() {
    GradeChartState state;
    state.series = {series("colour", PointShape::Disc, {5, 5, 4.5, 4.5, 4}),
                    series("stain", PointShape::Square, {5, 4.5, 4, 4, 3.5})};
    state.limit = 3.5;
    state.limitWord = QStringLiteral("below 3.5 the lot goes on hold");
    state.dueCycle = 5;
    return state;
}

GradeChartState anyChart(std::mt19937& random) {
    const auto pick = [&](int least, int most) { return std::uniform_int_distribution<int>{least, most}(random); };
    GradeChartState state;
    const int count = pick(0, 6);
    for (int i = 0; i < count; ++i) {
        GradeSeries made{.name = QString(pick(3, 16), u'm'), .shape = static_cast<PointShape>(i % 4)};
        const int points = pick(0, 50);
        for (int j = 0; j < points; ++j) {
            made.points.append({pick(-3, 70), pick(-2, 14) / 2.0});
        }
        state.series.append(made);
    }
    if (pick(0, 3) > 0) {
        state.limit = pick(2, 10) / 2.0;
        state.limitWord = QStringLiteral("below it the lot goes on hold");
    }
    state.lastCycle = pick(0, 60);
    if (pick(0, 1) > 0) {
        state.dueCycle = pick(0, 55);
        state.dueWord = QStringLiteral("due");
    }
    return state;
}

void requireApart(const QList<ChartWord>& words) {
    for (qsizetype i = 0; i < words.size(); ++i) {
        for (qsizetype j = 0; j < i; ++j) {
            INFO(words[i].text.toStdString() << " over " << words[j].text.toStdString());
            REQUIRE(!words[i].box.adjusted(0, 1, 0, -1).intersects(words[j].box));
        }
    }
}

PieceBarState bar(int pieces, int made, QList<PieceStretch> stretches) {
    PieceBarState state;
    state.pieces = pieces;
    state.made = made;
    state.stretches = std::move(stretches);
    return state;
}

template <typename Paint>
QImage painted(const QSize& size, const InkPalette& palette, Paint paint) {
    ensureApplication();
    QImage image(size, QImage::Format_RGB32);
    image.fill(palette.paper);
    QPainter painter(&image);
    paint(painter);
    return image;
}

double inkShare(CrackKind kind) {
    const QImage image = painted({160, 96}, lightPalette(),
                                 [&](QPainter& painter) { paintCrack(painter, kind, QRectF(0, 0, 160, 96), style()); });
    int dark = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            dark += image.pixelColor(x, y).lightness() < 100 ? 1 : 0;
        }
    }
    return static_cast<double>(dark) / (image.width() * image.height());
}

} // namespace

TEST_CASE("the grades are ruled as drawn: 5 on top, a half step half as far", "[screens][charts]") {
    const GradeChartLayout layout = layoutGradeChart(drawnExample(), style(), 664.0);
    REQUIRE(layout.grades.size() == 5);
    REQUIRE(layout.grades.first().text == "5");
    REQUIRE(layout.y(5) < layout.y(4.5));
    REQUIRE(layout.y(4.5) == Approx((layout.y(5) + layout.y(4)) / 2.0));
    REQUIRE(layout.limitY.value() == Approx(layout.y(3.5)));
    REQUIRE(layout.gridY.size() == 2); // 5 and 4: tests.png rules no grade under the limit
    // tests.png: "new" at x 664, cycle 5 at 1193, plot from 624 to 1256.
    REQUIRE(layout.axis.first == Approx(40.0));
    REQUIRE(layout.axis.step == Approx((1193.0 - 664.0) / 5.0).margin(1.0));
    QStringList under;
    for (const ChartWord& word : layout.cycles) {
        under.append(word.text);
    }
    under.sort();
    REQUIRE(under == QStringList{"1", "2", "3", "4", "5", "new"});
}

TEST_CASE("names stand at their lines' ends, apart, and off the limit", "[screens][charts]") {
    const GradeChartLayout layout = layoutGradeChart(drawnExample(), style(), 664.0);
    const QRectF colour = layout.lines[0].name.box;
    const QRectF stain = layout.lines[1].name.box;
    REQUIRE(colour.bottom() <= *layout.limitY); // tests.png: colour over the line, stain (at 3.5) under it
    REQUIRE(stain.top() >= *layout.limitY);
    REQUIRE(colour.left() > layout.lines[0].points.last().x());
}

TEST_CASE("whatever is graded, the words of the chart stand apart and inside", "[screens][charts]") {
    std::mt19937 random{20391}; // fixed seed
    for (int round = 0; round < 300; ++round) {
        const GradeChartState state = anyChart(random);
        for (const double width : {560.0, 664.0, 752.0, 1232.0}) {
            INFO("round " << round << ", width " << width);
            const GradeChartLayout layout = layoutGradeChart(state, style(), width);
            REQUIRE(layout.lines.size() <= 4);
            requireApart(layout.cycles);
            QList<ChartWord> names;
            for (const GradeLine& line : layout.lines) {
                names.append(line.name);
                REQUIRE(line.name.box.right() <= width + 1.0);
                REQUIRE(line.name.box.top() >= -1.0);
                REQUIRE(line.name.box.bottom() <= layout.plot.bottom() + 1.0);
                for (const QPointF& point : line.points) {
                    REQUIRE(layout.plot.contains(point));
                }
            }
            requireApart(names);
            REQUIRE(layout.due.box.right() <= width + 1.0);
            REQUIRE(layout.height >= layout.plot.bottom());
            const QRectF limitWord = layout.limitWord.box;
            REQUIRE(limitWord.right() <= width + 1.0);
            for (const GradeLine& line : layout.lines) {
                REQUIRE(!limitWord.intersects(line.name.box));
                for (const QPointF& point : line.points) {
                    REQUIRE(!limitWord.contains(point));
                }
            }
        }
    }
}

TEST_CASE("what is no grade is not drawn", "[screens][charts]") {
    GradeChartState state;
    state.series = {series("colour", PointShape::Disc, {5.5, 0.5, 4.25, -1.0, 1e300})};
    REQUIRE(layoutGradeChart(state, style(), 664.0).lines.isEmpty());
    state.series[0].points = {{2, 4.0}, {0, 5.0}, {2, 3.5}};
    const GradeChartLayout layout = layoutGradeChart(state, style(), 664.0);
    REQUIRE(layout.lines.first().points.size() == 2); // of two at a cycle the later one counts
    REQUIRE(layout.lines.first().points.last().y() == Approx(layout.y(3.5)));
}

TEST_CASE("fifty cycles are thinned to a 5 or 10 row and keep the due one", "[screens][charts]") {
    GradeChartState state = drawnExample();
    state.lastCycle = 50;
    state.dueCycle = 44;
    const GradeChartLayout layout = layoutGradeChart(state, style(), 664.0);
    REQUIRE(layout.cycles.size() >= 6);
    REQUIRE(layout.cycles.size() <= 12);
    REQUIRE(std::any_of(layout.cycles.begin(), layout.cycles.end(),
                        [](const ChartWord& word) { return word.bold && word.text == "44"; }));
}

TEST_CASE("the limit's words are not written over a line that leaves room", "[screens][charts]") {
    GradeChartState state = drawnExample();
    state.series[1] = series("stain", PointShape::Square, {3, 3, 3, 3, 3}); // runs where the words usually stand
    const GradeChartLayout layout = layoutGradeChart(state, style(), 664.0);
    for (const QPointF& point : layout.lines[1].points) {
        REQUIRE(!layout.limitWord.box.contains(point));
    }
    REQUIRE(layout.limitWord.box.top() > layout.y(3)); // by hand: only under the line is it free
}

TEST_CASE("a grade is ink: no verdict's colour is in the chart", "[screens][charts]") {
    for (const InkPalette& palette : {lightPalette(), darkPalette()}) {
        const QImage image = painted({664, 300}, palette, [&](QPainter& painter) {
            paintGradeChart(painter, drawnExample(), {.palette = palette}, 664.0);
        });
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                REQUIRE(image.pixelColor(x, y).hsvSaturation() < 90); // papers and inks have 46 at the most
            }
        }
    }
}

TEST_CASE("worse cracks leave less film", "[screens][charts]") {
    const double whole = inkShare(CrackKind::Whole);
    const double hairline = inkShare(CrackKind::Hairline);
    const double breaks = inkShare(CrackKind::Breaks);
    const double powders = inkShare(CrackKind::Powders);
    REQUIRE(whole > hairline + 0.02);
    REQUIRE(hairline > breaks + 0.05);
    REQUIRE(breaks > powders + 0.05);
    REQUIRE(powders > 0.1);
}

TEST_CASE("a bracket stands over its pieces and says their numbers", "[screens][charts]") {
    PieceBarState state = bar(100, 80, {{1, 25, PieceKind::Proven, {}}, {26, 50, PieceKind::Bracket, "26–50"}});
    state.reads = {{25, MarkKind::Cured, "25"}, {50, MarkKind::UnderCured, "50"}};
    const PieceBarLayout layout = layoutPieceBar(state, style(), 600.0);
    REQUIRE(layout.parts[1].box.left() == Approx(150.0)); // by hand: piece 26 of 100 begins at a quarter of 600
    REQUIRE(layout.parts[1].box.right() == Approx(300.0));
    REQUIRE(layout.made.right() == Approx(480.0));
    REQUIRE(!layout.parts[1].under);
    REQUIRE(layout.marks[1].x == Approx(297.0)); // the middle of piece 50
}

TEST_CASE("a bracket of one piece among thousands is seen and named", "[screens][charts]") {
    const PieceBarLayout layout =
        layoutPieceBar(bar(5000, 5000, {{5000, 5000, PieceKind::Bracket, "5000"}}), style(), 600.0);
    REQUIRE(layout.parts.first().box.width() >= 4.0);
    REQUIRE(layout.parts.first().box.right() <= 600.0);
    REQUIRE(layout.parts.first().under);
    REQUIRE(layout.parts.first().word.box.right() <= 600.0);
    REQUIRE(layout.height >= layout.parts.first().word.box.bottom());
}

TEST_CASE("whatever the run, the figures under its bar stand apart", "[screens][charts]") {
    std::mt19937 random{20413}; // fixed seed
    const auto pick = [&](int least, int most) { return std::uniform_int_distribution<int>{least, most}(random); };
    for (int round = 0; round < 300; ++round) {
        PieceBarState state = bar(pick(-2, 4000), pick(-5, 5000), {});
        for (int i = pick(0, 9); i > 0; --i) {
            const int first = pick(-10, 4500);
            state.stretches.append({first, first + pick(-3, 900), static_cast<PieceKind>(pick(0, 3)),
                                    QStringLiteral("%1–%2").arg(first).arg(first + 9)});
        }
        for (int i = pick(0, 30); i > 0; --i) {
            state.reads.append({pick(-5, 5000), MarkKind::Cured, QString::number(i)});
        }
        state.firstText = QStringLiteral("1");
        state.lastText = QStringLiteral("4000");
        state.madeText = QStringLiteral("2000 made");
        INFO("round " << round);
        const PieceBarLayout layout = layoutPieceBar(state, style(), 632.0);
        QList<ChartWord> words = layout.figures;
        for (const BarPart& part : layout.parts) {
            REQUIRE(part.box.left() >= layout.bar.left() - 0.01);
            REQUIRE(part.box.right() <= layout.bar.right() + 0.01);
            if (part.kind == PieceKind::Bracket) {
                REQUIRE(!part.word.text.isEmpty()); // the pieces to pull are always said
            }
            if (part.under) {
                words.append(part.word);
            }
        }
        requireApart(words);
        for (const ChartWord& word : words) {
            REQUIRE(word.box.bottom() <= layout.height);
            REQUIRE(word.box.left() >= -0.01);
            REQUIRE(word.box.right() <= 632.01);
        }
        REQUIRE(layout.marks.size() == state.reads.size());
    }
}
