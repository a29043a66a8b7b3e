#pragma once

#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/failure.hpp"

#include <cstdint>
#include <filesystem>
#include <span>

namespace holdfast::kiosk::ledger {

/// Owns a file descriptor; -1 is none.
class Descriptor {
public:
    Descriptor() = default;
    explicit Descriptor(int number) : m_number(number) {}
    Descriptor(Descriptor&& other) noexcept;
    Descriptor& operator=(Descriptor&& other) noexcept;
    ~Descriptor();

    [[nodiscard]] int number() const { return m_number; }
    void close() noexcept;

private:
    int m_number = -1;
};

/// open(2), closed on exec; a file that it makes is readable by its owner and group.
[[nodiscard]] Result<Descriptor> openFile(const std::filesystem::path& file, int flags);
/// All bytes or a failure; part of them may have been written then.
[[nodiscard]] Result<void> writeAll(const Descriptor& descriptor, std::span<const std::uint8_t> bytes);
[[nodiscard]] Result<void> syncFile(const Descriptor& descriptor);
/// Makes names in the folder outlive a power cut.
[[nodiscard]] Result<void> syncFolder(const std::filesystem::path& folder);
/// Syncs `from`, renames it over `to`, syncs the folder of `to`.
[[nodiscard]] Result<void> putInPlace(const std::filesystem::path& from, const std::filesystem::path& to);
/// damaged if larger than the limit, notFound if there is none.
[[nodiscard]] Result<Bytes> readFile(const std::filesystem::path& file, std::uint64_t limit);
/// The folder must be a folder; folderMissing otherwise.
[[nodiscard]] Result<void> requireFolder(const std::filesystem::path& folder);
/// The name of `file` with text after it: "book.sqlite" and "-wal".
[[nodiscard]] std::filesystem::path withSuffix(const std::filesystem::path& file, const char* suffix);

/// The lock of one kiosk on one book (flock); given back when destroyed, also by the death of the process.
class LockFile {
public:
    LockFile() = default;
    /// lockedByAnotherKiosk at once if another holds it.
    [[nodiscard]] static Result<LockFile> take(const std::filesystem::path& file);

private:
    explicit LockFile(Descriptor descriptor) : m_descriptor(std::move(descriptor)) {}

    Descriptor m_descriptor;
};

} // namespace holdfast::kiosk::ledger
