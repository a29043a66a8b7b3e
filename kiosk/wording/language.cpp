#include "kiosk/wording/language.hpp"

#include <nlohmann/json.hpp>

#include <cassert>

namespace holdfast::kiosk::wording {

// Generated from languages/, ended by a null.
extern const char* const kEnglishTable[];
extern const char* const kSpanishTable[];

namespace {

std::string withLargeFirstLetter(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
        return text;
    }
    // Two-byte Latin letters à–þ (U+00E0–U+00FE): their large forms lie 0x20 below.
    if (text.size() > 1 && text[0] == '\xC3' && static_cast<unsigned char>(text[1]) >= 0xA0 &&
        static_cast<unsigned char>(text[1]) != 0xB7) {
        text[1] = static_cast<char>(static_cast<unsigned char>(text[1]) - 0x20);
    }
    return text;
}

std::string argumentFor(std::string_view name, const Arguments& arguments, bool& found) {
    if (const auto exact = arguments.find(name); exact != arguments.end()) {
        found = true;
        return exact->second;
    }
    if (!name.empty() && name[0] >= 'A' && name[0] <= 'Z') {
        std::string small{name};
        small[0] = static_cast<char>(small[0] - 'A' + 'a');
        if (const auto other = arguments.find(small); other != arguments.end()) {
            found = true;
            return withLargeFirstLetter(other->second);
        }
    }
    found = false;
    return {};
}

std::string fill(std::string_view sentence, const Arguments& arguments) {
    std::string out;
    out.reserve(sentence.size() + 32);
    for (std::size_t i = 0; i < sentence.size();) {
        const auto close = sentence[i] == '{' ? sentence.find('}', i) : std::string_view::npos;
        if (close == std::string_view::npos) {
            out += sentence[i++];
            continue;
        }
        bool found = false;
        const auto value = argumentFor(sentence.substr(i + 1, close - i - 1), arguments, found);
        out += found ? value : std::string{sentence.substr(i, close - i + 1)};
        i = close + 1;
    }
    return out;
}

Language joinedTables(const char* const* tables) {
    auto all = *Language::parse("{}");
    for (; *tables != nullptr; ++tables) {
        const auto part = Language::parse(*tables);
        assert(part.has_value());
        [[maybe_unused]] const bool disjoint = all.add(*part);
        assert(disjoint);
    }
    return all;
}

} // namespace

tl::expected<Language, std::string> Language::parse(std::string_view json) {
    const auto table = nlohmann::json::parse(json, nullptr, false);
    if (!table.is_object()) {
        return tl::unexpected(std::string{"a language is a JSON object of sentences"});
    }
    Language language;
    for (const auto& [key, value] : table.items()) {
        if (!value.is_string()) {
            return tl::unexpected("the sentence of \"" + key + "\" is not a text");
        }
        language.m_sentences.emplace(key, value.get<std::string>());
    }
    return language;
}

bool Language::add(const Language& other) {
    bool disjoint = true;
    for (const auto& [key, sentence] : other.m_sentences) {
        disjoint = m_sentences.emplace(key, sentence).second && disjoint;
    }
    return disjoint;
}

const Language& Language::english() {
    static const Language language = joinedTables(kEnglishTable);
    return language;
}

const Language& Language::spanish() {
    static const Language language = [] {
        auto spanish = joinedTables(kSpanishTable);
        spanish.add(english()); // what is not translated is said in English rather than not at all
        return spanish;
    }();
    return language;
}

const Language& Language::ofCode(std::string_view code) {
    return code == "es" ? spanish() : english();
}

std::string Language::text(std::string_view key, const Arguments& arguments) const {
    if (const auto count = arguments.find("count"); count != arguments.end() && count->second == "1") {
        if (const auto one = m_sentences.find(std::string{key} + ".one"); one != m_sentences.end()) {
            return fill(one->second, arguments);
        }
    }
    const auto found = m_sentences.find(key);
    return found == m_sentences.end() ? "[" + std::string{key} + "]" : fill(found->second, arguments);
}

bool Language::has(std::string_view key) const {
    return m_sentences.find(key) != m_sentences.end();
}

std::vector<std::string> Language::keys() const {
    std::vector<std::string> names;
    names.reserve(m_sentences.size());
    for (const auto& [key, sentence] : m_sentences) {
        names.push_back(key);
    }
    return names;
}

} // namespace holdfast::kiosk::wording
