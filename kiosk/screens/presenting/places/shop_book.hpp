#pragma once

#include "kiosk/ledger/report.hpp"
#include "kiosk/screens/presenting/places/shop_section.hpp"

#include <atomic>
#include <thread>

namespace holdfast::kiosk::screens {

/// What the book is, whether it is sound, and a copy of it. Checking and copying run on a thread of their own with
/// connections of their own; the result is taken over in tick(), or when somebody comes back.
class ShopBook final : public ShopSection {
public:
    using ShopSection::ShopSection;
    /// Waits until the work has stopped: a check does so at once, a copy when it is done.
    ~ShopBook() override = default;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    void tick() override;

private:
    enum class Work { none, checking, copying };
    void startCheck();
    void startCopy();
    void addResults(SheetPageState& page) const;

    std::string m_shop;
    std::string m_kiosk;
    std::int64_t m_entries = 0;
    Work m_work = Work::none;
    std::optional<ledger::IntegrityReport> m_report;
    std::string m_copied; ///< file name of the last copy
    std::string m_copying;
    // Written by the worker before m_done is set, read after.
    std::optional<ledger::Result<ledger::IntegrityReport>> m_checkResult;
    std::optional<ledger::Result<void>> m_copyResult;
    std::atomic<bool> m_done{false};
    std::jthread m_worker; ///< last: it ends before what it writes to
};

} // namespace holdfast::kiosk::screens
