#include "kiosk/screens/charts/trend_draft.hpp"

namespace holdfast::kiosk::screens {

QStringList wrappedWords(const QString& text, const QFontMetricsF& metrics, double room) {
    QStringList lines;
    for (const QString& paragraph : text.split(u'\n')) {
        QString line;
        for (const QString& word : paragraph.split(u' ', Qt::SkipEmptyParts)) {
            const QString longer = line.isEmpty() ? word : line + u' ' + word;
            if (line.isEmpty() || metrics.horizontalAdvance(longer) <= room) {
                line = longer;
                continue;
            }
            lines.append(line);
            line = word;
        }
        if (!line.isEmpty()) {
            lines.append(line);
        }
    }
    for (QString& line : lines) {
        line = metrics.elidedText(line, Qt::ElideRight, room);
    }
    return lines;
}

double putLines(const TrendDraft& draft, const QString& text, const TrendWord& like, const QRectF& room) {
    double y = room.top();
    const double line = draft.px(like.lead ? kTrendLead : kTrendLine);
    const QFontMetricsF metrics = draft.metrics(like.bold, like.lead);
    for (const QString& each : wrappedWords(text, metrics, room.width())) {
        TrendWord word = like;
        word.text = each;
        const double wide = std::min(room.width(), metrics.horizontalAdvance(each) + 2.0);
        word.box = QRectF(room.left(), y, wide, line);
        draft.layout.words.append(word);
        y += line;
    }
    return y;
}

} // namespace holdfast::kiosk::screens
