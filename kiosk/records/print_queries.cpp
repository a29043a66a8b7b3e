#include "kiosk/records/open_queries.hpp"
#include "kiosk/records/run_layers.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/under_test.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>
#include <map>

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;

constexpr const char* kSelect =
    "SELECT p.body, p.named_ms, p.ended, r.number, r.title, r.fabric, json_extract(r.body, '$.garment_colour'), "
    "l.number, l.state, json_extract(r.body, '$.layers'), json_extract(l.body, '$.revisions.families'), r.body, l.body "
    "FROM prints p LEFT JOIN runs r ON r.id = p.run LEFT JOIN lots l ON l.id = p.lot ";
enum Column {
    kNamed,
    kNamedAt,
    kEnded,
    kRun,
    kTitle,
    kFabric,
    kGarment,
    kLot,
    kState,
    kLayers,
    kRevisions,
    kRunBody,
    kLotBody
};

/// Rows of prints, in one question. What layers and revisions come to is looked up once for all prints that have the
/// same: shops print the same again and again.
class PrintRows final {
public:
    explicit PrintRows(const Database& database) : m_database{database}, m_memory{database} {}

    /// Prints are p.
    template <class... Values>
    [[nodiscard]] std::vector<PrintRow> where(const char* where, const Values&... values) {
        std::vector<PrintRow> rows;
        auto query = prepared(m_database, joined({kSelect, where}).c_str(), values...);
        while (query.executeStep()) {
            PrintRow row = printedLike(query);
            row.named = storedBody<PrintNamed>(query.getColumn(kNamed).getString());
            row.namedAt = query.getColumn(kNamedAt).getInt64();
            row.ended = fromWord<PrintEnd>(textAt(query, kEnded).value_or(""));
            row.runNumber = query.getColumn(kRun).getInt64();
            row.runTitle = textAt(query, kTitle).value_or("");
            row.fabric = textAt(query, kFabric).value_or("");
            row.garmentColour = textAt(query, kGarment).value_or("");
            row.lotNumber = query.getColumn(kLot).getInt();
            row.lotState = fromWord<LotState>(textAt(query, kState).value_or("")).value_or(row.lotState);
            rows.push_back(std::move(row));
        }
        return rows;
    }

private:
    /// Layers, chemistries and rest only.
    const PrintRow& printedLike(SQLite::Statement& query) {
        const auto key = textAt(query, kLayers).value_or("") + '\n' + textAt(query, kRevisions).value_or("");
        const auto known = m_known.find(key);
        return known != m_known.end() ? known->second : m_known.emplace(key, look(query)).first->second;
    }

    PrintRow look(SQLite::Statement& query) {
        RunOnFile onFile;
        if (const auto body = textAt(query, kRunBody)) {
            onFile.plan = storedBody<RunPlanned>(*body);
        }
        if (const auto body = textAt(query, kLotBody)) {
            onFile.lot.emplace().revisions = storedBody<LotOpened>(*body).revisions;
        }
        fillInks(m_memory, onFile, std::nullopt);
        PrintRow row;
        row.layers = onFile.plan.layers;
        for (const auto& layer : onFile.layers.layers) {
            addInk(row, layer.ink);
        }
        return row;
    }

    static void addInk(PrintRow& row, const analytics::Ink& ink) {
        for (const auto& family : ink.parts) {
            if (std::find(row.chemistries.begin(), row.chemistries.end(), family.chemistry) == row.chemistries.end()) {
                row.chemistries.push_back(family.chemistry);
            }
        }
        constexpr double kSecondsPerHour = 3600.0;
        if (!ink.parts.empty() && ink.requirement.restBeforeTest) {
            row.restHours = std::max(row.restHours, ink.requirement.restBeforeTest->count() / kSecondsPerHour);
        }
    }

    const Database& m_database;
    LayerMemory m_memory;
    std::map<std::string, PrintRow> m_known; ///< by layers and revisions
};

std::optional<PrintRow> first(std::vector<PrintRow> rows) {
    return rows.empty() ? std::nullopt : std::optional{std::move(rows.front())};
}

} // namespace

Result<std::optional<PrintRow>> printByNumber(const Database& database, std::int64_t number) {
    return asked("look up a print", [&] { return first(PrintRows{database}.where("WHERE p.number = ?", number)); });
}

Result<std::optional<PrintRow>> printById(const Database& database, const std::string& print) {
    return asked("look up a print", [&] { return first(PrintRows{database}.where("WHERE p.id = ?", print)); });
}

Result<std::vector<PrintRow>> printsOfRun(const Database& database, const std::string& run) {
    return asked("read the prints of a run",
                 [&] { return PrintRows{database}.where("WHERE p.run = ? ORDER BY p.number", run); });
}

Result<std::vector<PrintRow>> openPrints(const Database& database, int limit) {
    return asked("read the prints", [&] {
        return PrintRows{database}.where("WHERE p.ended IS NULL ORDER BY p.sequence DESC LIMIT ?", limit);
    });
}

Result<std::vector<PrintRow>> printsUnderTest(const Database& database, int limit) {
    return asked("read the prints under test", [&] {
        return PrintRows{database}.where(joined({"WHERE ", kUnderTest}).c_str(), limit);
    });
}

Result<std::vector<PrintRow>> retainedPrints(const Database& database) {
    return asked("read the retained prints", [&] {
        return PrintRows{database}.where("WHERE p.shelf IS NOT NULL AND p.ended IS NULL ORDER BY p.shelf, p.number");
    });
}

Result<std::int64_t> nextPrint(const Database& database) {
    return asked("look for the next number", [&] {
        auto query = prepared(database, "SELECT coalesce(max(number), 0) + 1 FROM prints");
        return query.executeStep() ? query.getColumn(0).getInt64() : 1;
    });
}

} // namespace holdfast::kiosk::records
