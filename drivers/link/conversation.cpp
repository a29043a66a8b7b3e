#include "drivers/link/conversation.hpp"

#include "drivers/link/line_conversation.hpp"
#include "drivers/link/scpi_conversation.hpp"

namespace holdfast::drivers {

std::unique_ptr<Conversation> makeConversation(const InstrumentDescription& description,
                                               const std::string& instrumentSerial) {
    if (const auto* dialogue = std::get_if<ScpiDialogue>(&description.protocol)) {
        return std::make_unique<ScpiConversation>(*dialogue, description.interval, description.identity,
                                                  instrumentSerial);
    }
    return std::make_unique<LineConversation>(std::get<LineRules>(description.protocol),
                                              description.identity.serialNumber, instrumentSerial);
}

} // namespace holdfast::drivers
