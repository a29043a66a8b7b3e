#include "kiosk/records/record_json.hpp"

#include <algorithm>
#include <cmath>

// Fields that several kinds share.
namespace holdfast::kiosk::records {
namespace {

bool isBlank(const std::string& text) {
    return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

template <class T>
bool allDifferent(std::vector<T> all) {
    std::sort(all.begin(), all.end());
    return std::adjacent_find(all.begin(), all.end()) == all.end();
}

} // namespace

std::string readBlobHash(ObjectReader& from, const char* key) {
    auto hash = from.text(key);
    if (from.has(key) && (hash.size() != 64 || hash.find_first_not_of("0123456789abcdef") != std::string::npos)) {
        from.fault(FaultCode::badValue, key, "64 hexadecimal digits are asked for");
    }
    return hash;
}

std::string readSaid(ObjectReader& from, const char* key) {
    auto said = from.text(key);
    if (from.has(key) && isBlank(said)) {
        from.fault(FaultCode::badValue, key, "is empty");
    }
    return said;
}

std::vector<std::int64_t> readSigners(ObjectReader& from, std::size_t least, std::size_t most) {
    std::vector<std::int64_t> signers;
    from.values("signers", [&](const Json& value, const std::string& path) {
        const bool whole =
            value.is_number_integer() &&
            !(value.is_number_unsigned() && value.get<std::uint64_t>() > static_cast<std::uint64_t>(INT64_MAX));
        if (whole && value.get<std::int64_t>() >= 1) {
            signers.push_back(value.get<std::int64_t>());
        } else {
            from.faults().push_back({FaultCode::wrongType, path, "a person's number is asked for"});
        }
    });
    if (from.has("signers") && (signers.size() < least || signers.size() > most)) {
        from.fault(FaultCode::badValue, "signers", "too few or too many sign");
    }
    if (!allDifferent(signers)) {
        from.fault(FaultCode::inconsistent, "signers", "one person signs once");
    }
    return signers;
}

std::vector<std::string> readDifferent(ObjectReader& from, const char* key) {
    auto all = from.texts(key, true);
    if (std::any_of(all.begin(), all.end(), [](const auto& one) { return one.empty(); })) {
        from.fault(FaultCode::badValue, key, "one is empty");
    }
    if (!allDifferent(all)) {
        from.fault(FaultCode::inconsistent, key, "one stands twice");
    }
    return all;
}

std::vector<double> readAscending(ObjectReader& from, const char* key, double least) {
    std::vector<double> all;
    const auto read = [&](const Json& value, const std::string& path) {
        if (value.is_number() && std::isfinite(value.get<double>())) {
            all.push_back(value.get<double>());
        } else {
            from.faults().push_back({FaultCode::wrongType, path, "a number is asked for"});
        }
    };
    from.values(key, read, true);
    const bool ascends = std::adjacent_find(all.begin(), all.end(), std::greater_equal<>{}) == all.end();
    if (!all.empty() && (!ascends || all.front() < least)) {
        from.fault(FaultCode::inconsistent, key, "numbers in ascending order are asked for");
    }
    return all;
}

} // namespace holdfast::kiosk::records
