#include "tests/kiosk/reports/support/placed.hpp"

#include "kiosk/reports/page/paint.hpp"

#include <catch2/catch.hpp>

namespace holdfast::reports_test {

using namespace kiosk::reports;

namespace {

constexpr double kHalfHair = 0.1; // mm

bool apart(const Box& a, const Box& b) {
    return a.right() <= b.x + kHalfHair || b.right() <= a.x + kHalfHair || a.bottom() <= b.y + kHalfHair ||
           b.bottom() <= a.y + kHalfHair;
}

bool inside(const Box& box, const PlacedPage& page, double margin) {
    return box.x >= margin - 1e-6 && box.y >= margin - 1e-6 && box.right() <= page.width - margin + 1e-6 &&
           box.bottom() <= page.height - margin + 1e-6 && box.width >= 0 && box.height >= 0;
}

Box boxOf(const QPainterPath& path) {
    const auto bounds = path.boundingRect();
    return {bounds.x(), bounds.y(), bounds.width(), bounds.height()};
}

} // namespace

std::vector<std::string> hostileTexts() {
    std::string control;
    for (char sign = 0; sign < 32; ++sign) {
        control += sign;
        control += 'x';
    }
    std::string words;
    while (words.size() < 10'000) {
        words += "word ";
    }
    return {std::string(10'000, 'W'),
            words,
            control,
            "\"'`<&>{}$(rm)\\%s{title}",
            "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xD8\xB3\xD9\x84\xD8\xA7\xD9\x85 \xE2\x80\xAE right-to-left \xE2\x81\xA6",
            "",
            "   ",
            "\xFF\xFE\xC3 broken \xED\xA0\x80",
            std::string("\xF0\x9F\x8E\xBD") + std::string(4000, '.'),
            std::string("e") + [] {
                std::string marks;
                for (int i = 0; i < 300; ++i) {
                    marks += "\xCC\x81";
                }
                return marks;
            }()};
}

void checkPage(const PlacedPage& page, double margin) {
    for (std::size_t i = 0; i < page.texts.size(); ++i) {
        const auto& text = page.texts[i];
        INFO(text.text.toStdString());
        CHECK(inside(text.box, page, margin));
        CHECK(text.size > 2.0); // under 6 pt nobody reads it
        for (std::size_t j = i + 1; j < page.texts.size(); ++j) {
            INFO(page.texts[j].text.toStdString());
            CHECK(apart(text.box, page.texts[j].box));
        }
        for (const auto& code : page.codes) {
            CHECK(apart(text.box, code.box));
        }
    }
    for (const auto& box : page.ink) {
        CHECK(inside(box, page, margin));
        for (const auto& code : page.codes) {
            CHECK(apart(box, code.box));
        }
    }
    for (const auto& code : page.codes) {
        CHECK(inside(code.box, page, margin));
    }
    for (const auto& shape : page.shapes) {
        CHECK(inside(boxOf(shape.outline), page, margin));
    }
    for (const auto& picture : page.pictures) {
        CHECK(inside(picture.box, page, margin));
        for (const auto& text : page.texts) {
            INFO(text.text.toStdString());
            CHECK(apart(text.box, picture.box));
        }
    }
}

void checkReport(const Reported& report, const ReportStyle& style) {
    if (!report) {
        CHECK(report.error().cause == ReportCause::paperTooSmall);
        CHECK(style.paper.height < 60); // only the card may be too small
        return;
    }
    REQUIRE_FALSE(report->pages.empty());
    for (const auto& page : report->pages) {
        checkPage(page, style.paper.margin);
    }
    CHECK(pdfOf(report->pages, report->name));
}

std::vector<ReportStyle> everyStyle() {
    std::vector<ReportStyle> styles;
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        for (const auto& paper : kPapers) {
            ReportStyle style;
            style.paper = paper;
            style.code = symbology;
            style.demo = true;
            styles.push_back(style);
        }
    }
    return styles;
}

QString placedText(const Reported& report) {
    REQUIRE(report);
    QString out;
    for (const auto& page : report->pages) {
        for (const auto& text : page.texts) {
            out += text.text + u' ';
        }
    }
    return out.replace(QChar::Nbsp, QChar::Space);
}

} // namespace holdfast::reports_test
