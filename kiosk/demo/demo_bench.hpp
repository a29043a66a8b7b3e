#pragma once

#include "kiosk/demo/demo_pen.hpp"
#include "kiosk/demo/demo_steps.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/test_draft.hpp"

#include <map>
#include <string>

namespace holdfast::kiosk::demo {

/// QA's bench: prints are named, washed, pulled and looked at, each through the use case of a person doing so.
class DemoBench final {
public:
    /// All must outlive the bench.
    DemoBench(const ledger::Book& book, DemoPen& pen, const drivers::Clock& clock)
        : m_book{book}, m_pen{pen}, m_clock{clock} {}

    [[nodiscard]] ledger::Result<void> operator()(const NamesPrint& name);
    [[nodiscard]] ledger::Result<void> operator()(const CutsPrint& cut);
    [[nodiscard]] ledger::Result<void> operator()(const EndsPrint& end);
    [[nodiscard]] ledger::Result<void> operator()(const DescribesMethod&);
    [[nodiscard]] ledger::Result<void> operator()(const Washes& wash);
    [[nodiscard]] ledger::Result<void> operator()(const JudgesLoad& judge);
    [[nodiscard]] ledger::Result<void> operator()(const TestsPrint& test);

private:
    [[nodiscard]] std::int64_t now() const { return m_clock.wall().millisecondsSinceEpoch; }
    [[nodiscard]] std::optional<records::PrintRow> print(const std::string& name) const;
    [[nodiscard]] std::optional<records::MethodDescribed> method(const std::string& key) const;
    [[nodiscard]] std::optional<shop::TestContext> contextOf(const records::PrintRow& print);

    const ledger::Book& m_book;
    DemoPen& m_pen;
    const drivers::Clock& m_clock;
    std::map<std::string, std::string> m_prints; ///< ids by name
    std::string m_fold;                          ///< key of the shop's own method
};

} // namespace holdfast::kiosk::demo
