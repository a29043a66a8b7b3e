#include "kiosk/shop/testing/series.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {

bool isVoid(const records::LoadRow& load) noexcept {
    return load.judged && load.judged->word != records::LoadWord::valid;
}

std::optional<int> cycleOf(const std::string& load, const std::string& programme,
                           const std::vector<records::LoadRow>& loads) {
    int before = 0;
    for (const auto& one : loads) {
        if (one.washed.programme != programme) {
            continue;
        }
        if (one.washed.load == load) {
            return before + 1;
        }
        before += isVoid(one) ? 0 : 1;
    }
    return std::nullopt;
}

std::optional<int> furthest(const std::string& method, const std::vector<records::TestRow>& tests,
                            const std::string& but) {
    std::optional<int> most;
    for (const auto& one : tests) {
        if (one.done.method == method && one.id != but && one.done.cycle && counts(one)) {
            most = std::max(most.value_or(*one.done.cycle), *one.done.cycle);
        }
    }
    return most;
}

std::vector<analytics::TestResult> resultsSoFar(const std::string& method, const std::vector<records::TestRow>& tests,
                                                const std::string& but) {
    std::vector<analytics::TestResult> all;
    for (const auto& one : tests) {
        if (one.done.method == method && one.id != but && counts(one)) {
            all.insert(all.end(), one.done.results.begin(), one.done.results.end());
        }
    }
    return all;
}

} // namespace holdfast::kiosk::shop
