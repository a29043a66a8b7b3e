#include "kiosk/screens/presenting/deciding/holds_page.hpp"

#include "kiosk/wording/deciding_sentences.hpp"

namespace holdfast::kiosk::screens {

void HoldsPage::write(Keeping keeping, std::function<void()> then) {
    if (*m_writing) {
        return;
    }
    *m_writing = true;
    const auto* frame = &needs(); // outlives the page
    needs().keep(std::move(keeping), [frame, open = std::weak_ptr{m_writing},
                                      then = std::move(then)](const std::optional<ledger::Failure>& failure) {
        const auto writing = open.lock();
        if (writing) {
            *writing = false;
        }
        if (failure) { // what was typed stays
            frame->tell(wording::noticeOf(*failure, wording::Kept::book, frame->speech()));
        } else if (writing) {
            then();
        }
    });
}

void HoldsPage::signAfresh(shop::Right right, std::int64_t other, std::function<void(std::int64_t)> then) {
    needs().signAfresh(right, other, [open = std::weak_ptr{m_writing}, then = std::move(then)](std::int64_t person) {
        if (!open.expired()) {
            then(person);
        }
    });
}

void HoldsPage::signOnce(shop::Right right, std::function<void(std::int64_t)> then) {
    needs().sign(right, [open = std::weak_ptr{m_writing}, then = std::move(then)](std::int64_t person) {
        if (!open.expired()) {
            then(person);
        }
    });
}

SheetField HoldsPage::fieldWith(const std::string& id, const std::string& name, const std::string& label,
                                const std::string& value, SheetKinds::Keys keys, const std::string& hint) const {
    auto field = fieldOf(id, label, value, hint, keys);
    for (const auto& fault : m_faults) {
        if (fault.field == name) {
            field.fault = toQString(wording::sentence(fault, speech()));
            break;
        }
    }
    return field;
}

void HoldsPage::addOtherFaults(QList<SheetBlock>& blocks, const std::vector<std::string>& shownFields) const {
    std::vector<std::string> spoken;
    for (const auto& fault : m_faults) {
        const bool atField = std::find(shownFields.begin(), shownFields.end(), fault.field) != shownFields.end();
        const bool first = std::find(spoken.begin(), spoken.end(), fault.field) == spoken.end();
        if (atField && first) {
            spoken.push_back(fault.field);
        } else {
            blocks.append(textBlock(SheetKinds::Lead, wording::sentence(fault, speech())));
        }
    }
}

} // namespace holdfast::kiosk::screens
