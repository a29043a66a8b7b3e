#pragma once

#include "kiosk/shop/planning/order_list.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::wording {

/// A full sentence for what is wrong with a plan or with a row of an order list.
[[nodiscard]] std::string sentence(const shop::PlanFault& fault, const Speech& speech);
/// With its line, if it has one.
[[nodiscard]] std::string sentence(const shop::OrderFault& fault, const Speech& speech);

} // namespace holdfast::kiosk::wording
