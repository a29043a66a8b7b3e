#pragma once

#include "drivers/catalogue/description.hpp"
#include "drivers/clock/clock.hpp"
#include "drivers/protocol/line_framer.hpp"
#include "drivers/protocol/line_parser.hpp"
#include "drivers/protocol/scpi_parser.hpp"
#include "drivers/protocol/stream_health.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::drivers {

/// What came of some bytes, or of time passing.
struct ConversationStep {
    std::vector<LineReading> readings; ///< damaged lines as SampleFlag::unreadable, once the instrument is known
    std::vector<ScpiError> errors;
    std::string toSend;
};

/// Who answers.
enum class Answerer { unknown, right, wrong };

/// Talks to one instrument over one open port; knows neither ports nor threads, so a capture is a test of it.
class Conversation {
public:
    Conversation() = default;
    Conversation(const Conversation&) = delete;
    Conversation& operator=(const Conversation&) = delete;
    virtual ~Conversation() = default;

    /// Forgets everything of the port before.
    virtual ConversationStep opened(MonotonicTime now) = 0;
    virtual ConversationStep received(std::string_view bytes, MonotonicTime now) = 0;
    /// Call a few times in each interval.
    virtual ConversationStep timePassed(MonotonicTime now) = 0;

    [[nodiscard]] Answerer answerer() const noexcept { return m_answerer; }
    [[nodiscard]] StreamLook look() const noexcept { return m_health.look(); }
    [[nodiscard]] const std::string& serialNumber() const noexcept { return m_serialNumber; }
    [[nodiscard]] const std::string& identity() const noexcept { return m_identity; } ///< maker and model, if it says

protected:
    StreamHealth m_health;
    Answerer m_answerer = Answerer::unknown;
    std::string m_serialNumber;
    std::string m_identity;
};

/// `instrumentSerial`, if not empty, must be what the instrument says.
[[nodiscard]] std::unique_ptr<Conversation> makeConversation(const InstrumentDescription& description,
                                                             const std::string& instrumentSerial);

} // namespace holdfast::drivers
