#pragma once

#include "kiosk/reports/report_fault.hpp"

#include <QObject>
#include <QString>
#include <QStringList>
#include <chrono>
#include <functional>
#include <optional>

class QProcess;

namespace holdfast::kiosk::reports {

/// Hands a file to the print system: `lp -d NAME -- FILE`, without a shell, once. Deletes itself after its answer.
class PrintCommand final : public QObject {
    Q_OBJECT

public:
    /// Absent: the print system took it. The fault's file is left to the caller.
    using Answer = std::function<void(std::optional<ReportFault>)>;

    /// `answer` is called once, from the event loop, unless `parent` dies first.
    static void start(QObject* parent, const QString& printer, const QString& file, std::chrono::milliseconds patience,
                      Answer answer);

private:
    PrintCommand(QObject* parent, std::string printer, Answer answer);
    void run(const QString& file, std::chrono::milliseconds patience);
    void finish(std::optional<ReportFault> fault);
    void fail(ReportCause cause, const std::string& what);
    void ended();

    std::string m_printer;
    Answer m_answer;
    QProcess* m_process = nullptr;
};

/// What `lp` said (in English) about a job it did not take.
[[nodiscard]] ReportCause causeOfRefusal(const QByteArray& said);

/// As the print system allows: printable ASCII without blank, "/", "#", quotes and a leading "-", 1 to 127 signs (CUPS,
/// lpadmin(8)).
[[nodiscard]] bool isPrinterName(const QString& name);

} // namespace holdfast::kiosk::reports
