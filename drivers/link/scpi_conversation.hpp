#pragma once

#include "drivers/link/conversation.hpp"

namespace holdfast::drivers {

/// An instrument that answers: *IDN?, then the description's setup, then its error queue emptied, then a query each
/// interval. An answer that is overdue starts this over at *IDN?, so that a late answer is never taken for a later one.
class ScpiConversation final : public Conversation {
public:
    ScpiConversation(ScpiDialogue dialogue, MonotonicTime interval, IdentityRules expected, std::string expectedSerial);

    ConversationStep opened(MonotonicTime now) override;
    ConversationStep received(std::string_view bytes, MonotonicTime now) override;
    ConversationStep timePassed(MonotonicTime now) override;

private:
    enum class Phase { identity, errors, reading };

    void ask(std::string_view question, MonotonicTime now, ConversationStep& step);
    void askIdentity(MonotonicTime now, ConversationStep& step);
    void takeLine(const FramedLine& line, MonotonicTime now, ConversationStep& step);
    void takeIdentity(const ScpiIdentity& identity, MonotonicTime now, ConversationStep& step);
    void takeError(const ScpiError& error, MonotonicTime now, ConversationStep& step);
    void takeReading(const FramedLine& line, MonotonicTime now, ConversationStep& step);
    [[nodiscard]] bool fits(const ScpiIdentity& identity) const;

    ScpiDialogue m_dialogue;
    MonotonicTime m_interval;
    IdentityRules m_expected;
    std::string m_expectedSerial;
    LineFramer m_framer;
    Phase m_phase = Phase::identity;
    bool m_isWaiting = false;
    MonotonicTime m_askedAt{0};
    MonotonicTime m_nextQuery{0};
    int m_errorsLeft = 0;
};

} // namespace holdfast::drivers
