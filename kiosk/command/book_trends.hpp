#pragma once

#include "kiosk/command/answer.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/records/trend_queries.hpp"
#include "kiosk/shop/trending/terms.hpp"

#include <filesystem>
#include <iosfwd>
#include <memory>
#include <optional>
#include <string>

/// The owner's questions to the book, for commands.
namespace holdfast::kiosk::command {

struct SuspectsTyped;

/// What a book knows, and the book it was read from.
struct BookRead final {
    std::unique_ptr<ledger::Book> book{};
    records::TrendFacts facts{};
};
/// Takes no lock: the kiosk may run meanwhile.
[[nodiscard]] ledger::Result<BookRead> readBook(const std::filesystem::path& data);

/// As typed: names of a dryer and a family, first and last day.
struct FilterTyped final {
    std::string dryer{};
    std::string family{};
    std::string from{};
    std::string to{};
};
/// A dryer by its name, whatever the case of letters; days in the shop's time, the last one wholly.
[[nodiscard]] tl::expected<shop::trending::TrendFilter, CommandFault> filterFrom(const FilterTyped& typed,
                                                                                 const records::TrendFacts& facts);

/// "too-few-episodes", for JSON.
[[nodiscard]] std::string_view nameOf(shop::trending::NoFigure why) noexcept;
/// {"why_not", "have", "need"}.
[[nodiscard]] Json refusalJson(const shop::trending::Refusal& refusal);
[[nodiscard]] std::string refusalSaid(const shop::trending::Refusal& refusal);
/// "2026-11-25" in the shop's time.
[[nodiscard]] std::string daySaid(std::int64_t at, const records::TrendFacts& facts);

[[nodiscard]] int runBookSuspects(const SuspectsTyped& typed, const std::filesystem::path& data, std::ostream& out,
                                  std::ostream& err);

} // namespace holdfast::kiosk::command
