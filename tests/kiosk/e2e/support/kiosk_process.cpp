#include "tests/kiosk/e2e/support/kiosk_process.hpp"

#include <QCoreApplication>
#include <QProcessEnvironment>
#include <QtTest/QTest>

#include <csignal>
#include <system_error>

#include <sys/prctl.h>

namespace holdfast::tests {

namespace {

constexpr int kPatienceMilliseconds = 90'000;

void start(QProcess& process, const QStringList& arguments) {
    ensureApplication();
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    environment.insert(QStringLiteral("QT_QUICK_BACKEND"), QStringLiteral("software"));
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
    process.setProcessEnvironment(environment);
    process.setChildProcessModifier([] { ::prctl(PR_SET_PDEATHSIG, SIGKILL); });
    process.start(QStringLiteral(HOLDFAST_PROGRAM), arguments);
    process.waitForStarted(kPatienceMilliseconds);
}

} // namespace

void ensureApplication() {
    static int argc = 1;
    static char name[] = "e2e";
    static char* argv[] = {name, nullptr};
    if (QCoreApplication::instance() == nullptr) {
        new QCoreApplication{argc, argv}; // never deleted: Qt's own statics are gone before ours at exit
    }
}

bool eventually(const std::function<bool()>& holds) {
    ensureApplication();
    return QTest::qWaitFor(holds, kPatienceMilliseconds);
}

Ended runToEnd(const QStringList& arguments) {
    QProcess process;
    start(process, arguments);
    Ended ended;
    if (process.waitForFinished(kPatienceMilliseconds) && process.exitStatus() == QProcess::NormalExit) {
        ended.status = process.exitCode();
    }
    ended.out = process.readAllStandardOutput().toStdString();
    ended.err = process.readAllStandardError().toStdString();
    return ended;
}

KioskProcess::KioskProcess(const QStringList& arguments) {
    start(m_process, arguments);
}

KioskProcess::~KioskProcess() {
    cutOff();
}

std::string KioskProcess::said() {
    m_said += m_process.readAllStandardError().toStdString();
    return m_said;
}

bool KioskProcess::hasOpen(const std::filesystem::path& path) const {
    std::error_code error;
    const auto terminal = std::filesystem::read_symlink(path, error);
    if (error) {
        return false;
    }
    const std::filesystem::path held{"/proc/" + std::to_string(m_process.processId()) + "/fd"};
    for (auto at = std::filesystem::directory_iterator{held, error}; !error && at != end(at); at.increment(error)) {
        std::error_code gone; // a file may be closed while we look
        if (std::filesystem::read_symlink(at->path(), gone) == terminal) {
            return true;
        }
    }
    return false;
}

void KioskProcess::cutOff() {
    if (alive()) {
        m_process.kill();
        m_process.waitForFinished(kPatienceMilliseconds);
    }
}

} // namespace holdfast::tests
