// What the Inks write.
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/screens/presenting/places/inks_place.hpp"
#include "kiosk/screens/presenting/places/inks_words.hpp"

namespace holdfast::kiosk::screens {

void InksPlace::save() {
    auto record = m_form->record();
    if (!record) {
        return;
    }
    std::string then;
    if (const auto* family = std::get_if<records::FamilyRecord>(&*record)) {
        then = std::string{kInksFamily} + family->name;
    } else if (const auto* fabric = std::get_if<records::FabricRecord>(&*record)) {
        then = std::string{kInksCloth} + fabric->name;
    } else if (auto* mix = std::get_if<records::MixMade>(&*record)) {
        mix->bucket = m_needs.newId();
        then = std::string{kInksBucket} + std::to_string(mix->number);
    } else if (auto* pail = std::get_if<records::BucketOpened>(&*record)) {
        if (!took(records::nextNumber(m_needs.book->reader(), records::Numbered::bucket), pail->number)) {
            return;
        }
        pail->bucket = m_needs.newId();
        then = std::string{kInksBucket} + std::to_string(pail->number);
    }
    if (!m_form->isSigned()) {
        keep(std::move(*record), then);
        return;
    }
    m_needs.sign(shop::Right::reviseInks,
                 [this, made = std::move(*record), then](std::int64_t person) { keep(made, then, person); });
}

void InksPlace::keep(records::Record record, const std::string& thenChoose, std::int64_t person) {
    if (m_keeping) { // a second press while the first is under way
        return;
    }
    m_keeping = true;
    const auto* form = isFormShown() ? m_form.get() : nullptr;
    m_needs.keep({{std::move(record)}, person},
                 [this, form, thenChoose](const std::optional<ledger::Failure>& failure) {
                     m_keeping = false;
                     if (failure) { // a form stays as it was typed
                         failed(*failure);
                         return;
                     }
                     if (m_form.get() == form) {
                         m_form.reset();
                     }
                     m_closing.reset();
                     m_chosen = thenChoose;
                     reload();
                 });
}

} // namespace holdfast::kiosk::screens
