#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/uuid.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <optional>
#include <sched.h>
#include <stdexcept>
#include <string>
#include <sys/mount.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

namespace holdfast::kiosk::ledger::test {

/// An empty folder that goes with the test; others may look into it.
class TemporaryFolder {
public:
    TemporaryFolder() {
        std::string pattern = (std::filesystem::temp_directory_path() / "ledger-XXXXXX").string();
        if (::mkdtemp(pattern.data()) == nullptr) {
            throw std::runtime_error{"no temporary folder"};
        }
        m_path = pattern;
        std::filesystem::permissions(m_path, std::filesystem::perms{0755});
    }
    ~TemporaryFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

/// Counts entries by kind, and keeps one number of each.
class TallyProjection : public Projection {
public:
    explicit TallyProjection(int version = 1) : m_version(version) {}

    [[nodiscard]] int version() const override { return m_version; }
    [[nodiscard]] std::string_view schema() const override {
        return "CREATE TABLE tally (kind TEXT PRIMARY KEY, entries INTEGER NOT NULL) STRICT;"
               "CREATE TABLE lengths (sequence INTEGER PRIMARY KEY, kind TEXT NOT NULL REFERENCES tally (kind),"
               "                      length REAL NOT NULL, person INTEGER) STRICT;"
               "CREATE INDEX lengths_by_kind ON lengths (kind);"
               "CREATE VIEW totals AS SELECT kind, sum(length) AS length FROM lengths GROUP BY kind;";
    }
    void apply(SQLite::Database& database, const Entry& entry) const override {
        if (entry.kind == "poison") {
            throw std::runtime_error{"the projection does not want this"};
        }
        SQLite::Statement tally{database, "INSERT INTO tally VALUES (?, 1) "
                                          "ON CONFLICT (kind) DO UPDATE SET entries = entries + 1"};
        tally.bind(1, entry.kind);
        tally.exec();
        SQLite::Statement length{database, "INSERT INTO lengths VALUES (?, ?, ?, nullif(?, 0))"};
        length.bind(1, entry.sequence);
        length.bind(2, entry.kind);
        length.bind(3, static_cast<double>(entry.body.size()) / 3.0);
        length.bind(4, entry.person);
        length.exec();
    }
    [[nodiscard]] std::vector<std::string> tables() const override { return {"tally", "lengths", "totals"}; }

private:
    int m_version;
};

inline std::shared_ptr<const Projection> tally(int version = 1) {
    return std::make_shared<TallyProjection>(version);
}

inline constexpr std::int64_t firstWall = 1'700'000'000'000;

/// The n-th draft: its id and its time follow from n.
inline EntryDraft draft(std::uint64_t n, const std::string& kind = "thing.done") {
    EntryDraft made;
    made.id = uuid7(static_cast<std::uint64_t>(firstWall) + n, UuidRandom{});
    made.kiosk = "kiosk-1";
    made.wallMilliseconds = firstWall + static_cast<std::int64_t>(n);
    made.utcOffsetMinutes = -300;
    made.person = static_cast<std::int64_t>(n % 3);
    made.kind = kind;
    made.body = R"({"n":)" + std::to_string(n) + "}";
    return made;
}

inline CommitRequest request(std::uint64_t n, const std::string& kind = "thing.done") {
    CommitRequest made;
    made.entries.push_back(draft(n, kind));
    return made;
}

/// The code's name, or "done".
template <class T>
std::string outcome(const Result<T>& result) {
    return result ? "done" : std::string{nameOf(result.error().code)};
}

template <class T>
T must(Result<T> result) {
    if (!result) {
        FAIL(nameOf(result.error().code) << ": " << result.error().what);
    }
    return std::move(*result);
}

inline void must(const Result<void>& result) {
    if (!result) {
        FAIL(nameOf(result.error().code) << ": " << result.error().what);
    }
}

inline std::unique_ptr<Book> openBook(const std::filesystem::path& folder, OpenMode mode = OpenMode::readWrite) {
    return must(Book::open(folder, tally(), mode));
}

/// Entries 1 to `count`, one commit each.
inline void fill(Book& book, std::uint64_t count) {
    for (std::uint64_t n = 1; n <= count; ++n) {
        must(book.commit(request(n)));
    }
}

/// A book of that many entries in the folder.
inline void makeBook(const std::filesystem::path& folder, std::uint64_t entries) {
    const auto book = openBook(folder);
    fill(*book, entries);
}

inline void write(const std::filesystem::path& file, const std::string& content) {
    std::ofstream{file, std::ios::binary | std::ios::trunc} << content;
}

/// A connection past the ledger, as someone with a database tool has.
inline SQLite::Database rawDatabase(const std::filesystem::path& folder) {
    return SQLite::Database{(folder / Book::fileName).string(), SQLite::OPEN_READWRITE};
}

/// Runs the work in a child process without rights of its own, so that file permissions count for root too; gives what
/// the work gave (0 to 255).
template <class Work>
int asNobody(Work&& work) {
    const pid_t child = ::fork();
    if (child == 0) {
        if (::geteuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) {
            ::_exit(255);
        }
        ::_exit(work());
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 254;
}

/// Runs the work in a child process that may mount what nobody else sees; nothing where the system forbids that.
template <class Work>
std::optional<int> withOwnMounts(Work&& work) {
    constexpr int forbidden = 253;
    const pid_t child = ::fork();
    if (child == 0) {
        const int user = ::geteuid() == 0 ? 0 : CLONE_NEWUSER;
        if (::unshare(CLONE_NEWNS | user) != 0 || ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0) {
            ::_exit(forbidden);
        }
        ::_exit(work());
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 254;
    return code == forbidden ? std::nullopt : std::optional{code};
}

} // namespace holdfast::kiosk::ledger::test
