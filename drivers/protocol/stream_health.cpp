#include "drivers/protocol/stream_health.hpp"

#include <algorithm>

namespace holdfast::drivers {

namespace {

bool isNoise(char byte) noexcept {
    const bool layout = byte == '\r' || byte == '\n' || byte == '\t';
    return !layout && (byte < ' ' || byte > '~');
}

} // namespace

void StreamHealth::bytes(std::string_view bytes) noexcept {
    for (const char byte : bytes) {
        m_isNoise[m_next] = isNoise(byte);
        m_next = (m_next + 1) % kWindow;
        ++m_seen;
        ++m_sinceGood;
    }
}

void StreamHealth::goodLine() noexcept {
    m_badLines = 0;
    m_sinceGood = 0;
}

void StreamHealth::badLine(ProtocolFault fault) noexcept {
    ++m_badLines;
    m_lastFault = fault;
}

StreamLook StreamHealth::look() const noexcept {
    const std::size_t inWindow = std::min(m_seen, kWindow);
    if (inWindow < kFewest) {
        return StreamLook::quiet;
    }
    const auto noisy = static_cast<std::size_t>(std::count(m_isNoise.begin(), m_isNoise.end(), true));
    if (noisy * 4 >= inWindow) {
        return StreamLook::noise;
    }
    if (m_badLines >= kBadLines) {
        return m_lastFault == ProtocolFault::otherUnit ? StreamLook::otherUnit : StreamLook::garbled;
    }
    return m_sinceGood >= kNoLineIn ? StreamLook::garbled : StreamLook::text;
}

} // namespace holdfast::drivers
