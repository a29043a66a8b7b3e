#pragma once

#include "kiosk/screens/parts/header_state.hpp"
#include "kiosk/screens/parts/page_parts.hpp"

#include <QUrl>

namespace holdfast::kiosk::screens {

/// The words of the pad that types a code when the scanner is away.
struct ScanEntryTexts {
    Q_GADGET
    QML_VALUE_TYPE(scanEntryTexts)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString hint MEMBER hint)
    Q_PROPERTY(QString enter MEMBER enter)
    Q_PROPERTY(QString erase MEMBER erase)
    Q_PROPERTY(QString leave MEMBER leave)
public:
    QString title = QStringLiteral("Type a code");
    QString hint = QStringLiteral("It stands under the bars of every ticket and card.");
    QString enter = QStringLiteral("Enter");
    QString erase = QStringLiteral("Erase");
    QString leave = QStringLiteral("Close");

    bool operator==(const ScanEntryTexts&) const = default;
};

/// One picture as large as the page.
struct PictureShown {
    Q_GADGET
    QML_VALUE_TYPE(pictureShown)
    Q_PROPERTY(QUrl source MEMBER source)
    Q_PROPERTY(QString leave MEMBER leave)
public:
    QUrl source{};   ///< empty: none
    QString leave{}; ///< on its button

    bool operator==(const PictureShown&) const = default;
};

/// What the frame around the pages shows.
struct KioskState {
    QString place{};    ///< "dryer", "run", "strip"; any other is a sheet: "runs", "inks", "instruments", "shop"
    QString barPlace{}; ///< the one of the bar that `place` belongs to
    HeaderState header{};
    QList<PlaceState> places{}; ///< in the order of the bar; only those that exist
    RefusalState refusal{};
    ScanEntryTexts scanEntry{};
    QString
        touchLocked{}; ///< "Wiping: touch is off for 20 s."; not empty: touch is locked and this stands over the page

    bool operator==(const KioskState&) const = default;
};

} // namespace holdfast::kiosk::screens
