#pragma once

#include "kiosk/screens/presenting/deciding/lot_blocks.hpp"
#include "kiosk/screens/presenting/places/shop_section.hpp"
#include "kiosk/shop/deciding/fields.hpp"

#include <functional>
#include <memory>
#include <string>

namespace holdfast::kiosk::screens {

/// One thing that is done at Holds: it takes the whole right side while it is open.
class HoldsPage : public ShopSection {
public:
    /// `done` closes it; what it says then stands over the list.
    using Done = std::function<void(const std::string& said)>;

    HoldsPage(const PlaceNeeds& needs, Done done) : ShopSection{needs}, m_done{std::move(done)} {}
    /// False: this page has no use for the code.
    virtual bool scanned(const drivers::TicketCode&) { return false; }

protected:
    /// Writes; `then` only if it stands in the book and the page is still open. A second press while the first is under
    /// way writes nothing.
    void write(Keeping keeping, std::function<void()> then);
    /// A signature of one with that right, given now; nothing comes of it once the page is closed.
    void signAfresh(shop::Right right, std::int64_t other, std::function<void(std::int64_t person)> then);
    void signOnce(shop::Right right, std::function<void(std::int64_t person)> then);
    void done(const std::string& said) const { m_done(said); }
    [[nodiscard]] LotSpeech how() const { return {speech(), needs().clock->wall().utcOffsetMinutes}; }
    /// A field with its own fault, if it has one.
    [[nodiscard]] SheetField fieldWith(const std::string& id, const std::string& name, const std::string& label,
                                       const std::string& value, SheetKinds::Keys keys,
                                       const std::string& hint = {}) const;
    /// Faults of the whole, or at fields that are not shown.
    void addOtherFaults(QList<SheetBlock>& blocks, const std::vector<std::string>& shownFields) const;
    [[nodiscard]] SheetBlock leadBlock(const std::string& sentence) const {
        return textBlock(SheetKinds::Lead, sentence);
    }

    shop::deciding::Faults m_faults;

private:
    Done m_done;
    std::shared_ptr<bool> m_writing = std::make_shared<bool>(false); ///< gone with the page
};

} // namespace holdfast::kiosk::screens
