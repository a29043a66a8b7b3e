#pragma once

#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/ledger/files.hpp"
#include "kiosk/ledger/trace_codec.hpp"

#include <cstdint>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::kiosk::ledger {

/// What a spool still tells after a power cut.
struct SpoolContents {
    Bytes header;                   ///< as given to Spool::create
    std::vector<TracePoint> points; ///< of every whole frame
    std::uint64_t tornBytes = 0;    ///< bytes after the last whole frame, not used
};

/// The file of a ride in progress, beside the book. It outlives a crash of the program without loss, and a power cut
/// with the loss of about a second. The file stays when this is destroyed. One thread only; the calls wait for the
/// disk, so not the screen's: Writer::post.
class Spool {
public:
    static constexpr std::string_view suffix = ".spool";

    /// Makes <name>.spool, on the disk when this returns. `name`: letters, digits and hyphens; an id will do. refused
    /// if it exists. `header`: whatever the caller will need to know about the ride, opaque here, at most 1 MiB.
    [[nodiscard]] static Result<Spool> create(const std::filesystem::path& folder, std::string_view name,
                                              std::span<const std::uint8_t> header, std::int64_t monotonicMicroseconds);
    /// Writes one frame, and syncs if a second or more has passed since the last sync. After a failure (disk full) the
    /// file ends with its last whole frame again, and a later append may succeed.
    [[nodiscard]] Result<void> append(std::span<const TracePoint> points, std::int64_t monotonicMicroseconds);
    [[nodiscard]] Result<void> sync();
    /// Closes and removes the file: for a ride that nobody wants. A ride that was committed is removed by the book.
    [[nodiscard]] Result<void> discard();
    /// Name without folder, for CommitRequest::spoolMadeRedundant.
    [[nodiscard]] const std::string& fileName() const { return m_fileName; }

    /// File names of spools in the folder, sorted. Ask after Book::open, which removes those already in the book.
    [[nodiscard]] static Result<std::vector<std::string>> findLeftOver(const std::filesystem::path& folder);
    /// Everything up to the first frame that is not whole. damaged if not even the header is.
    [[nodiscard]] static Result<SpoolContents> read(const std::filesystem::path& file);

private:
    Spool(Descriptor descriptor, std::filesystem::path folder, std::string fileName, std::uint64_t size,
          std::int64_t syncedAt);
    [[nodiscard]] Result<void> writeFrame(std::span<const TracePoint> points);

    Descriptor m_descriptor;
    std::filesystem::path m_folder;
    std::string m_fileName;
    std::uint64_t m_size = 0; ///< end of the last whole frame
    std::int64_t m_syncedAt = 0;
};

/// True for names that Spool::create makes, with suffix.
[[nodiscard]] bool isSpoolName(std::string_view fileName);

} // namespace holdfast::kiosk::ledger
