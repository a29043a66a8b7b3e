#include "drivers/link/line_conversation.hpp"

#include <utility>

namespace holdfast::drivers {

LineConversation::LineConversation(LineRules rules, std::string expectedPrefix, std::string expectedSerial)
    : m_rules{std::move(rules)}, m_expectedPrefix{std::move(expectedPrefix)},
      m_expectedSerial{std::move(expectedSerial)}, m_framer{m_rules.terminator, m_rules.longestLine} {}

ConversationStep LineConversation::opened(MonotonicTime) {
    m_framer.reset(true);
    m_health.reset();
    m_answerer = Answerer::unknown;
    m_serialNumber.clear();
    return {};
}

ConversationStep LineConversation::received(std::string_view bytes, MonotonicTime) {
    ConversationStep step;
    m_health.bytes(bytes);
    for (const FramedLine& line : m_framer.feed(bytes)) {
        takeLine(line, step);
    }
    return step;
}

ConversationStep LineConversation::timePassed(MonotonicTime) {
    return {};
}

void LineConversation::takeLine(const FramedLine& line, ConversationStep& step) {
    auto reading = line.and_then([this](const std::string& text) { return parseLine(m_rules, text); });
    if (reading) {
        takeReading(std::move(*reading), step);
    } else {
        damaged(reading.error(), step);
    }
}

void LineConversation::takeReading(LineReading reading, ConversationStep& step) {
    if (m_answerer == Answerer::right) {
        if (reading.serialNumber != m_serialNumber) { // one bad sign in a serial number, or another instrument
            damaged(ProtocolFault::missingSerial, step);
            return;
        }
    } else if (!fits(reading.serialNumber)) {
        m_answerer = Answerer::wrong;
        m_serialNumber = reading.serialNumber;
        return;
    }
    m_answerer = Answerer::right;
    m_serialNumber = reading.serialNumber;
    m_health.goodLine();
    step.readings.push_back(std::move(reading));
}

void LineConversation::damaged(ProtocolFault fault, ConversationStep& step) {
    m_health.badLine(fault);
    if (m_answerer == Answerer::right) {
        step.readings.push_back({0, SampleFlag::unreadable, m_serialNumber});
    }
}

bool LineConversation::fits(const std::string& serialNumber) const {
    if (!m_expectedSerial.empty()) {
        return serialNumber == m_expectedSerial;
    }
    return serialNumber.compare(0, m_expectedPrefix.size(), m_expectedPrefix) == 0;
}

} // namespace holdfast::drivers
