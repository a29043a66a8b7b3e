#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <optional>
#include <string>

/// A reading as it was judged when it was taken, and by what is known today.
namespace holdfast::kiosk::shop::deciding {

enum class JudgedNow {
    same,          ///< nothing that it was judged by has changed, or it comes to the same
    instrument,    ///< its instrument was found wrong: judged again with the error found
    revised,       ///< a family or the cloth has a newer revision: judged by it
    mislabelled,   ///< a bucket was closed as mislabelled: what its ink needs is not known
    cannotBeJudged ///< a family or the cloth was revised, but its trace is gone or the plan has changed
};

struct ThenAndNow final {
    std::string reading{}; ///< id
    std::int64_t takenAt = 0;
    std::string instrument{}; ///< what people call it
    analytics::Verdict then{};
    analytics::Verdict now{}; ///< not proven and without a margin where that is not known
    JudgedNow why = JudgedNow::same;
    std::int64_t bucket = 0; ///< number of the mislabelled one
    std::string revised{};   ///< name of the family or cloth
};

/// Nothing for a refused reading or one without a run. Belongs to the thread of the book.
[[nodiscard]] ledger::Result<std::optional<ThenAndNow>> thenAndNow(const ledger::Book& book,
                                                                   const records::ReadingRow& row);

/// Of those that count and have a margin the one that speaks most against the lot: under-cured, overheated, not proven,
/// cured; then the smallest margin. Null: none counts.
[[nodiscard]] const records::ReadingRow* weightiest(const std::vector<records::ReadingRow>& readings);

} // namespace holdfast::kiosk::shop::deciding
