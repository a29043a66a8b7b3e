#include "kiosk/reports/recall_list.hpp"

#include "kiosk/reports/csv.hpp"
#include "kiosk/reports/page/document.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

namespace holdfast::kiosk::reports {

namespace {

std::string digits(std::int64_t number) {
    return std::to_string(number);
}

QString titleOf(const RecallSubject& subject, const wording::Speech& speech) {
    switch (subject.reach) {
    case RecallReach::batch:
        return said(speech, "reports.recall.of-batch", {{"batch", tidy(subject.batch).toStdString()}});
    case RecallReach::bucket:
        return said(speech, "reports.recall.of-bucket", {{"bucket", tidy(subject.batch).toStdString()}});
    case RecallReach::run:
        return said(speech, "reports.recall.of-run", {{"run", digits(subject.run)}});
    case RecallReach::complaint:
        return said(speech, "reports.recall.of-complaint", {{"complaint", digits(subject.run)}});
    case RecallReach::lot:
        break;
    }
    return said(speech, "reports.recall.of-lot", {{"run", digits(subject.run)}, {"lot", digits(subject.lot)}});
}

std::string nameOf(const RecallSubject& subject) {
    switch (subject.reach) {
    case RecallReach::batch:
        return "recall-batch-" + subject.batch;
    case RecallReach::bucket:
        return "recall-bucket-" + subject.batch;
    case RecallReach::run:
        return "recall-run-" + digits(subject.run);
    case RecallReach::complaint:
        return "recall-complaint-" + digits(subject.run);
    case RecallReach::lot:
        break;
    }
    return "recall-run-" + digits(subject.run) + "-lot-" + digits(subject.lot);
}

QString dayOf(const RecallLine& line, const wording::Speech& speech) {
    return line.day ? dateText(*line.day) : said(speech, "holds.recall.no-day");
}

constexpr qsizetype kMarksInARow = 12;
constexpr qsizetype kLongestMark = 40; ///< signs: then a row with all its marks is never higher than a page

/// A row's worth of marks each: no carton may be lost because a cell is full.
QStringList cartonsOf(const RecallLine& line, const wording::Speech& speech) {
    if (line.cartons.empty()) {
        return {said(speech, "holds.recall.no-cartons")};
    }
    QStringList rows;
    QStringList marks;
    for (const auto& carton : line.cartons) {
        const auto mark = tidy(carton);
        marks += mark.size() > kLongestMark ? mark.left(kLongestMark) + QChar(0x2026) : mark;
        if (marks.size() == kMarksInARow) {
            rows += marks.join(QStringLiteral(", "));
            marks.clear();
        }
    }
    return marks.isEmpty() ? rows : rows + QStringList{marks.join(QStringLiteral(", "))};
}

QString customerName(const RecallCustomer& customer, const wording::Speech& speech) {
    const auto name = tidy(customer.name);
    return name.isEmpty() ? said(speech, "holds.recall.no-customer") : name;
}

DocTable customerTable(const RecallCustomer& customer, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.recall.cartons"), 70},    {said(speech, "reports.pieces"), 18, true},
                     {said(speech, "reports.recall.shipped-on"), 26}, {said(speech, "reports.recall.run"), 40},
                     {said(speech, "reports.recall.state"), 26},      {said(speech, "reports.recall.called"), 18}};
    table.lines = 40;
    for (const auto& line : customer.lines) {
        const auto cartons = cartonsOf(line, speech);
        for (qsizetype i = 0; i < cartons.size(); ++i) {
            DocCell called;
            called.box = true;
            const bool first = i == 0; // a move's pieces are counted once
            table.rows.push_back(
                {DocCell{cartons[i]}, DocCell{first ? QString::number(line.pieces) : QString(), true},
                 DocCell{dayOf(line, speech)},
                 DocCell{said(speech, "reports.run-and-lot", {{"run", digits(line.run)}, {"lot", digits(line.lot)}})},
                 DocCell{lotStateText(line.state, speech)}, called});
        }
    }
    return table;
}

DocTable hereTable(const RecallList& list, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.recall.run"), 40},
                     {said(speech, "reports.title"), 60},
                     {said(speech, "reports.pieces"), 26, true},
                     {said(speech, "reports.recall.state"), 30},
                     {said(speech, "reports.recall.what-went"), 42}};
    for (const auto& here : list.here) {
        table.rows.push_back(
            {DocCell{said(speech, "reports.run-and-lot", {{"run", digits(here.run)}, {"lot", digits(here.lot)}})},
             DocCell{tidy(here.runTitle)},
             DocCell{here.pieces ? QString::number(*here.pieces) : said(speech, "reports.recall.not-counted"), true},
             DocCell{lotStateText(here.state, speech)},
             DocCell{said(speech, here.nothingShipped ? "reports.recall.nothing-went" : "reports.recall.some-went")}});
    }
    table.empty = said(speech, "reports.recall.none-here");
    return table;
}

