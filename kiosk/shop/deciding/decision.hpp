#pragma once

#include "kiosk/records/kinds.hpp"
#include "kiosk/shop/deciding/fields.hpp"
#include "kiosk/shop/deciding/lot_facts.hpp"

#include <tl/expected.hpp>

/// A signed decision about a lot (decisions 5).
namespace holdfast::kiosk::shop::deciding {

struct DecisionDraft final {
    std::optional<records::DecisionWord> word{};
    std::string reason{};             ///< as typed
    std::string laboratoryReport{};   ///< as typed
    std::vector<std::string> holds{}; ///< ids of those it ends; a lot without any needs none
    std::vector<std::int64_t> signers{};
    std::optional<std::string> corrects{}; ///< id of a decision that was signed in error
};

/// Ids that the entries of a decision need.
struct DecisionIds final {
    std::string decision{};
    std::string reRunLot{};
};

/// Every fault at once: of the draft, then those of analytics::refusalsOf. A recall is asked the same as a re-run, and
/// needs shipped pieces; it ends no hold, since what comes back is still to be decided. Every other decision about a
/// lot on hold names the holds it ends: scrapped brackets are those pieces, the rest of the lot stays.
[[nodiscard]] Faults faultsOf(const DecisionDraft& draft, const LotFacts& facts);
/// Only those that a signature does not heal: shown before anybody takes out a badge.
[[nodiscard]] Faults faultsBeforeSigning(const DecisionDraft& draft, const LotFacts& facts);
/// This decision takes two signatures in this shop.
[[nodiscard]] bool takesTwo(const DecisionDraft& draft, const LotFacts& facts);

/// The words that may be chosen for this lot, in the order of their presses: released, re-run, scrapped, recalled.
/// What the rules would refuse whatever is typed is left out.
[[nodiscard]] std::vector<records::DecisionWord> wordsFor(const LotFacts& facts);

/// decision.signed, and for a re-run lot.opened before it: a new lot tied to the old.
[[nodiscard]] tl::expected<std::vector<records::Record>, Faults>
decisionFrom(const DecisionDraft& draft, const LotFacts& facts, const DecisionIds& ids);

/// Reasons of earlier decisions, the most frequent first, each once in any case of letters; at most `most`.
[[nodiscard]] std::vector<std::string> frequentReasons(const std::vector<std::string>& earlier, std::size_t most);

} // namespace holdfast::kiosk::shop::deciding
