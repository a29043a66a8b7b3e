#pragma once

#include "kiosk/records/test_records.hpp"

#include <string>
#include <vector>

/// What a method asks to be looked at.
namespace holdfast::kiosk::shop {

/// One thing to be seen of a print.
struct AskedResult final {
    analytics::Quantity quantity = analytics::Quantity::changeGrade;
    std::string ownName{};
    bool operator==(const AskedResult&) const = default;
};

/// Names that tell results of one quantity apart in the starters.
inline constexpr const char* kOneLayer = "one-layer";
inline constexpr const char* kTwoLayers = "two-layers";
inline constexpr const char* kOtherSurvived = "other-half-survived"; ///< the half as it was printed
inline constexpr const char* kReCuredSurvived = "re-cured-half-survived";

/// In the order of the form: what its kind asks, then whatever its rule speaks of besides. Pulls and lengths of a
/// stretch and a shrink test are asked as such, and so is a stretch's crack class, once a pull.
[[nodiscard]] std::vector<AskedResult> askedOf(const records::MethodDescribed& method);
/// Whether the rule cannot be judged without it; fibres standing are only noted.
[[nodiscard]] bool isNeeded(const AskedResult& asked, const records::MethodDescribed& method);
/// Seen again and again, after cycles or hours. A bleed watch with hours is one, a warm press is not.
[[nodiscard]] bool isSeries(const records::MethodDescribed& method) noexcept;
[[nodiscard]] constexpr bool hasLengths(records::TestKind kind) noexcept {
    return kind == records::TestKind::stretch || kind == records::TestKind::shrink;
}

} // namespace holdfast::kiosk::shop
