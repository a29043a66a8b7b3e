#include "kiosk/reports/certificate_parts.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/testing_sentences.hpp"

namespace holdfast::kiosk::reports {

namespace {

QString holdState(const records::HoldRow& hold, const wording::Speech& speech) {
    if (hold.lifted) {
        return said(speech, "holds.why-lifted");
    }
    if (hold.decision) {
        return said(speech, "holds.why-decided");
    }
    return said(speech, hold.recall ? "reports.certificate.hold-recalled" : "reports.certificate.hold-open");
}

DocTable holdTable(const Certificate& certificate, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.certificate.lot"), 10, true},
                     {said(speech, "reports.certificate.when"), 24},
                     {said(speech, "reports.why"), 66},
                     {said(speech, "reports.pieces"), 56},
                     {said(speech, "reports.bin"), 14, true},
                     {said(speech, "reports.recall.state"), 30}};
    for (const auto& lot : certificate.lots) {
        for (const auto& hold : lot.holds) {
            table.rows.push_back({DocCell{QString::number(lot.lot.number)}, DocCell{momentText(hold.at, certificate)},
                                  DocCell{cleaned(wording::sentence(hold.placed.cause, speech))},
                                  DocCell{cleaned(wording::piecesText(hold.placed, lot.pieces.made, speech))},
                                  DocCell{hold.placed.bin > 0 ? QString::number(hold.placed.bin) : QString()},
                                  DocCell{holdState(hold, speech), true}});
        }
    }
    table.empty = said(speech, "reports.certificate.no-holds");
    return table;
}

QString wordText(const records::DecisionRow& row, const wording::Speech& speech) {
    auto text = cleaned(wording::word(row.signedAs.word, speech));
    if (row.signedAs.belowLimit) {
        text += QStringLiteral(", ") + said(speech, "holds.decision-below");
    }
    if (row.corrected) {
        text += QStringLiteral(", ") + said(speech, "holds.decision-corrected");
    }
    return text;
}

DocTable decisionTable(const Certificate& certificate, const wording::Speech& speech) {
    DocTable table;
    table.columns = {{said(speech, "reports.certificate.lot"), 10, true},
                     {said(speech, "reports.certificate.when"), 24},
                     {said(speech, "reports.certificate.decided"), 40},
                     {said(speech, "reports.certificate.reason"), 70},
                     {said(speech, "reports.certificate.signed"), 54}};
    for (const auto& decision : certificate.decisions) {
        table.rows.push_back({DocCell{QString::number(decision.lot)}, DocCell{momentText(decision.row.at, certificate)},
                              DocCell{wordText(decision.row, speech), true},
                              DocCell{tidy(decision.row.signedAs.reason)},
                              DocCell{namesText(decision.signers, speech), true}});
    }
    table.empty = said(speech, "reports.certificate.no-decisions");
    return table;
}

void addComplaints(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    for (const auto& complaint : certificate.complaints) {
        parts.push_back(DocText{said(speech, "holds.trace.trail.complaint",
                                     {{"number", std::to_string(complaint.taken.number)},
                                      {"what", wording::word(complaint.taken.what, speech)}}),
                                Weight::strong, 3});
    }
    for (const auto& finding : certificate.findings) {
        parts.push_back(DocText{said(speech, "reports.certificate.finding",
                                     {{"cause", tidy(finding.finding.cause).toStdString()},
                                      {"action", tidy(finding.finding.action).toStdString()},
                                      {"names", namesText(finding.signers, speech).toStdString()}})});
        parts.push_back(DocText{said(speech, finding.finding.provenLater ? "reports.certificate.finding-proven"
                                                                         : "reports.certificate.finding-open")});
    }
}

void addLaboratory(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    if (!certificate.ticket.plan.childrensWear) {
        return;
    }
    QStringList reports;
    for (const auto& report : certificate.laboratoryReports) {
        reports += tidy(report);
    }
    parts.push_back(DocText{reports.isEmpty() ? said(speech, "reports.certificate.no-laboratory")
                                              : said(speech, "reports.certificate.laboratory",
                                                     {{"report", reports.join(QStringLiteral(", ")).toStdString()}}),
                            Weight::strong});
}

} // namespace

void addDecisions(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "reports.certificate.holds")});
    parts.push_back(holdTable(certificate, speech));
    parts.push_back(DocHeading{said(speech, "reports.certificate.decisions")});
    parts.push_back(decisionTable(certificate, speech));
    if (!certificate.complaints.empty() || !certificate.findings.empty()) {
        parts.push_back(DocHeading{said(speech, "reports.certificate.complaints")});
        addComplaints(parts, certificate, speech);
    }
}

void addNotTested(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech) {
    parts.push_back(DocHeading{said(speech, "holds.trace.not-tested")});
    for (const auto& missing : certificate.notTested) {
        const auto method = missing.method ? wording::methodName(*missing.method, speech) : missing.gap.method;
        parts.push_back(DocText{
            cleaned(wording::sentence(missing.gap, method, signsText(missing.gap.print).toStdString(), speech))});
    }
    if (certificate.notTested.empty()) {
        parts.push_back(DocText{said(speech, "holds.trace.not-tested-none")});
    }
    parts.push_back(DocText{said(speech, "reports.certificate.only-what-was-read")});
    addLaboratory(parts, certificate, speech);
}

} // namespace holdfast::kiosk::reports
