#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

namespace holdfast::bench {

/// An empty folder on the disk of the working directory, which is rarely one in memory; gone with its owner.
class Folder final {
public:
    Folder() {
        std::string pattern = (std::filesystem::current_path() / "bench-XXXXXX").string();
        m_path = ::mkdtemp(pattern.data()) == nullptr ? std::filesystem::path{} : std::filesystem::path{pattern};
    }
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const noexcept { return m_path; }

private:
    std::filesystem::path m_path;
};

} // namespace holdfast::bench
