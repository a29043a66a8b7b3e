#pragma once

#include "kiosk/records/test_queries.hpp"
#include "kiosk/screens/presenting/testing/tests_form.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// A drum is filled. `programme` is a wash method's key and `first` a print, if they are known.
[[nodiscard]] std::unique_ptr<TestsForm> fillForm(const PlaceNeeds& needs, const std::string& programme,
                                                  std::optional<records::PrintRow> first);
/// The witnesses of a load are looked at, or looked at again.
[[nodiscard]] std::unique_ptr<TestsForm> witnessForm(const PlaceNeeds& needs, records::LoadRow load);

} // namespace holdfast::kiosk::screens
