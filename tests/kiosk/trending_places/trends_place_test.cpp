// Trends on a real book: what it says, and where its points lead.
#include "tests/kiosk/trending_places/trends_rig.hpp"

#include <set>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

const TrendChartState& chartAt(const SheetPageState& page, int which) {
    int seen = 0;
    for (const auto& block : page.blocks) {
        if (block.kind == SheetKinds::TrendChart && seen++ == which) {
            return block.trend;
        }
    }
    FAIL("no such chart");
    return page.blocks.first().trend;
}

/// The presses that the page offers whose ids begin so.
std::vector<std::string> idsOf(const SheetPageState& page, const std::string& start) {
    std::vector<std::string> ids;
    const auto add = [&](const QString& id) {
        if (id.startsWith(QString::fromStdString(start))) {
            ids.push_back(id.toStdString());
        }
    };
    for (const auto* list : {&page.blocks, &page.beside}) {
        for (const auto& block : *list) {
            for (const auto& point : block.trend.points) {
                add(point.id);
            }
            for (const auto& bar : block.trend.bars) {
                add(bar.id);
            }
            for (const auto& row : block.trend.rows) {
                add(row.id);
            }
            for (const auto& row : block.rows) {
                add(row.id);
            }
            for (const auto& action : block.actions) {
                add(action.id);
            }
        }
    }
    for (const auto& action : page.besideActions) {
        add(action.id);
    }
    return ids;
}

} // namespace

TEST_CASE("an empty book is told in whole sentences", "[trends]") {
    TrendsRig rig;
    auto& trends = rig.opened();
    CHECK(reads(trends, "Trends"));
    CHECK(reads(trends, "no runs yet"));
    CHECK(reads(trends, "No margin stands here yet."));
    CHECK(reads(trends, "No lot stands here yet"));
    CHECK(trends.sheet().besideActions.isEmpty());
    trends.act("trends.wash");
    CHECK(reads(trends, "No print was washed to its end yet."));
    CHECK(reads(trends, "A cure ladder tells sooner"));
    trends.act("trends.back");
    trends.act("trends.instruments");
    CHECK(reads(trends, "Instruments compared"));
}

TEST_CASE("what the failures share is named, with counts and a strength, and sharing is not causing", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    CHECK(trends.sheet().head == QStringLiteral("Trends · North")); // the kiosk's own dryer
    // 14 weeks × 2 days × 2 dryers = 56 lots, of which 6 were printed from mix 118.
    CHECK(reads(trends, "6 failed lots, 50 good ones, of all dryers, in a year"));
    CHECK(reads(trends, "6 of 6 failed"));
    CHECK(reads(trends, "strong"));
    CHECK(reads(trends, "Sharing is not causing."));
    CHECK(reads(trends, "118"));
    const auto page = trends.sheet();
    REQUIRE(page.besideActions.size() == 1);
    CHECK(page.besideActions.first().primary);
    CHECK(page.besideActions.first().label.contains(QStringLiteral("118")));
}

TEST_CASE("every point leads to its run", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    trends.act("trends.span.all");
    const auto page = trends.sheet();
    const auto& margins = chartAt(page, 0);
    CHECK(margins.points.size() == 28); // one episode a day: 14 weeks of 2 days
    std::set<std::string> runs;
    for (const auto& point : margins.points) {
        CHECK_FALSE(point.spoken.isEmpty());
        CHECK(trends.act(point.id.toStdString()));
        runs.insert(rig.traced.back());
    }
    CHECK(runs.size() == 28);
    CHECK(runs.count(rig.last) == 1);
}

TEST_CASE("a suspect leads to its lots, failed ones first, and each of them to its run", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    const auto suspects = idsOf(trends.sheet(), "trends.suspect.");
    REQUIRE_FALSE(suspects.empty());
    CHECK(trends.act(suspects.front()));
    CHECK(reads(trends, "6 lots with it, failed ones first"));
    const auto runs = idsOf(trends.sheet(), "trends.run.");
    CHECK(runs.size() == 6);
    for (const auto& run : runs) {
        CHECK(trends.act(run));
    }
    CHECK(rig.traced.size() == 6);
    CHECK(trends.act("trends.back"));
    CHECK(reads(trends, "What failures share"));
}

TEST_CASE("a week with failures leads to its failed lots", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    trends.act("trends.dryer.north");
    const auto weeks = idsOf(trends.sheet(), "trends.week.");
    CHECK(weeks.size() == 6); // the others have nothing to lead to
    REQUIRE_FALSE(weeks.empty());
    CHECK(trends.act(weeks.front()));
    CHECK(reads(trends, "1 failed lot of that week"));
    CHECK(idsOf(trends.sheet(), "trends.run.").size() == 1);
}

TEST_CASE("a scan narrows it, a chip says so and takes it away", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    CHECK_FALSE(trends.scanned({drivers::TicketKind::bucket, 118}, false));
    CHECK_FALSE(trends.scanned({drivers::TicketKind::person, 1}, true));
    CHECK(trends.scanned({drivers::TicketKind::bucket, 118}, true));
    CHECK(reads(trends, "show all"));
    CHECK(reads(trends, "All of 6 lots failed"));
    CHECK(trends.act("trends.drop.bucket"));
    CHECK_FALSE(reads(trends, "show all"));
    CHECK(trends.scanned({drivers::TicketKind::run, 20002}, true)); // the second run was printed on East
    CHECK(trends.sheet().head == QStringLiteral("Trends · East"));
    CHECK(reads(trends, "Only low-cure: show all"));
    CHECK(reads(trends, "Shown as run 20002 was printed"));
    CHECK(trends.act("trends.drop.family"));
    CHECK(trends.scanned({drivers::TicketKind::instrument, 3}, true));
    CHECK(reads(trends, "Only P-3: show all"));
    CHECK(trends.act("trends.drop.instrument"));
    CHECK(trends.act("trends.position.left"));
    CHECK(reads(trends, "show all"));
}

