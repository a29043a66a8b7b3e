#pragma once

#include "analytics/fastness/grade.hpp"
#include "analytics/metrology/instrument.hpp"
#include "kiosk/shop/testing/test_fault.hpp"

namespace holdfast::kiosk::shop {

/// Turns typed texts into values and notes what is wrong with them. Empty texts are no fault unless said.
class TestReader final {
public:
    std::string text(const std::string& typed, const std::string& field);
    /// Empty is nameMissing, or another cause.
    std::string name(const std::string& typed, const std::string& field,
                     TestFaultCause missing = TestFaultCause::nameMissing);
    std::optional<double> number(const std::string& typed, const std::string& field);
    std::optional<int> whole(const std::string& typed, const std::string& field);
    std::optional<analytics::Date> date(const std::string& typed, const std::string& field);
    /// "14:05" of today or "2026-03-01 14:05", in the shop's own time, as wall milliseconds.
    std::optional<std::int64_t> time(const std::string& typed, const std::string& field, std::int64_t now,
                                     int utcOffsetMinutes);
    /// 1 to 5 in half steps, also "4-5".
    std::optional<analytics::Grade> grade(const std::string& typed, const std::string& field);
    /// Figures parted by commas or blanks, rising; each not below `least`.
    std::vector<double> rising(const std::string& typed, const std::string& field, double least,
                               TestFaultCause otherwise);
    void fault(TestFault fault) { m_faults.push_back(std::move(fault)); }

    [[nodiscard]] TestFaults& faults() noexcept { return m_faults; }

private:
    TestFaults m_faults;
};

} // namespace holdfast::kiosk::shop
