#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/shop/keeping/pin_tries.hpp"
#include "kiosk/shop/keeping/rights.hpp"

#include <tl/expected.hpp>

#include <chrono>
#include <optional>
#include <string>
#include <vector>

/// Who signs, and how that is shown: badge or name, then PIN.
namespace holdfast::kiosk::shop {

enum class SignInCause {
    personUnknown, ///< a badge of no person of this book
    badgeReplaced, ///< an old badge
    personLeft,
    notEntitled, ///< `may` says which roles are
    samePerson,  ///< has signed already: the second signature is another's
    noPin,       ///< an owner sets it
    pinWrong,    ///< `wait` until the next may be typed
    tooSoon,     ///< not looked at and not counted; `wait` is what is left
};

struct SignInRefusal final {
    SignInCause cause{};
    std::vector<records::Role> may{};
    std::chrono::seconds wait{0};
    bool operator==(const SignInRefusal&) const = default;
};

/// The roles that may do it, in the table's order.
[[nodiscard]] std::vector<records::Role> rolesFor(Right right);

/// Nobody who is an owner and still here has a PIN: the first start, or one that was interrupted.
[[nodiscard]] bool lacksOwner(const std::vector<records::PersonOnFile>& people);

/// Wait after so many wrong ones: 0, 0, 2, 5, 15, 30, 60 s, then 60 s each; 0 before the first.
[[nodiscard]] std::chrono::seconds waitAfter(int wrongOnes);

inline constexpr std::chrono::minutes kSignatureLasts{5};

enum class SignInStep {
    closed,
    firstOwner, ///< first of all an owner's PIN is to be set
    waiting,    ///< for badge or name
    pin,        ///< `person` is known
    checking,   ///< the PIN is being looked at, elsewhere: that takes long
};

/// A PIN that is to be held against a hash, outside the main thread.
struct PinCheck final {
    std::int64_t person = 0;
    std::string hash{};
};

/// The state of signing. Pure; time comes from outside, and so does the answer of a PinCheck. The people are those of
/// the book at each call, so that a role taken away counts at once.
class SignIn {
public:
    using People = std::vector<records::PersonOnFile>;

    SignIn() = default;
    /// After a restart: the wrong ones of before, and their whole wait anew.
    SignIn(PinTries before, drivers::MonotonicTime now);

    [[nodiscard]] SignInStep step() const noexcept { return m_step; }
    [[nodiscard]] Right right() const noexcept { return m_right; }
    /// Who has signed already; 0: nobody.
    [[nodiscard]] std::int64_t other() const noexcept { return m_other; }
    /// Known in the steps `pin` and `checking`, else 0.
    [[nodiscard]] std::int64_t person() const noexcept { return m_person; }
    /// Who signed less than kSignatureLasts ago, if the right is theirs.
    [[nodiscard]] std::optional<std::int64_t> holder(Right right, const People& people,
                                                     drivers::MonotonicTime now) const;
    /// Rounded up.
    [[nodiscard]] std::chrono::seconds waitLeft(drivers::MonotonicTime now) const;

    /// `other` has signed already and may not sign this too; 0: nobody has.
    void begin(Right right, const People& people, std::int64_t other = 0);
    void giveUp() noexcept;
    /// Another one may be chosen while the PIN of the first is asked for. A refused one leaves the step as it was.
    std::optional<SignInRefusal> choose(std::int64_t person, const People& people);
    /// The same by the number of a badge.
    std::optional<SignInRefusal> chooseBadge(std::int64_t number, const People& people);
    /// Back to the people.
    void unchoose() noexcept;
    /// Only in the step `pin`: a PIN was typed. Each counts as wrong until it was shown right, so that neither giving
    /// up nor pulling the plug meanwhile takes it away; tries() is to be kept before the PIN is looked at. One at a
    /// time.
    tl::expected<PinCheck, SignInRefusal> tryPin(const People& people, drivers::MonotonicTime now);
    /// What came out. The right one closes the step `checking` and counts from `now`; nothing if that was given up
    /// meanwhile. Wrong ones slow the next, whoever it is of: choosing another person takes nothing away. A right PIN
    /// ends the row of wrong ones, but not those of another person's: nobody clears guesses at an owner's PIN with
    /// their own.
    std::optional<tl::expected<std::int64_t, SignInRefusal>> checked(const PinCheck& check, bool right,
                                                                     const People& people, drivers::MonotonicTime now);
    [[nodiscard]] const PinTries& tries() const noexcept { return m_tries; }
    /// An owner's first PIN was set by this person, who counts as signed.
    void ownerSet(std::int64_t person, drivers::MonotonicTime now) noexcept;
    /// Nobody is signed in any more.
    void signOut() noexcept { m_signed.reset(); }

private:
    struct Signed final {
        std::int64_t person = 0;
        drivers::MonotonicTime at{};
    };
    void close() noexcept;

    SignInStep m_step = SignInStep::closed;
    Right m_right = Right::changePeople;
    std::int64_t m_person = 0;
    std::int64_t m_other = 0;
    std::optional<Signed> m_signed;
    PinTries m_tries;
    bool m_out = false; ///< a PinCheck was handed out and has not come back
    drivers::MonotonicTime m_mayTryAt{drivers::MonotonicTime::min()};
};

} // namespace holdfast::kiosk::shop
