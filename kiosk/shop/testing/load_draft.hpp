#pragma once

#include "analytics/fastness/witness.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/test_fault.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

/// A drum while it is being filled. Fields "machine", "temperature", "detergent", "besides", "good-witness",
/// "weak-witness"; faults of prints stand at "prints".
struct LoadDraft final {
    std::string machine{};
    std::optional<records::MethodDescribed> programme{};
    std::string temperature{};
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::celsius;
    std::string detergent{};
    bool tumbled = true;
    std::vector<records::PrintRow> prints{};
    std::string besides{};
    std::string goodWitness{};
    std::string weakWitness{};
};

/// `number` is the next free one, `load` its id, `now` wall milliseconds.
[[nodiscard]] tl::expected<records::LoadWashed, TestFaults> loadFrom(const LoadDraft& draft, const std::string& load,
                                                                     std::int64_t number, std::int64_t now);

/// What the witnesses look like, as typed. Fields "good-grade", "weak-grade".
struct WitnessDraft final {
    std::string good{};
    std::string weak{};
    bool byInstrument = false; ///< the figure of ISO 105-A05, not only half steps
};

/// How a load came out of it.
struct LoadFinding final {
    records::LoadJudged judged{};
    analytics::LoadVerdict verdict{};
};

/// The limits for a machine and programme from its loads that were valid, else the shop's. `earlier` are its judged
/// loads, oldest first; `but` is left out.
[[nodiscard]] analytics::WitnessLimits limitsFor(const std::vector<records::LoadRow>& earlier, const std::string& but,
                                                 const analytics::WitnessSettings& shop = {});

/// `corrects` is set if the load was judged before.
[[nodiscard]] tl::expected<LoadFinding, TestFaults> judgedFrom(const WitnessDraft& draft, const std::string& load,
                                                               const analytics::WitnessLimits& limits);

} // namespace holdfast::kiosk::shop
