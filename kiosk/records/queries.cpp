#include "kiosk/records/queries.hpp"

#include "kiosk/records/kinds.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {
namespace {

using SQLite::Database;

InstrumentOnFile instrumentOnFile(const Database& database, InstrumentDescribed described) {
    std::vector<CertificateSpec> certificates;
    for (auto& one : bodies<CertificateAdded>(
             database, "SELECT body FROM certificates WHERE instrument = ? ORDER BY sequence", described.instrument)) {
        certificates.push_back(std::move(one.certificate));
    }
    std::vector<CheckSpec> checks;
    for (auto& one : bodies<CheckDone>(database, "SELECT body FROM checks WHERE instrument = ? ORDER BY sequence",
                                       described.instrument)) {
        checks.push_back(one.check);
    }
    auto instrument = toInstrument(described.spec, certificates, checks);
    return {std::move(described), std::move(instrument)};
}

/// The newest certificate's and the newest passed check's due dates.
void addDueOf(const Database& database, const InstrumentDescribed& one, analytics::Date today,
              std::vector<DueItem>& items) {
    const auto add = [&](DueKind kind, const char* sql) {
        auto query = prepared(database, sql, one.instrument);
        const auto latest = query.executeStep() ? textAt(query, 0) : std::nullopt;
        const auto date = latest ? dateFrom(*latest) : std::nullopt;
        if (date && *date <= today) {
            items.push_back({kind, 0, one.spec.name, date});
        }
    };
    add(DueKind::certificateDue, "SELECT max(due) FROM certificates WHERE instrument = ?");
    add(DueKind::checkDue, "SELECT max(due) FROM checks WHERE instrument = ? AND passed = 1");
}

} // namespace

Result<std::vector<std::string>> unknownKinds(const Database& database) {
    return asked("look for unknown kinds", [&] {
        std::vector<std::string> unknown;
        auto query = prepared(database, "SELECT kind, max(version) FROM kinds_seen GROUP BY kind ORDER BY kind");
        const auto rows = kinds();
        while (query.executeStep()) {
            const std::string kind = query.getColumn(0).getString();
            const int version = query.getColumn(1).getInt();
            if (std::none_of(rows.begin(), rows.end(),
                             [&](const KindRow& row) { return row.kind == kind && version <= row.version; })) {
                unknown.push_back(kind + " " + std::to_string(version));
            }
        }
        return unknown;
    });
}

Result<std::vector<FamilyRecord>> newestFamilies(const Database& database, std::int64_t asOf) {
    return asked("read families", [&] {
        return bodies<FamilyRecord>(database,
                                    "SELECT body, max(revision) FROM families WHERE sequence <= ? GROUP BY name "
                                    "ORDER BY name",
                                    asOf);
    });
}

Result<std::vector<FabricRecord>> newestFabrics(const Database& database, std::int64_t asOf) {
    return asked("read fabrics", [&] {
        return bodies<FabricRecord>(database,
                                    "SELECT body, max(revision) FROM fabrics WHERE sequence <= ? GROUP BY name "
                                    "ORDER BY name",
                                    asOf);
    });
}

Result<std::vector<InstrumentOnFile>> instruments(const Database& database, bool withdrawnToo) {
    return asked("read instruments", [&] {
        std::vector<InstrumentOnFile> all;
        for (auto& one : bodies<InstrumentDescribed>(
                 database, "SELECT body FROM instruments WHERE withdrawn = 0 OR ?1 ORDER BY name, id", withdrawnToo)) {
            all.push_back(instrumentOnFile(database, std::move(one)));
        }
        return all;
    });
}

Result<std::optional<InstrumentOnFile>> instrumentById(const Database& database, const std::string& instrument) {
    return asked("read an instrument", [&]() -> std::optional<InstrumentOnFile> {
        auto one = body<InstrumentDescribed>(database, "SELECT body FROM instruments WHERE id = ?", instrument);
        return one ? std::optional{instrumentOnFile(database, std::move(*one))} : std::nullopt;
    });
}

Result<std::vector<DueItem>> due(const Database& database, analytics::Date today) {
    return asked("read what is due", [&] {
        std::vector<DueItem> items;
        auto lots =
            prepared(database, "SELECT runs.number, runs.title FROM lots JOIN runs ON runs.id = lots.run "
                               "WHERE lots.closed = 0 AND NOT EXISTS (SELECT 1 FROM readings "
                               "WHERE readings.lot = lots.id AND readings.refused = 0 "
                               "AND NOT EXISTS (SELECT 1 FROM struck WHERE reading = readings.id)) ORDER BY opened_ms");
        while (lots.executeStep()) {
            items.push_back({DueKind::firstReading, lots.getColumn(0).getInt64(), lots.getColumn(1).getString(), {}});
        }
        const auto firstInstrument = static_cast<std::ptrdiff_t>(items.size());
        for (const auto& one : bodies<InstrumentDescribed>(
                 database, "SELECT body FROM instruments WHERE withdrawn = 0 ORDER BY name, id")) {
            addDueOf(database, one, today, items);
        }
        std::stable_sort(items.begin() + firstInstrument, items.end(),
                         [](const DueItem& a, const DueItem& b) { return a.due < b.due; });
        return items;
    });
}

Result<std::vector<DryerDescribed>> dryers(const Database& database) {
    return asked("read dryers", [&] {
        return bodies<DryerDescribed>(database, "SELECT body FROM dryers WHERE withdrawn = 0 ORDER BY name, id");
    });
}

Result<std::optional<CrewChanged>> crewOfReading(const Database& database, const std::string& reading) {
    return asked("read the crew of a reading", [&] {
        return body<CrewChanged>(database,
                                 "SELECT body FROM crew WHERE sequence < (SELECT first FROM readings WHERE id = ?) "
                                 "ORDER BY sequence DESC LIMIT 1",
                                 reading);
    });
}

Result<std::optional<CrewChanged>> crew(const Database& database) {
    return asked("read the crew",
                 [&] { return body<CrewChanged>(database, "SELECT body FROM crew ORDER BY sequence DESC LIMIT 1"); });
}

Result<std::vector<PersonAdded>> people(const Database& database) {
    return asked("read the people", [&] {
        return bodies<PersonAdded>(database, "SELECT body FROM crew_people WHERE gone = 0 ORDER BY number");
    });
}

Result<std::optional<SettingValue>> setting(const Database& database, std::string_view key) {
    return asked("read a setting", [&]() -> std::optional<SettingValue> {
        auto found = body<SettingChanged>(database, "SELECT body FROM settings WHERE key = ?", key);
        return found ? std::optional{std::move(found->value)} : std::nullopt;
    });
}

Result<std::optional<BookOpened>> shop(const Database& database) {
    return asked("read the shop", [&] { return body<BookOpened>(database, "SELECT body FROM shop"); });
}

} // namespace holdfast::kiosk::records
