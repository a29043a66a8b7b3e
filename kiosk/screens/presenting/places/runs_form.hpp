#pragma once

#include "kiosk/records/stock_queries.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <tl/expected.hpp>

#include <functional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// The form in which a plan is written or changed.
class RunsForm final {
public:
    /// A bucket as the book has it; one that was closed only if asked for.
    using BucketOf =
        std::function<tl::expected<shop::StockBucket, shop::PlanFault>(std::int64_t number, bool closedToo)>;

    /// `open` are the buckets that can be pressed.
    RunsForm(shop::PlanDraft draft, shop::Stock stock, std::vector<records::BucketOnFile> open, BucketOf bucketOf);

    [[nodiscard]] const shop::PlanDraft& draft() const noexcept { return m_draft; }
    /// Something was typed or pressed.
    [[nodiscard]] bool isTouched() const { return m_draft != m_first; }
    /// The plan, if nothing is wrong with it; else the faults stand at their fields.
    [[nodiscard]] std::optional<records::RunPlanned> plan();

    bool act(const std::string& id);
    bool enter(const std::string& field, const std::string& text);
    /// Puts a bucket on the chosen layer and goes to the next that has none; a fault changes nothing.
    [[nodiscard]] std::optional<shop::PlanFault> pour(std::int64_t number);
    [[nodiscard]] QList<SheetBlock> blocks(const wording::Speech& speech) const;

private:
    bool actOnLayers(const std::string& id);
    void pressBucket(const std::string& number);
    std::optional<shop::PlanFault> learn(std::int64_t number, bool closedToo);
    void pourNext(std::size_t from);
    [[nodiscard]] SheetField field(const std::string& name, const std::string& label, const std::string& value,
                                   const std::string& hint, SheetKinds::Keys keys, const wording::Speech& speech) const;
    void addLayers(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addWindow(QList<SheetBlock>& blocks, const wording::Speech& speech) const;

    shop::PlanDraft m_draft;
    shop::PlanDraft m_first; ///< as it was opened
    shop::Stock m_stock;
    std::vector<records::BucketOnFile> m_open;
    BucketOf m_bucketOf;
    std::size_t m_pouring = 0; ///< index of the layer that the next bucket goes to
    std::vector<shop::PlanFault> m_faults;
    bool m_advised = false;
};

} // namespace holdfast::kiosk::screens
