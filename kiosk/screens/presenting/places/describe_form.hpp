#pragma once

#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/instruments/instrument_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// The form in which an instrument is described or changed.
class DescribeForm final {
public:
    DescribeForm(shop::instruments::InstrumentDraft draft, shop::instruments::Surroundings around)
        : m_draft{std::move(draft)}, m_around{std::move(around)} {}

    [[nodiscard]] const shop::instruments::InstrumentDraft& draft() const noexcept { return m_draft; }
    /// The instrument, if nothing is wrong with it; else the faults stand at their fields.
    [[nodiscard]] std::optional<records::InstrumentDescribed> described();

    bool act(const std::string& id);
    bool enter(const std::string& field, const std::string& text);
    [[nodiscard]] QList<SheetBlock> blocks(const wording::Speech& speech) const;

private:
    [[nodiscard]] std::string* textOfField(const std::string& field);
    [[nodiscard]] SheetField field(const char* name, const char* label, const std::string& value, const char* hint,
                                   SheetKinds::Keys keys, const wording::Speech& speech) const;
    void addSensor(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addRange(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addStrip(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addAttachment(QList<SheetBlock>& blocks, const wording::Speech& speech) const;

    shop::instruments::InstrumentDraft m_draft;
    shop::instruments::Surroundings m_around;
    std::vector<shop::instruments::FormFault> m_faults;
};

} // namespace holdfast::kiosk::screens
