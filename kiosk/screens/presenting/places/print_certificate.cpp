#include "kiosk/screens/presenting/places/print_certificate.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/reports/picture.hpp"
#include "kiosk/screens/presenting/deciding/trace_query.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr int kThumbnailSide = 640; ///< pixels: 43 mm on paper at 380 an inch

reports::ReadingDetail detailOf(const records::ReadingTaken& reading) {
    reports::ReadingDetail detail;
    detail.piece = reading.piece;
    if (reading.verdict) {
        detail.range = reading.verdict->peakRange;
        if (std::holds_alternative<records::TraceSeen>(reading.evidence) && reading.verdict->sustained) {
            detail.sustained = reading.verdict->sustained->t;
        }
    }
    return detail;
}

/// False if the book could not be read.
bool addReadings(const PrintSource& source, reports::CertificateFacts& facts) {
    for (const auto& row : facts.trace.readings) {
        if (row.refused) {
            continue;
        }
        const auto full = records::readingInFull(source.book.reader(), row.id);
        if (!full) {
            return false;
        }
        if (*full) {
            facts.details[row.id] = detailOf(**full);
        }
    }
    return true;
}

void addPicture(const PrintSource& source, const std::string& sha256, reports::CertificateFacts& facts) {
    const auto digest = ledger::fromHex(sha256);
    if (!digest || facts.pictures.count(sha256) > 0 || facts.pictures.size() >= reports::kMostPictures) {
        return;
    }
    if (const auto bytes = source.book.blob(*digest)) { // dropped or damaged: the certificate says that it is gone
        facts.pictures[sha256] = reports::thumbnailOf(*bytes, kThumbnailSide);
    }
}

bool addTests(const PrintSource& source, reports::CertificateFacts& facts) {
    const auto& database = source.book.reader();
    for (const auto& test : facts.trace.tests) {
        const auto& done = test.done;
        const auto method = records::methodAt(database, done.method, done.revision);
        const auto load =
            done.load ? records::loadById(database, *done.load) : ledger::Result<std::optional<records::LoadRow>>{};
        if (!method || !load) {
            return false;
        }
        if (*method) {
            facts.methods[{done.method, done.revision}] = **method;
        }
        if (*load) {
            facts.loads[*done.load] = (*load)->washed.number;
        }
        for (const auto& picture : done.pictures) {
            addPicture(source, picture.sha256, facts);
        }
    }
    return true;
}

} // namespace

std::optional<reports::CertificateFacts> certificateFactsOf(const PrintSource& source,
                                                            const reports::RunTicket& ticket) {
    auto trace = traceFacts(source.book, ticket.plan.run);
    const auto names = source.book.personNames();
    if (!trace || !*trace || !names) {
        return std::nullopt;
    }
    reports::CertificateFacts facts;
    facts.shop = source.shop;
    facts.printed = source.now;
    facts.trace = std::move(**trace);
    facts.ticket = ticket;
    facts.names = *names;
    if (!addReadings(source, facts) || !addTests(source, facts)) {
        return std::nullopt;
    }
    return facts;
}

PrintWanted certificateFor(const PrintSource& source, const reports::RunTicket& ticket) {
    const auto facts = certificateFactsOf(source, ticket);
    if (!facts) {
        return std::nullopt;
    }
    return reports::runCertificate(reports::certificateOf(*facts), source.style);
}

} // namespace holdfast::kiosk::screens
