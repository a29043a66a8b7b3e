#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/asked.hpp"
#include "kiosk/shop/testing/test_fault.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

struct AnswerDraft final {
    AskedResult asked{};
    std::string typed{}; ///< "4.5"; of a yes or no "yes", "no"; of a crack class its word; empty: not looked at
};

struct PullDraft final {
    std::string percent{};
    std::string seen{}; ///< word of a crack class; empty: not pulled
};

/// Millimetres as read.
struct LengthsDraft final {
    std::string original{};
    std::string stretched{};
    std::string relaxed{}; ///< let go, or after washing
};

struct LabDraft final {
    std::string l{};
    std::string a{};
    std::string b{};
};

/// A test while it is being entered. Fields: "cycle", "answer.0" …, "pull.0.percent", "pull.0", "lengthwise.original"
/// …, "before.l" …, "note".
struct TestDraft final {
    std::string print{}; ///< id
    records::MethodDescribed method{};
    std::string cycle{};               ///< of a wash; of a bleed watch its hours
    std::optional<std::string> load{}; ///< id
    std::vector<AnswerDraft> answers{};
    std::vector<PullDraft> pulls{};
    LengthsDraft lengthwise{}; ///< of a stretch: those of its furthest pull
    LengthsDraft widthwise{};
    LabDraft before{};
    LabDraft after{};
    std::string instrument{};
    std::vector<records::TestPicture> pictures{};
    std::string note{};
    std::optional<std::string> corrects{};
};

/// With a row for everything the method asks.
[[nodiscard]] TestDraft draftFor(const std::string& print, const records::MethodDescribed& method);
/// As it was kept, to be put right.
[[nodiscard]] TestDraft draftOf(const records::TestRow& test, const records::MethodDescribed& method);

/// What stands in the book around a test.
struct TestContext final {
    records::PrintRow print{};
    bool lotScrapped = false;
    std::vector<records::TestRow> tests{}; ///< of the print, oldest first
    std::vector<records::LoadRow> loads{}; ///< that the print was in, oldest first
    std::vector<records::HoldRow> holds{}; ///< of its lot
    bool shipped = false;                  ///< pieces of the lot went out
    std::optional<int> pieces{};           ///< of the lot, if they are known
    std::int64_t now = 0;
    std::int64_t nextBin = 0;
    std::string testId{}; ///< of the entry to be
    std::string holdId{};
};

struct TestToKeep final {
    records::TestDone done{};
    std::optional<records::HoldPlaced> hold{}; ///< goes into the same commit
    analytics::Judgement judgement{};          ///< without a rule: not judged
    bool recall = false;                       ///< pieces of the lot went out: it is a recall to decide
    bool heldAlready = false;                  ///< failed, and a hold for this print and method stands undecided
    bool holdLifts = false;                    ///< put right it no longer fails, and so holds nothing any more
};

/// Every fault at once. Judged with the results of all earlier cycles of that print and method; a test in a void load
/// is kept and counts for nothing.
[[nodiscard]] tl::expected<TestToKeep, TestFaults> testFrom(const TestDraft& draft, const TestContext& context);

/// Why the print may not be tested so now, whatever is entered: scrapped, ended, withdrawn, not rested, not valid.
[[nodiscard]] TestFaults standsAgainst(const records::MethodDescribed& method, const TestContext& context);

inline constexpr int kMostCycles = 200;

} // namespace holdfast::kiosk::shop
