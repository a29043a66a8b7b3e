#include "kiosk/ledger/spool.hpp"

#include "kiosk/ledger/little_endian.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <optional>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace holdfast::kiosk::ledger {

namespace {

constexpr std::string_view spoolMagic = "HFSPOOL1"; // the last sign is the format's version
constexpr std::size_t checkSize = 8;
constexpr std::size_t pointSize = 8 + 8 + 1;
constexpr std::size_t frameHead = 4 + checkSize;
constexpr std::size_t mostPointsInFrame = 4096;
constexpr std::size_t largestHeader = 1 << 20;
constexpr std::uint64_t largestFile = 1ULL << 30;
constexpr std::int64_t syncEveryMicroseconds = 1'000'000;

/// The first bytes of a SHA-256 over where the piece stands and what it holds.
std::array<std::uint8_t, checkSize> checkOf(std::uint64_t offset, std::span<const std::uint8_t> payload) {
    Hasher hasher;
    hasher.add(spoolMagic);
    hasher.addInteger(static_cast<std::int64_t>(offset));
    hasher.addPrefixed(payload);
    const Digest digest = hasher.finish();
    std::array<std::uint8_t, checkSize> check{};
    std::copy_n(digest.begin(), checkSize, check.begin());
    return check;
}

void putFrame(Bytes& bytes, std::uint64_t offset, std::span<const std::uint8_t> payload) {
    putLittle<4>(bytes, payload.size());
    const auto check = checkOf(offset, payload);
    bytes.insert(bytes.end(), check.begin(), check.end());
    bytes.insert(bytes.end(), payload.begin(), payload.end());
}

/// The payload of the frame at `at`, if it is whole.
std::optional<std::span<const std::uint8_t>> frameAt(std::span<const std::uint8_t> file, std::size_t at,
                                                     std::size_t largest) {
    if (file.size() - at < frameHead) {
        return std::nullopt;
    }
    const auto length = static_cast<std::size_t>(getLittle<4>(file, at));
    if (length > largest || length > file.size() - at - frameHead) {
        return std::nullopt;
    }
    const auto payload = file.subspan(at + frameHead, length);
    const auto check = checkOf(at, payload);
    if (!std::equal(check.begin(), check.end(), file.begin() + static_cast<std::ptrdiff_t>(at + 4))) {
        return std::nullopt;
    }
    return payload;
}

void takePoints(std::span<const std::uint8_t> payload, std::vector<TracePoint>& points) {
    for (std::size_t at = 0; at < payload.size(); at += pointSize) {
        points.push_back({static_cast<std::int64_t>(getLittle<8>(payload, at)),
                          static_cast<std::int64_t>(getLittle<8>(payload, at + 8)), payload[at + 16]});
    }
}

bool isNameSign(char sign) {
    return (sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || sign == '-';
}

} // namespace

bool isSpoolName(std::string_view fileName) {
    if (fileName.size() <= Spool::suffix.size() || !fileName.ends_with(Spool::suffix)) {
        return false;
    }
    fileName.remove_suffix(Spool::suffix.size());
    return fileName.size() <= 128 && std::all_of(fileName.begin(), fileName.end(), isNameSign);
}

Spool::Spool(Descriptor descriptor, std::filesystem::path folder, std::string fileName, std::uint64_t size,
             std::int64_t syncedAt)
    : m_descriptor(std::move(descriptor)), m_folder(std::move(folder)), m_fileName(std::move(fileName)), m_size(size),
      m_syncedAt(syncedAt) {}

Result<Spool> Spool::create(const std::filesystem::path& folder, std::string_view name,
                            std::span<const std::uint8_t> header, std::int64_t monotonicMicroseconds) {
    std::string fileName{name};
    fileName += suffix;
    std::error_code ignored;
    if (!isSpoolName(fileName) || header.size() > largestHeader ||
        std::filesystem::exists(folder / fileName, ignored)) {
        return tl::unexpected(Failure{FailureCode::refused, "create spool " + fileName + ": name taken or not usable"});
    }
    Bytes bytes{spoolMagic.begin(), spoolMagic.end()};
    putFrame(bytes, spoolMagic.size(), header);

    // Made under another name first: whatever is called .spool has its whole header.
    const auto unfinished = folder / (fileName + ".new");
    auto opened = openFile(unfinished, O_WRONLY | O_CREAT | O_TRUNC);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    auto done = writeAll(*opened, bytes);
    if (done) {
        done = putInPlace(unfinished, folder / fileName);
    }
    if (!done) {
        std::filesystem::remove(unfinished, ignored);
        return tl::unexpected(done.error());
    }
    return Spool{std::move(*opened), folder, std::move(fileName), bytes.size(), monotonicMicroseconds};
}

Result<void> Spool::writeFrame(std::span<const TracePoint> points) {
    Bytes payload;
    payload.reserve(points.size() * pointSize);
    for (const TracePoint& point : points) {
        putLittle<8>(payload, static_cast<std::uint64_t>(point.microseconds));
        putLittle<8>(payload, static_cast<std::uint64_t>(point.counts));
        payload.push_back(point.flags);
    }
    Bytes frame;
    putFrame(frame, m_size, payload);
    if (auto written = writeAll(m_descriptor, frame); !written) {
        const auto end = static_cast<off_t>(m_size);
        if (::ftruncate(m_descriptor.number(), end) != 0 || ::lseek(m_descriptor.number(), end, SEEK_SET) < 0) {
            m_descriptor.close(); // what would follow the torn frame could never be read
        }
        return written;
    }
    m_size += frame.size();
    return {};
}

Result<void> Spool::append(std::span<const TracePoint> points, std::int64_t monotonicMicroseconds) {
    if (m_descriptor.number() < 0) {
        return tl::unexpected(Failure{FailureCode::inputOutput, "append to " + m_fileName + ": closed"});
    }
    while (!points.empty()) {
        const std::size_t count = std::min(points.size(), mostPointsInFrame);
        if (auto written = writeFrame(points.first(count)); !written) {
            return written;
        }
        points = points.subspan(count);
    }
    if (monotonicMicroseconds - m_syncedAt < syncEveryMicroseconds) {
        return {};
    }
    m_syncedAt = monotonicMicroseconds;
    return sync();
}

Result<void> Spool::sync() {
    if (m_descriptor.number() < 0) {
        return tl::unexpected(Failure{FailureCode::inputOutput, "sync " + m_fileName + ": closed"});
    }
    return syncFile(m_descriptor);
}

Result<void> Spool::discard() {
    m_descriptor.close();
    if (::unlink((m_folder / m_fileName).c_str()) != 0 && errno != ENOENT) {
        return tl::unexpected(failureFromErrno(errno, "remove " + m_fileName));
    }
    return syncFolder(m_folder);
}

Result<std::vector<std::string>> Spool::findLeftOver(const std::filesystem::path& folder) {
    if (auto there = requireFolder(folder); !there) {
        return tl::unexpected(there.error());
    }
    std::vector<std::string> names;
    std::error_code error;
    for (std::filesystem::directory_iterator at{folder, error}, end; !error && at != end; at.increment(error)) {
        if (isSpoolName(at->path().filename().string())) {
            names.push_back(at->path().filename().string());
        }
    }
    if (error) {
        return tl::unexpected(failureFromErrno(error.value(), "list " + folder.string()));
    }
    std::sort(names.begin(), names.end());
    return names;
}

Result<SpoolContents> Spool::read(const std::filesystem::path& file) {
    const auto bytes = readFile(file, largestFile);
    if (!bytes) {
        return tl::unexpected(bytes.error());
    }
    const std::string_view start{reinterpret_cast<const char*>(bytes->data()),
                                 std::min(bytes->size(), spoolMagic.size())};
    const bool ours = start.starts_with(spoolMagic.substr(0, spoolMagic.size() - 1));
    if (ours && start.size() == spoolMagic.size() && start.back() > spoolMagic.back()) {
        return tl::unexpected(Failure{FailureCode::newerBook, file.string() + ": a later format"});
    }
    const auto header = start == spoolMagic ? frameAt(*bytes, spoolMagic.size(), largestHeader) : std::nullopt;
    if (!header) {
        return tl::unexpected(Failure{FailureCode::damaged, file.string() + ": no whole header"});
    }
    SpoolContents contents;
    contents.header.assign(header->begin(), header->end());
    std::size_t at = spoolMagic.size() + frameHead + header->size();
    while (const auto payload = frameAt(*bytes, at, mostPointsInFrame * pointSize)) {
        if (payload->empty() || payload->size() % pointSize != 0) {
            break;
        }
        takePoints(*payload, contents.points);
        at += frameHead + payload->size();
    }
    contents.tornBytes = bytes->size() - at;
    return contents;
}

} // namespace holdfast::kiosk::ledger
