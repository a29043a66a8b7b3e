#pragma once

#include "analytics/cure/ways_out_search.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <vector>

namespace holdfast::analytics {

/// Which ways of a bundle count; what is absent is not asked.
struct WayFilter final {
    std::optional<bool> showsBleed;   ///< exactly this
    std::optional<int> worstEase;     ///< the worst of the options chosen is exactly this; absent: sums of ease are 0
    std::optional<Temperature> lower; ///< the run's lower limit is exactly this
};

/// Never wraps: stays at the largest value.
[[nodiscard]] std::uint64_t cappedSum(std::uint64_t a, std::uint64_t b) noexcept;

/// The ways of one bundle that pass a filter, counted by sum of ease from the last layer to the first. A way passes if
/// every option is allowed and together they have the marks that "exactly" and the bundle's hard upper ask for. Only
/// the first `room` ways by sum are sure to be seen: of layers that end with the same marks, higher sums are dropped
/// once that many ways have lower ones, since each of those can stand in their place.
class WayCounts final {
public:
    WayCounts(const Bundle& bundle, const WayFilter& filter, std::size_t room);

    /// Ways by sum of ease.
    [[nodiscard]] std::map<std::int64_t, std::uint64_t> bySum() const;

    /// One choice of options, one for each changed layer.
    using Choice = std::vector<const Option*>;
    /// The first `most` ways with this sum of ease, by the names of their options, bottom first.
    void visit(std::int64_t sum, std::size_t most, const std::function<void(const Choice&)>& take) const;

private:
    using Marks = unsigned;
    static constexpr std::size_t kMarkSets = 16;
    using Counts = std::array<std::map<std::int64_t, std::uint64_t>, kMarkSets>;

    void readKept(const Bundle& bundle, const WayFilter& filter);
    void readOptions(const Bundle& bundle, const WayFilter& filter);
    void count(std::size_t room);
    [[nodiscard]] bool canEnd(std::size_t layer, Marks marks, std::int64_t sum) const;
    void descend(Choice& chosen, Marks marks, std::int64_t sum, std::size_t& left,
                 const std::function<void(const Choice&)>& take) const;

    struct Marked final {
        const Option* option = nullptr;
        Marks marks = 0;
        int ease = 0;
    };
    bool m_keptPasses = true;
    Marks m_kept = 0;
    Marks m_needed = 0;
    std::vector<std::vector<Marked>> m_options;
    std::vector<Counts> m_from; ///< m_from[i]: choices for the layers from i on, by their marks
};

} // namespace holdfast::analytics
