#pragma once

#include <string>

namespace holdfast::kiosk::records::testing {

inline const std::string kSampleRun = "01926e2a-0000-7000-8000-000000000001";
inline const std::string kSampleLot = "01926e2a-0000-7000-8000-000000000002";

} // namespace holdfast::kiosk::records::testing
