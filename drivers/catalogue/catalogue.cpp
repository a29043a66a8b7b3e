#include "drivers/catalogue/catalogue.hpp"

#include "drivers/catalogue/built_in.hpp"

#include <algorithm>
#include <cassert>

namespace holdfast::drivers {

namespace {

std::vector<InstrumentDescription> readBuiltIn() {
    std::vector<InstrumentDescription> instruments;
    for (const std::string_view text : builtInDescriptions()) {
        auto description = parseDescription(text);
        assert(description); // a file of ours, and a test reads them all
        if (description) {
            instruments.push_back(std::move(*description));
        }
    }
    std::sort(instruments.begin(), instruments.end(), [](const auto& a, const auto& b) { return a.id < b.id; });
    return instruments;
}

} // namespace

const std::vector<InstrumentDescription>& catalogue() {
    static const std::vector<InstrumentDescription> instruments = readBuiltIn();
    return instruments;
}

const InstrumentDescription* findInstrument(std::string_view id) {
    const auto& all = catalogue();
    const auto found = std::find_if(all.begin(), all.end(), [id](const auto& entry) { return entry.id == id; });
    return found == all.end() ? nullptr : &*found;
}

} // namespace holdfast::drivers
