#include "tests/kiosk/reports/support/outside.hpp"

#include "kiosk/reports/page/paint.hpp"

#include <QDir>
#include <QFile>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QImage>
#include <QProcess>
#include <QStandardPaths>
#include <iostream>

#include <catch2/catch.hpp>

namespace holdfast::reports_test {

void withFonts() {
    static int count = 1;
    static char name[] = "test_reports";
    static char* arguments[] = {name, nullptr};
    static const bool rules = qputenv("FONTCONFIG_FILE", HOLDFAST_SOURCE_DIR "/deploy/fontconfig/holdfast.conf");
    static QGuiApplication application(count, arguments);
    REQUIRE(rules);
}

bool readersAreHere() {
    for (const auto* program : {"zbarimg", "pdftoppm", "pdftotext"}) {
        if (QStandardPaths::findExecutable(QString::fromLatin1(program)).isEmpty()) {
            std::cout << "SKIPPED: " << program << " is not installed\n";
            return false;
        }
    }
    return true;
}

QByteArray outputOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished(120'000);
    INFO(program.toStdString() << " " << arguments.join(u' ').toStdString() << "\n"
                               << process.readAllStandardError().toStdString());
    REQUIRE(process.exitStatus() == QProcess::NormalExit);
    return process.readAllStandardOutput();
}

namespace {

QString written(const QTemporaryDir& folder, const QByteArray& pdf) {
    const auto path = folder.filePath(QStringLiteral("pages.pdf"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    REQUIRE(file.write(pdf) == pdf.size());
    return path;
}

} // namespace

QStringList codesRead(const std::vector<kiosk::reports::PlacedPage>& pages) {
    constexpr double dots = 300 / 25.4;
    const auto pdf = kiosk::reports::pdfOf(pages, "pages");
    REQUIRE(pdf);
    const QTemporaryDir folder;
    outputOf(QStringLiteral("pdftoppm"), {QStringLiteral("-r"), QStringLiteral("300"), QStringLiteral("-gray"),
                                          written(folder, *pdf), folder.filePath(QStringLiteral("page"))});
    const auto drawn = QDir(folder.path()).entryList({QStringLiteral("page*.pgm")}, QDir::Files, QDir::Name);
    REQUIRE(drawn.size() == static_cast<qsizetype>(pages.size()));
    QStringList arguments{QStringLiteral("-q"), QStringLiteral("--raw"), QStringLiteral("-Sdisable"),
                          QStringLiteral("-Scode128.enable"), QStringLiteral("-Sqrcode.enable")};
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const QImage page(folder.filePath(drawn[static_cast<qsizetype>(i)]));
        REQUIRE_FALSE(page.isNull());
        for (const auto& code : pages[i].codes) {
            const QRectF box((code.box.x - 1) * dots, (code.box.y - 1) * dots, (code.box.width + 2) * dots,
                             (code.box.height + 2) * dots);
            const auto name = folder.filePath(QStringLiteral("code%1.pgm").arg(arguments.size()));
            REQUIRE(page.copy(box.toRect().intersected(page.rect())).save(name));
            arguments += name;
        }
    }
    auto codes = QString::fromUtf8(outputOf(QStringLiteral("zbarimg"), arguments)).split(u'\n', Qt::SkipEmptyParts);
    codes.sort();
    return codes;
}

QString textRead(const QByteArray& pdf) {
    const QTemporaryDir folder;
    return QString::fromUtf8(outputOf(QStringLiteral("pdftotext"),
                                      {QStringLiteral("-layout"), written(folder, pdf), QStringLiteral("-")}))
        .simplified();
}

} // namespace holdfast::reports_test
