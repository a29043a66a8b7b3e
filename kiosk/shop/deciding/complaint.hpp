#pragma once

#include "analytics/lots/lot_standing.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/shop/deciding/fields.hpp"

#include <tl/expected.hpp>

/// What a customer says, tied to the run it is about, and what came of it.
namespace holdfast::kiosk::shop::deciding {

struct ComplaintDraft final {
    std::string complaint{}; ///< id; empty: a new one
    std::int64_t number = 0;
    std::string customer{};
    std::optional<records::ComplaintKind> what{};
    std::string words{};
    std::string pieces{}; ///< as typed; may be empty
    std::string clue{};   ///< order, garment, batch, carton
    std::string received{};
    std::optional<std::string> run{}; ///< id
    std::optional<std::string> lot{}; ///< id
    std::vector<std::string> pictures{};
    bool operator==(const ComplaintDraft&) const = default;
};
[[nodiscard]] ComplaintDraft draftOf(const records::ComplaintTaken& taken);

/// The lot it is tied to.
struct LotComplained final {
    std::string lot{}; ///< id
    analytics::LotStanding standing = analytics::LotStanding::open;
    int shipped = 0;
    std::optional<int> made{};
    std::vector<std::string> complaintsThatHold{}; ///< ids of complaints that placed a hold on it, decided or not
};

struct ComplaintFacts final {
    bool closed = false;                ///< a finding was signed
    std::optional<LotComplained> lot{}; ///< of the draft; absent: tied to none
    std::int64_t nextNumber = 1;
    std::int64_t nextBin = 1;
};
struct ComplaintIds final {
    std::string complaint{};
    std::string hold{};
};

inline constexpr std::size_t kMostPictures = 12; ///< of one complaint

/// complaint.taken; and where it says that the print failed and is tied to a lot, hold.placed of the whole lot in the
/// same commit: shipped pieces make it a recall to decide. It holds a lot once. A scrapped lot is held no more.
[[nodiscard]] tl::expected<std::vector<records::Record>, Faults>
complaintFrom(const ComplaintDraft& draft, const ComplaintFacts& facts, const ComplaintIds& ids);

/// What keeping this draft does to its lot, said before it is kept.
enum class ComplaintEffect { none, holds, recallToDecide, heldAlready, lotScrapped, tiedToNone };
[[nodiscard]] ComplaintEffect effectOf(const ComplaintDraft& draft, const ComplaintFacts& facts);

struct FindingDraft final {
    std::string cause{};
    std::string action{};
    bool provenLater = false;
};
/// Closes it: needs a cause. `signers` are entitled, one at least.
[[nodiscard]] tl::expected<records::FindingSigned, Faults> findingFrom(const FindingDraft& draft,
                                                                       const records::ComplaintTaken& taken,
                                                                       bool closed,
                                                                       const std::vector<std::int64_t>& signers);

} // namespace holdfast::kiosk::shop::deciding
