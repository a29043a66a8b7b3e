#include "analytics/cure/names.hpp"
#include "kiosk/records/words.hpp"

#include <vector>

/// The cure room names its own values; here they are only listed.
namespace holdfast::kiosk::records {
namespace {

template <class E>
std::vector<WordRow<E>> namedByAnalytics() {
    std::vector<WordRow<E>> rows;
    for (int i = 0; analytics::nameOf(static_cast<E>(i)) != "unknown"; ++i) {
        rows.push_back({static_cast<E>(i), analytics::nameOf(static_cast<E>(i))});
    }
    return rows;
}

} // namespace

std::span<const WordRow<analytics::ReasonCode>> tableOf(analytics::ReasonCode) noexcept {
    static const auto rows = namedByAnalytics<analytics::ReasonCode>();
    return rows;
}

std::span<const WordRow<analytics::Remedy>> tableOf(analytics::Remedy) noexcept {
    static const auto rows = namedByAnalytics<analytics::Remedy>();
    return rows;
}

std::span<const WordRow<analytics::Word>> tableOf(analytics::Word) noexcept {
    static const auto rows = namedByAnalytics<analytics::Word>();
    return rows;
}

std::span<const WordRow<analytics::WindowState>> tableOf(analytics::WindowState) noexcept {
    static const auto rows = namedByAnalytics<analytics::WindowState>();
    return rows;
}

std::span<const WordRow<analytics::CulpritKind>> tableOf(analytics::CulpritKind) noexcept {
    static const auto rows = namedByAnalytics<analytics::CulpritKind>();
    return rows;
}

std::span<const WordRow<analytics::FlashWord>> tableOf(analytics::FlashWord) noexcept {
    static const auto rows = namedByAnalytics<analytics::FlashWord>();
    return rows;
}

} // namespace holdfast::kiosk::records
