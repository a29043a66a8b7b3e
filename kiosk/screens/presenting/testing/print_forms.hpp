#pragma once

#include "kiosk/screens/presenting/testing/tests_form.hpp"
#include "kiosk/shop/testing/print_draft.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// A print is named: run, lot, piece, and whether it is to be tested or kept. `run` is its number if it is known.
[[nodiscard]] std::unique_ptr<TestsForm> namePrintForm(const PlaceNeeds& needs, std::optional<std::int64_t> run);
/// Where a print is kept from now on.
[[nodiscard]] std::unique_ptr<TestsForm> shelfForm(const PlaceNeeds& needs, records::PrintRow print);

} // namespace holdfast::kiosk::screens
