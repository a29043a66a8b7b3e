#include "drivers/protocol/line_framer.hpp"

#include <utility>

namespace holdfast::drivers {

namespace {

bool isLineEnd(char byte) noexcept {
    return byte == '\r' || byte == '\n';
}

} // namespace

LineFramer::LineFramer(std::string_view terminator, std::size_t longest)
    : m_ends{terminator.empty() ? "\r\n" : terminator.substr(terminator.size() - 1)}, m_longest{longest} {}

std::vector<FramedLine> LineFramer::feed(std::string_view bytes) {
    std::vector<FramedLine> lines;
    for (const char byte : bytes) {
        take(byte, lines);
    }
    return lines;
}

void LineFramer::reset(bool midLine) noexcept {
    m_partial.clear();
    m_skip = midLine ? Skip::midLine : Skip::no;
}

void LineFramer::take(char byte, std::vector<FramedLine>& lines) {
    if (m_ends.find(byte) != std::string::npos) {
        endLine(lines);
        return;
    }
    if (m_skip == Skip::overLong) {
        ++m_droppedBytes;
        return;
    }
    if (m_skip == Skip::midLine || (m_partial.empty() && isLineEnd(byte))) {
        return;
    }
    m_partial.push_back(byte);
    if (m_partial.size() > m_longest + 1) { // one more for the CR before an LF
        drop(Skip::overLong);
    }
}

void LineFramer::endLine(std::vector<FramedLine>& lines) {
    while (!m_partial.empty() && isLineEnd(m_partial.back())) {
        m_partial.pop_back();
    }
    if (m_partial.size() > m_longest) {
        drop(Skip::overLong);
    }
    if (m_skip == Skip::overLong) {
        lines.push_back(tl::unexpected(ProtocolFault::lineTooLong));
    } else if (!m_partial.empty()) {
        lines.emplace_back(std::move(m_partial));
    }
    m_partial.clear();
    m_skip = Skip::no;
}

void LineFramer::drop(Skip until) noexcept {
    m_droppedBytes += m_partial.size();
    m_partial.clear();
    m_skip = until;
}

} // namespace holdfast::drivers
