#include "tests/kiosk/e2e/support/book_look.hpp"

#include "kiosk/ledger/book.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <system_error>

namespace holdfast::tests {

namespace ledger = kiosk::ledger;
namespace records = kiosk::records;

namespace {

constexpr int kAll = 1000;

std::unique_ptr<ledger::Book> look(const std::filesystem::path& data) {
    auto book = ledger::Book::open(data, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
    return book ? std::move(*book) : nullptr;
}

} // namespace

const records::TraceSeen& WholeReading::evidence() const {
    REQUIRE(std::holds_alternative<records::TraceSeen>(taken.evidence));
    return std::get<records::TraceSeen>(taken.evidence);
}

bool WholeReading::saysReason(analytics::ReasonCode code) const {
    return taken.verdict && std::any_of(taken.verdict->reasons.begin(), taken.verdict->reasons.end(),
                                        [code](const analytics::Reason& reason) { return reason.code == code; });
}

std::int64_t entriesIn(const std::filesystem::path& data) {
    const auto book = look(data);
    const auto head = book ? book->head() : ledger::Result<ledger::Head>{};
    return head ? head->sequence : 0;
}

std::vector<std::string> kindsFrom(const std::filesystem::path& data, std::int64_t from) {
    const auto book = look(data);
    REQUIRE(book);
    const auto entries = book->entries(from, kAll);
    REQUIRE(entries);
    std::vector<std::string> kinds;
    for (const auto& entry : *entries) {
        kinds.push_back(entry.kind);
    }
    return kinds;
}

std::vector<records::ReadingRow> readingsIn(const std::filesystem::path& data) {
    const auto book = look(data);
    REQUIRE(book);
    const auto rows = records::latestReadings(book->reader(), kAll);
    REQUIRE(rows);
    return *rows;
}

WholeReading newestReading(const std::filesystem::path& data) {
    const auto book = look(data);
    REQUIRE(book);
    const auto rows = records::latestReadings(book->reader(), 1);
    REQUIRE((rows && rows->size() == 1));
    WholeReading whole{rows->front(), {}, {}};
    const auto taken = records::readingInFull(book->reader(), whole.row.id);
    REQUIRE((taken && *taken));
    whole.taken = **taken;
    const auto hash = ledger::fromHex(whole.row.trace);
    REQUIRE(hash);
    const auto blob = book->blob(*hash);
    REQUIRE(blob);
    auto trace = ledger::decodeTrace(*blob);
    REQUIRE(trace);
    whole.trace = std::move(*trace);
    return whole;
}

int cutOffReadings(const std::filesystem::path& data) {
    const auto book = look(data);
    REQUIRE(book);
    int count = 0;
    for (const auto& row : readingsIn(data)) {
        if (row.refused) {
            continue; // never cut off, and not held in full
        }
        const auto taken = records::readingInFull(book->reader(), row.id);
        REQUIRE((taken && *taken));
        const auto* seen = std::get_if<records::TraceSeen>(&(*taken)->evidence);
        count += seen != nullptr && seen->cutOff ? 1 : 0;
    }
    return count;
}

std::vector<std::filesystem::path> spoolsIn(const std::filesystem::path& data) {
    std::vector<std::filesystem::path> files;
    const auto names = ledger::Spool::findLeftOver(data);
    for (const auto& name : names ? *names : std::vector<std::string>{}) {
        files.push_back(data / name);
    }
    return files;
}

std::int64_t highestSpooled(const std::filesystem::path& data) {
    auto highest = INT64_MIN;
    for (const auto& file : spoolsIn(data)) {
        const auto contents = ledger::Spool::read(file);
        for (const auto& point : contents ? contents->points : std::vector<ledger::TracePoint>{}) {
            highest = std::max(highest, point.counts);
        }
    }
    return highest;
}

} // namespace holdfast::tests
