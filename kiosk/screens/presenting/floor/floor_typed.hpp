#pragma once

#include <map>
#include <string>

namespace holdfast::kiosk::screens {

/// By field: texts that are no figure, kept as they were typed until they are typed again.
using FloorTyped = std::map<std::string, std::string>;

} // namespace holdfast::kiosk::screens
