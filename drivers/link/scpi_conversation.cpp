#include "drivers/link/scpi_conversation.hpp"

#include <algorithm>
#include <utility>

namespace holdfast::drivers {

namespace {

constexpr MonotonicTime kShortestPatience = std::chrono::seconds{1};
constexpr int kMostErrors = 20; // one queue full; an instrument that reports for ever is read all the same

bool startsWith(const std::string& text, const std::string& front) {
    return text.compare(0, front.size(), front) == 0;
}

} // namespace

ScpiConversation::ScpiConversation(ScpiDialogue dialogue, MonotonicTime interval, IdentityRules expected,
                                   std::string expectedSerial)
    : m_dialogue{std::move(dialogue)}, m_interval{interval}, m_expected{std::move(expected)},
      m_expectedSerial{std::move(expectedSerial)}, m_framer{m_dialogue.rules.terminator, m_dialogue.rules.longestLine} {
}

ConversationStep ScpiConversation::opened(MonotonicTime now) {
    ConversationStep step;
    m_framer.reset(false);
    m_health.reset();
    m_answerer = Answerer::unknown;
    m_serialNumber.clear();
    m_identity.clear();
    askIdentity(now, step);
    return step;
}

ConversationStep ScpiConversation::received(std::string_view bytes, MonotonicTime now) {
    ConversationStep step;
    m_health.bytes(bytes);
    for (const FramedLine& line : m_framer.feed(bytes)) {
        takeLine(line, now, step);
    }
    return step;
}

ConversationStep ScpiConversation::timePassed(MonotonicTime now) {
    ConversationStep step;
    if (m_isWaiting && now - m_askedAt >= std::max(kShortestPatience, 2 * m_interval)) {
        m_framer.reset(false);
        askIdentity(now, step);
    } else if (!m_isWaiting && m_phase == Phase::reading && now >= m_nextQuery) {
        ask(m_dialogue.query, now, step);
        m_nextQuery += m_interval;
        if (m_nextQuery <= now) { // late by an interval: begin anew instead of asking twice at once
            m_nextQuery = now + m_interval;
        }
    }
    return step;
}

void ScpiConversation::ask(std::string_view question, MonotonicTime now, ConversationStep& step) {
    step.toSend.append(question).append(m_dialogue.rules.terminator);
    m_isWaiting = true;
    m_askedAt = now;
}

void ScpiConversation::askIdentity(MonotonicTime now, ConversationStep& step) {
    m_phase = Phase::identity;
    ask("*IDN?", now, step);
}

void ScpiConversation::takeLine(const FramedLine& line, MonotonicTime now, ConversationStep& step) {
    if (!m_isWaiting) { // nobody asked
        m_health.badLine(ProtocolFault::wrongFields);
        return;
    }
    if (m_phase == Phase::reading) {
        m_isWaiting = false;
        takeReading(line, now, step);
    } else if (m_phase == Phase::identity) {
        const auto identity = line.and_then([](const std::string& text) { return parseScpiIdentity(text); });
        if (identity) {
            takeIdentity(*identity, now, step);
        } else {
            m_health.badLine(identity.error());
        }
    } else {
        const auto error = line.and_then([](const std::string& text) { return parseScpiError(text); });
        if (error) {
            takeError(*error, now, step);
        } else {
            m_health.badLine(error.error());
        }
    }
}

void ScpiConversation::takeIdentity(const ScpiIdentity& identity, MonotonicTime now, ConversationStep& step) {
    m_health.goodLine();
    m_identity = identity.maker + " " + identity.model;
    m_serialNumber = identity.serialNumber;
    if (!fits(identity)) {
        m_answerer = Answerer::wrong; // asked again when patience ends: it may be exchanged
        return;
    }
    for (const std::string& command : m_dialogue.setup) {
        step.toSend.append(command).append(m_dialogue.rules.terminator);
    }
    m_phase = Phase::errors;
    m_errorsLeft = kMostErrors;
    ask("SYST:ERR?", now, step);
}

void ScpiConversation::takeError(const ScpiError& error, MonotonicTime now, ConversationStep& step) {
    m_health.goodLine();
    if (error.number != 0) {
        step.errors.push_back(error);
    }
    if (error.number != 0 && --m_errorsLeft > 0) {
        ask("SYST:ERR?", now, step);
        return;
    }
    m_isWaiting = false;
    m_answerer = Answerer::right;
    m_phase = Phase::reading;
    m_nextQuery = std::max(m_nextQuery, now);
}

void ScpiConversation::takeReading(const FramedLine& line, MonotonicTime now, ConversationStep& step) {
    const auto reading =
        line.and_then([this](const std::string& text) { return parseScpiReading(m_dialogue.rules, text); });
    if (reading) {
        m_health.goodLine();
        step.readings.push_back({reading->counts, reading->flags, m_serialNumber});
        return;
    }
    m_health.badLine(reading.error());
    step.readings.push_back({0, SampleFlag::unreadable, m_serialNumber});
    m_phase = Phase::errors;
    m_errorsLeft = kMostErrors;
    ask("SYST:ERR?", now, step);
}

bool ScpiConversation::fits(const ScpiIdentity& identity) const {
    const bool rightSerial = m_expectedSerial.empty() ? startsWith(identity.serialNumber, m_expected.serialNumber)
                                                      : identity.serialNumber == m_expectedSerial;
    return rightSerial && startsWith(identity.maker, m_expected.maker) && startsWith(identity.model, m_expected.model);
}

} // namespace holdfast::drivers
