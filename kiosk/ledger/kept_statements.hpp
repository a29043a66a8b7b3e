#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

namespace holdfast::kiosk::ledger {

/// Statements of one connection that are kept between uses: preparing the few that an entry needs takes longer than
/// running them. They must be gone before their connection is.
///
/// Threads: used by one at a time, the one that writes (see Use).
class KeptStatements final {
public:
    explicit KeptStatements(SQLite::Database& database) : m_database{database} {}
    KeptStatements(const KeptStatements&) = delete;
    KeptStatements& operator=(const KeptStatements&) = delete;

    /// While it lives, what this thread prepares for the connection is taken from `kept` and put back there.
    class Use final {
    public:
        explicit Use(KeptStatements& kept) : m_before{std::exchange(s_inUse, &kept)} {}
        ~Use() { s_inUse = m_before; }
        Use(const Use&) = delete;
        Use& operator=(const Use&) = delete;

    private:
        KeptStatements* m_before;
    };

private:
    friend class KeptStatement;

    struct Hash final {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const noexcept { return std::hash<std::string_view>{}(text); }
    };
    using Idle = std::unordered_map<std::string, SQLite::Statement, Hash, std::equal_to<>>; ///< by text

    SQLite::Database& m_database;
    Idle m_idle;
    static inline thread_local KeptStatements* s_inUse = nullptr;
};

/// A statement with nothing bound. Where statements are kept, it is taken out for as long as this lives, so that the
/// same text in use twice is two statements; elsewhere it is an ordinary one. Does not outlive the Use.
class KeptStatement final : public SQLite::Statement {
public:
    KeptStatement(const SQLite::Database& database, const char* sql)
        : KeptStatement{homeFor(database), database, sql} {}
    ~KeptStatement() {
        if (m_home != nullptr) {
            putBack();
        }
    }
    KeptStatement(KeptStatement&& other) noexcept
        : Statement{std::move(other)}, m_home{std::exchange(other.m_home, nullptr)}, m_place{std::move(other.m_place)} {
    }
    KeptStatement(const KeptStatement&) = delete;
    KeptStatement& operator=(const KeptStatement&) = delete;
    KeptStatement& operator=(KeptStatement&&) = delete;

private:
    using Place = KeptStatements::Idle::node_type; ///< where it stood, with its text; empty: it is new

    KeptStatement(KeptStatements* home, const SQLite::Database& database, const char* sql)
        : KeptStatement{home, home != nullptr ? takenFrom(*home, sql) : Place{}, database, sql} {}
    KeptStatement(KeptStatements* home, Place place, const SQLite::Database& database, const char* sql)
        : Statement{place.empty() ? Statement{database, sql} : std::move(place.mapped())}, m_home{home},
          m_place{std::move(place)} {}

    static KeptStatements* homeFor(const SQLite::Database& database) noexcept {
        KeptStatements* inUse = KeptStatements::s_inUse;
        return inUse != nullptr && &inUse->m_database == &database ? inUse : nullptr;
    }
    static Place takenFrom(KeptStatements& home, std::string_view sql) {
        const auto idle = home.m_idle.find(sql);
        return idle == home.m_idle.end() ? Place{} : home.m_idle.extract(idle);
    }
    void putBack() noexcept;

    KeptStatements* m_home;
    Place m_place;
};

} // namespace holdfast::kiosk::ledger
