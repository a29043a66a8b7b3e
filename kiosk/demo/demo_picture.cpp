#include "kiosk/demo/demo_picture.hpp"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QPainterPath>

#include <cassert>
#include <cstdint>
#include <map>

namespace holdfast::kiosk::demo {
namespace {

constexpr int kWidth = 320;
constexpr int kHeight = 240;
constexpr int kQuality = 80;
constexpr int kWornOff = 10;

QColor colourOf(const std::string& name) {
    static const std::map<std::string, QColor> kColours{
        {"white", {240, 240, 236}},    {"black", {34, 34, 36}},    {"red", {172, 34, 40}},    {"navy", {32, 42, 78}},
        {"natural", {226, 214, 188}},  {"yellow", {236, 202, 60}}, {"grey", {150, 150, 150}}, {"green", {40, 112, 66}},
        {"royal blue", {38, 76, 160}}, {"orange", {222, 116, 40}}, {"brown", {104, 70, 48}},  {"teal", {32, 120, 122}},
        {"sand", {206, 188, 152}},     {"gold", {192, 150, 62}},   {"blue", {56, 96, 168}},   {"olive", {104, 106, 52}},
    };
    const auto found = kColours.find(name);
    return found == kColours.end() ? QColor{128, 128, 128} : found->second;
}

QColor between(const QColor& from, const QColor& to, double share) {
    const auto mixed = [&](int one, int other) { return static_cast<int>(one + (other - one) * share); };
    return {mixed(from.red(), to.red()), mixed(from.green(), to.green()), mixed(from.blue(), to.blue())};
}

/// A seven, as a team wears it.
QPainterPath motif() {
    QPainterPath seven;
    seven.addPolygon(QPolygonF{{{90, 40}, {235, 40}, {235, 78}, {165, 205}, {118, 205}, {186, 82}, {90, 82}}});
    seven.closeSubpath();
    return seven;
}

/// Small whole numbers that are the same everywhere.
class Grain final {
public:
    explicit Grain(int seed) : m_state{static_cast<std::uint32_t>(seed) * 2'654'435'761U + 1U} {}
    int below(int end) {
        m_state = m_state * 1'664'525U + 1'013'904'223U;
        return static_cast<int>((m_state >> 8U) % static_cast<std::uint32_t>(end));
    }

private:
    std::uint32_t m_state;
};

void crack(QPainter& painter, const QColor& cloth, int wear, int number) {
    Grain chance{number};
    painter.setClipPath(motif());
    for (int line = 0; line < wear * 3; ++line) {
        QPolygonF way;
        double x = 90 + chance.below(150);
        double y = 36 + chance.below(160);
        for (int step = 0; step < 4; ++step) {
            way << QPointF{x, y};
            x += chance.below(17) - 8;
            y += 6 + chance.below(10);
        }
        painter.setPen(QPen{cloth, 1.0 + chance.below(wear + 1) * 0.4});
        painter.drawPolyline(way);
    }
}

} // namespace

ledger::Bytes pictureOfPrint(const PictureShape& shape) {
    const auto cloth = colourOf(shape.cloth);
    QImage image{kWidth, kHeight, QImage::Format_RGB888};
    image.fill(cloth);
    {
        QPainter painter{&image};
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen{between(cloth, Qt::black, 0.06), 1.0}); // the knit
        for (int x = 0; x < kWidth; x += 4) {
            painter.drawLine(x, 0, x, kHeight);
        }
        painter.fillPath(motif(), between(colourOf(shape.ink), cloth, 0.6 * shape.wear / kWornOff));
        crack(painter, cloth, shape.wear, shape.number);
    }
    QByteArray jpeg;
    QBuffer out{&jpeg};
    const bool saved = image.save(&out, "jpeg", kQuality);
    assert(saved);
    (void)saved;
    return {jpeg.begin(), jpeg.end()};
}

} // namespace holdfast::kiosk::demo
