#include "kiosk/reports/certificate_parts.hpp"
#include "kiosk/reports/page/heat_window.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kWindowHeight = 34.0; ///< mm

QString number(std::optional<int> count) {
    return count ? QString::number(*count) : QString();
}

QString percentText(double share) {
    return cleaned(wording::numberText(100 * share, share < 0.1 ? 1 : 0)) + QString(QChar::Nbsp) + u'%';
}

QString rangeText(const records::LotRow& lot, const wording::Speech& speech) {
    const auto first = std::to_string(lot.firstPiece.value_or(1));
    return lot.lastPiece
               ? said(speech, "reports.pieces-range", {{"first", first}, {"last", std::to_string(*lot.lastPiece)}})
               : said(speech, "reports.pieces-from", {{"first", first}});
}

DocTable layerTable(const RunTicket& ticket, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.certificate.layer"), 12, true},
                     {said(speech, "reports.certificate.colour"), 48},
                     {said(speech, "reports.certificate.ink"), 46},
                     {said(speech, "reports.certificate.families"), 60},
                     {said(speech, "reports.cures-at"), 34}};
    for (std::size_t i = ticket.plan.layers.size(); i-- > 0;) {
        const auto& layer = ticket.plan.layers[i];
        auto colour = tidy(layer.colour);
        if (layer.underbase) {
            colour = said(speech, "reports.underbase-layer", {{"colour", colour.toStdString()}});
        }
        QStringList families;
        for (const auto& part : layer.parts) {
            families += tidy(part.family);
        }
        QString cure;
        if (ticket.layers && i < ticket.layers->layers.size()) {
            const auto& asked = ticket.layers->layers[i].ink.requirement;
            cure = cureText(asked.cure, asked.hold, speech);
        }
        table.rows.push_back({DocCell{QString::number(i + 1)}, DocCell{colour, true}, DocCell{tidy(layer.ink)},
                              DocCell{families.join(QStringLiteral(", "))}, DocCell{cure}});
    }
    table.empty = said(speech, "reports.certificate.no-layers");
    return table;
}

DocTable batchTable(const Certificate& certificate, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.certificate.printed-from"), 84},
                     {said(speech, "reports.bucket"), 20, true},
                     {said(speech, "reports.certificate.share"), 20, true},
                     {said(speech, "reports.certificate.makers-batch"), 46},
                     {said(speech, "reports.use-by"), 26}};
    for (const auto& line : certificate.batches) {
        auto name = tidy(line.name);
        if (!line.colour.empty()) {
            name = tidy(line.colour) + QStringLiteral(": ") + name;
        }
        DocCell what{name, line.depth == 0};
        what.indent = std::min(line.depth, 6);
        const auto batch = tidy(line.batch);
        table.rows.push_back(
            {what, DocCell{QString::number(line.bucket)}, DocCell{percentText(line.share)},
             DocCell{batch.isEmpty() && !line.isMix ? said(speech, "holds.trace.no-batch") : batch, true},
             DocCell{line.expiry ? dateText(*line.expiry) : QString()}});
    }
    table.empty = said(speech, "holds.trace.batches-none");
    return table;
}

HeatWindow heatOf(const Certificate& certificate, const wording::Speech& speech) {
    const auto& window = *certificate.ticket.window;
    HeatWindow heat{window.lower, window.upper, {}, {}};
    const auto& figures = speech.figures;
    const auto add = [&](analytics::Temperature at, std::string_view key) {
        heat.lines.push_back({at, cleaned(figures.temperature(at)), said(speech, key)});
    };
    add(window.lower, "reports.certificate.line-cure");
    if (window.upperBleed) {
        add(window.upperBleed->limit, "reports.certificate.line-bleed");
    }
    if (window.upperHard) {
        add(window.upperHard->limit, "reports.certificate.line-hard");
    }
    for (const auto& reading : certificate.readings) {
        if (reading.row.refused || reading.row.struck) {
            continue;
        }
        if (reading.detail.sustained) {
            heat.peaks.push_back({reading.detail.sustained, reading.detail.sustained});
        } else if (reading.detail.range) {
            heat.peaks.push_back({reading.detail.range->low, reading.detail.range->high});
        }
    }
    return heat;
}

} // namespace

void addOrder(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    const auto& plan = certificate.ticket.plan;
    parts.push_back(DocHeading{said(speech, "reports.certificate.order")});
    parts.push_back(DocFacts{{{said(speech, "reports.title"), tidy(plan.title)},
                              {said(speech, "reports.customer"), tidy(plan.customer)},
                              {said(speech, "reports.certificate.reference"), tidy(plan.reference)},
                              {said(speech, "reports.certificate.garment"), tidy(plan.garmentColour)},
                              {said(speech, "reports.certificate.cloth"), tidy(plan.fabric)},
                              {said(speech, "reports.certificate.planned"), number(plan.pieces)},
                              {said(speech, "reports.dryer"), tidy(certificate.ticket.dryer)}}});
    if (!certificate.finished) {
        parts.push_back(DocText{said(speech, "reports.certificate.not-finished"), Weight::strong});
    }
}

