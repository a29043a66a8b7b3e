#include "kiosk/reports/printing/print_command.hpp"

#include <QProcess>
#include <QProcessEnvironment>
#include <QStandardPaths>
#include <QTimer>

#include <algorithm>
#include <utility>

namespace holdfast::kiosk::reports {

void PrintCommand::start(QObject* parent, const QString& printer, const QString& file,
                         std::chrono::milliseconds patience, Answer answer) {
    auto* command = new PrintCommand(parent, printer.toStdString(), std::move(answer));
    if (!isPrinterName(printer)) {
        QTimer::singleShot(0, command, [command] { command->fail(ReportCause::printerUnknown, "no printer's name"); });
        return;
    }
    command->run(file, patience);
}

PrintCommand::PrintCommand(QObject* parent, std::string printer, Answer answer)
    : QObject(parent), m_printer(std::move(printer)), m_answer(std::move(answer)) {}

void PrintCommand::run(const QString& file, std::chrono::milliseconds patience) {
    const auto program = QStandardPaths::findExecutable(QStringLiteral("lp"));
    if (program.isEmpty()) {
        QTimer::singleShot(0, this, [this] { fail(ReportCause::noPrintProgram, "lp is not on the PATH"); });
        return;
    }
    m_process = new QProcess(this);
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C"));
    m_process->setProcessEnvironment(environment);
    m_process->setStandardInputFile(QProcess::nullDevice());
    connect(m_process, &QProcess::finished, this, [this] { ended(); });
    connect(m_process, &QProcess::errorOccurred, this, [this](QProcess::ProcessError error) {
        if (error == QProcess::FailedToStart) {
            fail(ReportCause::noPrintProgram, m_process->errorString().toStdString());
        }
    });
    QTimer::singleShot(patience, this, [this] { fail(ReportCause::noAnswer, "lp did not end in time"); });
    m_process->start(program, {QStringLiteral("-d"), QString::fromStdString(m_printer), QStringLiteral("--"), file});
}

void PrintCommand::ended() {
    if (m_process->exitStatus() == QProcess::NormalExit && m_process->exitCode() == 0) {
        finish(std::nullopt);
        return;
    }
    const auto said = m_process->readAllStandardError().left(1000);
    fail(causeOfRefusal(said), said.toStdString());
}

void PrintCommand::fail(ReportCause cause, const std::string& what) {
    finish(ReportFault{cause, m_printer, {}, what});
}

void PrintCommand::finish(std::optional<ReportFault> fault) {
    if (!m_answer) {
        return;
    }
    const auto answer = std::exchange(m_answer, nullptr);
    if (m_process != nullptr && m_process->state() != QProcess::NotRunning) {
        // Killed, it lives on until it has ended, so that its end is collected.
        m_process->disconnect(this);
        m_process->setParent(nullptr);
        connect(m_process, &QProcess::finished, m_process, &QObject::deleteLater);
        m_process->kill();
    }
    deleteLater();
    answer(std::move(fault));
}

ReportCause causeOfRefusal(const QByteArray& said) {
    const auto text = said.toLower();
    const bool unknown = text.contains("does not exist") || text.contains("unknown destination") ||
                         text.contains("no such") || text.contains("not found");
    return unknown ? ReportCause::printerUnknown : ReportCause::spoolRefused;
}

bool isPrinterName(const QString& name) {
    constexpr qsizetype kMost = 127;
    return !name.isEmpty() && name.size() <= kMost && name.front() != u'-' &&
           std::all_of(name.begin(), name.end(), [](QChar sign) {
               const auto code = sign.unicode();
               return code > 0x20 && code < 0x7F && code != '/' && code != '#' && code != '"' && code != '\'' &&
                      code != '\\';
           });
}

} // namespace holdfast::kiosk::reports
