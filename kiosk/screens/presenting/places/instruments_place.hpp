#pragma once

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/screens/presenting/places/beside.hpp"
#include "kiosk/screens/presenting/places/certificate_form.hpp"
#include "kiosk/screens/presenting/places/check_sheet.hpp"
#include "kiosk/screens/presenting/places/describe_form.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/deciding/instrument_holds.hpp"

namespace holdfast::kiosk::screens {

/// Instruments: what is on the line and what it shows, what each can prove today, certificates and checks.
class InstrumentsPlace final : public SheetPlace {
public:
    explicit InstrumentsPlace(PlaceNeeds needs) : m_needs{std::move(needs)} {}

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    void tick() override;
    /// Whoever leaves takes the probe out of the bath for the rides' sake; a check goes on when they come back.
    void left() override { endCheck(); }
    [[nodiscard]] bool isWriting() const override { return isSheetOpen() && m_touched; }

private:
    struct Chosen final {
        records::InstrumentOnFile onFile;
        std::vector<records::CertificateAdded> certificates; ///< newest first
        std::vector<records::CheckDone> checks;              ///< newest first
    };

    bool actOnChosen(const std::string& id);
    bool actOnList(const std::string& id);
    void endCheck();
    [[nodiscard]] static bool isRiding(const shop::Probe& probe) { return probe.recording && probe.recording->isRide; }
    void choose(const std::string& instrument);
    void closeSheets();
    void startCheck(analytics::CheckKind kind);
    void startCertificate();
    void startChange();
    void startNew(const shop::Probe* undescribed);
    void saveCertificate();
    void saveInstrument();
    void saveCheck();
    void judgeAgain(std::vector<records::Record> list, const std::string& instrument, std::int64_t person);
    void keepDoubt(const ledger::Result<shop::deciding::InstrumentHolds>& judged, Keeping keeping,
                   const std::string& instrument);
    void withdraw();
    /// Signed by whoever keeps instruments; on success sheets are closed and `instrument` is shown.
    void keepSigned(std::vector<records::Record> list, const std::string& instrument);
    [[nodiscard]] bool isSheetOpen() const { return m_check || m_certificate || m_describe || m_withdrawing; }
    [[nodiscard]] analytics::Date today() const { return drivers::localDay(m_needs.clock->wall()); }
    [[nodiscard]] const shop::Probe* probeNamed(const std::string& name) const;
    [[nodiscard]] shop::instruments::Surroundings surroundings() const;
    [[nodiscard]] analytics::CheckSettings checkSettings() const;
    [[nodiscard]] SheetRow rowOf(const records::InstrumentOnFile& one) const;
    void addList(SheetPageState& page) const;
    void addChosen(SheetPageState& page) const;
    void addActions(SheetPageState& page) const;

    PlaceNeeds m_needs;
    std::vector<records::InstrumentOnFile> m_list;
    std::optional<Chosen> m_chosen;
    std::optional<CheckSheet> m_check;
    std::optional<CertificateForm> m_certificate;
    std::optional<DescribeForm> m_describe;
    bool m_withdrawing = false;
    bool m_touched = false; ///< something was typed or pressed in the open sheet
    bool m_keeping = false; ///< an entry is on the way to the disk
    Beside m_beside;        ///< last: it answers nobody once this goes
};

} // namespace holdfast::kiosk::screens
