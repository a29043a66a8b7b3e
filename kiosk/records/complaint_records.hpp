#pragma once

#include "kiosk/records/lot_records.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What comes back from outside.
namespace holdfast::kiosk::records {

enum class ComplaintKind {
    washedOut, ///< the print comes off or fades in the wash
    cracked,
    peeled,
    bled,     ///< the garment's colour in the print
    scorched, ///< the cloth, or shrunk
    rubbedOff,
    feel, ///< hand, odour: no print failure
    other,
};
/// Whether it says that the print failed, and so holds its lot or makes a recall to decide.
[[nodiscard]] constexpr bool isPrintFailure(ComplaintKind kind) noexcept {
    return kind != ComplaintKind::feel && kind != ComplaintKind::other;
}

/// complaint.taken: with the same complaint id again, the whole of it as it is from now on.
struct ComplaintTaken final {
    std::string complaint{}; ///< id
    std::int64_t number = 0; ///< as people say it
    std::string customer{};
    ComplaintKind what = ComplaintKind::washedOut;
    std::string words{}; ///< as the customer says it; may be empty
    std::optional<int> pieces{};
    std::string clue{};                  ///< order, garment, batch, carton, as typed
    std::optional<std::string> run{};    ///< id, once it is tied to one
    std::optional<std::string> lot{};    ///< id
    std::vector<std::string> pictures{}; ///< SHA-256 of blobs
    std::optional<analytics::Date> received{};
};

/// finding.signed: what it was, and what was done that it does not come again.
struct FindingSigned final {
    std::string complaint{};  ///< id; may be empty: of a lot
    std::string lot{};        ///< id; may be empty: of a complaint that no run was found for
    std::string cause{};      ///< as typed; never empty
    std::string action{};     ///< as typed; may be empty
    bool provenLater = false; ///< the action was shown to work
    std::vector<std::int64_t> signers{};
};

} // namespace holdfast::kiosk::records
