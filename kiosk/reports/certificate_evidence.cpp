#include "kiosk/reports/certificate_parts.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

FilmMark markOf(const records::ReadingRow& row) {
    if (row.refused || row.struck || !row.word) {
        return FilmMark::blank;
    }
    switch (*row.word) {
    case analytics::Word::cured:
        return FilmMark::cured;
    case analytics::Word::underCured:
        return FilmMark::underCured;
    case analytics::Word::overheated:
        return FilmMark::overheated;
    case analytics::Word::notProven:
        return FilmMark::notProven;
    case analytics::Word::refused:
        break;
    }
    return FilmMark::blank;
}

/// The verdict, and why it counts for nothing if it does not.
QString verdictText(const records::ReadingRow& row, const wording::Speech& speech) {
    auto text = row.refused ? said(speech, "word.refused")
                : row.word  ? cleaned(wording::word(*row.word, speech))
                            : QString();
    if (row.struck) {
        text = said(speech, "reports.certificate.struck",
                    {{"word", text.toStdString()}, {"cause", wording::word(*row.struck, speech)}});
    } else if (row.corrected) {
        text = said(speech, "reports.certificate.judged-again", {{"word", text.toStdString()}});
    }
    return text;
}

QString peakText(const ReadingDetail& detail, const wording::Speech& speech) {
    const auto& figures = speech.figures;
    if (detail.sustained) {
        return cleaned(figures.temperature(*detail.sustained));
    }
    if (!detail.range || (!detail.range->low && !detail.range->high)) {
        return {};
    }
    const auto& [low, high, strip] = *detail.range;
    return cleaned(low && high ? figures.bare(*low) + "–" + figures.temperature(*high)
                   : low       ? "≥ " + figures.temperature(*low)
                               : "≤ " + figures.temperature(*high));
}

QString reasonText(records::ReadingReason reason, const wording::Speech& speech) {
    using Reason = records::ReadingReason;
    switch (reason) {
    case Reason::drawn:
        return said(speech, "holds.reason.drawn");
    case Reason::afterChange:
        return said(speech, "holds.reason.after-change");
    case Reason::setUp:
        return said(speech, "holds.reason.set-up");
    case Reason::retake:
        return said(speech, "holds.reason.retake");
    case Reason::worry:
        return said(speech, "holds.reason.worry");
    case Reason::map:
        return said(speech, "holds.reason.map");
    case Reason::study:
        return said(speech, "holds.reason.study");
    }
    return {};
}

QString marginOf(const records::ReadingRow& row, const wording::Speech& speech) {
    if (row.refused || (!row.marginLow && !row.marginHigh)) {
        return {};
    }
    return cleaned(wording::marginText(analytics::MarginRange{row.marginLow, row.marginHigh}, speech));
}

DocTable readingTable(const Certificate& certificate, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.certificate.verdict"), 36},
                     {said(speech, "reports.certificate.lot"), 7, true},
                     {said(speech, "reports.certificate.when"), 27},
                     {said(speech, "reports.certificate.piece"), 11, true},
                     {said(speech, "reports.certificate.where"), 15},
                     {said(speech, "reports.certificate.because"), 24},
                     {said(speech, "reports.instrument"), 28},
                     {said(speech, "reports.certificate.peak"), 18, true},
                     {said(speech, "reports.certificate.margin"), 21, true}};
    for (const auto& reading : certificate.readings) {
        const auto& row = reading.row;
        DocCell verdict{verdictText(row, speech), true};
        verdict.mark = markOf(row);
        table.rows.push_back({verdict, DocCell{row.lotNumber > 0 ? QString::number(row.lotNumber) : QString()},
                              DocCell{cleaned(wording::whenText(row.takenAt, row.utcOffsetMinutes))},
                              DocCell{reading.detail.piece ? QString::number(*reading.detail.piece) : QString()},
                              DocCell{cleaned(wording::word(row.position, speech))},
                              DocCell{reasonText(row.reason, speech)}, DocCell{tidy(row.instrumentName)},
                              DocCell{peakText(reading.detail, speech)}, DocCell{marginOf(row, speech), true}});
    }
    table.empty = said(speech, "reports.certificate.no-readings");
    return table;
}

