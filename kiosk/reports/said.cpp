#include "kiosk/reports/said.hpp"

#include "kiosk/reports/page/typesetting.hpp"

namespace holdfast::kiosk::reports {

QString said(const wording::Speech& speech, std::string_view key, const wording::Arguments& arguments) {
    return cleaned(speech.text(key, arguments));
}

QString cleaned(const std::string& sentence) {
    return tidy(sentence);
}

QString dateText(analytics::Date date) {
    const std::chrono::year_month_day day{date};
    return QStringLiteral("%1-%2-%3")
        .arg(static_cast<int>(day.year()), 4, 10, QLatin1Char('0'))
        .arg(static_cast<unsigned>(day.month()), 2, 10, QLatin1Char('0'))
        .arg(static_cast<unsigned>(day.day()), 2, 10, QLatin1Char('0'));
}

QString cureText(analytics::Temperature cure, analytics::Duration hold, const wording::Speech& speech) {
    const auto figure = speech.figures.temperature(cure);
    return cleaned(hold.count() > 0 ? figure + ", " + wording::durationText(hold) : figure);
}

QStringList marksOf(const ReportStyle& style) {
    return style.demo ? QStringList{said(style.speech, "reports.demo")} : QStringList{};
}

Reported reportOf(std::string_view name, Sheet sheet, drivers::TicketKind kind, std::int64_t number,
                  const ReportStyle& style) {
    if (number < 0) {
        return tl::unexpected(ReportFault{ReportCause::numberUnusable, {}, {}, std::to_string(number)});
    }
    sheet.code = codeTextOf(kind, number);
    auto page = layOut(sheet, style);
    if (!page) {
        return tl::unexpected(page.error());
    }
    return Report{speakingName(name), {*std::move(page)}};
}

} // namespace holdfast::kiosk::reports
