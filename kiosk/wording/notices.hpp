#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/shop/proving/proving_causes.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>

namespace holdfast::kiosk::wording {

/// What every failure says: what happened, what was kept, what to do.
struct Notice final {
    std::string happened;
    std::string kept;
    std::string toDo;

    /// The three sentences in a row, for the command line.
    [[nodiscard]] std::string line() const;
};

enum class Kept { reading, book };

[[nodiscard]] Notice noticeOf(const ledger::Failure& failure, Kept kept, const Speech& speech);
[[nodiscard]] Notice noticeOf(const shop::Refusal& refusal, const Speech& speech);
[[nodiscard]] Notice noticeOf(shop::ProbeTrouble trouble, const Speech& speech);

} // namespace holdfast::kiosk::wording
