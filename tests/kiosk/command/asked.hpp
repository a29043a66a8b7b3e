#pragma once

#include "kiosk/command/command_line.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <unistd.h>
#include <vector>

/// Commands as somebody types them.
namespace holdfast::command_test {

struct Answer final {
    int status = 0;
    std::string out{};
    std::string err{};
    nlohmann::json json{};
};

inline Answer ask(const std::vector<std::string>& words, const kiosk::command::Seams& seams = {}) {
    std::vector<const char*> arguments{"holdfast"};
    for (const auto& word : words) {
        arguments.push_back(word.c_str());
    }
    std::ostringstream out;
    std::ostringstream err;
    Answer answer;
    answer.status =
        kiosk::command::runCommandLine(static_cast<int>(arguments.size()), arguments.data(), seams, out, err);
    answer.out = out.str();
    answer.err = err.str();
    answer.json = nlohmann::json::parse(answer.out, nullptr, false);
    return answer;
}

/// The answer as JSON; what was asked must have been usable.
inline nlohmann::json asked(std::vector<std::string> words, const kiosk::command::Seams& seams = {}) {
    words.emplace_back("--json");
    const auto answer = ask(words, seams);
    INFO(answer.out << answer.err);
    REQUIRE(answer.status == 0);
    REQUIRE_FALSE(answer.json.is_discarded());
    return answer.json;
}

inline std::vector<std::string> with(std::vector<std::string> words, const std::vector<std::string>& more) {
    for (const auto& word : more) {
        words.push_back(word);
    }
    return words;
}

inline std::string published(const std::string& name) {
    return (std::filesystem::path{HOLDFAST_SOURCE_DIR} / "tests/data/statistics" / name).string();
}

/// A file that is gone with its owner.
class Written final {
public:
    explicit Written(const std::string& text) {
        static int number = 0;
        m_path = std::filesystem::temp_directory_path() /
                 ("holdfast-command-" + std::to_string(::getpid()) + "-" + std::to_string(++number) + ".csv");
        std::ofstream{m_path, std::ios::binary} << text;
    }
    ~Written() {
        std::error_code ignored;
        std::filesystem::remove(m_path, ignored);
    }
    Written(const Written&) = delete;
    Written& operator=(const Written&) = delete;
    [[nodiscard]] std::string path() const { return m_path.string(); }

private:
    std::filesystem::path m_path;
};

} // namespace holdfast::command_test
