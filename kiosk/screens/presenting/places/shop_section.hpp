#pragma once

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

/// One entry of the Shop's list: what stands at the right, and what its presses do. Ids begin with "shop." and the
/// section's name. The needs outlive the section.
class ShopSection {
public:
    explicit ShopSection(const PlaceNeeds& needs) : m_needs{needs} {}
    virtual ~ShopSection() = default;
    ShopSection(const ShopSection&) = delete;
    ShopSection& operator=(const ShopSection&) = delete;

    virtual void reload() {}
    virtual void addTo(SheetPageState& page) const = 0;
    virtual bool act(const std::string&) { return false; }
    virtual bool enter(const std::string&, const std::string&) { return false; }
    /// A badge, by the number of its code; false: this section does not ask for one.
    virtual bool badge(std::int64_t) { return false; }
    /// Something half typed stands in it.
    [[nodiscard]] virtual bool isWriting() const { return false; }
    virtual void tick() {}

protected:
    [[nodiscard]] const PlaceNeeds& needs() const noexcept { return m_needs; }
    [[nodiscard]] const wording::Speech& speech() const { return m_needs.speech(); }
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }
    void tell(const ledger::Failure& failure) const {
        m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
    }
    /// Writes; `done` only if it stands in the book. A second press while the first is under way writes nothing.
    void keep(Keeping keeping, std::function<void()> done = {}) {
        if (m_keeping) {
            return;
        }
        m_keeping = true;
        m_needs.keep(std::move(keeping), [this, done](const std::optional<ledger::Failure>& failure) {
            m_keeping = false;
            if (failure) {
                tell(*failure);
            } else if (done) {
                done();
            }
        });
    }

private:
    const PlaceNeeds& m_needs;
    bool m_keeping = false; ///< an entry is on the way to the disk
};

/// The rest of an id behind a prefix.
[[nodiscard]] inline std::optional<std::string> restOf(const std::string& id, std::string_view prefix) {
    return id.compare(0, prefix.size(), prefix) == 0 ? std::optional{id.substr(prefix.size())} : std::nullopt;
}

} // namespace holdfast::kiosk::screens
