#pragma once

#include "kiosk/records/words.hpp"
#include "kiosk/wording/stock_sentences.hpp"

#include <array>
#include <charconv>
#include <optional>
#include <string>
#include <string_view>

/// What the pieces of the Inks share.
namespace holdfast::kiosk::screens {

inline constexpr std::string_view kInksField = "inks.field.";
inline constexpr std::string_view kInksSet = "inks.set.";
inline constexpr std::string_view kInksFamily = "inks.pick.family."; ///< then its name
inline constexpr std::string_view kInksCloth = "inks.pick.cloth.";   ///< then its name
inline constexpr std::string_view kInksBucket = "inks.pick.bucket."; ///< then its number

struct InksEndRow final {
    const char* id;
    records::BucketEnd end;
};
inline constexpr std::array<InksEndRow, 3> kInksEnds{{{"inks.empty", records::BucketEnd::empty},
                                                      {"inks.thrown-away", records::BucketEnd::thrownAway},
                                                      {"inks.mislabelled", records::BucketEnd::mislabelled}}};

/// The rest of an id behind a prefix; nothing if it begins otherwise.
[[nodiscard]] inline std::optional<std::string> behindPrefix(const std::string& id, std::string_view prefix) {
    return id.compare(0, prefix.size(), prefix) == 0 ? std::optional{id.substr(prefix.size())} : std::nullopt;
}

[[nodiscard]] inline std::optional<std::int64_t> numberBehind(const std::string& id, std::string_view prefix) {
    const auto rest = behindPrefix(id, prefix);
    std::int64_t number = 0;
    if (!rest) {
        return std::nullopt;
    }
    const auto [end, error] = std::from_chars(rest->data(), rest->data() + rest->size(), number);
    return error == std::errc{} && end == rest->data() + rest->size() ? std::optional{number} : std::nullopt;
}

} // namespace holdfast::kiosk::screens
