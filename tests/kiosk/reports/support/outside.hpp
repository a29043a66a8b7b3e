#pragma once

#include "kiosk/reports/page/placed_page.hpp"

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>

/// Programs of others that read what we drew.
namespace holdfast::reports_test {

/// The QGuiApplication with the kiosk's font rules, made once; call it first in each test.
void withFonts();

/// False after it has said SKIPPED: a program is not there.
bool readersAreHere();

/// Every code that zbarimg reads on the pages, written as a PDF and drawn by pdftoppm at 300 dots an inch; sorted. Each
/// is read alone, cut out with its quiet zone and 1 mm around it, as a scanner is held over one: zbarimg 0.23 leaves
/// some squares unread where many stand on one picture.
QStringList codesRead(const std::vector<kiosk::reports::PlacedPage>& pages);

/// The pages' text as pdftotext reads it, each run of white space one blank.
QString textRead(const QByteArray& pdf);

/// What the program writes to its output.
QByteArray outputOf(const QString& program, const QStringList& arguments);

} // namespace holdfast::reports_test
