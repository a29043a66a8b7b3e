#pragma once

#include "kiosk/screens/presenting/places/shop_place.hpp"
#include "kiosk/screens/presenting/places/sign_in_place.hpp"
#include "tests/kiosk/support/place_rig.hpp"

namespace holdfast::kiosk::screens::testing {

[[nodiscard]] inline std::optional<std::string> plainHash(std::string_view pin) {
    return "$argon2id$" + std::string{pin};
}

[[nodiscard]] inline bool plainVerify(const std::string& hash, std::string_view pin) {
    return hash == plainHash(pin);
}

/// The Shop and the signature on a real book.
class KeepingRig final {
public:
    KeepingRig() {
        makeSignIn();
        shop = std::make_unique<ShopPlace>(m_rig.needs);
    }

    /// As after a start of the program.
    void makeSignIn() {
        signIn = std::make_unique<SignInPlace>(
            m_rig.needs, [this] { ++closed; }, verify, plainHash);
    }
    /// The PIN is typed, and the answer has come.
    bool type(const std::string& pin) {
        const bool taken = signIn->enter("sign-in.pin", pin);
        const auto before = shown();
        return taken && until([&] { return shown() > before || !says(*signIn, "Checking"); });
    }
    [[nodiscard]] int shown() const { return m_rig.shown; }
    void person(std::int64_t number, const std::string& name, records::Role role, const std::string& pin,
                bool left = false) {
        m_rig.write({records::PersonAdded{number, shop::badgeOf(number), {role}}}, ledger::PersonName{number, name});
        if (!pin.empty()) {
            m_rig.write({records::PinSet{number, *plainHash(pin)}});
        }
        if (left) {
            m_rig.write({records::PersonChanged{number, shop::badgeOf(number), {role}, true}});
        }
    }
    [[nodiscard]] std::int64_t entries() { return m_rig.entries(); }
    [[nodiscard]] std::int64_t signedBy() { return m_rig.signedBy(); }
    [[nodiscard]] records::testing::Shop& book() { return m_rig.shop; }
    [[nodiscard]] const std::filesystem::path& exchange() const { return m_rig.needs.exchange; }
    [[nodiscard]] drivers::ManualClock& clock() { return m_rig.clock; }

private:
    PlaceRig m_rig;

public:
    std::unique_ptr<SignInPlace> signIn;
    std::unique_ptr<ShopPlace> shop;
    std::vector<std::string>& told = m_rig.told;
    std::vector<PrintWish>& printed = m_rig.printed;
    std::vector<shop::Right>& asked = m_rig.asked;
    bool& signs = m_rig.signs;
    bool& diskFull = m_rig.diskFull;
    shop::VerifyPin verify = plainVerify;
    int closed = 0;
};

[[nodiscard]] inline drivers::TicketCode badge(std::uint64_t number) {
    return {drivers::TicketKind::person, number};
}

} // namespace holdfast::kiosk::screens::testing
