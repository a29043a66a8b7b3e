#pragma once

#include "kiosk/records/run_on_file.hpp"

#include <SQLiteCpp/Database.h>
#include <optional>

/// The inside that the queries about runs and prints share; what SQLite throws goes through.
namespace holdfast::kiosk::records {

/// From the run's plan: layers, cloth and revisions, as the run's lot was opened with them if it has one. A layer that
/// cannot be made from what is in the book has an ink without families, and the run is not usable.
void fillLayers(const SQLite::Database& database, RunOnFile& run, const std::optional<Moment>& now);

} // namespace holdfast::kiosk::records
