#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// `holdfast facts` as typed.
struct FactsTyped final {
    std::string trace;
    std::string time;
    std::string temperature;
    std::string flag;
    std::string unit;  ///< C or F
    std::string range; ///< LO..HI, in the file's unit
    std::vector<std::string> missing;
    std::string separator; ///< one sign, or "tab", "space"
    std::string join;      ///< bridge, split; empty: by the rules
    std::vector<std::string> atLeast;
    bool json = false;
};

/// Exit status 0, or 2 with a sentence on `err`.
[[nodiscard]] int runFacts(const FactsTyped& typed, std::ostream& out, std::ostream& err);

} // namespace holdfast::kiosk::command
