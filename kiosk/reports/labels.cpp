#include "kiosk/reports/labels.hpp"

#include "kiosk/reports/page/sheet.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

namespace holdfast::kiosk::reports {

namespace {

constexpr std::size_t kPartsNamed = 6;

QString optionalDate(const std::optional<analytics::Date>& date) {
    return date ? dateText(*date) : QString();
}

QString optionalNumber(const std::optional<int>& number) {
    return number ? QString::number(*number) : QString();
}

QString momentText(const drivers::WallTime& wall) {
    return dateText(drivers::localDay(wall)) + QStringLiteral(" ") +
           cleaned(wording::clockText(wall.millisecondsSinceEpoch, wall.utcOffsetMinutes));
}

void addParts(Sheet& sheet, const BucketLabel& label, const wording::Speech& speech) {
    const auto named = std::min(label.parts.size(), kPartsNamed);
    for (std::size_t i = 0; i < named; ++i) {
        const auto& part = label.parts[i];
        const auto share = cleaned(wording::numberText(100 * part.share, 0)) + QString(QChar::Nbsp) + u'%';
        sheet.facts.push_back({i == 0 ? said(speech, "reports.mixed-of") : QStringLiteral(" "),
                               share + u' ' + tidy(part.name), Worth::extra, 1});
    }
    if (named < label.parts.size()) {
        sheet.facts.push_back(
            {QStringLiteral(" "),
             said(speech, "reports.more-parts", {{"count", std::to_string(label.parts.size() - named)}}), Worth::extra,
             1});
    }
}

QString piecesText(const BinLabel& label, const wording::Speech& speech) {
    if (!label.firstPiece && !label.lastPiece) {
        return {};
    }
    return said(speech,
                !label.lastPiece    ? "reports.pieces-from"
                : !label.firstPiece ? "reports.pieces-to"
                                    : "reports.pieces-range",
                {{"first", label.firstPiece ? std::to_string(*label.firstPiece) : std::string{}},
                 {"last", label.lastPiece ? std::to_string(*label.lastPiece) : std::string{}}});
}

} // namespace

Reported bucketLabel(const BucketLabel& label, const ReportStyle& style) {
    const auto& speech = style.speech;
    Sheet sheet;
    sheet.kind = said(speech, "reports.bucket");
    sheet.number = QString::number(label.number);
    sheet.marks = marksOf(style);
    sheet.title = tidy(label.name);
    if (!label.colour.empty()) {
        sheet.underTitle += tidy(label.colour);
    }
    sheet.facts = {{said(speech, "reports.batch"), tidy(label.batch), Worth::useful, 1},
                   {said(speech, "reports.use-by"), optionalDate(label.expiry), Worth::important, 1}};
    if (label.potLifeUntil) {
        sheet.facts.push_back(
            {said(speech, "reports.pot-life-until"), momentText(*label.potLifeUntil), Worth::important, 2});
    }
    addParts(sheet, label, speech);
    if (label.cure) {
        sheet.window =
            SheetWindow{said(speech, "reports.cures-at"), cureText(*label.cure, label.hold, speech), {}, false};
    }
    sheet.caution = said(speech, "reports.caution-ink");
    return reportOf("bucket-" + std::to_string(label.number), sheet, drivers::TicketKind::bucket, label.number, style);
}

Reported binLabel(const BinLabel& label, const ReportStyle& style) {
    const auto& speech = style.speech;
    Sheet sheet;
    sheet.kind = said(speech, "reports.bin");
    sheet.number = QString::number(label.number);
    sheet.marks = marksOf(style);
    sheet.marks.prepend(said(speech, "reports.do-not-ship"));
    sheet.title =
        said(speech, "reports.run-and-lot", {{"run", std::to_string(label.run)}, {"lot", std::to_string(label.lot)}});
    if (!label.runTitle.empty()) {
        sheet.underTitle += tidy(label.runTitle);
    }
    sheet.facts = {{said(speech, "reports.pieces"), piecesText(label, speech), Worth::important, 1},
                   {said(speech, "reports.count"), optionalNumber(label.count), Worth::important, 1},
                   {said(speech, "reports.date"), dateText(label.date), Worth::useful, 1}};
    if (!label.reason.empty()) {
        sheet.window = SheetWindow{said(speech, "reports.why"), {}, {tidy(label.reason)}, true};
    }
    sheet.room = said(speech, "reports.room-for-notes");
    return reportOf("bin-" + std::to_string(label.number), sheet, drivers::TicketKind::bin, label.number, style);
}

Reported printLabel(const PrintLabel& label, const ReportStyle& style) {
    const auto& speech = style.speech;
    if (label.number < 0 || label.number >= records::kMostPrints) {
        return tl::unexpected(ReportFault{ReportCause::numberUnusable, {}, {}, std::to_string(label.number)});
    }
    Sheet sheet;
    sheet.kind = said(speech, label.retained ? "reports.print.retained" : "reports.print");
    sheet.number = QString::fromStdString(codeTextOf(drivers::TicketKind::print, label.number).substr(1));
    sheet.marks = marksOf(style);
    sheet.title =
        said(speech, "reports.run-and-lot", {{"run", std::to_string(label.run)}, {"lot", std::to_string(label.lot)}});
    if (!label.runTitle.empty()) {
        sheet.underTitle += tidy(label.runTitle);
    }
    sheet.facts = {{said(speech, "reports.print.piece"), optionalNumber(label.piece), Worth::important, 1},
                   {said(speech, "reports.print.position"),
                    label.position ? cleaned(wording::word(*label.position, speech)) : QString(), Worth::important, 1},
                   {said(speech, "reports.print.printed"), dateText(label.printedOn), Worth::useful, 1}};
    if (label.retained) {
        sheet.facts.push_back({said(speech, "reports.print.shelf"), tidy(label.retained->shelf), Worth::important, 2});
        sheet.facts.push_back(
            {said(speech, "reports.print.until"), optionalDate(label.retained->until), Worth::important, 1});
    }
    sheet.caution = said(speech, "reports.print.pen");
    return reportOf("print-" + sheet.number.toStdString(), sheet, drivers::TicketKind::print, label.number, style);
}

Reported personBadge(const PersonBadge& badge, const ReportStyle& style) {
    Sheet sheet;
    sheet.kind = badge.shop.empty() ? said(style.speech, "reports.badge") : tidy(badge.shop);
    sheet.marks = marksOf(style);
    sheet.title = tidy(badge.name);
    if (!badge.role.empty()) {
        sheet.underTitle += tidy(badge.role);
    }
    return reportOf("badge-" + std::to_string(badge.number), sheet, drivers::TicketKind::person, badge.number, style);
}

Reported instrumentLabel(const InstrumentLabel& label, const ReportStyle& style) {
    Sheet sheet;
    sheet.kind = label.kind.empty() ? said(style.speech, "reports.instrument") : tidy(label.kind);
    sheet.number = QString::number(label.number);
    sheet.marks = marksOf(style);
    sheet.title = tidy(label.name);
    sheet.facts = {
        {said(style.speech, "reports.certificate-due"), optionalDate(label.certificateDue), Worth::important, 1}};
    return reportOf("instrument-" + std::to_string(label.number), sheet, drivers::TicketKind::instrument, label.number,
                    style);
}

} // namespace holdfast::kiosk::reports
