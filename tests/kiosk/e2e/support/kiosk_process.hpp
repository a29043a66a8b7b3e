#pragma once

#include <QProcess>
#include <QString>
#include <QStringList>

#include <filesystem>
#include <functional>
#include <string>

namespace holdfast::tests {

/// A QCoreApplication for the whole run of the tests, if there is none: QProcess and the demo's desks need its events.
void ensureApplication();

/// Lets events run until the condition holds; false after 90 s, which a busy machine has never needed.
[[nodiscard]] bool eventually(const std::function<bool()>& holds);

/// What a command that ends by itself said.
struct Ended final {
    int status = -1; ///< −1: it did not end, or by a signal
    std::string out;
    std::string err;
};
[[nodiscard]] Ended runToEnd(const QStringList& arguments);

/// The shipped program, running without a display. Dies with this object, and with the test.
class KioskProcess final {
public:
    explicit KioskProcess(const QStringList& arguments);
    KioskProcess(const KioskProcess&) = delete;
    KioskProcess& operator=(const KioskProcess&) = delete;
    ~KioskProcess();

    [[nodiscard]] bool alive() const { return m_process.state() == QProcess::Running; }
    /// Everything on standard error so far.
    [[nodiscard]] std::string said();
    /// It holds the terminal that stands at `path` open.
    [[nodiscard]] bool hasOpen(const std::filesystem::path& path) const;
    /// As a power cut: SIGKILL.
    void cutOff();

private:
    QProcess m_process;
    std::string m_said;
};

} // namespace holdfast::tests
