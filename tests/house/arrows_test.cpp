// Reads every #include of the tree and holds it against the arrows of DEVELOPERS.md: linking alone does not stop a
// header-only one.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

struct Include {
    std::string file;
    int line = 0;
    std::string target;
    bool quoted = false;
};

const fs::path kRoot{HOLDFAST_SOURCE_DIR};

std::vector<Include> includesUnder(const std::string& folder) {
    static const std::regex pattern{R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])"};
    std::vector<Include> found;
    for (const auto& item : fs::recursive_directory_iterator{kRoot / folder}) {
        const auto extension = item.path().extension();
        if (extension != ".hpp" && extension != ".cpp") {
            continue;
        }
        std::ifstream in{item.path()};
        std::string line;
        std::smatch match;
        for (int number = 1; std::getline(in, line); ++number) {
            if (std::regex_search(line, match, pattern)) {
                found.push_back({fs::relative(item.path(), kRoot).string(), number, match[2], match[1] == "\""});
            }
        }
    }
    return found;
}

bool startsWith(const std::string& text, const std::string& head) {
    return text.compare(0, head.size(), head) == 0;
}

/// The room a path belongs to: the longest name of `kRooms` that it starts with.
const std::map<std::string, std::set<std::string>> kMayUse = {
    {"analytics/quantity", {}},
    {"analytics/metrology", {"analytics/quantity"}},
    {"analytics/metrology/fixed_points", {"analytics/quantity", "analytics/metrology"}},
    {"analytics/cure", {"analytics/quantity", "analytics/metrology"}},
    {"analytics/lots", {"analytics/quantity", "analytics/metrology", "analytics/cure"}},
    {"drivers/clock", {}},
    {"drivers/protocol", {"drivers/clock", "drivers/link"}},
    {"drivers/catalogue", {"drivers/clock", "drivers/protocol", "drivers/link"}},
    {"drivers/link", {"drivers/clock", "drivers/protocol", "drivers/catalogue"}},
    {"drivers/simulated", {"drivers/clock", "drivers/protocol", "drivers/catalogue", "drivers/link"}},
    {"kiosk/ledger", {}},
    {"kiosk/records", {"kiosk/ledger", "analytics", "drivers/clock"}},
    {"kiosk/wording", {"kiosk/shop", "kiosk/records", "kiosk/ledger", "drivers", "analytics"}},
    {"kiosk/shop", {"kiosk/records", "kiosk/ledger", "drivers", "analytics"}},
    {"kiosk/demo", {"kiosk/shop", "kiosk/records", "kiosk/ledger", "drivers", "analytics"}},
    {"kiosk/reports",
     {"kiosk/screens/charts", "kiosk/shop", "kiosk/records", "kiosk/ledger", "kiosk/wording", "drivers", "analytics"}},
    {"kiosk/command",
     {"kiosk/shop", "kiosk/records", "kiosk/ledger", "kiosk/wording", "kiosk/screens", "kiosk/reports", "kiosk/demo",
      "drivers", "analytics"}},
    {"kiosk/screens",
     {"kiosk/shop", "kiosk/records", "kiosk/ledger", "kiosk/wording", "kiosk/reports", "drivers", "analytics"}},
    {"kiosk/screens/charts", {"kiosk/screens/parts"}},
    {"kiosk/screens/tour",
     {"kiosk/screens", "kiosk/demo", "kiosk/shop", "kiosk/records", "kiosk/ledger", "drivers", "analytics"}},
};

std::string roomOf(const std::string& path) {
    std::string best;
    for (const auto& [room, uses] : kMayUse) {
        if (startsWith(path, room + "/") && room.size() > best.size()) {
            best = room;
        }
    }
    return best;
}

bool allowed(const std::string& room, const std::string& target) {
    if (startsWith(target, room + "/")) {
        return true;
    }
    for (const auto& use : kMayUse.at(room)) {
        if (startsWith(target, use + "/")) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("every include of ours follows the arrows between the rooms", "[house]") {
    std::size_t seen = 0;
    for (const std::string floor : {"analytics", "drivers", "kiosk"}) {
        for (const auto& include : includesUnder(floor)) {
            const bool ours = startsWith(include.target, "analytics/") || startsWith(include.target, "drivers/") ||
                              startsWith(include.target, "kiosk/");
            const std::string room = roomOf(include.file);
            if (!ours || room.empty()) {
                continue; // kiosk/main.cpp composes: it may see everything
            }
            ++seen;
            INFO(include.file << ":" << include.line << " includes " << include.target);
            CHECK(allowed(room, include.target));
        }
    }
    REQUIRE(seen > 20);
}

TEST_CASE("a room of the use cases sees no other but what reads typed texts", "[house]") {
    std::size_t seen = 0;
    const std::string shop = "kiosk/shop/";
    for (const auto& include : includesUnder("kiosk/shop")) {
        if (!startsWith(include.target, shop)) {
            continue;
        }
        ++seen;
        const auto own = include.file.substr(0, include.file.find('/', shop.size()) + 1);
        INFO(include.file << ":" << include.line << " includes " << include.target);
        CHECK((startsWith(include.target, own) || startsWith(include.target, shop + "typed/")));
    }
    REQUIRE(seen > 20);
}

TEST_CASE("includes of ours are written from the repository's root", "[house]") {
    for (const std::string floor : {"analytics", "drivers", "kiosk"}) {
        for (const auto& include : includesUnder(floor)) {
            if (include.quoted) {
                INFO(include.file << ":" << include.line << " includes " << include.target);
                const bool generated = include.target.find(".moc") != std::string::npos;
                CHECK((generated || fs::exists(kRoot / include.target)));
            }
        }
    }
}

TEST_CASE("the ground floor and the ledger know no Qt", "[house]") {
    static const std::regex qt{R"(^(Q[A-Z]\w*|Qt\w+/.*)$)"};
    for (const std::string room : {"analytics", "kiosk/ledger", "drivers/clock"}) {
        for (const auto& include : includesUnder(room)) {
            INFO(include.file << ":" << include.line << " includes " << include.target);
            CHECK_FALSE(std::regex_match(include.target, qt));
        }
    }
}

TEST_CASE("SQL is the ledger's and the records' alone", "[house]") {
    for (const std::string floor : {"analytics", "drivers", "kiosk"}) {
        for (const auto& include : includesUnder(floor)) {
            const bool sql = startsWith(include.target, "SQLiteCpp") || include.target == "sqlite3.h";
            if (sql) {
                INFO(include.file << ":" << include.line);
                CHECK((startsWith(include.file, "kiosk/ledger/") || startsWith(include.file, "kiosk/records/")));
            }
        }
    }
}

TEST_CASE("only the clock's own room reads time", "[house]") {
    static const std::regex reading{
        R"((steady_clock|system_clock|high_resolution_clock)::now|QDateTime::current|QElapsedTimer|clock_gettime|gettimeofday)"};
    for (const std::string floor : {"analytics", "drivers", "kiosk"}) {
        for (const auto& item : fs::recursive_directory_iterator{kRoot / floor}) {
            const auto path = fs::relative(item.path(), kRoot).string();
            const auto extension = item.path().extension();
            if ((extension != ".hpp" && extension != ".cpp") || startsWith(path, "drivers/clock/")) {
                continue;
            }
            std::ifstream in{item.path()};
            std::string line;
            for (int number = 1; std::getline(in, line); ++number) {
                INFO(path << ":" << number << ": " << line);
                CHECK_FALSE(std::regex_search(line, reading));
            }
        }
    }
}
