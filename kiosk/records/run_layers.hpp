#pragma once

#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/stock_queries.hpp"

#include <SQLiteCpp/Database.h>
#include <map>
#include <optional>
#include <string>
#include <utility>

/// The inside that the queries about runs and prints share; what SQLite throws goes through.
namespace holdfast::kiosk::records {

/// Inks and buckets that layers are made of, each looked up once. For one question: what is changed meanwhile it does
/// not see.
class LayerMemory final {
public:
    struct Family final {
        int revision = 0;
        analytics::InkFamily ink{};
    };
    explicit LayerMemory(const SQLite::Database& database) : m_database{database} {}
    /// Without a revision the newest; nothing if there is none of that name.
    [[nodiscard]] const std::optional<Family>& family(const std::string& name, std::optional<int> revision);
    [[nodiscard]] const std::optional<BucketTree>& tree(std::int64_t bucket);

private:
    const SQLite::Database& m_database;
    std::map<std::pair<std::string, std::optional<int>>, std::optional<Family>> m_families;
    std::map<std::int64_t, std::optional<BucketTree>> m_trees;
};

/// The layers of the run's plan with their inks; what fillLayers() says of them, without the cloth.
void fillInks(LayerMemory& memory, RunOnFile& run, const std::optional<Moment>& now);

/// From the run's plan: layers, cloth and revisions, as the run's lot was opened with them if it has one. A layer that
/// cannot be made from what is in the book has an ink without families, and the run is not usable.
void fillLayers(const SQLite::Database& database, RunOnFile& run, const std::optional<Moment>& now);

} // namespace holdfast::kiosk::records
