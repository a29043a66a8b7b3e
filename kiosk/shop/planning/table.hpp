#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdfast::kiosk::shop {

struct TableRow final {
    int line = 0; ///< where it begins, from 1
    std::vector<std::string> cells{};
};

struct Table final {
    std::vector<TableRow> rows{};
    int unclosedQuoteAt = 0; ///< line; 0: none
};

/// Comma, semicolon or tab: the one that stands most often in the first line outside quotes; comma if none does.
[[nodiscard]] char separatorOf(std::string_view text);
/// RFC 4180: quotes may hold separators, line ends and doubled quotes. Lines of blanks only are left out.
[[nodiscard]] Table readTable(std::string_view text, char separator);

/// Line of the first byte that is no UTF-8 or is zero; 0: all is text. RFC 3629: no overlong forms, no surrogates.
[[nodiscard]] int firstLineNotText(std::string_view bytes);

} // namespace holdfast::kiosk::shop
