#pragma once

#include "drivers/protocol/protocol_fault.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::drivers {

/// A line without its terminator, or lineTooLong in the place of one that was dropped.
using FramedLine = tl::expected<std::string, ProtocolFault>;

/// Cuts a stream of bytes into lines. Keeps a partial line over reads; a line longer than `longest` bytes is dropped up
/// to the next terminator. Never throws but for want of memory; holds at most `longest` + 1 bytes.
class LineFramer final {
public:
    /// `terminator` is CR LF, LF or CR. A line ends at its last byte; other line-end bytes around a line are dropped,
    /// so a sender that leaves out the CR is still understood. Empty lines are not lines.
    LineFramer(std::string_view terminator, std::size_t longest);

    [[nodiscard]] std::vector<FramedLine> feed(std::string_view bytes);

    /// Forgets the partial line. With `midLine` also drops what comes up to the next terminator: a port that was just
    /// opened is read from the middle of a line, and half a number can look like a whole one.
    void reset(bool midLine) noexcept;

    /// Bytes of over-long lines dropped since construction.
    [[nodiscard]] std::uint64_t droppedBytes() const noexcept { return m_droppedBytes; }
    [[nodiscard]] std::size_t pendingBytes() const noexcept { return m_partial.size(); }
    /// Something came that no terminator has ended yet, also if it was dropped as over-long.
    [[nodiscard]] bool isUnfinished() const noexcept { return !m_partial.empty() || m_skip == Skip::overLong; }

private:
    enum class Skip { no, overLong, midLine };

    void take(char byte, std::vector<FramedLine>& lines);
    void endLine(std::vector<FramedLine>& lines);
    void drop(Skip until) noexcept;

    std::string m_ends;
    std::size_t m_longest;
    std::string m_partial;
    Skip m_skip = Skip::no;
    std::uint64_t m_droppedBytes = 0;
};

} // namespace holdfast::drivers
