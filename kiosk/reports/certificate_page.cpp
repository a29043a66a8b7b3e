#include "kiosk/reports/certificate.hpp"
#include "kiosk/reports/certificate_parts.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"

namespace holdfast::kiosk::reports {

namespace {

constexpr int kStatesInTitle = 6;

bool standsAgainst(records::LotState state) {
    return state != records::LotState::cleared && state != records::LotState::released;
}

/// What it is, and in the same type every state that keeps it from being a certificate.
QStringList titlesOf(const Certificate& certificate, const wording::Speech& speech) {
    const auto run = std::to_string(certificate.ticket.plan.number);
    QStringList titles{said(speech,
                            certificate.isCertificate ? "reports.certificate.of-run" : "reports.certificate.record-of",
                            {{"run", run}})};
    if (certificate.lots.empty()) {
        titles += said(speech, "reports.certificate.nothing-read");
    }
    int more = 0;
    for (const auto& lot : certificate.lots) {
        if (!standsAgainst(lot.lot.state)) {
            continue;
        }
        if (titles.size() <= kStatesInTitle) {
            titles += said(speech, "reports.certificate.lot-state",
                           {{"lot", std::to_string(lot.lot.number)},
                            {"state", lotStateText(lot.lot.state, speech).toStdString()}});
        } else {
            ++more;
        }
    }
    if (more > 0) {
        titles += said(speech, "reports.certificate.more-lots", {{"count", std::to_string(more)}});
    }
    if (certificate.ticket.plan.childrensWear) {
        titles += said(speech, "reports.childrens-wear");
    }
    return titles;
}

void addBook(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "holds.trace.book")});
    parts.push_back(DocFacts{{{said(speech, "reports.certificate.entry"), QString::number(certificate.entries)},
                              {said(speech, "reports.certificate.hash"), tidy(certificate.head)}}});
    parts.push_back(DocText{said(speech, "reports.certificate.how-to-check"), Weight::small});
}

void addCautions(std::vector<DocPart>& parts, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "reports.cautions")});
    for (const auto* key : {"reports.caution-full.burn", "reports.caution-full.fumes", "reports.caution-full.solvent",
                            "reports.caution-full.first", "reports.caution-full.children"}) {
        parts.push_back(DocText{said(speech, key)});
    }
}

} // namespace

Reported runCertificate(const Certificate& certificate, const ReportStyle& style) {
    ReportStyle plain = style;
    plain.speech.layers.clear();
    const auto& speech = plain.speech;
    const auto number = certificate.ticket.plan.number;
    if (number < 0) {
        return tl::unexpected(ReportFault{ReportCause::numberUnusable, {}, {}, std::to_string(number)});
    }
    auto document = documentOf(certificate.isCertificate ? "reports.certificate" : "reports.certificate.record",
                               certificate.shop, certificate.printed, plain);
    document.subject =
        said(speech, "reports.certificate.subject",
             {{"run", std::to_string(number)}, {"title", tidy(certificate.ticket.plan.title).toStdString()}});
    document.titles = titlesOf(certificate, speech);
    document.lines = {
        tidy(certificate.shop),
        said(speech, certificate.isCertificate ? "reports.certificate.says" : "reports.certificate.record-says")};
    document.code = codeTextOf(drivers::TicketKind::run, number);
    auto& parts = document.parts;
    addOrder(parts, certificate, speech);
    addLots(parts, certificate, speech);
    addInks(parts, certificate, speech);
    addWindow(parts, certificate, plain);
    addReadings(parts, certificate, speech);
    addTests(parts, certificate, speech);
    addRetained(parts, certificate, speech);
    addDecisions(parts, certificate, speech);
    addNotTested(parts, certificate, speech);
    addBook(parts, certificate, speech);
    addCautions(parts, speech);
    return reportOf("run-" + std::to_string(number) + (certificate.isCertificate ? "-certificate" : "-record"),
                    document, plain);
}

} // namespace holdfast::kiosk::reports
