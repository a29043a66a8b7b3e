#include "kiosk/reports/page/typesetting.hpp"

#include "kiosk/reports/page/paint.hpp"

#include <QFontMetricsF>
#include <QTextLayout>
#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kLineHeight = 1.34;
constexpr qsizetype kMostLineSigns = 400;
constexpr qsizetype kMostBytes = 4096;

bool turnsDirection(QChar sign) {
    const auto code = sign.unicode();
    return code == 0x200E || code == 0x200F || code == 0x061C || (code >= 0x202A && code <= 0x202E) ||
           (code >= 0x2066 && code <= 0x2069) || code == 0xFEFF;
}

bool blank(QChar sign) {
    return sign.category() == QChar::Other_Control || sign == QChar::LineSeparator ||
           sign == QChar::ParagraphSeparator || (sign.isSpace() && sign != QChar::Nbsp);
}

} // namespace

double lineHeight(const Type& type) noexcept {
    return kLineHeight * type.size;
}

double advance(const QString& line, const Type& type) {
    return QFontMetricsF(fontOf(type.size, type.bold)).horizontalAdvance(line) / kUnitsPerMillimetre;
}

QString tidy(std::string_view utf8) {
    const auto bytes = std::min(static_cast<qsizetype>(utf8.size()), kMostBytes);
    QString out;
    const auto text = QString::fromUtf8(utf8.data(), bytes);
    for (const QChar sign : text) {
        if (out.size() >= kMostLineSigns) {
            break;
        }
        if (blank(sign)) {
            out += out.isEmpty() || out.back() == QChar::Space ? QString() : QString(QChar::Space);
        } else if (!turnsDirection(sign)) {
            out += sign;
        }
    }
    const bool ends = out.size() < kMostLineSigns && bytes == static_cast<qsizetype>(utf8.size());
    if (!out.isEmpty() && (out.back().isHighSurrogate() || out.back() == QChar::Space)) {
        out.chop(1);
    }
    return ends || out.isEmpty() ? out : out + QChar(0x2026);
}

QString fitted(const QString& line, double width, const Type& type) {
    return QFontMetricsF(fontOf(type.size, type.bold)).elidedText(line, Qt::ElideRight, width * kUnitsPerMillimetre);
}

QStringList wrapped(const QString& text, double width, const Type& type, int most) {
    QStringList lines;
    if (text.isEmpty() || most < 1) {
        return lines;
    }
    QTextLayout layout(text, fontOf(type.size, type.bold));
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    layout.beginLayout();
    while (true) {
        auto line = layout.createLine();
        if (!line.isValid()) {
            break;
        }
        line.setLineWidth(width * kUnitsPerMillimetre);
        if (lines.size() + 1 == most) {
            lines += fitted(text.mid(line.textStart()), width, type);
            break;
        }
        lines += text.mid(line.textStart(), line.textLength()).trimmed();
    }
    layout.endLayout();
    return lines;
}

double sizeToFit(const QString& line, double width, const Type& type, double least) {
    const double runs = advance(line, type);
    return runs <= width ? type.size : std::max(least, 0.99 * type.size * width / runs);
}

void put(PlacedPage& page, double x, double y, const QString& line, const Type& type, bool onInk) {
    if (!line.isEmpty()) {
        page.texts.push_back({{x, y, advance(line, type), lineHeight(type)}, line, type.size, type.bold, onInk});
    }
}

void putRight(PlacedPage& page, double right, double y, const QString& line, const Type& type, bool onInk) {
    put(page, right - advance(line, type), y, line, type, onInk);
}

void putFrame(PlacedPage& page, const Box& box, double thickness) {
    page.ink.push_back({box.x, box.y, box.width, thickness});
    page.ink.push_back({box.x, box.bottom() - thickness, box.width, thickness});
    page.ink.push_back({box.x, box.y, thickness, box.height});
    page.ink.push_back({box.right() - thickness, box.y, thickness, box.height});
}

} // namespace holdfast::kiosk::reports
