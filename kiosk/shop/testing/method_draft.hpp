#pragma once

#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/test_fault.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

/// One row of a pass rule. Fields "rule.0.name", "rule.0.limit", "rule.0.cycle", "rule.0.elongation".
struct CriterionDraft final {
    analytics::Quantity quantity = analytics::Quantity::ownGrade;
    std::string ownName{};
    analytics::Bound bound = analytics::Bound::atLeast;
    std::string limit{}; ///< a grade, per cent, a number; "yes" or "no"; word of a crack class
    std::string cycle{};
    std::string elongation{}; ///< per cent
    bool onlyThere = false;
};

/// A method while it is described. Fields "name", "source", "rest", "due", "cycles", "minutes", "temperature", "pulls",
/// "steps", "cautions".
struct MethodDraft final {
    std::optional<records::MethodDescribed> before{}; ///< the revision that is changed
    std::string name{};
    records::TestKind kind = records::TestKind::own;
    analytics::Mark mark = analytics::Mark::fromMemory;
    std::string source{};
    std::vector<analytics::Chemistry> chemistries{};
    std::string rest{}; ///< hours
    std::string due{};  ///< hours, rising: "0, 24, 72"
    std::string cycles{};
    std::string minutes{};
    std::string temperature{};
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::celsius;
    bool tumble = true;
    std::string pulls{}; ///< per cent, rising
    std::vector<std::string> steps{};
    std::vector<std::string> cautions{};
    std::vector<CriterionDraft> rule{};
    bool eachLot = false;
};

[[nodiscard]] MethodDraft draftOf(const records::MethodDescribed& method, analytics::TemperatureUnit unit);

/// `names` are those of the shop's other methods; `key` is for a new one.
[[nodiscard]] tl::expected<records::MethodDescribed, TestFaults>
methodFrom(const MethodDraft& draft, const std::vector<std::string>& names, const std::string& key);

/// Used no more from now on; its tests stay.
[[nodiscard]] records::MethodDescribed withdrawn(const records::MethodDescribed& method);
[[nodiscard]] records::MethodDescribed usedAgain(const records::MethodDescribed& method);
/// As withdrawn, but refused for a starter and for one that a test was done by.
[[nodiscard]] tl::expected<records::MethodDescribed, TestFaults> deleted(const records::MethodDescribed& method,
                                                                         bool used);

} // namespace holdfast::kiosk::shop
