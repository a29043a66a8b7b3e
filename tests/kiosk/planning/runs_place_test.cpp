// The Runs as sheets, on a real book: what is shown, what is written, and what is not.
#include "kiosk/screens/presenting/places/runs_place.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

class Frame final : public PlaceRig {
public:
    Frame() {
        shop.plan();
        clock.setWall({shop.now(), 0});
        place = std::make_unique<RunsPlace>(needs);
        place->reload();
    }

    std::int64_t bucket(const std::string& family, const std::string& colour = {}) {
        records::BucketOpened pail;
        pail.bucket = shop.freshId();
        pail.number = *records::nextNumber(shop.db(), records::Numbered::bucket);
        pail.family = family;
        pail.colour = colour;
        REQUIRE(shop.tell(pail));
        return pail.number;
    }
    void close(std::int64_t number) {
        const auto bucket = records::bucketByNumber(shop.db(), number);
        REQUIRE(shop.tell(records::BucketClosed{(*bucket)->id, records::BucketEnd::mislabelled}));
    }
    bool scan(std::int64_t number, bool onScreen = true) {
        return place->scanned({drivers::TicketKind::bucket, static_cast<std::uint64_t>(number)}, onScreen);
    }
    void newPlan() {
        REQUIRE(place->act("runs.new"));
        REQUIRE(place->enter("runs.title", "red jerseys"));
        REQUIRE(place->act("runs.fabric.100% polyester"));
    }
    bool says(const std::string& words) const { return testing::says(*place, words); }
    /// The newest plan of that title.
    records::RunPlanned planned(const std::string& title) {
        const auto rows = records::runsOnFile(shop.db(), records::PlanKind::run, false, 100);
        for (const auto& row : *rows) {
            if (row.title == title) {
                return (*records::runById(shop.db(), row.id))->plan;
            }
        }
        FAIL("nothing is planned as " << title);
        return {};
    }
    void lay(const std::string& name, const std::string& bytes) {
        std::filesystem::create_directories(needs.exchange);
        std::ofstream{needs.exchange / name, std::ios::binary} << bytes;
    }
    void readList(const std::string& bytes) {
        lay("orders.csv", bytes);
        REQUIRE(place->act("runs.import"));
        REQUIRE(place->act("runs.file.0"));
    }

    std::unique_ptr<RunsPlace> place;
};

} // namespace

TEST_CASE("a scanned bucket goes on the chosen layer, and the next one on the next", "[planning][places]") {
    Frame frame;
    const auto white = frame.bucket("low-cure", "white");
    const auto black = frame.bucket("standard", "black");
    frame.newPlan();
    REQUIRE(frame.place->act("runs.layer.add"));
    CHECK(frame.scan(white));
    CHECK(frame.scan(black));
    CHECK(frame.told.empty());
    CHECK(frame.says(std::to_string(white) + " · low-cure"));
    CHECK(frame.says("Black needs 320")); // job.md, the classic trap: a standard black on polyester
    REQUIRE(frame.place->act("runs.pour.2"));
    REQUIRE(frame.place->act("runs.bucket." + std::to_string(white))); // a press does the same
    REQUIRE(frame.place->act("runs.save"));
    const auto plan = frame.planned("red jerseys");
    REQUIRE(plan.layers.size() == 2);
    CHECK(plan.layers[0].buckets == std::vector{white});
    CHECK(plan.layers[1].buckets == std::vector{white});
    CHECK(plan.layers[1].ink == "low-cure");
    CHECK(plan.layers[1].colour == "black"); // as it was named
    CHECK(frame.says("bucket " + std::to_string(white)));
    CHECK(frame.signedBy() == 0); // rights.hpp: plans need nobody's name
}

TEST_CASE("a bucket that cannot be used is told and leaves the form as it was", "[planning][places]") {
    Frame frame;
    const auto bad = frame.bucket("low-cure");
    const auto good = frame.bucket("low-cure");
    frame.close(bad);
    frame.newPlan();
    CHECK(frame.scan(bad));
    CHECK(wasTold(frame, "was closed"));
    CHECK(frame.scan(4711));
    CHECK(wasTold(frame, "knows no bucket 4711"));
    CHECK_FALSE(frame.says(std::to_string(bad) + " · low-cure"));
    CHECK(frame.says("red jerseys"));
    CHECK(frame.scan(good));
    REQUIRE(frame.place->act("runs.ink.1.standard")); // another ink than the bucket's: the bucket goes
    REQUIRE(frame.place->act("runs.save"));
    CHECK(frame.planned("red jerseys").layers[0].buckets.empty());
    CHECK_FALSE(frame.scan(good)); // no form: the bucket is shown where buckets are
}

