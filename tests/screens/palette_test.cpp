#include "kiosk/screens/parts/palette.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>

using namespace holdfast::kiosk::screens;

namespace {

using Linear = std::array<double, 3>;

// IEC 61966-2-1 (sRGB).
double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

Linear linearOf(const QColor& colour) {
    return {linear(colour.red() / 255.0), linear(colour.green() / 255.0), linear(colour.blue() / 255.0)};
}

double luminance(const Linear& c) {
    return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
}

// WCAG 2.1, 1.4.3: (L1 + 0.05) / (L2 + 0.05).
double contrast(const QColor& a, const QColor& b) {
    const double la = luminance(linearOf(a));
    const double lb = luminance(linearOf(b));
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

// CIELAB of linear sRGB, white D65 (CIE 15).
std::array<double, 3> lab(const Linear& c) {
    const double x = (0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2]) / 0.9505;
    const double y = luminance(c);
    const double z = (0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2]) / 1.089;
    const auto f = [](double t) { return t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0; };
    return {116.0 * f(y) - 16.0, 500.0 * (f(x) - f(y)), 200.0 * (f(y) - f(z))};
}

double difference(const Linear& a, const Linear& b) {
    const auto p = lab(a);
    const auto q = lab(b);
    return std::sqrt(std::pow(p[0] - q[0], 2) + std::pow(p[1] - q[1], 2) + std::pow(p[2] - q[2], 2));
}

using Matrix = std::array<std::array<double, 3>, 3>;
// Machado, Oliveira, Fernandes 2009, severity 1.0 (from memory; the rows sum to 1, which the test checks).
constexpr Matrix kProtan = {
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeutan = {
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritan = {
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

Linear seen(const Matrix& matrix, const Linear& c) {
    Linear result{};
    for (std::size_t i = 0; i < 3; ++i) {
        result[i] = std::clamp(matrix[i][0] * c[0] + matrix[i][1] * c[1] + matrix[i][2] * c[2], 0.0, 1.0);
    }
    return result;
}

} // namespace

TEST_CASE("text on paper, clear and tint has a contrast of 7 to 1", "[screens][palette]") {
    for (const InkPalette& p : {lightPalette(), darkPalette()}) {
        for (const QColor& ground : {p.paper, p.clear, p.tint}) {
            REQUIRE(contrast(p.ink, ground) >= 7.0);
            REQUIRE(contrast(p.ink2, ground) >= 7.0);
        }
        REQUIRE(contrast(p.paper, p.ink) >= 7.0); // text in an ink fill
        for (const QColor& verdict : {p.cured, p.underCured, p.overheated}) {
            REQUIRE(contrast(verdict, p.paper) >= 7.0);
            REQUIRE(contrast(verdict, p.clear) >= 7.0);
        }
    }
}

TEST_CASE("the contrast figures are those look.md measured", "[screens][palette]") {
    // look.md, "Measured": contrast light/dark on paper.
    REQUIRE(contrast(lightPalette().ink, lightPalette().paper) == Approx(15.9).margin(0.05));
    REQUIRE(contrast(darkPalette().ink, darkPalette().paper) == Approx(15.4).margin(0.05));
    REQUIRE(contrast(lightPalette().cured, lightPalette().paper) == Approx(7.04).margin(0.005));
    REQUIRE(contrast(darkPalette().overheated, darkPalette().paper) == Approx(8.5).margin(0.05));
}

TEST_CASE("the verdict colours stay apart in the three common colour-vision deficiencies", "[screens][palette]") {
    for (const Matrix& matrix : {kProtan, kDeutan, kTritan}) {
        for (const auto& row : matrix) {
            REQUIRE(row[0] + row[1] + row[2] == Approx(1.0).margin(1e-4));
        }
        for (const InkPalette& p : {lightPalette(), darkPalette()}) {
            const std::array<QColor, 4> colours = {p.cured, p.underCured, p.overheated, p.ink};
            for (std::size_t i = 0; i < colours.size(); ++i) {
                for (std::size_t j = i + 1; j < colours.size(); ++j) {
                    INFO(colours[i].name().toStdString() << " " << colours[j].name().toStdString());
                    // A difference of 2.3 is just noticeable (Mahy et al. 1994); four times that is plain.
                    REQUIRE(difference(seen(matrix, linearOf(colours[i])), seen(matrix, linearOf(colours[j]))) > 9.2);
                }
            }
        }
    }
}
