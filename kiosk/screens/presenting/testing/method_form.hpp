#pragma once

#include "kiosk/screens/presenting/testing/tests_form.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// A method is described, or a described one changed. `names` are those of the shop's other methods.
[[nodiscard]] std::unique_ptr<TestsForm>
methodForm(const PlaceNeeds& needs, std::optional<records::MethodDescribed> before, std::vector<std::string> names);

/// Steps, cautions, rule and whence it comes, on one screen.
[[nodiscard]] QList<SheetBlock> methodBlocks(const records::MethodDescribed& method, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
