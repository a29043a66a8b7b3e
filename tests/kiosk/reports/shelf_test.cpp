#include "kiosk/reports/printing/keep_pdf.hpp"
#include "kiosk/reports/printing/print_command.hpp"
#include "kiosk/reports/printing/print_shelf.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/samples.hpp"

#include <catch2/catch.hpp>

#include <QDir>
#include <QEventLoop>
#include <QFile>
#include <QTimer>
#include <cerrno>
#include <cstdlib>

using namespace holdfast;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;

namespace {

namespace fs = std::filesystem;

/// A folder for the shelf and one that is the whole PATH, with a false `lp` in it.
class Desk final {
public:
    Desk() : m_path(qgetenv("PATH")) {
        withFonts();
        QDir(m_folder.path()).mkdir(QStringLiteral("bin"));
        qputenv("PATH", QFile::encodeName(m_folder.filePath(QStringLiteral("bin"))));
        settings.folder = (m_folder.path() + QStringLiteral("/data/print")).toStdString();
    }
    ~Desk() { qputenv("PATH", m_path); }
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    void lp(const QByteArray& script) {
        QFile file(m_folder.filePath(QStringLiteral("bin/lp")));
        REQUIRE(file.open(QIODevice::WriteOnly));
        file.write("#!/bin/sh\n" + script);
        file.close();
        REQUIRE(file.setPermissions(QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner));
    }

    PrintOutcome print() {
        PrintShelf shelf(settings);
        return print(shelf);
    }

