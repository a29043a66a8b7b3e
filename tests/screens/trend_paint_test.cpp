#include "kiosk/screens/charts/chart_files.hpp"
#include "kiosk/screens/charts/trend_paint.hpp"
#include "tests/screens/designed/invented_charts.hpp"
#include "tests/screens/kiosk_view.hpp"

#include <QFile>
#include <QImage>
#include <QPainter>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <catch2/catch.hpp>

#include <map>
#include <string>

using namespace holdfast::kiosk::screens;
using holdfast::tests::ensureApplication;

namespace {

std::map<std::string, TrendChartState> kinds() {
    using namespace invented;
    return {{"margin", marginChart()}, {"strips", stripChart()}, {"failures", failureChart()},
            {"shared", sharedChart()}, {"since", sinceChart()},  {"survival", survivalChart()},
            {"ladder", ladderChart()}, {"drift", driftChart()},  {"briefing", briefingChart()},
            {"dense", denseChart()},   {"empty", emptyChart()},  {"long", longChart()}};
}

struct Painted {
    TrendLayout layout;
    QImage image;
    QPointF origin{40.0, 40.0};

    [[nodiscard]] QColor at(double x, double y) const {
        return image.pixelColor(static_cast<int>(x + origin.x()), static_cast<int>(y + origin.y()));
    }
};

/// On a larger paper, so that what is drawn beyond the chart is seen.
Painted painted(const TrendChartState& state, const InkPalette& palette, double width = 808.0) {
    ensureApplication();
    const ChartStyle style{.palette = palette};
    Painted made{.layout = layoutTrendChart(state, style, {width, 0.0}), .image = {}};
    made.image = QImage(static_cast<int>(width) + 80, static_cast<int>(made.layout.height) + 80, QImage::Format_RGB32);
    made.image.fill(palette.paper);
    QPainter painter(&made.image);
    painter.translate(made.origin);
    paintTrendChart(painter, made.layout, style);
    return made;
}

/// Texts of an SVG in the order they stand there, blanks taken out: a line may be set in pieces.
QString lettersOf(const QByteArray& svg) {
    QXmlStreamReader xml(svg);
    QString letters;
    bool inText = false;
    while (!xml.atEnd()) {
        xml.readNext();
        if (xml.isStartElement()) {
            inText = xml.name() == QStringLiteral("text");
        } else if (xml.isEndElement()) {
            inText = false;
        } else if (xml.isCharacters() && inText) {
            letters += xml.text();
        }
    }
    INFO(xml.errorString().toStdString());
    REQUIRE(!xml.hasError());
    return letters.remove(u' ');
}

} // namespace

TEST_CASE("a film stands at its value in its verdict's colour, in both themes", "[screens][trends][paint]") {
    for (const InkPalette& palette : {lightPalette(), darkPalette()}) {
        const Painted chart = painted(invented::marginChart(), palette);
        int seen = 0;
        for (const TrendMark& mark : chart.layout.marks) {
            if (mark.mark == MarkKind::Cured && mark.rule == 0) {
                seen += chart.at(mark.at.x() - 4.0, mark.at.y()) == palette.cured ? 1 : 0;
            }
            if (mark.mark == MarkKind::UnderCured) { // its lower half is full
                REQUIRE(chart.at(mark.at.x(), mark.at.y() + 2.0) == palette.underCured);
            }
        }
        REQUIRE(seen >= 25); // of 33; the last ones may lie under their neighbours
    }
}

TEST_CASE("nothing is drawn outside of a chart", "[screens][trends][paint]") {
    for (const auto& [name, state] : kinds()) {
        INFO(name);
        const Painted chart = painted(state, lightPalette());
        // A letter may reach a pixel out of its own advance.
        const QRect inside =
            QRectF(chart.origin, QSizeF(chart.layout.width, chart.layout.height)).toAlignedRect().adjusted(-1, 0, 1, 0);
        int outside = 0;
        QPoint where;
        for (int y = 0; y < chart.image.height(); ++y) {
            for (int x = 0; x < chart.image.width(); ++x) {
                if (!inside.contains(x, y) && chart.image.pixelColor(x, y) != lightPalette().paper) {
                    ++outside;
                    where = {x, y};
                }
            }
        }
        INFO("at " << where.x() << ", " << where.y());
        REQUIRE(outside == 0);
    }
}

TEST_CASE("only a film has a colour", "[screens][trends][paint]") {
    for (const InkPalette& palette : {lightPalette(), darkPalette(), blackPalette()}) {
        for (auto [name, state] : kinds()) {
            INFO(name);
            for (TrendPoint& point : state.points) {
                point.mark = MarkKind::Blank;
            }
            const Painted chart = painted(state, palette);
            int coloured = 0;
            for (int y = 0; y < chart.image.height(); ++y) {
                for (int x = 0; x < chart.image.width(); ++x) {
                    // Papers and inks have 46 at the most.
                    coloured += chart.image.pixelColor(x, y).hsvSaturation() < 90 ? 0 : 1;
                }
            }
            REQUIRE(coloured == 0);
        }
    }
}