QString seenText(const CertifiedTest& test, const wording::Speech& speech) {
    QStringList seen;
    for (const auto& result : test.row.done.results) {
        seen += cleaned(wording::resultText(result, speech));
    }
    if (!test.row.done.note.empty()) {
        seen += tidy(test.row.done.note);
    }
    return seen.join(QStringLiteral("; "));
}

QString outcomeText(const CertifiedTest& test, const wording::Speech& speech) {
    auto text = cleaned(wording::word(test.row.counts, speech));
    if (test.row.versions > 1) {
        text = said(speech, "reports.certificate.put-right", {{"word", text.toStdString()}});
    }
    return text;
}

DocTable testTable(const Certificate& certificate, const wording::Speech& speech) {
    DocTable table;
    table.columns = {
        {said(speech, "reports.certificate.outcome"), 22}, {said(speech, "reports.print"), 15},
        {said(speech, "reports.certificate.test"), 40},    {said(speech, "reports.certificate.load"), 11, true},
        {said(speech, "reports.certificate.seen"), 62},    {said(speech, "reports.certificate.when"), 26},
        {said(speech, "reports.certificate.by"), 24}};
    table.lines = 6;
    for (const auto& test : certificate.tests) {
        const auto name = wording::methodName(test.method, speech);
        const auto title = wording::testTitle(test.method, test.row.done.cycle, speech);
        table.rows.push_back({DocCell{outcomeText(test, speech), true}, DocCell{signsText(test.print)},
                              DocCell{cleaned(test.row.done.cycle && title != name ? title + " · " + name : title)},
                              DocCell{test.load ? QString::number(*test.load) : QString()},
                              DocCell{seenText(test, speech)}, DocCell{momentText(test.row.at, certificate)},
                              DocCell{test.by ? namesText({*test.by}, speech) : QString()}});
    }
    table.empty = said(speech, "reports.certificate.no-tests");
    return table;
}

QString captionOf(const CertifiedPicture& picture, const wording::Speech& speech) {
    auto text = signsText(picture.print) + QStringLiteral(" · ") +
                cleaned(wording::testTitle(picture.method, picture.cycle, speech));
    if (picture.side != records::PictureSide::whole) {
        text +=
            QStringLiteral(" · ") +
            said(speech, picture.side == records::PictureSide::washed ? "tests.print.washed" : "tests.print.unwashed");
    }
    return picture.image.isNull() ? text + QStringLiteral(" · ") + said(speech, "reports.certificate.picture-gone")
                                  : text;
}

} // namespace

void addReadings(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    const auto& counts = certificate.counts;
    const auto number = [](int count) { return std::to_string(count); };
    parts.push_back(DocHeading{said(speech, "reports.certificate.readings")});
    if (!certificate.readings.empty()) {
        parts.push_back(DocText{said(speech, "reports.certificate.reading-sum",
                                     {{"count", number(counts.readings)},
                                      {"cured", number(counts.cured)},
                                      {"bad", number(counts.bad)},
                                      {"unproven", number(counts.notProven)},
                                      {"struck", number(counts.struck)},
                                      {"refused", number(counts.refused)},
                                      {"missed", number(counts.missed)}}),
                                Weight::text, 6, true});
    }
    parts.push_back(readingTable(certificate, speech));
}

void addTests(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    const auto& counts = certificate.counts;
    parts.push_back(DocHeading{said(speech, "reports.certificate.tests")});
    if (!certificate.tests.empty()) {
        parts.push_back(DocText{said(speech, "reports.certificate.test-sum",
                                     {{"count", std::to_string(counts.tests)},
                                      {"failed", std::to_string(counts.failedTests)},
                                      {"void", std::to_string(counts.voidTests)}}),
                                Weight::text, 6, true});
    }
    parts.push_back(testTable(certificate, speech));
    DocPictures pictures;
    for (const auto& picture : certificate.pictures) {
        pictures.pictures.push_back({picture.image, captionOf(picture, speech)});
    }
    parts.push_back(std::move(pictures));
    if (certificate.picturesLeftOut > 0) {
        parts.push_back(DocText{said(speech, "reports.certificate.pictures-left-out",
                                     {{"count", std::to_string(certificate.picturesLeftOut)}})});
    }
}

} // namespace holdfast::kiosk::reports
