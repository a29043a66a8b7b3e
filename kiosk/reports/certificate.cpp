#include "kiosk/reports/certificate.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

using records::LotState;

std::vector<Signer> signersOf(const std::vector<std::int64_t>& numbers, const CertificateFacts& facts) {
    std::vector<Signer> out;
    for (const auto number : numbers) {
        const auto found = std::find_if(facts.names.begin(), facts.names.end(),
                                        [&](const auto& name) { return name.number == number; });
        out.push_back({number, found == facts.names.end() ? std::string{} : found->name});
    }
    return out;
}

std::int64_t printNumber(const CertificateFacts& facts, const std::string& id) {
    const auto& prints = facts.trace.prints;
    const auto found =
        std::find_if(prints.begin(), prints.end(), [&](const auto& print) { return print.named.print == id; });
    return found == prints.end() ? -1 : found->named.number;
}

/// As the test was done by it; a method that is not in the facts is known by its key alone.
records::MethodDescribed methodOf(const CertificateFacts& facts, const records::TestDone& test) {
    const auto found = facts.methods.find({test.method, test.revision});
    if (found != facts.methods.end()) {
        return found->second;
    }
    records::MethodDescribed method;
    method.key = test.method;
    method.name = test.method;
    return method;
}

void addPictures(const CertifiedTest& test, const CertificateFacts& facts, Certificate& out) {
    for (const auto& picture : test.row.done.pictures) {
        if (out.pictures.size() >= kMostPictures) {
            ++out.picturesLeftOut;
            continue;
        }
        const auto image = facts.pictures.find(picture.sha256);
        out.pictures.push_back({test.print, test.method, test.row.done.cycle, picture.side,
                                image == facts.pictures.end() ? QImage() : image->second});
    }
}

void addTests(const CertificateFacts& facts, Certificate& out) {
    for (const auto& row : facts.trace.tests) {
        CertifiedTest test{row, printNumber(facts, row.done.print), methodOf(facts, row.done), {}, {}};
        if (row.done.load) {
            const auto load = facts.loads.find(*row.done.load);
            test.load = load == facts.loads.end() ? std::optional<std::int64_t>{} : load->second;
        }
        if (row.person != 0) {
            test.by = signersOf({row.person}, facts).front();
        }
        addPictures(test, facts, out);
        out.tests.push_back(std::move(test));
    }
    std::stable_sort(out.tests.begin(), out.tests.end(),
                     [](const auto& one, const auto& other) { return one.row.at < other.row.at; });
}

void addDecisions(const CertificateFacts& facts, Certificate& out) {
    for (const auto& lot : facts.trace.lots) {
        for (const auto& row : lot.decisions) {
            out.decisions.push_back({lot.lot.number, row, signersOf(row.signedAs.signers, facts)});
            const auto& report = row.signedAs.laboratoryReport;
            auto& known = out.laboratoryReports;
            if (!report.empty() && !row.corrected && std::find(known.begin(), known.end(), report) == known.end()) {
                known.push_back(report);
            }
        }
        for (const auto& finding : lot.findings) {
            out.findings.push_back({finding, signersOf(finding.signers, facts)});
        }
    }
    for (const auto& complaint : facts.trace.complaints) {
        const bool ofALot = complaint.finding && !complaint.finding->lot.empty();
        if (complaint.finding && !ofALot) {
            out.findings.push_back({*complaint.finding, signersOf(complaint.finding->signers, facts)});
        }
    }
}

void addGaps(const shop::tracing::TracePage& page, const CertificateFacts& facts, Certificate& out) {
    for (const auto& gap : page.notTested) {
        const auto& methods = facts.trace.methods;
        const auto found =
            std::find_if(methods.begin(), methods.end(), [&](const auto& method) { return method.key == gap.method; });
        out.notTested.push_back({gap, found == methods.end() ? std::optional<records::MethodDescribed>{} : *found});
    }
}

} // namespace

Certificate certificateOf(const CertificateFacts& facts) {
    const auto page = shop::tracing::tracePage(facts.trace);
    Certificate out;
    out.shop = facts.shop;
    out.printed = facts.printed;
    out.ticket = facts.ticket;
    out.finished = facts.trace.finished;
    out.lots = facts.trace.lots;
    out.isCertificate = !out.lots.empty() && std::all_of(out.lots.begin(), out.lots.end(), [](const auto& lot) {
        return lot.lot.state == LotState::cleared || lot.lot.state == LotState::released;
    });
    out.batches = page.batches;
    for (const auto& row : facts.trace.readings) {
        const auto detail = facts.details.find(row.id);
        out.readings.push_back({row, detail == facts.details.end() ? ReadingDetail{} : detail->second});
    }
    addTests(facts, out);
    addDecisions(facts, out);
    addGaps(page, facts, out);
    out.retained = page.retained;
    out.complaints = facts.trace.complaints;
    out.counts = page.counts;
    out.entries = facts.trace.entries;
    out.head = facts.trace.head;
    return out;
}

} // namespace holdfast::kiosk::reports
