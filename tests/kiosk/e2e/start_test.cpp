// What a start says when it cannot be one.
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/rig.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace holdfast::tests;
using Catch::Matchers::Contains;

namespace {

/// The sentence on standard error; the window with the same words stays until it is closed.
std::string startFailureOf(const std::filesystem::path& data) {
    KioskProcess kiosk{{QStringLiteral("--demo"), QStringLiteral("--data"), text(data)}};
    const auto complete = [&] { return kiosk.said().find("The book is as it was.") != std::string::npos; };
    REQUIRE(eventually([&] { return complete() || !kiosk.alive(); }));
    CHECK(kiosk.alive());
    return kiosk.said();
}

} // namespace

TEST_CASE("a data folder that is a file, or lies under one, is told in a sentence", "[e2e]") {
    const TemporaryFolder folder;
    const auto file = folder.path() / "not-a-folder";
    std::ofstream{file} << "mine";
    for (const auto& data : {file, file / "book"}) {
        INFO(data);
        CHECK_THAT(startFailureOf(data), Contains("The data folder is missing and could not be made."));
    }
    std::ifstream in{file};
    std::string kept;
    in >> kept;
    CHECK(kept == "mine");
}

TEST_CASE("wrong options end at once with 2 and a sentence, and make no book", "[e2e]") {
    const TemporaryFolder folder;
    const auto data = folder.path() / "data";
    for (const QStringList& wrong :
         {QStringList{QStringLiteral("--no-such-option")}, QStringList{QStringLiteral("--speed"), QStringLiteral("0")},
          QStringList{QStringLiteral("--speed"), QStringLiteral("nan")},
          QStringList{QStringLiteral("--panel-inch"), QStringLiteral("-nan")},
          QStringList{QStringLiteral("--panel-inch"), QStringLiteral("huge")},
          QStringList{QStringLiteral("no-command")}, QStringList{QStringLiteral("--probe-port")}}) {
        INFO(wrong.join(QLatin1Char{' '}).toStdString());
        const auto ended = runToEnd(QStringList{QStringLiteral("--data"), text(data)} + wrong);
        CHECK(ended.status == 2);
        CHECK_FALSE(ended.err.empty());
        CHECK_FALSE(std::filesystem::exists(data));
    }
}

TEST_CASE("help ends with 0 and names what the kiosk can be told", "[e2e]") {
    const auto help = runToEnd({QStringLiteral("--help")});
    CHECK(help.status == 0);
    CHECK(help.err.empty());
    for (const char* word : {"--data", "--demo", "--probe-port", "--scanner-port", "judge", "facts", "check-book",
                             "backup", "restore", "pictures"}) {
        CHECK_THAT(help.out, Contains(word));
    }
}

TEST_CASE("commands on a folder without a book say so with 2", "[e2e]") {
    const TemporaryFolder folder;
    for (const char* command : {"check-book", "backup", "restore"}) {
        INFO(command);
        QStringList arguments{QString::fromLatin1(command)};
        if (arguments.front() != QLatin1String("check-book")) {
            arguments << text(folder.path() / "copy.sqlite");
        }
        const auto ended = runToEnd(arguments + QStringList{QStringLiteral("--data"), text(folder.path() / "none")});
        CHECK(ended.status == 2);
        CHECK_THAT(ended.err, Contains("."));
        CHECK_FALSE(std::filesystem::exists(folder.path() / "copy.sqlite"));
    }
}
