#pragma once

#include <tl/expected.hpp>

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::kiosk::wording {

/// What stands in the braces of a sentence: name without braces → text.
using Arguments = std::map<std::string, std::string, std::less<>>;

/// One language: a table of sentences by key, read from JSON objects of strings: languages/en.json for the floor and
/// one file for each further room in languages/en/.
class Language final {
public:
    /// The error is English for the log: what is wrong with the table.
    [[nodiscard]] static tl::expected<Language, std::string> parse(std::string_view json);
    [[nodiscard]] static const Language& english();
    /// Keys that its tables lack are said in English.
    [[nodiscard]] static const Language& spanish();
    /// "en" or "es"; anything else is English.
    [[nodiscard]] static const Language& ofCode(std::string_view code);

    /// Takes over what `other` has and this has not; false if a key stood in both.
    bool add(const Language& other);

    /// The sentence with its braces filled. A key that is missing is given back in brackets, so that it is seen;
    /// `{name}` without an argument stays as it stands; `{Name}` is `{name}` with its first letter made large.
    /// If an argument "count" is "1" and `key.one` exists, that form is taken.
    [[nodiscard]] std::string text(std::string_view key, const Arguments& arguments = {}) const;
    [[nodiscard]] bool has(std::string_view key) const;
    [[nodiscard]] std::vector<std::string> keys() const;

private:
    std::map<std::string, std::string, std::less<>> m_sentences;
};

} // namespace holdfast::kiosk::wording
