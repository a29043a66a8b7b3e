#pragma once

#include "kiosk/screens/presenting/places/inks_form.hpp"
#include "kiosk/screens/presenting/places/inks_pages.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <memory>
#include <variant>

namespace holdfast::kiosk::screens {

/// Inks: families and cloths with their revisions, buckets with what they cure at and with what they may run, mixes.
class InksPlace final : public SheetPlace {
public:
    explicit InksPlace(PlaceNeeds needs) : m_needs{std::move(needs)} {}

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A bucket goes into a form that takes buckets; else it is shown, and a half-typed form is kept.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    [[nodiscard]] bool isWriting() const override { return m_form && m_form->isTouched(); }

private:
    using Families = std::vector<records::FamilyRecord>; ///< revisions of one
    using Fabrics = std::vector<records::FabricRecord>;

    template <class Asked>
    bool took(const ledger::Result<Asked>& asked, Asked& into);
    void failed(const ledger::Failure& failure) const;
    bool choose(const std::string& id);
    void chooseBucket(std::int64_t number);
    void chooseAgain();
    bool startForm(const std::string& id);
    void startMix();
    void putAside();
    bool actOnBucket(const std::string& id);
    void save();
    void keep(records::Record record, const std::string& thenChoose, std::int64_t person = 0);
    void addList(SheetPageState& page) const;
    void addChosen(SheetPageState& page) const;
    void addClosing(SheetPageState& page, const records::BucketOnFile& bucket) const;
    [[nodiscard]] bool isFormShown() const { return m_form && !m_aside; }
    [[nodiscard]] shop::MixStock mixStock(const std::vector<std::int64_t>& parts) const;
    [[nodiscard]] bool isChosen(const std::string& id) const { return !isFormShown() && m_chosen == id; }
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }

    PlaceNeeds m_needs;
    Families m_families; ///< newest revisions
    Fabrics m_fabrics;
    std::vector<records::BucketOnFile> m_buckets;
    std::string m_chosen; ///< id of the row; empty: none
    std::variant<std::monostate, Families, Fabrics, ShownBucket> m_shown;
    std::unique_ptr<InksForm> m_form;
    bool m_aside = false;                        ///< the form is kept while something else is looked at
    bool m_keeping = false;                      ///< an entry is on the way to the disk
    std::optional<records::BucketEnd> m_closing; ///< asked whether the shown bucket is to be closed so
};

template <class Asked>
bool InksPlace::took(const ledger::Result<Asked>& asked, Asked& into) {
    if (!asked) {
        failed(asked.error());
        return false;
    }
    into = *asked;
    return true;
}

} // namespace holdfast::kiosk::screens
