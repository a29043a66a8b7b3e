#pragma once

#include "drivers/catalogue/description.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace holdfast::drivers {

/// Why a description was refused. `where` is the path of the key inside the file ("serial.baud"), empty for the file.
struct CatalogueFault {
    enum class Kind { notJson, otherFormat, newerVersion, unknownKey, missingKey, wrongValue } kind = Kind::notJson;
    std::string where;
    bool operator==(const CatalogueFault&) const = default;
};

/// The instruments that come with the program, in order of id. Read once; every file was checked by a test.
[[nodiscard]] const std::vector<InstrumentDescription>& catalogue();

/// Nothing if no such id comes with the program.
[[nodiscard]] const InstrumentDescription* findInstrument(std::string_view id);

/// A description as text in the format of drivers/README.md: the shop's own instruments. Unknown keys are refused by
/// name, so that a misspelt one is not silently ignored.
[[nodiscard]] tl::expected<InstrumentDescription, CatalogueFault> parseDescription(std::string_view json);

} // namespace holdfast::drivers
