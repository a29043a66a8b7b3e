#pragma once

#include "kiosk/shop/tracing/trace_facts.hpp"

/// What nobody tested: the certificate and the auditor's page say it (decisions 5).
namespace holdfast::kiosk::shop::tracing {

enum class Gap {
    noReading,       ///< lot: none that counts
    readingMissed,   ///< lot, count
    kindNever,       ///< kind: no test of it was done of any print of the run
    methodMissing,   ///< lot, method: every lot owes it
    cyclesMissing,   ///< print, method, done, count: washed `done` of `count` times
    noRetainedPiece, ///< none of the run is kept
    chemicalContent, ///< of children's wear: a laboratory's work
};

struct NotTested final {
    Gap gap{};
    int lot = 0; ///< number; 0: of the run
    records::TestKind kind = records::TestKind::own;
    std::string method{};   ///< key
    std::int64_t print = 0; ///< number
    int done = 0;
    int count = 0;
    bool operator==(const NotTested&) const = default;
};

/// In the order above. A test in a void load, or one that ended in a mere note, was none. Solvent rub is only asked of
/// a run whose prints are all plastisol; split test, water drop, tape and own methods only if every lot owes them.
[[nodiscard]] std::vector<NotTested> notTested(const TraceFacts& facts);

} // namespace holdfast::kiosk::shop::tracing
