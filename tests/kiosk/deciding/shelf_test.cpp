#include "kiosk/shop/deciding/shelf.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop::deciding;

namespace {

/// Three red bins: 28 and 12 pieces, and one whose bracket is still open.
const std::vector<Bin> kBins{{"h1", 14, 28}, {"h2", 15, 12}, {"h3", 16, std::nullopt}};

} // namespace

TEST_CASE("bins that are ticked hold what the book says", "[deciding][shelf]") {
    ShelfDraft draft;
    tick(draft, "h1");
    tick(draft, "h2");
    const auto sum = sumOf(draft, kBins);
    CHECK(sum.bins == 3);
    CHECK(sum.ticked == 2);
    CHECK(sum.counted == 40);  // 28 + 12
    CHECK(sum.expected == 40); // nobody knows of the third
    CHECK(sum.missing == std::vector<std::int64_t>{16});
    tick(draft, "h1");
    CHECK(sumOf(draft, kBins).ticked == 1);
}

TEST_CASE("a count typed where it differs is kept and named", "[deciding][shelf]") {
    ShelfDraft draft;
    draft.found = {{"h1", "26"}, {"h2", ""}, {"h3", "5"}};
    const auto kept = shelfFrom(draft, kBins);
    REQUIRE(kept);
    CHECK(kept->counted.bins == std::vector<holdfast::kiosk::records::BinCount>{{"h1", 26}, {"h2", 12}, {"h3", 5}});
    CHECK(kept->sum.counted == 43); // 26 + 12 + 5
    CHECK(kept->sum.differing == std::vector<std::int64_t>{14});
    CHECK_FALSE(kept->sum.agrees());
    draft.found["h1"] = "28";
    CHECK(shelfFrom(draft, kBins)->sum.agrees());
}

TEST_CASE("what is no count, or is missing where nobody knows one, is refused at its bin", "[deciding][shelf]") {
    ShelfDraft draft;
    draft.found = {{"h1", "x"}, {"h2", "-2"}, {"h3", ""}};
    CHECK(shelfFrom(draft, kBins).error() ==
          Faults{{Cause::notACount, "h1", "x"}, {Cause::countBelowZero, "h2", "-2"}, {Cause::countMissing, "h3", ""}});
}

TEST_CASE("an empty bin is a count", "[deciding][shelf]") {
    ShelfDraft draft;
    draft.found = {{"h1", "0"}, {"h2", ""}, {"h3", "0"}};
    const auto kept = shelfFrom(draft, kBins);
    REQUIRE(kept);
    CHECK(kept->sum.differing == std::vector<std::int64_t>{14});
    CHECK(kept->sum.missing.empty());
}

TEST_CASE("the newest count lacks the bins that came after it", "[deciding][shelf]") {
    const auto sum = sumOf(holdfast::kiosk::records::ShelfCounted{{{"h1", 28}, {"gone", 3}}}, kBins);
    CHECK(sum.ticked == 1);
    CHECK(sum.missing == std::vector<std::int64_t>{15, 16});
    CHECK(sumOf(ShelfDraft{}, {}).agrees());
}
