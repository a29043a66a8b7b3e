#include "kiosk/screens/presenting/deciding/pictures_laid.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <iterator>
#include <string>

namespace holdfast::kiosk::screens {
namespace {

bool isPictureName(const std::filesystem::path& file) {
    auto ending = file.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char sign) { return static_cast<char>(std::tolower(sign)); });
    return ending == ".jpg" || ending == ".jpeg" || ending == ".png";
}

bool beginsAsPicture(const ledger::Bytes& bytes) {
    constexpr std::array<std::uint8_t, 3> kJpeg{0xFF, 0xD8, 0xFF};
    constexpr std::array<std::uint8_t, 8> kPng{0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A};
    const auto begins = [&](const auto& sign) {
        return bytes.size() > sign.size() && std::equal(sign.begin(), sign.end(), bytes.begin());
    };
    return begins(kJpeg) || begins(kPng);
}

} // namespace

LaidPictures picturesLaid(const std::filesystem::path& folder, std::size_t most) {
    LaidPictures laid;
    std::vector<std::filesystem::path> files;
    std::error_code fault;
    for (const auto& item : std::filesystem::directory_iterator{folder, fault}) {
        if (item.is_regular_file(fault) && isPictureName(item.path())) {
            files.push_back(item.path());
        }
    }
    std::sort(files.begin(), files.end());
    for (const auto& file : files) {
        const auto size = std::filesystem::file_size(file, fault);
        if (fault || size > kLargestPicture || laid.pictures.size() == most) {
            ++laid.leftAlone;
            continue;
        }
        std::ifstream in{file, std::ios::binary};
        ledger::Bytes bytes{std::istreambuf_iterator<char>{in}, {}};
        if (!in.bad() && beginsAsPicture(bytes)) {
            laid.pictures.push_back({file, std::move(bytes)});
        } else {
            ++laid.leftAlone;
        }
    }
    return laid;
}

void putAside(const std::vector<std::filesystem::path>& files) {
    for (const auto& file : files) {
        const auto folder = file.parent_path() / "taken";
        std::error_code ignored;
        std::filesystem::create_directories(folder, ignored);
        std::filesystem::rename(file, folder / file.filename(), ignored);
    }
}

} // namespace holdfast::kiosk::screens
