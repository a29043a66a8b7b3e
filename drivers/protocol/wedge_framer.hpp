#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/protocol/scan_text.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast::drivers {

/// What to do after a key: pass `released` on to whoever has the focus (a person typed it), then handle the scan or its
/// fault if there is one. `swallow` says that the key itself must not be passed on now.
struct WedgeStep {
    std::string released; ///< UTF-8, in the order typed; may be empty
    std::optional<std::string> scan;
    std::optional<ScanFault> fault;
    bool swallow = false;
};

/// Tells a keyboard-wedge scanner from a person: keys less than 30 ms apart, ended by Enter, are a scan. Each key is
/// held back until the next one, or expire(), shows what it was; nothing that a person types is lost.
class WedgeFramer final {
public:
    static constexpr std::chrono::milliseconds kScanPace{30};
    static constexpr std::size_t kShortestScan = 3; // keys: a code has at least three signs

    /// A key that makes text. `at` is real time, not sped up: scanners do not run faster in a demo.
    [[nodiscard]] WedgeStep key(std::string_view text, MonotonicTime at);
    /// Enter or Return.
    [[nodiscard]] WedgeStep enter(MonotonicTime at);
    /// Call when kScanPace has passed without a key, and before any other key (arrows, Tab) is passed on.
    [[nodiscard]] WedgeStep expire(MonotonicTime at);
    [[nodiscard]] bool isHolding() const noexcept { return !m_held.empty() || m_overflowed; }

private:
    [[nodiscard]] bool continues(MonotonicTime at) const noexcept;
    [[nodiscard]] std::string release() noexcept;

    std::string m_held;
    std::size_t m_keys = 0;
    bool m_overflowed = false;
    MonotonicTime m_last{0};
};

} // namespace holdfast::drivers
