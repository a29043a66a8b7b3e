#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/shop/tracing/trace_facts.hpp"

#include <optional>
#include <string>

namespace holdfast::kiosk::screens {

/// Everything the book has about a run; nothing if there is no such run.
[[nodiscard]] ledger::Result<std::optional<shop::tracing::TraceFacts>> traceFacts(const ledger::Book& book,
                                                                                  const std::string& run);

} // namespace holdfast::kiosk::screens
