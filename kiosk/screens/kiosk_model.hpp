#pragma once

#include "kiosk/screens/dryer/dryer_page_model.hpp"
#include "kiosk/screens/header_model.hpp"
#include "kiosk/screens/kiosk_state.hpp"
#include "kiosk/screens/run/run_page_model.hpp"
#include "kiosk/screens/sheet/sheet_page_model.hpp"
#include "kiosk/screens/strip/strip_page_model.hpp"

#include <QObject>
#include <QVariantList>

namespace holdfast::kiosk::screens {

/// The frame around the pages: which place stands there, the head, the bar, a refusal, the pad for codes. Owns the
/// models of the pages. Everything a person does comes out of three signals: an action's id, a code, or a field's text.
class KioskModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made in main")
    Q_PROPERTY(QString place READ place NOTIFY placeChanged)
    Q_PROPERTY(QString barPlace READ barPlace NOTIFY placeChanged)
    Q_PROPERTY(QVariantList places READ places NOTIFY placesChanged)
    Q_PROPERTY(holdfast::kiosk::screens::RefusalState refusal READ refusal NOTIFY refusalChanged)
    Q_PROPERTY(bool refused READ refused NOTIFY refusalChanged)
    Q_PROPERTY(QVariantList refusalActions READ refusalActions NOTIFY refusalChanged)
    Q_PROPERTY(holdfast::kiosk::screens::ScanEntryTexts scanEntry READ scanEntry NOTIFY scanEntryChanged)
    Q_PROPERTY(bool scanEntryOpen READ scanEntryOpen NOTIFY scanEntryOpenChanged)
    Q_PROPERTY(holdfast::kiosk::screens::TypePadState typePad READ typePad NOTIFY typePadChanged)
    Q_PROPERTY(holdfast::kiosk::screens::PictureShown picture READ picture NOTIFY pictureChanged)
    Q_PROPERTY(QString touchLocked READ touchLocked NOTIFY touchLockedChanged)
    Q_PROPERTY(bool dark READ dark NOTIFY themeChanged)
    Q_PROPERTY(double panelDiagonalInch READ panelDiagonalInch NOTIFY panelChanged)
    Q_PROPERTY(QString language READ language NOTIFY languageChanged)
    Q_PROPERTY(holdfast::kiosk::screens::HeaderModel* header READ header CONSTANT)
    Q_PROPERTY(holdfast::kiosk::screens::RunPageModel* run READ run CONSTANT)
    Q_PROPERTY(holdfast::kiosk::screens::DryerPageModel* dryer READ dryer CONSTANT)
    Q_PROPERTY(holdfast::kiosk::screens::StripPageModel* strip READ strip CONSTANT)
    Q_PROPERTY(holdfast::kiosk::screens::SheetPageModel* sheet READ sheet CONSTANT)
public:
    explicit KioskModel(QObject* parent = nullptr);

    /// Place, head, bar, refusal, words of the pad. The pages have their own setState.
    void setState(const KioskState& state);
    [[nodiscard]] const KioskState& state() const { return m_state; }

    void setDark(bool dark);
    /// The shop's setting; never read from the screen. Sizes follow it and the window's resolution.
    void setPanelDiagonalInch(double inch);
    /// "en" or "es": what accessibility tools are told. The texts themselves arrive translated.
    void setLanguage(const QString& language);
    void openScanEntry(bool open);
    /// Over whatever stands there. Another place closes it: what was half typed belonged to the one before.
    void openPad(const TypePadState& pad);

    /// One picture over the whole page; an empty one closes it, and so does another place.
    void openPicture(const PictureShown& picture);

    [[nodiscard]] QString place() const { return m_state.place; }
    [[nodiscard]] QString barPlace() const { return m_state.barPlace.isEmpty() ? m_state.place : m_state.barPlace; }
    [[nodiscard]] QVariantList places() const;
    [[nodiscard]] RefusalState refusal() const { return m_state.refusal; }
    [[nodiscard]] bool refused() const { return !m_state.refusal.happened.isEmpty(); }
    /// The one that helps and the one that closes, as far as they have ids.
    [[nodiscard]] QVariantList refusalActions() const;
    [[nodiscard]] ScanEntryTexts scanEntry() const { return m_state.scanEntry; }
    [[nodiscard]] bool scanEntryOpen() const { return m_scanEntryOpen; }
    [[nodiscard]] TypePadState typePad() const { return m_typePad; }
    [[nodiscard]] PictureShown picture() const { return m_picture; }
    [[nodiscard]] QString touchLocked() const { return m_state.touchLocked; }
    [[nodiscard]] bool dark() const { return m_dark; }
    [[nodiscard]] double panelDiagonalInch() const { return m_panelDiagonalInch; }
    [[nodiscard]] QString language() const { return m_language; }
    [[nodiscard]] HeaderModel* header() { return &m_header; }
    [[nodiscard]] RunPageModel* run() { return &m_run; }
    [[nodiscard]] DryerPageModel* dryer() { return &m_dryer; }
    [[nodiscard]] StripPageModel* strip() { return &m_strip; }
    [[nodiscard]] SheetPageModel* sheet() { return &m_sheet; }

    /// From the frame (head, bar, refusal). The pages' own triggers are forwarded to actionTriggered too.
    Q_INVOKABLE void trigger(const QString& id);
    /// A code typed on the pad; the pad closes.
    Q_INVOKABLE void typed(const QString& code);
    Q_INVOKABLE void closeScanEntry() { openScanEntry(false); }
    /// What stands on the pad for its field, which may be nothing; the pad closes.
    Q_INVOKABLE void padEntered(const QString& text);
    /// Closed without entering: the field stays as it was.
    Q_INVOKABLE void padClosed() { openPad({}); }
    Q_INVOKABLE void closePicture() { openPicture({}); }

signals:
    /// Any action of any page, or a place's id.
    void actionTriggered(const QString& id);
    /// A code typed by hand, to be treated like a scan.
    void codeEntered(const QString& code);
    /// A text typed for a field of the sheet.
    void fieldEntered(const QString& id, const QString& text);
    void placeChanged();
    void placesChanged();
    void refusalChanged();
    void scanEntryChanged();
    void scanEntryOpenChanged();
    void typePadChanged();
    void pictureChanged();
    void touchLockedChanged();
    void themeChanged();
    void panelChanged();
    void languageChanged();

private:
    KioskState m_state;
    HeaderModel m_header;
    RunPageModel m_run;
    DryerPageModel m_dryer;
    StripPageModel m_strip;
    SheetPageModel m_sheet;
    TypePadState m_typePad;
    PictureShown m_picture;
    bool m_dark = false;
    bool m_scanEntryOpen = false;
    double m_panelDiagonalInch = 15.6;
    QString m_language = QStringLiteral("en");
};

} // namespace holdfast::kiosk::screens
