#pragma once

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/testing/test_fault.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

inline constexpr std::string_view kTestsField = "tests.field.";
inline constexpr std::string_view kTestsSet = "tests.set.";
inline constexpr std::string_view kTestsPrint = "tests.pick.print.";   ///< then its id
inline constexpr std::string_view kTestsLoad = "tests.pick.load.";     ///< then its id
inline constexpr std::string_view kTestsMethod = "tests.pick.method."; ///< then its key
inline constexpr std::string_view kTestsTest = "tests.pick.test.";     ///< then its id

/// The rest of an id behind a prefix; nothing if it begins otherwise.
[[nodiscard]] inline std::optional<std::string> behind(const std::string& id, std::string_view prefix) {
    return id.compare(0, prefix.size(), prefix) == 0 ? std::optional{id.substr(prefix.size())} : std::nullopt;
}
/// The number behind a prefix, and nothing after it.
[[nodiscard]] std::optional<std::size_t> indexBehind(const std::string& id, std::string_view prefix);

/// What a form makes: one commit.
struct FormKeeping final {
    Keeping keeping{};
    shop::Right right = shop::Right::logTests;
    std::string thenChoose{};            ///< id of the row that is shown next
    wording::Notice said{};              ///< told once it is kept; empty: nothing
    std::vector<std::string> pictures{}; ///< hashes of waiting ones that went with it
};

/// A form of the Tests. Fields are "tests.field.NAME", choices "tests.set.NAME.WORD". The needs outlive it.
class TestsForm {
public:
    explicit TestsForm(const PlaceNeeds& needs) : m_needs{needs} {}
    virtual ~TestsForm() = default;
    TestsForm(const TestsForm&) = delete;
    TestsForm& operator=(const TestsForm&) = delete;

    [[nodiscard]] virtual std::string title() const = 0;
    [[nodiscard]] virtual QList<SheetBlock> blocks() const = 0;
    virtual bool act(const std::string& id) = 0;
    virtual bool enter(const std::string& field, const std::string& text) = 0;
    /// A scanned print or run; false if the form has no use for it.
    virtual bool addPrint(const records::PrintRow&) { return false; }
    virtual bool addRun(std::int64_t) { return false; }
    /// What it makes; nothing while something is wrong, which then stands in the form.
    [[nodiscard]] virtual std::optional<FormKeeping> keeping() = 0;
    /// Something was typed or pressed.
    [[nodiscard]] bool isTouched() const noexcept { return m_touched; }
    void touch() noexcept { m_touched = true; }

protected:
    [[nodiscard]] const PlaceNeeds& needs() const noexcept { return m_needs; }
    [[nodiscard]] const wording::Speech& speech() const { return m_needs.speech(); }
    [[nodiscard]] drivers::WallTime now() const { return m_needs.clock->wall(); }
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return speech().text(key, arguments);
    }
    /// Its fault under it.
    [[nodiscard]] SheetField field(const std::string& name, const std::string& label, const std::string& value,
                                   SheetKinds::Keys keys = SheetKinds::Text, const std::string& hint = {}) const;
    /// The fault of something that is pressed and not typed, as a sentence.
    void addFaultOf(QList<SheetBlock>& blocks, const std::string& name) const;
    /// Faults of the whole, first on the page.
    void addWholeFaults(QList<SheetBlock>& blocks) const;
    void tell(const ledger::Failure& failure) const {
        m_needs.tell(wording::noticeOf(failure, wording::Kept::book, speech()));
    }
    /// What was asked of the book; nothing, and told, if it cannot be read.
    template <class Asked>
    std::optional<Asked> took(ledger::Result<Asked> asked) const {
        if (!asked) {
            tell(asked.error());
            return std::nullopt;
        }
        return std::move(*asked);
    }

    shop::TestFaults m_faults;

private:
    const PlaceNeeds& m_needs;
    bool m_touched = false;
};

/// The nine grades; `prefix` and the grade is the id pressed. What was typed and is no grade is chosen nowhere.
[[nodiscard]] SheetBlock gradeKeys(const std::string& text, const std::string& note, const std::string& prefix,
                                   const std::string& chosen);
[[nodiscard]] SheetBlock crackKeys(const std::string& text, const std::string& note, const std::string& prefix,
                                   const std::string& chosen, const wording::Speech& speech);
/// Yes, no, and not looked at.
[[nodiscard]] SheetBlock yesNoKeys(const std::string& text, const std::string& prefix, const std::string& chosen,
                                   const wording::Speech& speech);
[[nodiscard]] CrackKind crackKindOf(analytics::CrackClass seen) noexcept;

} // namespace holdfast::kiosk::screens
