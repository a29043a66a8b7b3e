#include "drivers/protocol/scan_text.hpp"
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/shop/proving/action_card.hpp"
#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::shop {
namespace {

using drivers::TicketKind;

constexpr std::size_t kShownSigns = 40;

/// Printable ASCII only, cut: what was scanned may be anything.
std::string shownText(const std::string& bytes) {
    std::string text;
    for (const char sign : bytes) {
        if (text.size() == kShownSigns) {
            break;
        }
        text.push_back(sign >= ' ' && sign <= '~' ? sign : '?');
    }
    return text;
}

/// A run's number as people say and type it: digits alone, at most nine.
std::optional<std::uint64_t> typedNumber(const std::string& text) {
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool digits = error == std::errc{} && end == text.data() + text.size() && text.size() <= 9;
    return digits ? std::optional{number} : std::nullopt;
}

void onInstrumentCode(Machine& m, std::uint64_t number) {
    auto& state = m.state;
    const auto found = std::find_if(state.instruments.begin(), state.instruments.end(),
                                    [&](const KnownInstrument& one) { return one.number == number; });
    if (found == state.instruments.end()) {
        if (onStripLabel(m, number)) {
            return;
        }
        m.refuse(RefusalCause::instrumentNotFound, {}, number);
        return;
    }
    if (found->kind == analytics::InstrumentKind::probe) {
        state.windowInstrument = found->name;
        refreshWindow(m);
        return;
    }
    if (found->kind == analytics::InstrumentKind::strip) {
        openStrip(m, found->name);
        return;
    }
    openHand(m, found->name);
}

void onStripCard(Machine& m, std::uint64_t number) {
    if (!m.state.strip) {
        openStrip(m, {});
    }
    if (m.state.strip) {
        touchStrip(m, static_cast<int>(number) - static_cast<int>(ActionCard::firstStep));
    }
}

void onAction(Machine& m, std::uint64_t number) {
    const auto first = static_cast<std::uint64_t>(ActionCard::allLight);
    const auto pulled = static_cast<std::uint64_t>(ActionCard::pulledPieces);
    if (number >= first && number <= first + kMostStripSteps) {
        onStripCard(m, number);
        return;
    }
    if (number > pulled && number <= pulled + kMostPulledByCard) {
        onActionPressed(m, {ActionCard::pulled, static_cast<int>(number - pulled)});
        return;
    }
    onActionPressed(m, {static_cast<ActionCard>(number)});
}

void onCode(Machine& m, const drivers::TicketCode& code, const std::string& text) {
    if (code.kind != TicketKind::action) {
        settlePieces(m);
    }
    switch (code.kind) {
    case TicketKind::run:
        return lookUp(m, code.number, false);
    case TicketKind::window:
        return lookUp(m, code.number, true);
    case TicketKind::instrument:
        return onInstrumentCode(m, code.number);
    case TicketKind::action:
        return onAction(m, code.number);
    case TicketKind::bucket:
    case TicketKind::person:
    case TicketKind::print:
    case TicketKind::bin:
        m.refuse(RefusalCause::ticketOfOtherKind, shownText(text));
        return;
    }
}

} // namespace

void onCard(Machine& m, ActionCard card) {
    switch (card) {
    case ActionCard::retake:
        return onRetake(m);
    case ActionCard::next:
        return onNext(m);
    case ActionCard::stop:
        return onStop(m);
    case ActionCard::tryAgain:
        return onRetry(m);
    case ActionCard::keepStrip:
        return keepStrip(m);
    case ActionCard::left:
        return onPosition(m, records::BeltPosition::left);
    case ActionCard::centre:
        return onPosition(m, records::BeltPosition::centre);
    case ActionCard::right:
        return onPosition(m, records::BeltPosition::right);
    default:
        m.refuse(RefusalCause::unknownAction, {}, static_cast<std::uint64_t>(card));
    }
}

void onScan(Machine& m, const std::string& bytes) {
    const auto text = drivers::checkScan(bytes);
    const bool digits = text && typedNumber(*text);
    if (text && !digits && saidAgain(m, *text)) {
        return; // what it did the first time stands, and so does its refusal
    }
    m.state.refusal.reset();
    if (!text) {
        m.refuse(RefusalCause::unreadableScan, shownText(bytes));
        return;
    }
    if (digits) {
        if (!onTypedPieces(m, *text)) {
            lookUp(m, *typedNumber(*text), false);
        }
        return;
    }
    const auto code = drivers::decode(*text);
    if (code) {
        onCode(m, *code, *text);
        return;
    }
    const auto fault = code.error();
    const auto cause = fault == drivers::TicketFault::badCheck      ? RefusalCause::ticketDamaged
                       : fault == drivers::TicketFault::unknownKind ? RefusalCause::ticketOfOtherKind
                                                                    : RefusalCause::notATicket;
    m.refuse(cause, shownText(*text));
}

} // namespace holdfast::kiosk::shop
