#include "kiosk/records/statement.hpp"

namespace holdfast::kiosk::records {

std::string joined(std::initializer_list<std::string_view> parts) {
    std::string all;
    for (const auto part : parts) {
        all += part;
    }
    return all;
}

} // namespace holdfast::kiosk::records