std::vector<DocPart> partsOf(const RecallList& list, const wording::Speech& speech) {
    std::vector<DocPart> parts{DocHeading{said(speech, "reports.recall.out")}};
    if (list.customers.empty()) {
        parts.push_back(DocText{said(speech, "holds.recall.nothing")});
    }
    for (const auto& customer : list.customers) {
        parts.push_back(DocText{said(speech, "reports.recall.customer-sum",
                                     {{"customer", customerName(customer, speech).toStdString()},
                                      {"pieces", digits(customer.pieces)},
                                      {"cartons", digits(customer.cartons)}}),
                                Weight::strong, 3, true});
        parts.push_back(customerTable(customer, speech));
    }
    parts.push_back(DocHeading{said(speech, "reports.recall.here")});
    parts.push_back(hereTable(list, speech));
    parts.push_back(DocHeading{said(speech, "reports.recall.cautions")});
    for (const auto* key :
         {"reports.recall.caution-balance", "reports.recall.caution-not-in-book", "reports.recall.caution-rules"}) {
        parts.push_back(DocText{said(speech, key)});
    }
    parts.push_back(DocBlanks{{said(speech, "reports.recall.called-by"), said(speech, "reports.recall.called-on")}});
    return parts;
}

} // namespace

Reported recallList(const RecallList& list, const ReportStyle& style) {
    const auto& speech = style.speech;
    auto document = documentOf("reports.recall.title", list.shop, list.printed, style);
    document.titles = {titleOf(list.subject, speech)};
    document.lines = {QString::fromStdString(
        wording::recallSumText(list.pieces, list.cartons, static_cast<int>(list.customers.size()), list.lots, speech))};
    document.parts = partsOf(list, speech);
    return reportOf(nameOf(list.subject), document, style);
}

std::string csvOf(const RecallList& list, const wording::Speech& speech) {
    const auto word = [&](std::string_view key) { return CsvCell{speech.text(key), false}; };
    const auto own = [](std::string text) { return CsvCell{std::move(text), false}; };
    auto text =
        csvRow({word("holds.recall.column.customer"), word("holds.recall.column.cartons"),
                word("holds.recall.column.pieces"), word("holds.recall.column.run"), word("holds.recall.column.lot"),
                word("holds.recall.column.day"), word("reports.recall.state"), word("reports.recall.place")});
    for (const auto& customer : list.customers) {
        for (const auto& line : customer.lines) {
            const auto cartons = line.cartons.empty() ? std::vector<std::string>{std::string{}} : line.cartons;
            for (std::size_t i = 0; i < cartons.size(); ++i) {
                text += csvRow({CsvCell{customer.name}, CsvCell{cartons[i]}, own(i == 0 ? digits(line.pieces) : ""),
                                own(digits(line.run)), own(digits(line.lot)),
                                own(line.day ? dateText(*line.day).toStdString() : ""),
                                own(lotStateText(line.state, speech).toStdString()), word("reports.recall.place-out")});
            }
        }
    }
    for (const auto& here : list.here) {
        text += csvRow({own(""), own(""), own(here.pieces ? digits(*here.pieces) : ""), own(digits(here.run)),
                        own(digits(here.lot)), own(""), own(lotStateText(here.state, speech).toStdString()),
                        word("reports.recall.place-here")});
    }
    return text;
}

} // namespace holdfast::kiosk::reports
