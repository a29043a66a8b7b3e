#include "drivers/link/address.hpp"

#include <charconv>

namespace holdfast::drivers {

namespace {

constexpr std::string_view kUsb = "usb:";
constexpr std::string_view kSocket = "socket:";

std::optional<std::uint16_t> takeHex(std::string_view& text) {
    std::uint16_t value = 0;
    const auto end = text.find(':');
    const std::string_view digits = text.substr(0, end);
    const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), value, 16);
    if (result.ec != std::errc{} || result.ptr != digits.data() + digits.size()) {
        return std::nullopt;
    }
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    return value;
}

std::string hex(std::uint16_t value) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (int shift = 12; shift >= 0; shift -= 4) {
        text.push_back(digits[static_cast<std::size_t>(value >> shift) & 0xFU]);
    }
    return text;
}

} // namespace

std::optional<Address> addressFromText(std::string_view text) {
    Address address;
    if (text.substr(0, kUsb.size()) == kUsb) {
        text.remove_prefix(kUsb.size());
        const auto vendor = takeHex(text);
        const auto product = vendor ? takeHex(text) : std::nullopt;
        if (!product) {
            return std::nullopt;
        }
        address.usb = UsbIdentity{*vendor, *product, std::string{text}};
        return address;
    }
    const bool socket = text.substr(0, kSocket.size()) == kSocket;
    text.remove_prefix(socket ? kSocket.size() : 0);
    if (text.empty()) {
        return std::nullopt;
    }
    (socket ? address.topology : address.path) = std::string{text};
    return address;
}

std::string toText(const Address& address) {
    if (address.usb) {
        const std::string front = std::string{kUsb} + hex(address.usb->vendor) + ":" + hex(address.usb->product);
        return address.usb->serial.empty() ? front : front + ":" + address.usb->serial;
    }
    return address.topology.empty() ? address.path : std::string{kSocket} + address.topology;
}

} // namespace holdfast::drivers
