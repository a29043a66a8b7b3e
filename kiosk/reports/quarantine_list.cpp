#include "kiosk/reports/quarantine_list.hpp"

#include "kiosk/reports/page/document.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

QString rangeText(const QuarantineBin& bin, const wording::Speech& speech) {
    if (!bin.pieces) {
        return said(speech, "holds.pieces.whole");
    }
    const auto first = std::to_string(bin.pieces->first);
    return bin.pieces->last
               ? said(speech, "reports.pieces-range", {{"first", first}, {"last", std::to_string(*bin.pieces->last)}})
               : said(speech, "reports.pieces-from", {{"first", first}});
}

QString whyText(const QuarantineBin& bin, const wording::Speech& speech) {
    auto text = cleaned(wording::sentence(bin.cause, speech));
    if (bin.shipped) {
        text += u' ' + said(speech, "reports.quarantine.shipped");
    }
    return text;
}

std::vector<DocCell> rowOf(const QuarantineBin& bin, const QuarantineList& list, const wording::Speech& speech) {
    const bool coded = bin.bin > 0;
    auto run =
        said(speech, "reports.run-and-lot", {{"run", std::to_string(bin.run)}, {"lot", std::to_string(bin.lot)}});
    if (bin.childrensWear) {
        run += QStringLiteral(" · ") + said(speech, "reports.childrens-wear");
    }
    if (!bin.runTitle.empty()) {
        run += QStringLiteral(" · ") + tidy(bin.runTitle);
    }
    DocCell code;
    if (coded) {
        code.code = codeTextOf(drivers::TicketKind::bin, bin.bin);
    }
    DocCell which{run};
    which.lines = 4;
    DocCell tick;
    tick.box = true;
    return {code,
            DocCell{coded ? QString::number(bin.bin) : said(speech, "holds.shelf.bin-none"), true},
            which,
            DocCell{rangeText(bin, speech)},
            DocCell{bin.count ? QString::number(*bin.count) : QStringLiteral("?"), true},
            DocCell{whyText(bin, speech)},
            DocCell{dateText(drivers::localDay({bin.since, list.printed.utcOffsetMinutes}))},
            tick,
            DocCell{}};
}

DocTable tableOf(const QuarantineList& list, const ReportStyle& style) {
    const auto& speech = style.speech;
    const double bars = style.code == Symbology::qr ? 20 : 44;
    DocTable table;
    table.columns = {{said(speech, "reports.quarantine.code"), bars}, {said(speech, "reports.bin"), 10},
                     {said(speech, "reports.quarantine.run"), 30},    {said(speech, "reports.pieces"), 14},
                     {said(speech, "reports.count"), 12, true},       {said(speech, "reports.why"), 32},
                     {said(speech, "reports.quarantine.since"), 19},  {said(speech, "reports.quarantine.there"), 9},
                     {said(speech, "reports.quarantine.found"), 14}};
    table.lines = 7;
    for (const auto& bin : list.bins) {
        table.rows.push_back(rowOf(bin, list, speech));
    }
    table.empty = said(speech, "holds.shelf.none");
    return table;
}

/// "12 bins, 240 pieces; of 1 bin nobody knows the count".
QString sumText(const QuarantineList& list, const wording::Speech& speech) {
    std::int64_t pieces = 0;
    std::int64_t unknown = 0;
    for (const auto& bin : list.bins) {
        pieces += bin.count.value_or(0);
        unknown += bin.count ? 0 : 1;
    }
    auto text = said(speech, "reports.quarantine.sum",
                     {{"count", std::to_string(list.bins.size())}, {"pieces", std::to_string(pieces)}});
    if (unknown > 0) {
        text += u' ' + said(speech, "reports.quarantine.unknown", {{"count", std::to_string(unknown)}});
    }
    return text;
}

} // namespace

std::vector<QuarantineBin> quarantineBins(const std::vector<records::HoldRow>& open) {
    std::vector<QuarantineBin> out;
    for (const auto& hold : open) {
        out.push_back({hold.placed.bin, hold.runNumber, hold.runTitle, hold.lotNumber, hold.placed.pieces,
                       hold.placed.count, hold.placed.cause, hold.at, hold.shipped, hold.childrensWear});
    }
    return out;
}

Reported quarantineList(const QuarantineList& list, const ReportStyle& style) {
    const auto& speech = style.speech;
    auto document = documentOf("reports.quarantine.title", list.shop, list.printed, style);
    document.titles = {said(speech, "reports.quarantine.title")};
    document.lines = {sumText(list, speech), said(speech, "reports.quarantine.lead")};
    document.parts = {tableOf(list, style), DocBlanks{{said(speech, "reports.quarantine.counted-by"),
                                                       said(speech, "reports.quarantine.counted-on")}}};
    return reportOf("quarantine-" + dateText(drivers::localDay(list.printed)).toStdString(), document, style);
}

} // namespace holdfast::kiosk::reports