void addLots(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "reports.certificate.lots")});
    DocTable table;
    table.columns = {{said(speech, "reports.certificate.lot"), 12, true},
                     {said(speech, "reports.recall.state"), 34},
                     {said(speech, "reports.pieces"), 28},
                     {said(speech, "holds.pieces.made"), 20, true},
                     {said(speech, "holds.pieces.shipped"), 20, true},
                     {said(speech, "holds.pieces.here-counted"), 26, true},
                     {said(speech, "holds.pieces.retained"), 22, true},
                     {said(speech, "holds.pieces.tested"), 24, true},
                     {said(speech, "holds.pieces.scrapped"), 22, true}};
    for (const auto& lot : certificate.lots) {
        const auto& pieces = lot.pieces;
        table.rows.push_back({DocCell{QString::number(lot.lot.number)},
                              DocCell{lotStateText(lot.lot.state, speech), true}, DocCell{rangeText(lot.lot, speech)},
                              DocCell{number(pieces.made)}, DocCell{QString::number(pieces.shipped)},
                              DocCell{number(pieces.here)}, DocCell{QString::number(pieces.retained)},
                              DocCell{QString::number(pieces.tested)}, DocCell{QString::number(pieces.scrapped)}});
    }
    table.empty = said(speech, "reports.certificate.no-lots");
    parts.push_back(std::move(table));
}

void addInks(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "reports.certificate.inks")});
    parts.push_back(layerTable(certificate.ticket, speech));
    parts.push_back(DocHeading{said(speech, "holds.trace.batches")});
    parts.push_back(batchTable(certificate, speech));
}

void addWindow(std::vector<DocPart>& parts, const Certificate& certificate, const ReportStyle& style) {
    const auto& speech = style.speech;
    const auto& window = certificate.ticket.window;
    parts.push_back(DocHeading{said(speech, "run.window")});
    if (!window) {
        parts.push_back(DocText{said(speech, "reports.certificate.no-window")});
        return;
    }
    const bool closed = window->state == analytics::WindowState::closed;
    auto figure = closed ? said(speech, "run.no-window") : cleaned(wording::windowText(*window, speech));
    if (!closed && window->hold.count() > 0) {
        figure += QStringLiteral(", ") + cleaned(wording::durationText(window->hold));
    }
    parts.push_back(DocText{figure, Weight::lead, 2});
    if (certificate.ticket.layers) {
        auto plain = speech;
        plain.layers.clear();
        const auto opening = plain.text("window.open", {{"window", wording::windowText(*window, plain)}});
        for (const auto& sentence : wording::windowSentences(*certificate.ticket.layers, *window, plain)) {
            if (sentence != opening) {
                parts.push_back(DocText{cleaned(sentence)});
            }
        }
    }
    parts.push_back(DocDrawing{kWindowHeight, [heat = heatOf(certificate, speech)](PlacedPage& page, const Box& box) {
                                   drawHeatWindow(page, heat, box, 2.8);
                               }});
    parts.push_back(DocText{said(speech, "reports.certificate.window-note"), Weight::small});
}

void addRetained(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "holds.trace.retained")});
    DocTable table;
    table.columns = {{said(speech, "reports.print"), 20},
                     {said(speech, "reports.certificate.lot"), 12, true},
                     {said(speech, "reports.print.shelf"), 70},
                     {said(speech, "reports.print.until"), 40}};
    for (const auto& print : certificate.retained) {
        const auto& kept = *print.named.retained;
        table.rows.push_back(
            {DocCell{signsText(print.named.number), true}, DocCell{QString::number(print.lotNumber)},
             DocCell{tidy(kept.shelf)},
             DocCell{kept.until ? dateText(*kept.until) : said(speech, "holds.trace.retained-no-day")}});
    }
    table.empty = said(speech, "holds.trace.retained-none");
    parts.push_back(std::move(table));
}

QString momentText(std::int64_t wallMilliseconds, const Certificate& certificate) {
    return cleaned(wording::whenText(wallMilliseconds, certificate.printed.utcOffsetMinutes));
}

QString namesText(const std::vector<Signer>& signers, const wording::Speech& speech) {
    QStringList names;
    for (const auto& signer : signers) {
        const auto name = tidy(signer.name);
        names += name.isEmpty()
                     ? said(speech, "reports.certificate.person", {{"number", std::to_string(signer.number)}})
                     : name;
    }
    return names.join(QStringLiteral(", "));
}

QString signsText(std::int64_t print) {
    return print < 0 ? QString() : QString::fromStdString(codeTextOf(drivers::TicketKind::print, print).substr(1));
}

} // namespace holdfast::kiosk::reports
