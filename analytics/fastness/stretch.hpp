#pragma once

#include "analytics/fastness/extension.hpp"

#include <optional>

/// What a print does when it is pulled.
namespace holdfast::analytics {

/// Ordinal, in this order from best to worst.
enum class CrackClass { noCrack, hairline, breaks, powders };

/// One pull: how far, and what was seen.
struct Pull final {
    RelativeLength elongation;
    CrackClass seen = CrackClass::noCrack;
};

enum class StretchFault {
    noPulls,
    notFinite,
    notPositive ///< a pull of 0 % or less pulls nothing
};

struct StretchFinding final {
    /// Highest elongation pulled at which, as at every lower one, nothing worse than allowed was seen; absent if the
    /// lowest pull already failed.
    std::optional<RelativeLength> held;
    /// Lowest elongation with something worse; absent if all held.
    std::optional<RelativeLength> firstFailed;
    CrackClass worst = CrackClass::noCrack; ///< over all pulls
    /// A pull higher than firstFailed looked as allowed: the pulls contradict each other; the lower one counts.
    bool contradictory = false;
};

/// Pulls in any order; several at the same elongation (within 1e-9) count as the worst of them.
[[nodiscard]] tl::expected<StretchFinding, StretchFault> readPulls(std::span<const Pull> pulls,
                                                                   CrackClass worstAllowed);

enum class StretchVerdict { passed, failed, notPulledFarEnough };

/// Passed: held at or beyond what is asked. Failed: something worse than allowed at or below it. Otherwise nobody
/// pulled that far.
[[nodiscard]] StretchVerdict judgeStretch(const StretchFinding& finding, RelativeLength asked) noexcept;

} // namespace holdfast::analytics
