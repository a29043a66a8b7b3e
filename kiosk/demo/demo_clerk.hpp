#pragma once

#include "kiosk/demo/demo_pen.hpp"
#include "kiosk/demo/demo_runs.hpp"
#include "kiosk/demo/demo_steps.hpp"
#include "kiosk/records/queries.hpp"

#include <optional>

namespace holdfast::kiosk::demo {

/// Who does the work away from the dryers: asks the book, calls the use case, writes what it says.
class DemoClerk final {
public:
    /// All must outlive the clerk.
    DemoClerk(ledger::Book& book, DemoPen& pen, const drivers::Clock& clock, const std::string& probeAddress)
        : m_book{book}, m_pen{pen}, m_clock{clock}, m_probeAddress{probeAddress} {}

    [[nodiscard]] ledger::Result<void> operator()(const OpensShop&);
    [[nodiscard]] ledger::Result<void> operator()(const ChangesCrew& crew);
    [[nodiscard]] ledger::Result<void> operator()(const OpensBucket& bucket);
    [[nodiscard]] ledger::Result<void> operator()(const MakesMix& mix);
    [[nodiscard]] ledger::Result<void> operator()(const ClosesBucket& bucket);
    [[nodiscard]] ledger::Result<void> operator()(const EntersSheet&);
    [[nodiscard]] ledger::Result<void> operator()(const Checks& check);
    [[nodiscard]] ledger::Result<void> operator()(const PlansRuns& runs);
    [[nodiscard]] ledger::Result<void> operator()(const PlansCards&);
    [[nodiscard]] ledger::Result<void> operator()(const TakesWayOut& way);
    [[nodiscard]] ledger::Result<void> operator()(const OpensLot& lot);
    [[nodiscard]] ledger::Result<void> operator()(const FinishesRun& run);

private:
    [[nodiscard]] ledger::Result<void> bringUpToDate();
    [[nodiscard]] std::chrono::sys_days today() const { return drivers::localDay(m_clock.wall()); }
    [[nodiscard]] std::vector<analytics::InkFamily> families() const;
    [[nodiscard]] shop::Stock stock(const std::vector<DemoRun>& runs) const;
    [[nodiscard]] std::optional<records::RunOnFile> run(std::int64_t number) const;
    [[nodiscard]] std::string dryerId(DemoDryer dryer) const;
    [[nodiscard]] std::optional<analytics::RunWindow> windowOf(const records::RunOnFile& run, DemoDryer dryer) const;
    [[nodiscard]] ledger::Result<void> plan(const std::vector<DemoRun>& runs, records::PlanKind kind);

    ledger::Book& m_book;
    DemoPen& m_pen;
    const drivers::Clock& m_clock;
    const std::string& m_probeAddress;
};

} // namespace holdfast::kiosk::demo
