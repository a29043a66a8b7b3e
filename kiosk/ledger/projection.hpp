#pragma once

#include "kiosk/ledger/entry.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace SQLite {
class Database;
}

namespace holdfast::kiosk::ledger {

/// How entries become read tables. The ledger knows no trade: the rooms above hand this in.
///
/// The tables must follow from the entries alone, in order: a check applies all of them to an empty database that has
/// nothing but schema(), and compares. So no projection reads entries, blobs, persons, a clock or chance, and its
/// foreign keys name its own tables only.
class Projection {
public:
    virtual ~Projection() = default;

    /// Raise it with every change to schema() or apply(): an older book is then rebuilt when it is opened, and a book
    /// with a higher number is opened read-only as newer.
    [[nodiscard]] virtual int version() const = 0;
    /// SQL that creates every table, index and view; STRICT tables.
    [[nodiscard]] virtual std::string_view schema() const = 0;
    /// Called inside the transaction that stores the entry. Throws (SQLite::Exception or any std::exception) to refuse
    /// the entry; then nothing of the request is stored. Entries of kinds it does not know it must pass over.
    virtual void apply(SQLite::Database& database, const Entry& entry) const = 0;
    /// Names of all tables and views that schema() creates; dropped in reverse order on a rebuild.
    [[nodiscard]] virtual std::vector<std::string> tables() const = 0;
};

/// No read tables.
class NoProjection final : public Projection {
public:
    [[nodiscard]] int version() const override { return 0; }
    [[nodiscard]] std::string_view schema() const override { return {}; }
    void apply(SQLite::Database&, const Entry&) const override {}
    [[nodiscard]] std::vector<std::string> tables() const override { return {}; }
};

} // namespace holdfast::kiosk::ledger