TEST_CASE("a plan keeps a bucket that was emptied since", "[planning][places]") {
    Frame frame;
    const auto number = frame.bucket("low-cure", "white");
    frame.newPlan();
    CHECK(frame.scan(number));
    REQUIRE(frame.place->act("runs.save"));
    frame.close(number);
    REQUIRE(frame.place->act("runs.change"));
    REQUIRE(frame.place->enter("runs.customer", "the club"));
    REQUIRE(frame.place->act("runs.save"));
    CHECK(frame.planned("red jerseys").customer == "the club");
    CHECK(frame.planned("red jerseys").layers[0].buckets == std::vector{number});
}

TEST_CASE("a half-typed plan outlives other presses, and a second press keeps no second plan", "[planning][places]") {
    Frame frame;
    frame.newPlan();
    CHECK(frame.place->isWriting());
    const auto other = frame.place->sheet().list.front().id.toStdString();
    REQUIRE(frame.place->act(other));
    CHECK_FALSE(frame.place->enter("runs.title", "lost"));
    REQUIRE(frame.place->act("runs.new"));
    CHECK(wasTold(frame, "half typed"));
    CHECK(frame.says("red jerseys"));
    REQUIRE(frame.place->act("runs.ink.1.low-cure"));
    REQUIRE(frame.place->act(other));
    REQUIRE(frame.place->act("runs.resume"));
    frame.slow = true;
    const auto before = frame.entries();
    REQUIRE(frame.place->act("runs.save"));
    REQUIRE(frame.place->act("runs.save"));
    CHECK(frame.entries() == before + 1);
    frame.answers.front()();
    CHECK_FALSE(frame.place->isWriting());
    CHECK(frame.says("red jerseys"));
}

TEST_CASE("the advice says flash, risk of bleed and cost of each choice, by the shop's own habits",
          "[planning][places]") {
    Frame frame;
    frame.newPlan();
    REQUIRE(frame.place->enter("runs.garment", "red"));
    REQUIRE(frame.place->enter("runs.colour.1", "yellow"));
    REQUIRE(frame.place->act("runs.advise"));
    CHECK(frame.says("White: low-cure, cures at 285")); // contracts, starters; job.md: a white under brights on red
    CHECK(frame.says("flash it to 250–260"));           // contracts, starters: low-cure gels at 250–260 °F
    CHECK(frame.says("needs high resistance, has high"));
    CHECK(frame.says("stiffer or dearer than the easiest"));
    REQUIRE(frame.place->act("runs.fabric.100% cotton"));
    CHECK(frame.says("or low-cure, cures at 285")); // contracts, starters: plastisols that do beside standard
    REQUIRE(frame.place->act("runs.back"));
    frame.write({records::SettingChanged{"covering_colours", std::string{"black, yellow"}}});
    frame.newPlan();
    REQUIRE(frame.place->enter("runs.garment", "red"));
    REQUIRE(frame.place->enter("runs.colour.1", "yellow"));
    REQUIRE(frame.place->act("runs.advise"));
    CHECK_FALSE(frame.says("White: low-cure"));
}

TEST_CASE("what is typed while finishing is no count is told at its field, and nothing is written",
          "[planning][places]") {
    Frame frame;
    REQUIRE(frame.place->act(frame.place->sheet().list.front().id.toStdString()));
    REQUIRE(frame.place->act("runs.finish"));
    REQUIRE(frame.place->enter("runs.made", "a dozen"));
    frame.place->reload(); // an entry came meanwhile
    const auto before = frame.entries();
    REQUIRE(frame.place->act("runs.finish-now"));
    CHECK(frame.says("“a dozen” is no number of pieces"));
    CHECK(frame.entries() == before);
    REQUIRE(frame.place->enter("runs.made", "12"));
    REQUIRE(frame.place->act("runs.finish-now"));
    CHECK(frame.entries() > before);
}

