#pragma once

#include "kiosk/records/lot_records.hpp"
#include "kiosk/shop/deciding/fields.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <map>

/// The quarantine: bins that must stand on the shelf, ticked off one by one.
namespace holdfast::kiosk::shop::deciding {

/// A red bin, as the book has it.
struct Bin final {
    std::string hold{}; ///< id
    std::int64_t number = 0;
    std::optional<int> pieces{}; ///< absent: nobody knows how many
};

/// What was found at the shelf so far.
struct ShelfDraft final {
    std::map<std::string, std::string> found{}; ///< hold → pieces as typed; empty: as many as the book says
};

/// The bin is there; pressed again it is not.
void tick(ShelfDraft& draft, const std::string& hold);

struct ShelfSum final {
    int bins = 0;
    int ticked = 0;
    std::int64_t expected = 0; ///< pieces of all bins whose number is known
    std::int64_t counted = 0;
    std::vector<std::int64_t> missing{};   ///< numbers of bins that were not found
    std::vector<std::int64_t> differing{}; ///< numbers of bins with another count than the book's
    [[nodiscard]] bool agrees() const noexcept { return missing.empty() && differing.empty(); }
};

struct ShelfKept final {
    records::ShelfCounted counted{};
    ShelfSum sum{};
};

/// Faults stand at the hold's id. A bin without a known number needs one.
[[nodiscard]] tl::expected<ShelfKept, Faults> shelfFrom(const ShelfDraft& draft, const std::vector<Bin>& bins);
/// Of what can be read of the draft; what is no count adds nothing.
[[nodiscard]] ShelfSum sumOf(const ShelfDraft& draft, const std::vector<Bin>& bins);

/// The newest count held against the bins as they are now: bins that came since are missing from it.
[[nodiscard]] ShelfSum sumOf(const records::ShelfCounted& counted, const std::vector<Bin>& bins);

} // namespace holdfast::kiosk::shop::deciding
