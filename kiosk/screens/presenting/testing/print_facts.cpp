#include "kiosk/screens/presenting/testing/print_facts.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

bool isKin(const records::PrintRow& one, const records::PrintRow& print) {
    const auto& other = one.named;
    const auto& named = print.named;
    return other.print != named.print && (other.halfOf == named.print || named.halfOf == other.print ||
                                          (named.halfOf && other.halfOf == named.halfOf));
}

/// The first failure of several questions.
class Asking final {
public:
    template <class Asked>
    void take(ledger::Result<Asked> asked, Asked& into) {
        if (asked) {
            into = std::move(*asked);
        } else if (!m_failure) {
            m_failure = asked.error();
        }
    }
    [[nodiscard]] const std::optional<ledger::Failure>& failure() const noexcept { return m_failure; }

private:
    std::optional<ledger::Failure> m_failure;
};

void takeLot(const SQLite::Database& book, PrintFacts& facts, Asking& ask) {
    const auto& lot = facts.print.named.lot;
    records::PiecesOfLot pieces;
    ask.take(records::holdsOfLot(book, lot), facts.holds);
    ask.take(records::readingsOfLot(book, lot), facts.readings);
    ask.take(records::piecesOfLot(book, lot), pieces);
    facts.lotScrapped = facts.print.lotState == records::LotState::scrapped;
    facts.shipped = pieces.shipped > 0;
    facts.pieces = pieces.made;
}

} // namespace

ledger::Result<std::optional<PrintFacts>> printFacts(const SQLite::Database& book, const std::string& print) {
    auto row = records::printById(book, print);
    if (!row) {
        return tl::unexpected(row.error());
    }
    if (!*row) {
        return std::optional<PrintFacts>{};
    }
    PrintFacts facts;
    facts.print = std::move(**row);
    Asking ask;
    std::vector<records::PrintRow> ofRun;
    std::vector<records::TestRow> tests;
    ask.take(records::printsOfRun(book, facts.print.named.run), ofRun);
    ask.take(records::testsOfPrint(book, print), tests);
    ask.take(records::loadsOfPrint(book, print), facts.loads);
    ask.take(records::methods(book, true), facts.methods);
    takeLot(book, facts, ask);
    if (ask.failure()) {
        return tl::unexpected(*ask.failure());
    }
    std::copy_if(ofRun.begin(), ofRun.end(), std::back_inserter(facts.kin),
                 [&](const auto& one) { return isKin(one, facts.print); });
    for (auto& one : tests) {
        (one.done.print == print ? facts.tests : facts.testsOfHalves).push_back(std::move(one));
    }
    return std::optional{std::move(facts)};
}

const records::MethodDescribed* methodNamed(const std::vector<records::MethodDescribed>& methods,
                                            const std::string& key) {
    const auto found = std::find_if(methods.begin(), methods.end(), [&](const auto& one) { return one.key == key; });
    return found == methods.end() ? nullptr : &*found;
}

ledger::Result<shop::TestContext> contextOf(const PrintFacts& facts, const PlaceNeeds& needs) {
    const auto bin = records::nextBin(needs.book->reader());
    if (!bin) {
        return tl::unexpected(bin.error());
    }
    shop::TestContext context;
    context.print = facts.print;
    context.lotScrapped = facts.lotScrapped;
    context.tests = facts.tests;
    context.loads = facts.loads;
    context.holds = facts.holds;
    context.shipped = facts.shipped;
    context.pieces = facts.pieces;
    context.now = needs.clock->wall().millisecondsSinceEpoch;
    context.nextBin = *bin;
    context.testId = needs.newId();
    context.holdId = needs.newId();
    return context;
}

} // namespace holdfast::kiosk::screens
