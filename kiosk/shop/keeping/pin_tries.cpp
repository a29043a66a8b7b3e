#include "kiosk/shop/keeping/pin_tries.hpp"

#include "kiosk/ledger/files.hpp"

#include <algorithm>
#include <fcntl.h>
#include <sstream>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {
namespace {

constexpr std::uint64_t kLargest = 1U << 20U;
constexpr int kMostCounted = 1000; // the wait is the longest long before

bool isCount(std::int64_t person, int count) {
    return person >= 0 && count > 0 && count <= kMostCounted;
}

} // namespace

PinTries readPinTries(const std::filesystem::path& folder) {
    const auto bytes = ledger::readFile(folder / kPinTriesFile, kLargest);
    if (!bytes) {
        return {};
    }
    std::istringstream in{std::string{bytes->begin(), bytes->end()}};
    PinTries tries;
    std::int64_t person = 0;
    int count = 0;
    while (in >> person >> count) {
        if (!isCount(person, count)) {
            return {};
        }
        (person == 0 ? tries.inARow : tries.of[person]) = count;
    }
    return in.eof() ? tries : PinTries{};
}

ledger::Result<void> writePinTries(const std::filesystem::path& folder, const PinTries& tries) {
    std::ostringstream out; // a line each: the person, 0 for all in a row, and how many
    const auto line = [&](std::int64_t person, int count) {
        if (count > 0) {
            out << person << ' ' << std::min(count, kMostCounted) << '\n';
        }
    };
    line(0, tries.inARow);
    for (const auto& [person, count] : tries.of) {
        line(person, count);
    }
    const auto text = out.str();
    const auto beside = folder / (std::string{kPinTriesFile} + ".part");
    {
        const auto file = ledger::openFile(beside, O_WRONLY | O_CREAT | O_TRUNC);
        if (!file) {
            return tl::unexpected(file.error());
        }
        const std::vector<std::uint8_t> bytes(text.begin(), text.end());
        if (auto written = ledger::writeAll(*file, bytes); !written) {
            return written;
        }
    }
    return ledger::putInPlace(beside, folder / kPinTriesFile);
}

} // namespace holdfast::kiosk::shop