TEST_CASE("what no book knows is refused, and nothing changes", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    const auto before = readAll(trends);
    CHECK(trends.scanned({drivers::TicketKind::bucket, 999}, true));
    CHECK(wasTold(rig, "No bucket 999 stands in the book."));
    CHECK(trends.scanned({drivers::TicketKind::run, 4}, true));
    CHECK(wasTold(rig, "No run 4 stands in the book."));
    CHECK(trends.scanned({drivers::TicketKind::instrument, 77}, true));
    CHECK(wasTold(rig, "No instrument in the book has this label."));
    CHECK(readAll(trends) == before);
    CHECK_FALSE(trends.act("holds.back"));
    CHECK_FALSE(trends.act("trends.nonsense"));
    CHECK(trends.act("trends.suspect.99"));
    CHECK(trends.act("trends.week.-1"));
    CHECK(readAll(trends) == before);
}

TEST_CASE("the old page stays while it is worked out again, and the older work is given up", "[trends]") {
    TrendsRig rig;
    rig.history();
    rig.waits = true;
    auto& trends = rig.opened();
    CHECK(reads(trends, "Working it out"));
    CHECK(trends.scanned({drivers::TicketKind::bucket, 118}, true));
    CHECK(wasTold(rig, "It is still being worked out."));
    rig.finish();
    CHECK(reads(trends, "26 runs")); // of thirteen weeks
    trends.act("trends.dryer.east");
    trends.act("trends.dryer.north");
    CHECK(reads(trends, "working it out again"));
    CHECK(reads(trends, "What failures share"));
    const int shown = rig.shown;
    rig.finish(); // the first of the two was asked to stop and tells nothing
    CHECK(rig.shown == shown + 1);
    CHECK(trends.sheet().head == QStringLiteral("Trends · North"));
    CHECK_FALSE(reads(trends, "working it out again"));
}

TEST_CASE("a book that grows is worked out again once what runs is done", "[trends]") {
    TrendsRig rig;
    rig.history();
    rig.waits = true;
    auto& trends = rig.opened();
    rig.finish();
    const int studies = rig.studies;
    trends.reload();
    CHECK(rig.studies == studies); // nothing new
    rig.printed(TrendsRig::kMonday + 13 * 7 * TrendsRig::kDay + 20 * 3'600'000, "north", 31, 5.0,
                analytics::Word::cured);
    trends.reload();
    rig.printed(TrendsRig::kMonday + 13 * 7 * TrendsRig::kDay + 22 * 3'600'000, "north", 31, 5.0,
                analytics::Word::cured);
    trends.reload();
    CHECK(rig.studies == studies + 1);
    rig.finish();
    CHECK(rig.studies == studies + 2);
    rig.finish();
    CHECK(reads(trends, "52 good ones"));
}

TEST_CASE("who leaves gives up what is worked out, and it begins anew when he comes back", "[trends]") {
    TrendsRig rig;
    rig.history();
    rig.waits = true;
    auto& trends = rig.opened();
    trends.left();
    rig.finish();
    CHECK(reads(trends, "Working it out"));
    trends.reload();
    rig.finish();
    CHECK(reads(trends, "What failures share"));
}

TEST_CASE("one dryer, nothing failed, everything failed: each is said", "[trends]") {
    SECTION("nothing failed") {
        TrendsRig rig;
        for (int day = 0; day < 4; ++day) {
            rig.printed(TrendsRig::kMonday + day * TrendsRig::kDay, "north", 31, 5.0, analytics::Word::cured);
        }
        auto& trends = rig.opened();
        trends.act("trends.span.all");
        CHECK(reads(trends, "None of 4 lots failed"));
        CHECK(idsOf(trends.sheet(), "trends.suspect.").empty());
    }
    SECTION("everything failed") {
        TrendsRig rig;
        for (int day = 0; day < 4; ++day) {
            rig.printed(TrendsRig::kMonday + day * TrendsRig::kDay, "north", 31, -5.0, analytics::Word::underCured);
        }
        auto& trends = rig.opened();
        trends.act("trends.span.all");
        CHECK(reads(trends, "All of 4 lots failed"));
        CHECK(idsOf(trends.sheet(), "trends.suspect.").empty());
    }
    SECTION("one run") {
        TrendsRig rig;
        rig.printed(TrendsRig::kMonday, "north", 31, 5.0, analytics::Word::cured);
        auto& trends = rig.opened();
        trends.act("trends.span.all");
        CHECK(reads(trends, "One episode so far."));
        CHECK(reads(trends, "1 run, "));
    }
}

TEST_CASE("the choices of what is shown stand on one page, and each is shown at once", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    CHECK(trends.act("trends.choose"));
    const auto page = trends.sheet();
    int primary = 0;
    for (const auto& action : page.actions) {
        primary += action.primary ? 1 : 0;
    }
    CHECK(primary == 1);
    CHECK(idsOf(page, "trends.dryer.").size() == 3); // all, East, North
    CHECK(idsOf(page, "trends.family.").size() == 2);
    CHECK(idsOf(page, "trends.position.").size() == 4);
    CHECK(idsOf(page, "trends.span.").size() == 4);
    trends.act("trends.dryer.");
    trends.act("trends.back");
    CHECK(reads(trends, "Trends · all dryers"));
    const auto quarter = chartAt(trends.sheet(), 0).points.size();
    trends.act("trends.span.all");
    CHECK(chartAt(trends.sheet(), 0).points.size() > quarter);
}
