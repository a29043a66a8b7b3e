#include "kiosk/ledger/check.hpp"

#include "kiosk/ledger/connection.hpp"
#include "kiosk/ledger/read_tables.hpp"
#include "kiosk/ledger/schema.hpp"
#include "kiosk/ledger/stored.hpp"

#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Transaction.h>
#include <algorithm>
#include <limits>

namespace holdfast::kiosk::ledger {

namespace {

constexpr int mostFaultsListed = 20;

/// Thrown inside this file only.
struct Stopped {};

class Checker {
public:
    Checker(SQLite::Database& database, const Projection& projection, const std::stop_token& stop)
        : m_database(database), m_projection(projection), m_stop(stop) {}

    IntegrityReport run() {
        SQLite::Transaction snapshot{m_database, SQLite::TransactionBehavior::DEFERRED};
        step([this] { structure(); });
        step([this] { m_report.alteredGuards = alteredGuards(m_database); });
        step([this] { entriesAndTables(); });
        step([this] { blobs(); });
        return m_report;
    }

private:
    /// What a damaged page keeps from being read is a finding; anything else goes to the border.
    template <class Step>
    void step(Step&& work) {
        try {
            work();
        } catch (const SQLite::Exception& thrown) {
            if (failureFrom(thrown, "check").code == FailureCode::inputOutput) {
                throw;
            }
            m_report.structureFaults.emplace_back(thrown.what());
        } catch (const std::exception& thrown) {
            m_report.structureFaults.emplace_back(thrown.what());
        }
    }

    void stopIfAsked() const {
        if (m_stop.stop_requested()) {
            throw Stopped{};
        }
    }

    void structure() {
        stopIfAsked();
        SQLite::Statement query{m_database, "PRAGMA quick_check(" + std::to_string(mostFaultsListed) + ")"};
        while (query.executeStep()) {
            const std::string line = query.getColumn(0).getString();
            if (line != "ok") {
                m_report.structureFaults.push_back(line);
            }
        }
    }

    void entriesAndTables() {
        m_report.readTablesCompared = projectionVersion(m_database) == m_projection.version();
        const auto scratch = scratchTables(m_projection);
        SQLite::Transaction filling{*scratch};
        Head before;
        SQLite::Statement query{m_database, entriesFromSql};
        query.bind(1, std::numeric_limits<std::int64_t>::min());
        query.bind(2, std::int64_t{-1});
        while (query.executeStep()) {
            stopIfAsked();
            const Entry entry = entryOf(query);
            ++m_report.entries;
            m_report.head = entry.hash;
            if (!m_report.firstBadSequence &&
                (entry.sequence != before.sequence + 1 || entry.hash != chainHash(before.hash, entry))) {
                m_report.firstBadSequence = entry.sequence;
            }
            before = {entry.sequence, entry.hash};
            if (m_report.readTablesCompared) {
                m_projection.apply(*scratch, entry);
            }
        }
        if (m_report.readTablesCompared) {
            m_report.differingTables =
                differences(digestOf(m_database, m_projection), digestOf(*scratch, m_projection));
        }
    }

    void blobs() {
        SQLite::Statement query{m_database, "SELECT hash, dropped_ms IS NOT NULL, bytes FROM blobs"};
        while (query.executeStep()) {
            stopIfAsked();
            if (query.getColumn(1).getInt() != 0) {
                ++m_report.droppedBlobs;
                continue;
            }
            ++m_report.blobs;
            const Digest hash = digestOf(query.getColumn(0));
            if (sha256(bytesOf(query.getColumn(2))) != hash) {
                m_report.badBlobs.push_back(hash);
            }
        }
    }

    SQLite::Database& m_database;
    const Projection& m_projection;
    std::stop_token m_stop;
    IntegrityReport m_report;
};

} // namespace

Result<IntegrityReport> checkBook(SQLite::Database& database, const Projection& projection,
                                  const std::stop_token& stop) {
    try {
        return Checker{database, projection, stop}.run();
    } catch (const Stopped&) {
        return tl::unexpected(Failure{FailureCode::cancelled, "check: stopped"});
    } catch (const std::exception& thrown) {
        return tl::unexpected(failureFrom(thrown, "check", database));
    }
}

std::string structureFault(SQLite::Database& database) {
    SQLite::Statement query{database, "PRAGMA quick_check(1)"};
    const std::string line = query.executeStep() ? query.getColumn(0).getString() : std::string{"no answer"};
    return line == "ok" ? std::string{} : line;
}

bool tailFollows(SQLite::Database& database, std::int64_t count) {
    const std::int64_t from = std::max<std::int64_t>(1, headOf(database).sequence - count);
    SQLite::Statement query{database, entriesFromSql};
    query.bind(1, from);
    query.bind(2, std::int64_t{-1});
    Head before{from - 1, {}};
    while (query.executeStep()) {
        const Entry entry = entryOf(query);
        const bool judged = entry.sequence > from || from == 1; // of the first one only the hash is taken
        if (entry.sequence != before.sequence + 1 || (judged && entry.hash != chainHash(before.hash, entry))) {
            return false;
        }
        before = {entry.sequence, entry.hash};
    }
    return true;
}

std::string summaryOf(const IntegrityReport& report) {
    std::string text = std::to_string(report.entries) + " entries, " + std::to_string(report.blobs) + " blobs";
    if (report.firstBadSequence) {
        text += "; chain broken at entry " + std::to_string(*report.firstBadSequence);
    }
    for (const Digest& hash : report.badBlobs) {
        text += "; blob " + toHex(hash) + " altered";
    }
    for (const std::string& table : report.differingTables) {
        text += "; read table " + table + " differs from a rebuild";
    }
    for (const std::string& guard : report.alteredGuards) {
        text += "; " + guard + " altered";
    }
    for (const std::string& fault : report.structureFaults) {
        text += "; " + fault;
    }
    return text;
}

} // namespace holdfast::kiosk::ledger
