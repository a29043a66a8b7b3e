#include "kiosk/screens/presenting/deciding/file_laid.hpp"

#include <fstream>

namespace holdfast::kiosk::screens {

bool layFile(const std::filesystem::path& file, const std::string& bytes) {
    std::error_code fault;
    std::filesystem::create_directories(file.parent_path(), fault);
    auto beside = file;
    beside += ".part";
    {
        std::ofstream out{beside, std::ios::binary | std::ios::trunc};
        out << bytes;
        out.flush();
        if (!out) {
            return false;
        }
    }
    std::filesystem::rename(beside, file, fault);
    return !fault;
}

} // namespace holdfast::kiosk::screens
