#include "kiosk/ledger/files.hpp"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <string>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace holdfast::kiosk::ledger {

Descriptor::Descriptor(Descriptor&& other) noexcept : m_number(std::exchange(other.m_number, -1)) {}

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
    if (this != &other) {
        close();
        m_number = std::exchange(other.m_number, -1);
    }
    return *this;
}

Descriptor::~Descriptor() {
    close();
}

void Descriptor::close() noexcept {
    if (m_number >= 0) {
        ::close(m_number);
        m_number = -1;
    }
}

Result<Descriptor> openFile(const std::filesystem::path& file, int flags) {
    int number = -1;
    do {
        number = ::open(file.c_str(), flags | O_CLOEXEC, 0640);
    } while (number < 0 && errno == EINTR);
    if (number < 0) {
        return tl::unexpected(failureFromErrno(errno, "open " + file.string()));
    }
    return Descriptor{number};
}

Result<void> writeAll(const Descriptor& descriptor, std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor.number(), bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written < 0) {
            return tl::unexpected(failureFromErrno(errno, "write"));
        }
        bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    return {};
}

Result<void> syncFile(const Descriptor& descriptor) {
    if (::fdatasync(descriptor.number()) != 0) {
        return tl::unexpected(failureFromErrno(errno, "sync"));
    }
    return {};
}

Result<void> syncFolder(const std::filesystem::path& folder) {
    const auto opened = openFile(folder.empty() ? "." : folder, O_RDONLY | O_DIRECTORY);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    if (::fsync(opened->number()) != 0) {
        return tl::unexpected(failureFromErrno(errno, "sync " + folder.string()));
    }
    return {};
}

Result<void> putInPlace(const std::filesystem::path& from, const std::filesystem::path& to) {
    const auto opened = openFile(from, O_RDONLY);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    if (::fsync(opened->number()) != 0) {
        return tl::unexpected(failureFromErrno(errno, "sync " + from.string()));
    }
    if (::rename(from.c_str(), to.c_str()) != 0) {
        return tl::unexpected(failureFromErrno(errno, "rename " + from.string()));
    }
    return syncFolder(to.parent_path());
}

Result<Bytes> readFile(const std::filesystem::path& file, std::uint64_t limit) {
    const auto opened = openFile(file, O_RDONLY);
    if (!opened) {
        const bool absent = opened.error().code == FailureCode::folderMissing;
        return tl::unexpected(Failure{absent ? FailureCode::notFound : opened.error().code, opened.error().what});
    }
    Bytes bytes;
    std::array<std::uint8_t, 65536> piece{};
    for (;;) {
        const ssize_t got = ::read(opened->number(), piece.data(), piece.size());
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got < 0) {
            return tl::unexpected(failureFromErrno(errno, "read " + file.string()));
        }
        if (got == 0) {
            return bytes;
        }
        bytes.insert(bytes.end(), piece.begin(), piece.begin() + got);
        if (bytes.size() > limit) {
            return tl::unexpected(Failure{FailureCode::damaged, file.string() + " is too large"});
        }
    }
}

Result<void> requireFolder(const std::filesystem::path& folder) {
    std::error_code error;
    if (!std::filesystem::is_directory(folder, error)) {
        if (error && error.value() != ENOENT && error.value() != ENOTDIR) {
            return tl::unexpected(failureFromErrno(error.value(), "look for " + folder.string()));
        }
        return tl::unexpected(Failure{FailureCode::folderMissing, folder.string() + " is not a folder"});
    }
    return {};
}

std::filesystem::path withSuffix(const std::filesystem::path& file, const char* suffix) {
    std::filesystem::path longer = file;
    longer += suffix;
    return longer;
}

Result<LockFile> LockFile::take(const std::filesystem::path& file) {
    auto opened = openFile(file, O_RDWR | O_CREAT);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    if (::flock(opened->number(), LOCK_EX | LOCK_NB) != 0) {
        return tl::unexpected(failureFromErrno(errno, "lock " + file.string()));
    }
    return LockFile{std::move(*opened)};
}

} // namespace holdfast::kiosk::ledger
