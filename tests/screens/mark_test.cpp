#include "kiosk/screens/parts/mark_paint.hpp"
#include "tests/screens/kiosk_view.hpp"

#include <QImage>
#include <QPainter>
#include <catch2/catch.hpp>

using namespace holdfast::kiosk::screens;
using holdfast::tests::ensureApplication;

namespace {

QImage marked(MarkKind kind, int height, const InkPalette& palette = lightPalette()) {
    ensureApplication();
    QImage image(height * 5 / 4, height, QImage::Format_RGB32);
    image.fill(palette.paper);
    QPainter painter(&image);
    paintVerdictMark(painter, kind, QRectF(image.rect()), {.palette = palette});
    return image;
}

/// The share of a film row (in film units from the top of the box) that is not paper, inside x 2 to 18.
double inked(const QImage& image, double unitY) {
    const double u = image.height() / 16.0;
    const int y = static_cast<int>(unitY * u);
    int count = 0;
    int all = 0;
    for (int x = static_cast<int>(3 * u); x < static_cast<int>(17 * u); ++x, ++all) {
        count += image.pixelColor(x, y) != lightPalette().paper ? 1 : 0;
    }
    return static_cast<double>(count) / all;
}

} // namespace

TEST_CASE("the film's filling tells the verdicts apart without colour", "[screens][mark]") {
    // look.md, "Verdict mark": cured filled 5 to 13, under-cured filled 9 to 13, not proven empty, blank nothing.
    for (const int height : {32, 48, 80, 128}) {
        INFO(height);
        REQUIRE(inked(marked(MarkKind::Cured, height), 6.5) == 1.0);
        REQUIRE(inked(marked(MarkKind::Cured, height), 11.0) == 1.0);
        REQUIRE(inked(marked(MarkKind::UnderCured, height), 7.5) < 0.7);
        REQUIRE(inked(marked(MarkKind::UnderCured, height), 11.0) == 1.0);
        REQUIRE(inked(marked(MarkKind::Overheated, height), 3.0) > 0.05);
        REQUIRE(inked(marked(MarkKind::Overheated, height), 11.0) == 1.0);
        REQUIRE(inked(marked(MarkKind::NotProven, height), 9.0) == 0.0);
        REQUIRE(inked(marked(MarkKind::Blank, height), 9.0) == 0.0);
        for (const MarkKind kind : {MarkKind::Cured, MarkKind::UnderCured, MarkKind::NotProven, MarkKind::Blank}) {
            REQUIRE(inked(marked(kind, height), 2.0) == 0.0);  // nothing but a buckle rises over the line
            REQUIRE(inked(marked(kind, height), 13.4) == 0.0); // paper between film and cloth
        }
    }
}

TEST_CASE("at 16 px the mark lies on whole pixels", "[screens][mark]") {
    const InkPalette palette = lightPalette();
    for (const MarkKind kind : {MarkKind::Cured, MarkKind::UnderCured, MarkKind::NotProven, MarkKind::Blank}) {
        const QImage image = marked(kind, 16);
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                const QColor colour = image.pixelColor(x, y);
                INFO(x << "," << y);
                REQUIRE((colour == palette.paper || colour == palette.ink || colour == palette.of(kind)));
            }
        }
    }
}

TEST_CASE("no two kinds draw the same picture, even in grey", "[screens][mark]") {
    const std::array kinds = {MarkKind::Blank,      MarkKind::Cured,     MarkKind::UnderCured,
                              MarkKind::Overheated, MarkKind::NotProven, MarkKind::Closed};
    for (const int height : {16, 48, 128}) {
        for (std::size_t i = 0; i < kinds.size(); ++i) {
            for (std::size_t j = i + 1; j < kinds.size(); ++j) {
                const QImage a = marked(kinds[i], height).convertToFormat(QImage::Format_Mono, Qt::ThresholdDither);
                const QImage b = marked(kinds[j], height).convertToFormat(QImage::Format_Mono, Qt::ThresholdDither);
                REQUIRE(a != b);
            }
        }
    }
}
