#pragma once

#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/instruments/certificate_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// The form in which a certificate is copied. Figures are in the unit that was shown when it was opened.
class CertificateForm final {
public:
    CertificateForm(shop::instruments::CertificateDraft draft, analytics::Date today)
        : m_draft{std::move(draft)}, m_today{today} {}

    /// The certificate, if nothing is wrong with it; else the faults stand at their fields.
    [[nodiscard]] std::optional<records::CertificateAdded> certificate();

    bool act(const std::string& id);
    bool enter(const std::string& field, const std::string& text);
    [[nodiscard]] QList<SheetBlock> blocks(const wording::Speech& speech) const;

private:
    [[nodiscard]] SheetBlock pointBlock(std::size_t index, const wording::Speech& speech) const;

    shop::instruments::CertificateDraft m_draft;
    analytics::Date m_today;
    std::vector<shop::instruments::FormFault> m_faults;
};

} // namespace holdfast::kiosk::screens
