#pragma once

#include "kiosk/records/kinds.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/shop/stock/bucket_draft.hpp"
#include "kiosk/shop/stock/fabric_draft.hpp"
#include "kiosk/shop/stock/family_draft.hpp"
#include "kiosk/shop/stock/mix_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <functional>

namespace holdfast::kiosk::screens {

/// A form of the Inks. Fields are "inks.field.NAME", choices "inks.set.NAME.WORD".
class InksForm {
public:
    virtual ~InksForm() = default;
    InksForm() = default;
    InksForm(const InksForm&) = delete;
    InksForm& operator=(const InksForm&) = delete;

    [[nodiscard]] virtual std::string title(const wording::Speech& speech) const = 0;
    [[nodiscard]] virtual QList<SheetBlock> blocks(const wording::Speech& speech) const = 0;
    virtual bool act(const std::string& id) = 0;
    virtual bool enter(const std::string& field, const std::string& text) = 0;
    /// A scanned bucket; false if the form has no use for one.
    virtual bool addBucket(std::int64_t) { return false; }
    /// What it makes, a bucket still without id; nothing while something is wrong, which then stands at the fields.
    [[nodiscard]] virtual std::optional<records::Record> record() = 0;
    /// Families and cloths are signed; buckets need nobody's name.
    [[nodiscard]] virtual bool isSigned() const { return false; }
    /// Something was typed or pressed.
    [[nodiscard]] bool isTouched() const noexcept { return m_touched; }
    void touch() noexcept { m_touched = true; }

protected:
    [[nodiscard]] SheetField field(const std::string& name, const std::string& label, const std::string& value,
                                   SheetKinds::Keys keys, const wording::Speech& speech,
                                   const std::string& hint = {}) const;
    /// Faults that stand at none of the fields shown.
    void addOtherFaults(QList<SheetBlock>& blocks, const std::vector<std::string>& names,
                        const wording::Speech& speech) const;
    std::vector<shop::StockFault> m_faults;

private:
    bool m_touched = false;
};

[[nodiscard]] std::unique_ptr<InksForm> familyForm(shop::FamilyDraft draft, std::vector<std::string> taken);
[[nodiscard]] std::unique_ptr<InksForm> fabricForm(shop::FabricDraft draft, std::vector<std::string> taken);
/// `now` gives wall milliseconds.
[[nodiscard]] std::unique_ptr<InksForm> bucketForm(std::vector<std::string> families,
                                                   std::function<std::int64_t()> now);
/// `stock` gives the trees of these buckets, families and the moment; `open` are those that can be pressed.
[[nodiscard]] std::unique_ptr<InksForm> mixForm(std::int64_t number, std::vector<records::BucketOnFile> open,
                                                std::function<shop::MixStock(const std::vector<std::int64_t>&)> stock);

} // namespace holdfast::kiosk::screens