TEST_CASE("limits, proof, bars and brackets are seen where they stand", "[screens][trends][paint]") {
    const InkPalette palette = lightPalette();
    const Painted margin = painted(invented::marginChart(), palette);
    const double y = *margin.layout.proofY;
    REQUIRE(margin.at(margin.layout.plot.left() + 3.0, y) == palette.ink);
    REQUIRE(margin.at(margin.layout.plot.left() + 3.0, y + 8.0) == palette.tint); // what is not proven is inked over
    REQUIRE(margin.at(margin.layout.plot.left() + 3.0, y - 8.0) == palette.paper);
    const QPolygonF bracket = margin.layout.brackets.first();
    REQUIRE(margin.at(bracket[1].x() + 20.0, bracket[1].y()).lightness() < 80);
    const Painted failures = painted(invented::failureChart(), palette);
    for (const TrendBlock& bar : failures.layout.bars) {
        const QColor middle = failures.at(bar.box.center().x(), bar.box.bottom() - 5.0);
        REQUIRE((middle == palette.ink) == bar.strong);
    }
}

TEST_CASE("a boxed point is told from its neighbours", "[screens][trends][paint]") {
    TrendChartState state = invented::marginChart();
    const Painted with = painted(state, lightPalette());
    for (TrendPoint& point : state.points) {
        point.rule = 0;
    }
    const Painted without = painted(state, lightPalette());
    for (const TrendMark& mark : with.layout.marks) {
        if (mark.rule == 1) {
            const QPointF edge = mark.at + QPointF(-14.0, 0.0);
            REQUIRE(with.at(edge.x(), edge.y()).lightness() < 80);
            REQUIRE(without.at(edge.x(), edge.y()).lightness() > 180);
        }
    }
}

TEST_CASE("an SVG parses, says every word of the chart and needs no font of ours", "[screens][trends][files]") {
    ensureApplication();
    for (const auto& [name, state] : kinds()) {
        INFO(name);
        const auto svg = svgOf(state, {.size = {1000, 640}});
        REQUIRE(svg.has_value());
        const QString letters = lettersOf(*svg);
        const ChartStyle style{.palette = lightPalette()};
        const TrendLayout layout = layoutTrendChart(state, style, {1000.0 - 48.0, 640.0 - 48.0});
        for (const TrendWord& word : layout.words + layout.numbers) {
            INFO(word.text.toStdString());
            REQUIRE(letters.contains(QString(word.text).remove(u' ')));
        }
        REQUIRE(svg->contains("B612, DejaVu Sans Condensed, Arial, sans-serif"));
        REQUIRE(svg->contains("<title>"));
        REQUIRE(!svg->contains("nan"));
        REQUIRE(!svg->contains("<image"));
    }
}

TEST_CASE("an SVG of a million points stays small", "[screens][trends][files]") {
    ensureApplication();
    TrendChartState state;
    state.points.resize(1'000'000);
    for (int i = 0; i < state.points.size(); ++i) {
        state.points[i].x = i;
        state.points[i].y = (i * 7919) % 1000;
    }
    const auto svg = svgOf(state, {});
    REQUIRE(svg.has_value());
    REQUIRE(svg->size() < 2'000'000);
}

TEST_CASE("a PNG has the size asked for and carries its words", "[screens][trends][files]") {
    ensureApplication();
    const auto png = pngOf(invented::marginChart(), {.size = {1200, 800}});
    REQUIRE(png.has_value());
    const QImage read = QImage::fromData(*png, "PNG");
    REQUIRE(read.size() == QSize(1200, 800));
    REQUIRE(read.text(QStringLiteral("Title")) == invented::marginChart().title);
    REQUIRE(read.pixelColor(2, 2) == lightPalette().paper);
    const QImage high = QImage::fromData(*pngOf(invented::failureChart(), {.size = {900, 0}}), "PNG");
    REQUIRE(high.height() > 200); // as high as it needs
    REQUIRE(high.height() < 500);
}

TEST_CASE("sizes that no picture has are refused", "[screens][trends][files]") {
    ensureApplication();
    const TrendChartState state = invented::marginChart();
    for (const QSize& size : {QSize{0, 0}, QSize{-5, 700}, QSize{20000, 700}, QSize{16000, 16000}, QSize{900, -1}}) {
        INFO(size.width() << "x" << size.height());
        REQUIRE(pngOf(state, {.size = size}).error() == ChartFault::sizeRefused);
        REQUIRE(svgOf(state, {.size = size}).error() == ChartFault::sizeRefused);
    }
}

TEST_CASE("a picture that cannot be kept leaves what stood there", "[screens][trends][files]") {
    ensureApplication();
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("chart.svg"));
    REQUIRE(saveSvg(invented::driftChart(), {}, path).has_value());
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    const QByteArray first = file.readAll();
    REQUIRE(first == *svgOf(invented::driftChart(), {}));
    REQUIRE(savePng(invented::driftChart(), {}, folder.filePath(QStringLiteral("no/such/folder.png"))).error() ==
            ChartFault::notWritten);
    REQUIRE(saveSvg(invented::driftChart(), {.size = {1, 1}}, path).error() == ChartFault::sizeRefused);
    file.seek(0);
    REQUIRE(file.readAll() == first);
}

TEST_CASE("every kind of chart becomes a picture in both themes", "[screens][trends][files]") {
    ensureApplication();
    const QTemporaryDir own;
    // Set to look at them.
    const QString folder = qEnvironmentVariable("HOLDFAST_CHARTS", own.path());
    for (const auto& [name, state] : kinds()) {
        for (const bool dark : {false, true}) {
            const ChartStyle style{.palette = dark ? darkPalette() : lightPalette()};
            const QString path = folder + u'/' + QString::fromStdString(name) + (dark ? "-dark" : "-light");
            REQUIRE(savePng(state, {.size = {856, 0}, .style = style}, path + ".png").has_value());
            REQUIRE(saveSvg(state, {.size = {856, 0}, .style = style}, path + ".svg").has_value());
        }
    }
}
