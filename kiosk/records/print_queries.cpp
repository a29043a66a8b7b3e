#include "kiosk/records/lot_rows.hpp"
#include "kiosk/records/run_layers.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>
#include <map>

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;

/// Rows of prints; what a lot was printed with is looked up once for all its prints.
class PrintRows final {
public:
    explicit PrintRows(const Database& database) : m_database{database} {}

    template <class... Values>
    [[nodiscard]] std::vector<PrintRow> where(const char* where, const Values&... values) {
        std::vector<PrintRow> rows;
        auto query =
            prepared(m_database, joined({"SELECT body, named_ms, ended FROM prints ", where}).c_str(), values...);
        while (query.executeStep()) {
            auto named = storedBody<PrintNamed>(query.getColumn(0).getString());
            PrintRow row = ofLot(named);
            row.named = std::move(named);
            row.namedAt = query.getColumn(1).getInt64();
            row.ended = fromWord<PrintEnd>(textAt(query, 2).value_or(""));
            rows.push_back(std::move(row));
        }
        return rows;
    }

private:
    const PrintRow& ofLot(const PrintNamed& named) {
        const auto known = m_lots.find(named.lot);
        return known != m_lots.end() ? known->second : m_lots.emplace(named.lot, look(named)).first->second;
    }

    PrintRow look(const PrintNamed& named) const {
        RunOnFile run;
        run.plan = body<RunPlanned>(m_database, "SELECT body FROM runs WHERE id = ?", named.run).value_or(RunPlanned{});
        for (auto& lot : lotRows(m_database, "WHERE lots.id = ?", named.lot)) {
            run.lot = std::move(lot);
        }
        fillLayers(m_database, run, std::nullopt);
        PrintRow row;
        row.runNumber = run.plan.number;
        row.runTitle = run.plan.title;
        row.fabric = run.plan.fabric;
        row.garmentColour = run.plan.garmentColour;
        row.lotNumber = run.lot ? run.lot->number : 0;
        row.lotState = run.lot ? run.lot->state : LotState::open;
        row.layers = run.plan.layers;
        for (const auto& layer : run.layers.layers) {
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
    std::map<std::string, PrintRow> m_lots;
};

std::optional<PrintRow> first(std::vector<PrintRow> rows) {
    return rows.empty() ? std::nullopt : std::optional{std::move(rows.front())};
}

} // namespace

Result<std::optional<PrintRow>> printByNumber(const Database& database, std::int64_t number) {
    return asked("look up a print", [&] { return first(PrintRows{database}.where("WHERE number = ?", number)); });
}

Result<std::optional<PrintRow>> printById(const Database& database, const std::string& print) {
    return asked("look up a print", [&] { return first(PrintRows{database}.where("WHERE id = ?", print)); });
}

Result<std::vector<PrintRow>> printsOfRun(const Database& database, const std::string& run) {
    return asked("read the prints of a run",
                 [&] { return PrintRows{database}.where("WHERE run = ? ORDER BY number", run); });
}

Result<std::vector<PrintRow>> openPrints(const Database& database, int limit) {
    return asked("read the prints", [&] {
        return PrintRows{database}.where("WHERE ended IS NULL ORDER BY sequence DESC LIMIT ?", limit);
    });
}

Result<std::vector<PrintRow>> retainedPrints(const Database& database) {
    return asked("read the retained prints", [&] {
        return PrintRows{database}.where("WHERE shelf IS NOT NULL AND ended IS NULL ORDER BY shelf, number");
    });
}

Result<std::int64_t> nextPrint(const Database& database) {
    return asked("look for the next number", [&] {
        auto query = prepared(database, "SELECT coalesce(max(number), 0) + 1 FROM prints");
        return query.executeStep() ? query.getColumn(0).getInt64() : 1;
    });
}

} // namespace holdfast::kiosk::records
