#pragma once

#include <string_view>

namespace holdfast::kiosk::records {

/// What stands after WHERE of prints p for printsUnderTest(?1); the inside that the questions of open_queries.hpp
/// share.
inline constexpr std::string_view kUnderTest =
    "p.ended IS NULL AND (p.shelf IS NULL OR EXISTS (SELECT 1 FROM tests u WHERE u.print = p.id) "
    "OR EXISTS (SELECT 1 FROM load_prints u WHERE u.print = p.id)) ORDER BY p.sequence DESC LIMIT ?1";

} // namespace holdfast::kiosk::records
