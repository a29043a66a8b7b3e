#pragma once

#include "kiosk/shop/testing/starters.hpp"
#include "kiosk/shop/testing/test_draft.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

/// Prints, loads and tests as a book would give them.
namespace holdfast::testing_test {

using namespace holdfast::kiosk;

inline constexpr std::int64_t kHour = 3'600'000;
inline constexpr std::int64_t kDay = 24 * kHour;
/// Wednesday 14 October 2026, 10:00 UTC: 20,740 days after 1970-01-01 (proleptic Gregorian calendar).
inline constexpr std::int64_t kPrinted = 20'740 * kDay + 10 * kHour;

inline records::MethodDescribed starter(const std::string& key) {
    const auto all = shop::starterMethods();
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.key == key; });
    REQUIRE(found != all.end());
    return *found;
}

inline records::PrintRow print(std::int64_t number = 7, const std::string& lot = "lot-1") {
    records::PrintRow row;
    row.named.print = "print-" + std::to_string(number);
    row.named.number = number;
    row.named.run = "run-1";
    row.named.lot = lot;
    row.named.printedAt = kPrinted;
    row.runNumber = 20391;
    row.lotNumber = 3;
    row.fabric = "100% polyester";
    row.chemistries = {analytics::Chemistry::plastisol};
    row.restHours = 24.0; // job.md: wash plastisol after 24 h, from memory
    return row;
}

inline records::LoadRow load(std::int64_t number, const std::string& print, std::int64_t at,
                             std::optional<records::LoadWord> word = records::LoadWord::valid,
                             const std::string& programme = "wash-house") {
    records::LoadRow row;
    row.washed.load = "load-" + std::to_string(number);
    row.washed.number = number;
    row.washed.machine = "front loader";
    row.washed.programme = programme;
    row.washed.prints = {print};
    row.at = at;
    if (word) {
        records::LoadJudged judged;
        judged.load = row.washed.load;
        judged.word = *word;
        row.judged = judged;
    }
    return row;
}

inline shop::TestContext contextAt(std::int64_t now) {
    shop::TestContext context;
    context.print = print();
    context.now = now;
    context.nextBin = 12;
    context.testId = "test-new";
    context.holdId = "hold-new";
    return context;
}

/// As the book keeps what was made.
inline records::TestRow kept(const std::string& id, const records::TestDone& done, std::int64_t at = kPrinted + kDay) {
    records::TestRow row;
    row.id = id;
    row.at = at;
    row.done = done;
    row.counts = done.outcome;
    return row;
}

inline void answer(shop::TestDraft& draft, analytics::Quantity quantity, const std::string& typed,
                   const std::string& ownName = {}) {
    for (auto& one : draft.answers) {
        if (one.asked == shop::AskedResult{quantity, ownName}) {
            one.typed = typed;
            return;
        }
    }
    FAIL("the method does not ask it");
}

inline bool has(const shop::TestFaults& faults, shop::TestFaultCause cause, const std::string& field) {
    return std::any_of(faults.begin(), faults.end(),
                       [&](const auto& one) { return one.cause == cause && one.field == field; });
}

/// The one fault, at the one field.
template <class Kept>
shop::TestFault onlyFault(const tl::expected<Kept, shop::TestFaults>& made) {
    REQUIRE_FALSE(made);
    for (const auto& one : made.error()) {
        INFO("fault " << static_cast<int>(one.cause) << " at " << one.field << ": " << one.text);
        CHECK(made.error().size() == 1);
    }
    return made.error().front();
}

} // namespace holdfast::testing_test
