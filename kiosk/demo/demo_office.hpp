#pragma once

#include "kiosk/demo/demo_pen.hpp"
#include "kiosk/demo/demo_steps.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/shop/deciding/lot_facts.hpp"

namespace holdfast::kiosk::demo {

/// Where lots are packed, decided and complained about, each through the use case of a person doing so.
class DemoOffice final {
public:
    /// All must outlive the office.
    DemoOffice(const ledger::Book& book, DemoPen& pen, const drivers::Clock& clock)
        : m_book{book}, m_pen{pen}, m_clock{clock} {}

    [[nodiscard]] ledger::Result<void> operator()(const Packs& pack);
    [[nodiscard]] ledger::Result<void> operator()(const Decides& decide);
    [[nodiscard]] ledger::Result<void> operator()(const CountsShelf& count);
    [[nodiscard]] ledger::Result<void> operator()(const Complains& complaint);
    [[nodiscard]] ledger::Result<void> operator()(const FindsCause& finding);
    [[nodiscard]] ledger::Result<void> operator()(const FailsIceCheck& check);

private:
    [[nodiscard]] std::optional<records::RunOnFile> run(std::int64_t number) const;
    [[nodiscard]] std::optional<records::LotRow> lot(std::int64_t run, int number) const;
    [[nodiscard]] shop::deciding::LotFacts factsOf(const records::LotRow& lot) const;
    [[nodiscard]] std::optional<int> madeOf(const records::LotRow& lot) const;

    const ledger::Book& m_book;
    DemoPen& m_pen;
    const drivers::Clock& m_clock;
};

} // namespace holdfast::kiosk::demo
