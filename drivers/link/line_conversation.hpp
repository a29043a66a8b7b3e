#pragma once

#include "drivers/link/conversation.hpp"

namespace holdfast::drivers {

/// An instrument that sends lines unasked. The line that was under way when the port was opened is never read.
class LineConversation final : public Conversation {
public:
    LineConversation(LineRules rules, std::string expectedPrefix, std::string expectedSerial);

    ConversationStep opened(MonotonicTime now) override;
    ConversationStep received(std::string_view bytes, MonotonicTime now) override;
    ConversationStep timePassed(MonotonicTime now) override;

private:
    [[nodiscard]] bool fits(const std::string& serialNumber) const;
    void takeLine(const FramedLine& line, ConversationStep& step);
    void takeReading(LineReading reading, ConversationStep& step);
    void damaged(ProtocolFault fault, ConversationStep& step);

    LineRules m_rules;
    std::string m_expectedPrefix;
    std::string m_expectedSerial;
    LineFramer m_framer;
};

} // namespace holdfast::drivers
