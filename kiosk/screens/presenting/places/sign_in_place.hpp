#pragma once

#include "kiosk/screens/presenting/places/beside.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/keeping/person_draft.hpp"
#include "kiosk/shop/keeping/sign_in.hpp"

namespace holdfast::kiosk::screens {

inline constexpr std::string_view kSignInPerson = "sign-in.person."; ///< then the person's number

/// Asks who signs: people as rows or a badge, then the PIN; at a first start the owner's PIN before all. Stands over
/// the place that asked; `closed` is called when it goes, before what was signed for is done. Hashes are made and
/// checked beside the main thread; who leaves meanwhile has signed nothing.
class SignInPlace final : public SheetPlace {
public:
    /// Takes the wrong PINs of before the start from beside the book, and keeps each there before it is looked at.
    SignInPlace(PlaceNeeds needs, std::function<void()> closed, shop::VerifyPin verify = shop::verifyPin,
                shop::HashPin hash = shop::hashPin);

    /// Runs `then` at once if somebody with that right signed within the last five minutes; else isOpen() is true
    /// afterwards. What was asked before is given up.
    void ask(shop::Right right, std::function<void(std::int64_t person)> then);
    /// The same for a signature under one thing: whoever signed a moment ago is asked again, and `other`, who has
    /// signed it already, may not.
    void askAfresh(shop::Right right, std::int64_t other, std::function<void(std::int64_t person)> then);
    [[nodiscard]] bool isOpen() const noexcept { return m_signIn.step() != shop::SignInStep::closed; }

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    void left() override { giveUp(); }

private:
    /// Of whom, too: the name is said.
    struct Refused final {
        shop::SignInRefusal refusal{};
        std::int64_t person = 0;
    };

    void begin(shop::Right right, std::int64_t other, std::function<void(std::int64_t)> then);
    void choose(std::int64_t person);
    void chooseBadge(std::int64_t number);
    void refuse(const std::optional<shop::SignInRefusal>& refusal, std::int64_t person);
    void tryPin(const std::string& pin);
    void checked(const shop::PinCheck& check, bool right);
    void setFirstOwner();
    void keepFirstOwner(const shop::PersonDraft& owner, const std::optional<std::string>& hash);
    void resumeAfterOwner(std::int64_t person);
    void finish(std::int64_t person);
    void leave();
    void giveUp();
    void addPeople(SheetPageState& page) const;
    void addPin(SheetPageState& page) const;
    void addFirstOwner(SheetPageState& page) const;
    void addRefusal(SheetPageState& page) const;
    [[nodiscard]] std::string nameOf(std::int64_t person) const;
    [[nodiscard]] std::string text(const char* key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }

    PlaceNeeds m_needs;
    std::function<void()> m_closed;
    shop::SignIn m_signIn;
    shop::VerifyPin m_verify;
    shop::HashPin m_hash;
    shop::PeopleNow m_now;
    std::function<void(std::int64_t)> m_then;
    std::optional<Refused> m_refused;
    shop::PersonDraft m_owner; ///< being given the first PIN
    std::vector<shop::PersonFault> m_faults;
    int m_asked = 0;        ///< counts up with each asking and each giving up: late answers find another number
    bool m_keeping = false; ///< the first owner's PIN is being hashed, or is on the way to the disk
    Beside m_beside;        ///< last: it answers nobody once this goes
};

} // namespace holdfast::kiosk::screens
