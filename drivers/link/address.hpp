#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast::drivers {

/// How a USB device calls itself. Two devices of one maker without serial numbers are told apart by topology only.
struct UsbIdentity {
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::string serial;
    bool operator==(const UsbIdentity&) const = default;
};

/// Where an instrument is found: by its USB identity, else by the USB socket it hangs on, else by a path (demo, tests).
/// The first that is set is used; port numbers are never matched.
struct Address {
    std::optional<UsbIdentity> usb;
    std::string topology; ///< as the kernel names the socket, e.g. "1-1.4"
    std::string path;

    [[nodiscard]] static Address atPath(std::string path) { return {std::nullopt, {}, std::move(path)}; }
    bool operator==(const Address&) const = default;
};

/// "usb:0403:6001:A50285BI", "socket:1-1.4" or a path; nothing for text that is none of them.
[[nodiscard]] std::optional<Address> addressFromText(std::string_view text);
[[nodiscard]] std::string toText(const Address& address);

} // namespace holdfast::drivers