TEST_CASE("an order list as a spreadsheet leaves it is told line by line, the good rows are planned, nothing is lost",
          "[planning][places]") {
    Frame frame;
    const std::string head = "title,fabric,layers,reference\n";
    const std::string good = "shirts,100% cotton,white: standard,A-1\n";
    const auto before = frame.entries();

    SECTION("a formula is never taken over") {
        frame.readList(head + "=1+1,100% cotton,white: standard,A-2\n" + good);
        CHECK(frame.says("1 of 2 rows can be planned"));
        CHECK(frame.says("Line 2:"));
        CHECK(frame.says("=1+1"));
        REQUIRE(frame.place->act("runs.import-now"));
        CHECK(frame.entries() == before + 1);
        CHECK(frame.says("1 run is planned."));
    }
    SECTION("another encoding than UTF-8") {
        const auto* bytes = GENERATE("title,fabric,layers\nca\xF1on,100% cotton,white: standard\n", // Latin-1
                                     "\xFF\xFEt\1i\1", "title\xC0\xAF,fabric,layers\n");
        frame.readList(bytes);
        CHECK(frame.says("UTF-8"));
        CHECK_FALSE(frame.place->act("runs.import-now-please"));
    }
    SECTION("a missing column") {
        frame.readList("title,layers\nshirts,white: standard\n");
        CHECK(frame.says("fabric"));
    }
    SECTION("100,000 rows") {
        std::string bytes = head;
        for (int i = 0; i < 100'000; ++i) {
            bytes += "shirts,100% cotton,white: standard,A-" + std::to_string(i) + "\n";
        }
        frame.readList(bytes);
        CHECK(frame.says("Reading orders.csv…")); // at once, however long the list
        REQUIRE(until([&] { return frame.shown > 0; }));
        CHECK(frame.says("5000")); // order_list.hpp: kMostOrders
        CHECK_FALSE(frame.says("Plan 5000 runs"));
    }
    SECTION("an ink that the book does not know") {
        frame.readList(head + "shirts,100% cotton,white: mystery,A-3\n");
        CHECK(frame.says("knows no ink “mystery”"));
    }
    if (!frame.says("run is planned")) {
        CHECK(frame.place->sheet().actions.size() == 1); // only the way out
        CHECK(frame.entries() == before);
    }
    CHECK(std::filesystem::exists(frame.needs.exchange / "orders.csv")); // the file stays where it is
}

TEST_CASE("a disk that is full loses no list", "[planning][places]") {
    Frame frame;
    frame.readList("title,fabric,layers\nshirts,100% cotton,white: standard\n");
    frame.diskFull = true;
    REQUIRE(frame.place->act("runs.import-now"));
    CHECK(frame.told.size() == 1);
    frame.diskFull = false;
    REQUIRE(frame.place->act("runs.import-now"));
    CHECK(frame.planned("shirts").fabric == "100% cotton");
}

TEST_CASE("every page and form of the runs has all its sentences", "[planning][places]") {
    Frame frame;
    frame.bucket("low-cure");
    for (const auto* id : {"runs.new", "runs.kind.card", "runs.layer.add", "runs.advise", "runs.save", "runs.back",
                           "runs.import", "runs.back", "runs.toggle"}) {
        INFO(id);
        CHECK(frame.place->act(id));
        CHECK(frame.says(""));
    }
}

TEST_CASE("a list that is left while it is read answers nobody", "[planning][places]") {
    Frame frame;
    std::string bytes = "title,fabric,layers\n";
    for (int i = 0; i < 3000; ++i) {
        bytes += "shirts,100% cotton,white: standard\n";
    }
    frame.lay("orders.csv", bytes);
    REQUIRE(frame.place->act("runs.import"));
    REQUIRE(frame.place->act("runs.file.0"));
    REQUIRE(frame.place->act("runs.back"));
    REQUIRE(frame.place->act("runs.import"));
    REQUIRE(frame.place->act("runs.file.0")); // only this one is awaited
    CHECK(until([&] { return frame.shown > 0; }));
    CHECK(frame.shown == 1);
    CHECK(frame.says("3000 of 3000 rows can be planned"));
    REQUIRE(frame.place->act("runs.file.0"));
    frame.place.reset();
    QCoreApplication::processEvents();
    CHECK(frame.shown == 1);
}
