#pragma once

#include "analytics/metrology/instrument.hpp"
#include "kiosk/shop/stock/stock_fault.hpp"

#include <vector>

namespace holdfast::kiosk::shop {

/// Turns texts into values and notes what is wrong with them. Empty texts are no fault unless said. What was not
/// touched since `before` was written out stays as it was authored.
class StockReader final {
public:
    explicit StockReader(analytics::TemperatureUnit unit) : m_unit{unit} {}

    std::string text(const std::string& typed, const std::string& field);
    /// Empty is `nameMissing`.
    std::string name(const std::string& typed, const std::string& field);
    /// Not below 0.
    std::optional<double> number(const std::string& typed, const std::string& field);
    std::optional<double> percent(const std::string& typed, const std::string& field);
    std::optional<int> whole(const std::string& typed, const std::string& field);
    std::optional<analytics::AuthoredTemperature>
    temperature(const std::string& typed, const std::string& field,
                const std::optional<analytics::AuthoredTemperature>& before = {});
    /// Typed in units of so many seconds each.
    std::optional<analytics::Duration> span(const std::string& typed, const std::string& field, double secondsEach,
                                            const std::optional<analytics::Duration>& before = {});
    std::optional<analytics::Date> date(const std::string& typed, const std::string& field);
    /// Fields that only mean something together: those empty while another is filled are faults. True if all are
    /// filled.
    bool together(const std::vector<std::pair<std::string, std::string>>& fieldsAndTexts);
    void fault(StockFault fault) { m_faults.push_back(std::move(fault)); }
    /// Name of something new, against the names that stand, in any case of letters.
    void newName(const std::string& name, const std::string& field, const std::vector<std::string>& taken);
    /// A figure that is not from memory says where it comes from.
    void source(analytics::Mark mark, const std::string& source);

    [[nodiscard]] std::vector<StockFault>& faults() noexcept { return m_faults; }

private:
    analytics::TemperatureUnit m_unit;
    std::vector<StockFault> m_faults;
};

/// A span in units of so many seconds each, as few digits as say it.
[[nodiscard]] std::string spanTyped(const std::optional<analytics::Duration>& span, double secondsEach);

inline constexpr double kSecondsPerHour = 3600.0;

} // namespace holdfast::kiosk::shop
