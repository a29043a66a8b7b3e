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

QString lotStateText(records::LotState state, const wording::Speech& speech) {
    using records::LotState;
    switch (state) {
    case LotState::settingUp:
        return said(speech, "lot.setting-up");
    case LotState::open:
        return said(speech, "lot.open");
    case LotState::cleared:
        return said(speech, "lot.cleared");
    case LotState::unproven:
        return said(speech, "lot.unproven");
    case LotState::onHold:
        return said(speech, "lot.on-hold");
    case LotState::released:
        return said(speech, "lot.released");
    case LotState::reRun:
        return said(speech, "lot.re-run");
    case LotState::scrapped:
        return said(speech, "lot.scrapped");
    }
    return {};
}

Document documentOf(std::string_view kind, const std::string& shop, const drivers::WallTime& printed,
                    const ReportStyle& style) {
    const auto& speech = style.speech;
    Document document;
    document.kind = said(speech, kind);
    document.mark = marksOf(style).join(QString());
    document.caution = said(speech, "reports.caution-record");
    const auto when = dateText(drivers::localDay(printed)).toStdString() + " " +
                      wording::clockText(printed.millisecondsSinceEpoch, printed.utcOffsetMinutes);
    document.from = said(speech, "reports.printed", {{"shop", tidy(shop).toStdString()}, {"when", when}});
    document.pageOf = [](int page, int pages, const wording::Speech& how) {
        return said(how, "reports.page-of", {{"page", std::to_string(page)}, {"pages", std::to_string(pages)}});
    };
    return document;
}

Reported reportOf(std::string_view name, const Document& document, const ReportStyle& style) {
    auto pages = layOut(document, style);
    if (!pages) {
        return tl::unexpected(pages.error());
    }
    return Report{speakingName(name), *std::move(pages)};
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
