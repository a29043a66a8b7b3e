#include "kiosk/reports/run_ticket.hpp"

#include "kiosk/reports/page/sheet.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"

namespace holdfast::kiosk::reports {

namespace {

SheetLayer layerOf(const RunTicket& ticket, std::size_t index, const wording::Speech& speech) {
    const auto& planned = ticket.plan.layers[index];
    SheetLayer out;
    out.position = static_cast<int>(index) + 1;
    out.name = tidy(planned.colour);
    if (out.name.isEmpty()) {
        out.name = tidy(speech.layer(out.position));
    }
    if (planned.underbase) {
        out.name = said(speech, "reports.underbase-layer", {{"colour", out.name.toStdString()}});
    }
    out.ink = tidy(planned.ink);
    if (ticket.layers && index < ticket.layers->layers.size()) {
        const auto& ink = ticket.layers->layers[index].ink;
        out.figure = cureText(ink.requirement.cure, ink.requirement.hold, speech);
        if (out.ink.isEmpty()) {
            out.ink = tidy(ink.name);
        }
    }
    return out;
}

QString clothOf(const records::RunPlanned& plan) {
    const auto fabric = tidy(plan.fabric);
    const auto colour = tidy(plan.garmentColour);
    return fabric.isEmpty() || colour.isEmpty() ? fabric + colour : fabric + QStringLiteral(", ") + colour;
}

QString moreLayers(int count, const wording::Speech& speech) {
    return said(speech, "reports.more-layers", {{"count", std::to_string(count)}});
}

bool hasWindow(const RunTicket& ticket) {
    return ticket.window && ticket.window->state != analytics::WindowState::closed;
}

QStringList openSentences(const RunTicket& ticket, const wording::Speech& speech) {
    QStringList out;
    if (ticket.window->aim) {
        out += said(speech, "reports.aim", {{"aim", speech.figures.temperature(*ticket.window->aim)}});
    }
    if (ticket.window->hold.count() > 0) {
        out += said(speech, "reports.hold", {{"duration", wording::durationText(ticket.window->hold)}});
    }
    return out;
}

/// What stands under the figure: why there is no window, or how to use the one there is.
QStringList sentencesOf(const RunTicket& ticket, const wording::Speech& speech) {
    QStringList out;
    if (ticket.window && ticket.layers) {
        if (hasWindow(ticket)) {
            out = openSentences(ticket, speech);
        }
        const auto spoken = speech.text("window.open", {{"window", wording::windowText(*ticket.window, speech)}});
        for (const auto& sentence : wording::windowSentences(*ticket.layers, *ticket.window, speech)) {
            if (sentence != spoken) {
                out += cleaned(sentence);
            }
        }
    }
    for (const auto fault : ticket.faults) {
        out += cleaned(wording::sentence(fault, speech));
    }
    if (out.isEmpty() && !hasWindow(ticket)) {
        out += said(speech, "reports.no-window-known");
    }
    return out;
}

QString figureOf(const RunTicket& ticket, const wording::Speech& speech) {
    return hasWindow(ticket) ? cleaned(wording::windowText(*ticket.window, speech)) : said(speech, "run.no-window");
}

Sheet sheetOf(const RunTicket& ticket, const ReportStyle& style) {
    const auto speech = wording::Speech{style.speech.language, style.speech.figures, {}};
    Sheet sheet;
    sheet.marks = marksOf(style);
    if (ticket.plan.childrensWear) {
        sheet.marks.prepend(said(speech, "reports.childrens-wear"));
    }
    sheet.title = tidy(ticket.plan.title);
    sheet.layersLabel = said(speech, "run.print-as-it-lies");
    for (std::size_t i = ticket.plan.layers.size(); i-- > 0;) {
        sheet.layers.push_back(layerOf(ticket, i, speech));
    }
    sheet.cloth = clothOf(ticket.plan);
    sheet.moreLayers = moreLayers;
    sheet.caution = said(speech, "reports.caution-dryer");
    sheet.shortCaution = said(speech, "caution.short");
    sheet.window = SheetWindow{said(speech, "run.window"), figureOf(ticket, speech), sentencesOf(ticket, speech),
                               !hasWindow(ticket)};
    return sheet;
}

QString joined(const QString& first, const QString& second) {
    return first.isEmpty() || second.isEmpty() ? first + second : first + QStringLiteral(" · ") + second;
}

std::vector<SheetFact> factsOf(const RunTicket& ticket, const wording::Speech& speech) {
    const auto& plan = ticket.plan;
    const auto pieces = plan.pieces ? QString::number(*plan.pieces) : QString();
    return {{said(speech, "reports.customer"), joined(tidy(plan.customer), tidy(plan.reference)), Worth::useful, 2},
            {said(speech, "reports.pieces"), pieces, Worth::important, 1},
            {said(speech, "reports.dryer"), tidy(ticket.dryer), Worth::useful, 1}};
}

} // namespace

RunTicket runTicketOf(const records::RunOnFile& run,
                      const tl::expected<analytics::RunWindow, std::vector<analytics::WindowFault>>& window,
                      std::string dryer) {
    RunTicket out;
    out.plan = run.plan;
    out.dryer = std::move(dryer);
    if (run.usable) {
        out.layers = run.layers;
        if (window) {
            out.window = *window;
        } else {
            out.faults = window.error();
        }
    }
    return out;
}

Reported runTicket(const RunTicket& ticket, const ReportStyle& style) {
    auto sheet = sheetOf(ticket, style);
    sheet.kind = said(style.speech, "reports.run-ticket");
    sheet.number = QString::number(ticket.plan.number);
    sheet.facts = factsOf(ticket, style.speech);
    sheet.room = said(style.speech, "reports.room-for-strip");
    return reportOf("run-" + std::to_string(ticket.plan.number) + "-ticket", sheet, drivers::TicketKind::run,
                    ticket.plan.number, style);
}

Reported windowCard(const RunTicket& card, const ReportStyle& style) {
    auto sheet = sheetOf(card, style);
    sheet.kind = said(style.speech, "reports.window-card", {{"number", std::to_string(card.plan.number)}});
    sheet.number = sheet.window->figure;
    sheet.window->figure.clear();
    return reportOf("window-" + std::to_string(card.plan.number) + "-card", sheet, drivers::TicketKind::window,
                    card.plan.number, style);
}

} // namespace holdfast::kiosk::reports
