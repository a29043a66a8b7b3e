#include "tests/kiosk/wording/support/tables.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace holdfast::wording_test {
namespace {

namespace fs = std::filesystem;

const fs::path kLanguages{HOLDFAST_SOURCE_DIR "/kiosk/wording/languages"};

Table whole(const std::string& code) {
    Table all;
    for (const auto& name : tablesOf(code)) {
        all.merge(tableOf(code, name));
    }
    return all;
}

std::string withoutArguments(const std::string& text) {
    std::string rest;
    bool inside = false;
    for (const char c : text) {
        inside = inside || c == '{';
        rest += inside ? ' ' : c;
        inside = inside && c != '}';
    }
    return rest;
}

bool isAsciiLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

} // namespace

std::set<std::string> tablesOf(const std::string& code) {
    std::set<std::string> names{""};
    for (const auto& entry : fs::directory_iterator(kLanguages / code)) {
        names.insert("/" + entry.path().stem().string());
    }
    return names;
}

Table tableOf(const std::string& code, const std::string& name) {
    std::ifstream file{kLanguages / (code + name + ".json")};
    std::size_t keys = 0;
    const auto json = nlohmann::json::parse(
        file,
        [&keys](int, nlohmann::json::parse_event_t event, nlohmann::json&) {
            keys += event == nlohmann::json::parse_event_t::key ? 1 : 0;
            return true;
        },
        false);
    INFO("table: " << code << name);
    REQUIRE(json.is_object());
    auto table = json.get<Table>();
    CHECK(table.size() == keys);
    return table;
}

std::vector<Pair> pairs() {
    std::vector<Pair> both;
    const auto spanish = whole("es");
    for (const auto& [key, sentence] : whole("en")) {
        if (const auto found = spanish.find(key); found != spanish.end()) {
            both.push_back({key, sentence, found->second});
        }
    }
    REQUIRE(both.size() > 1000);
    return both;
}

std::string small(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

Words between(const std::string& text, const std::string& open, const std::string& close) {
    Words found;
    for (auto at = text.find(open); at != std::string::npos;) {
        const auto from = at + open.size();
        const auto end = text.find(close, from);
        if (end == std::string::npos) {
            break;
        }
        found.push_back(text.substr(from, end - from));
        at = text.find(open, end + close.size());
    }
    return found;
}

std::set<std::string> argumentsOf(const std::string& text) {
    std::set<std::string> names;
    for (const auto& name : between(text, "{", "}")) {
        names.insert(small(name.substr(0, 1)) + name.substr(std::min<std::size_t>(1, name.size())));
    }
    return names;
}

bool hasLetters(const std::string& text) {
    return !wordsOf(text).empty();
}

Words wordsOf(const std::string& text) {
    Words words;
    bool open = false;
    const auto said = small(withoutArguments(text));
    for (std::size_t i = 0; i < said.size(); ++i) {
        const bool twoBytes = said[i] == '\xC3' && i + 1 < said.size();
        if (!twoBytes && !isAsciiLetter(said[i])) {
            open = false;
            continue;
        }
        if (!open) {
            words.emplace_back();
            open = true;
        }
        words.back() += said.substr(i, twoBytes ? 2 : 1);
        i += twoBytes ? 1 : 0;
    }
    return words;
}

std::multiset<std::string> figuresOf(const std::string& text) {
    std::multiset<std::string> figures;
    std::string figure;
    for (const char c : withoutArguments(text) + " ") {
        if (c >= '0' && c <= '9') {
            figure += c;
        } else if (!figure.empty()) {
            figures.insert(figure);
            figure.clear();
        }
    }
    return figures;
}

std::ptrdiff_t timesIn(const std::string& text, const std::string& sign) {
    std::ptrdiff_t times = 0;
    for (auto at = text.find(sign); at != std::string::npos; at = text.find(sign, at + sign.size())) {
        ++times;
    }
    return times;
}

std::string endOf(const std::string& text) {
    const bool ends = !text.empty() && std::string{".:?"}.find(text.back()) != std::string::npos;
    return ends ? text.substr(text.size() - 1) : std::string{};
}

bool startsWith(const std::string& text, const std::string& start) {
    return text.compare(0, start.size(), start) == 0;
}

bool denies(const std::string& text, const std::set<std::string>& denials, const Words& proofs) {
    for (std::size_t from = 0; from < text.size();) {
        const auto end = std::min(text.find(". ", from), text.size());
        bool denied = false;
        for (const auto& word : wordsOf(text.substr(from, end - from))) {
            denied = denied || denials.count(word) > 0;
            if (denied && std::any_of(proofs.begin(), proofs.end(),
                                      [&word](const auto& proof) { return startsWith(word, proof); })) {
                return true;
            }
        }
        from = end + 2;
    }
    return false;
}

} // namespace holdfast::wording_test
