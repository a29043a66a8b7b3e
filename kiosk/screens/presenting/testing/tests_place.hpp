#pragma once

#include "kiosk/screens/presenting/testing/picture_inbox.hpp"
#include "kiosk/screens/presenting/testing/print_facts.hpp"
#include "kiosk/screens/presenting/testing/tests_form.hpp"
#include "kiosk/shop/testing/due_tests.hpp"

#include <memory>
#include <variant>

namespace holdfast::kiosk::screens {

/// Tests: what is due, one print with its history, wash loads, retained pieces, methods, and the forms for all of them.
class TestsPlace final : public SheetPlace {
public:
    /// `shelf` holds the pictures that wait, for PictureProvider; made here if nobody else shares it.
    explicit TestsPlace(PlaceNeeds needs, std::shared_ptr<WaitingPictures> shelf = {});

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A print is shown, or goes into a drum that is being filled; a run goes into a print that is being named.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    void tick() override;
    [[nodiscard]] bool isWriting() const override { return m_form && m_form->isTouched(); }

    /// Of this moment, for the head of the screen: late ones first.
    [[nodiscard]] const std::vector<shop::DueTest>& due() const noexcept { return m_due; }

private:
    enum class List { due, prints, retained, loads, methods };
    /// One test with the print it was done of.
    struct TestShown final {
        PrintFacts facts;
        records::TestRow test;
        std::vector<records::TestRow> versions; ///< oldest first; read when they are asked for
        bool history = false;
    };
    /// Which test of the print is wanted.
    struct MethodsOffered final {
        PrintFacts facts;
    };
    struct Ending final {
        PrintFacts facts;
    };
    using Shown = std::variant<std::monostate, PrintFacts, TestShown, MethodsOffered, Ending, records::LoadRow,
                               records::MethodDescribed>;

    template <class Asked>
    bool took(ledger::Result<Asked> asked, Asked& into) const;
    void failed(const ledger::Failure& failure) const;
    bool choose(const std::string& id);
    bool choosePrint(const std::string& print);
    bool chooseTest(const std::string& test);
    bool chooseLoad(const std::string& load);
    void chooseAgain();
    void leavePage();
    [[nodiscard]] bool turnList(const std::string& id);
    void startForm(std::unique_ptr<TestsForm> form);
    /// False, and told, while something else is half written.
    [[nodiscard]] bool mayStart();
    bool startNew(const std::string& id);
    bool startDue(const std::string& id);
    bool startTest(const PrintFacts& facts, const std::string& method, std::optional<int> cycle,
                   std::optional<std::string> load);
    bool actOnPrint(const PrintFacts& facts, const std::string& id);
    bool actOnTest(TestShown& shown, const std::string& id);
    bool actOnMethod(const records::MethodDescribed& method, const std::string& id);
    void cutInTwo(const PrintFacts& facts);
    void keepPicture(const PrintFacts& facts, const std::string& sha256);
    bool find(const std::string& typed);
    void showNumber(std::int64_t number, const std::string& asTyped);
    void save();
    void keep(FormKeeping keeping, const TestsForm* form);
    void readDue();
    void readList();
    void putAside();

    void addList(SheetPageState& page) const;
    void addDueRows(SheetPageState& page) const;
    void addPrintRows(SheetPageState& page) const;
    void addShown(SheetPageState& page) const;
    void addPrint(SheetPageState& page, const PrintFacts& facts) const;
    void addTest(SheetPageState& page, const TestShown& shown) const;
    void addOffered(SheetPageState& page, const PrintFacts& facts) const;
    void addLoad(SheetPageState& page, const records::LoadRow& load) const;
    void addMethod(SheetPageState& page, const records::MethodDescribed& method) const;
    void addInbox(QList<SheetBlock>& blocks, const PrintFacts* facts) const;
    [[nodiscard]] const records::PrintRow* printOf(const std::string& id) const;
    [[nodiscard]] std::string personName(std::int64_t number) const;
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }
    [[nodiscard]] drivers::WallTime now() const { return m_needs.clock->wall(); }
    [[nodiscard]] bool isFormShown() const { return m_form && !m_aside; }

    PlaceNeeds m_needs;
    List m_list = List::due;
    std::vector<records::PrintRow> m_prints; ///< open ones
    std::vector<records::PrintRow> m_retained;
    std::vector<records::LoadRow> m_loads;
    std::vector<records::MethodDescribed> m_methods; ///< withdrawn ones too
    std::vector<shop::DueTest> m_due;
    std::size_t m_doneToday = 0;
    std::int64_t m_dueAt = 0; ///< wall milliseconds at which m_due was made
    std::string m_chosen;     ///< id of the row; empty: none
    Shown m_shown;
    std::string m_dueChosen; ///< the row of what is due whose form stands there
    std::string m_typed;     ///< signs that no print has
    std::unique_ptr<TestsForm> m_form;
    bool m_aside = false;   ///< the form is kept while something else is looked at
    bool m_keeping = false; ///< an entry is on the way to the disk
    std::unique_ptr<PictureInbox> m_inbox;
};

template <class Asked>
bool TestsPlace::took(ledger::Result<Asked> asked, Asked& into) const {
    if (!asked) {
        failed(asked.error());
        return false;
    }
    into = std::move(*asked);
    return true;
}

} // namespace holdfast::kiosk::screens
