#pragma once

#include "kiosk/records/run_on_file.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/instruments/standing.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

/// One instrument as blocks of its sheet.
namespace holdfast::kiosk::screens {

/// "live", "lost", "not plugged in".
[[nodiscard]] std::string linkText(const shop::Probe& probe, const wording::Speech& speech);

/// What comes off the line now: the indicated value large, the corrected one, link and age beside it; and what is wrong
/// with the line, if anything is. A value that is no longer live never stands large.
void addLive(QList<SheetBlock>& blocks, const shop::Probe& probe, drivers::MonotonicTime now,
             const wording::Speech& speech);
void addStanding(QList<SheetBlock>& blocks, const shop::instruments::Standing& standing, const std::string& name,
                 const wording::Speech& speech);
void addFacts(QList<SheetBlock>& blocks, const records::InstrumentOnFile& one, const wording::Speech& speech);
/// Newest first; the points of the newest only.
void addCertificates(QList<SheetBlock>& blocks, const std::vector<records::CertificateAdded>& certificates,
                     const wording::Speech& speech);
void addChecks(QList<SheetBlock>& blocks, const std::vector<records::CheckDone>& checks, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