    PrintOutcome print(PrintShelf& shelf) {
        const auto report = runTicket(openRun(), {});
        REQUIRE(report);
        std::optional<PrintOutcome> outcome;
        QEventLoop loop;
        shelf.print(*report, [&](const PrintOutcome& got) {
            outcome = got;
            loop.quit();
        });
        CHECK_FALSE(outcome); // never before the event loop turns
        QTimer::singleShot(60'000, &loop, &QEventLoop::quit);
        loop.exec();
        REQUIRE(outcome);
        return *outcome;
    }

    [[nodiscard]] QString path(const char* name) const { return m_folder.filePath(QString::fromLatin1(name)); }

    PrintSettings settings{};

private:
    QTemporaryDir m_folder;
    QByteArray m_path;
};

bool isPdf(const fs::path& path) {
    QFile file(QString::fromStdString(path.string()));
    return file.open(QIODevice::ReadOnly) && file.read(5) == "%PDF-";
}

} // namespace

TEST_CASE("without a printer the PDF is kept under a speaking name", "[reports]") {
    Desk desk;
    const auto outcome = desk.print();
    REQUIRE(outcome.kept);
    CHECK(outcome.kept->filename() == "run-20418-ticket.pdf");
    CHECK(isPdf(*outcome.kept));
    CHECK_FALSE(outcome.sent);
    REQUIRE(outcome.fault);
    CHECK(outcome.fault->cause == ReportCause::noPrinterSet);
    CHECK(outcome.fault->file == outcome.kept->string());
    CHECK(QDir(desk.path("data/print")).entryList(QDir::Files).size() == 1); // no half file beside it
}

TEST_CASE("the printer gets the file's name as one argument, whatever stands in it", "[reports]") {
    Desk desk;
    desk.settings.folder = desk.path("a b; touch $(c) 'd").toStdString();
    desk.settings.printer = "label;$(reboot)";
    desk.lp("for one in \"$@\"; do echo \"[$one]\"; done > \"" + QFile::encodeName(desk.path("asked")) + "\"\n");
    const auto outcome = desk.print();
    CHECK(outcome.sent);
    CHECK_FALSE(outcome.fault);
    QFile asked(desk.path("asked"));
    REQUIRE(asked.open(QIODevice::ReadOnly));
    CHECK(asked.readAll().toStdString() ==
          "[-d]\n[label;$(reboot)]\n[--]\n[" + desk.settings.folder.string() + "/run-20418-ticket.pdf]\n");
}

TEST_CASE("each way in which printing fails has its cause, and the PDF stays", "[reports]") {
    Desk desk;
    desk.settings.printer = "label-1";
    auto cause = [&] {
        const auto outcome = desk.print();
        REQUIRE(outcome.kept);
        CHECK(isPdf(*outcome.kept));
        CHECK_FALSE(outcome.sent);
        REQUIRE(outcome.fault);
        CHECK(outcome.fault->printer == "label-1");
        CHECK(outcome.fault->file == outcome.kept->string());
        return outcome.fault->cause;
    };
    CHECK(cause() == ReportCause::noPrintProgram);
    // the sentences of CUPS 2.4's lp
    desk.lp("echo 'lp: The printer or class does not exist.' >&2; exit 1\n");
    CHECK(cause() == ReportCause::printerUnknown);
    desk.lp("echo 'lp: Destination \"label-1\" is not accepting jobs.' >&2; exit 1\n");
    CHECK(cause() == ReportCause::spoolRefused);
    desk.lp("echo 'lp: Error - The scheduler is not responding.' >&2; exit 1\n");
    CHECK(cause() == ReportCause::spoolRefused);
    desk.lp("kill -9 $$\n");
    CHECK(cause() == ReportCause::spoolRefused);
    desk.lp("while :; do :; done\n");
    desk.settings.patience = std::chrono::milliseconds{100};
    CHECK(cause() == ReportCause::noAnswer);
}

TEST_CASE("a name that is no printer's is never handed on", "[reports]") {
    for (const auto* name : {"", "-o", "a b", "a/b", "a#b", "a'b", "a\nb", "\xC3\xA9"}) {
        INFO(name);
        CHECK_FALSE(isPrinterName(QString::fromUtf8(name)));
    }
    CHECK(isPrinterName(QStringLiteral("Label_printer-2")));
    CHECK_FALSE(isPrinterName(QString(128, u'a')));
    Desk desk;
    desk.lp("exit 0\n");
    desk.settings.printer = "--help";
    const auto outcome = desk.print();
    REQUIRE(outcome.fault);
    CHECK(outcome.fault->cause == ReportCause::printerUnknown);
}

TEST_CASE("a folder that cannot take the file is told by its cause, and leaves no half file", "[reports]") {
    Desk desk;
    fs::create_directories(desk.settings.folder);
    // every byte written to /dev/full fails for want of room (full(4))
    fs::create_symlink("/dev/full", desk.settings.folder / "run-20418-ticket.pdf.part");
    auto outcome = desk.print();
    REQUIRE(outcome.fault);
    CHECK(outcome.fault->cause == ReportCause::folderFull);
    CHECK_FALSE(outcome.kept);
    CHECK(fs::is_empty(desk.settings.folder));

    desk.settings.folder = "/dev/null/print";
    outcome = desk.print();
    REQUIRE(outcome.fault);
    CHECK(outcome.fault->cause == ReportCause::folderFailed);
    // root may write anywhere, so a folder that forbids it is asked by its error alone
    for (const int error : {EROFS, EACCES}) {
        CHECK(faultFrom(kiosk::ledger::failureFromErrno(error, "open"), "x").cause == ReportCause::folderReadOnly);
    }
}

TEST_CASE("the same report again replaces its file, and many at once all arrive", "[reports]") {
    Desk desk;
    PrintShelf shelf(desk.settings);
    const auto first = desk.print(shelf);
    const auto second = desk.print(shelf);
    CHECK(first.kept == second.kept);
    int answers = 0;
    QEventLoop loop;
    for (int i = 0; i < 20; ++i) {
        auto label = bucket("red");
        label.number = 500 + i;
        const auto report = bucketLabel(label, {});
        REQUIRE(report);
        shelf.print(*report, [&](const PrintOutcome& outcome) {
            CHECK(outcome.kept);
            if (++answers == 20) {
                loop.quit();
            }
        });
    }
    QTimer::singleShot(60'000, &loop, &QEventLoop::quit);
    loop.exec();
    CHECK(answers == 20);
    CHECK(QDir(desk.path("data/print")).entryList(QDir::Files).size() == 21);
}

TEST_CASE("a shelf that is taken down still writes what was asked for", "[reports]") {
    Desk desk;
    {
        PrintShelf shelf(desk.settings);
        const auto report = runTicket(openRun(), {});
        REQUIRE(report);
        shelf.print(*report, [](const PrintOutcome&) { FAIL("nobody listens any more"); });
    }
    CHECK(isPdf(desk.settings.folder / "run-20418-ticket.pdf"));
}

TEST_CASE("every cause says what happened, what was kept and what to do", "[reports]") {
    for (int i = 0; i <= static_cast<int>(ReportCause::noAnswer); ++i) {
        const ReportFault fault{static_cast<ReportCause>(i), "label-1", "/data/print/x.pdf", "log only"};
        const auto notice = noticeOf(fault, {});
        INFO(nameOf(fault.cause));
        for (const auto& sentence : {notice.happened, notice.kept, notice.toDo}) {
            INFO(sentence);
            CHECK(sentence.front() != '[');
            CHECK(sentence.back() == '.');
            CHECK(sentence.find('{') == std::string::npos);
            CHECK(sentence.find("log only") == std::string::npos);
        }
    }
}

TEST_CASE("file names are plain whatever the title was", "[reports]") {
    CHECK(speakingName("run-20418-ticket") == "run-20418-ticket");
    CHECK(speakingName("../../etc/passwd") == "etc-passwd");
    CHECK(speakingName(std::string("a\0/b", 4)) == "a-b");
    CHECK(speakingName("") == "sheet");
    CHECK(speakingName("///") == "sheet");
    CHECK(speakingName(std::string(10'000, 'x')).size() == 60);
}
