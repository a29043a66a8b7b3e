// The Inks as sheets, on a real book: what is shown, what is written, and what is not.
#include "kiosk/screens/presenting/places/inks_place.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;

namespace {

/// A frame without windows: writes at once, signs or refuses.
class Frame final {
public:
    Frame() {
        shop.plan();
        needs.book = &shop.book();
        needs.clock = &clock;
        needs.speech = [this]() -> const wording::Speech& { return speech; };
        needs.newId = [this] { return shop.freshId(); };
        needs.tell = [this](const wording::Notice& notice) { told.push_back(notice.line()); };
        needs.print = [this](const PrintWish& wish) { printed.push_back(wish); };
        needs.sign = [this](shop::Right right, const std::function<void(std::int64_t)>& then) {
            asked.push_back(right);
            if (signs) {
                then(1);
            }
        };
        needs.keep = [this](const std::vector<records::Record>& list, const auto& then) {
            if (diskFull) {
                then(ledger::Failure{ledger::FailureCode::diskFull, "full"});
                return;
            }
            for (const auto& record : list) {
                REQUIRE(shop.tell(record));
            }
            then(std::nullopt);
        };
        clock.setWall({shop.now(), 0});
        place = std::make_unique<InksPlace>(needs);
        place->reload();
    }

    void open(const std::string& family, const std::string& expiry = {}) {
        REQUIRE(place->act("inks.open-bucket"));
        REQUIRE(place->act("inks.set.family." + family));
        REQUIRE(place->enter("inks.field.expiry", expiry));
        REQUIRE(place->act("inks.save"));
    }
    [[nodiscard]] std::int64_t entries() { return shop.book().head()->sequence; }
    [[nodiscard]] std::string text() const {
        const auto page = place->sheet();
        QStringList all{page.heading, page.title};
        for (const auto& row : page.list) {
            all << row.title << row.detail << row.value;
        }
        for (const auto& block : page.blocks) {
            all << block.text << block.note;
            for (const auto& row : block.rows) {
                all << row.title << row.value << row.detail;
            }
            for (const auto& field : block.fields) {
                all << field.label << field.value << field.hint << field.fault;
            }
            for (const auto& action : block.actions) {
                all << action.label;
            }
        }
        for (const auto& action : page.actions) {
            all << action.label;
        }
        return all.join(u'\n').toStdString();
    }
    bool says(const std::string& words) const {
        const auto all = text();
        INFO(all);
        CHECK(all.find('[') == std::string::npos); // a sentence that no table has
        CHECK(all.find('{') == std::string::npos); // a brace that nobody filled
        return all.find(words) != std::string::npos;
    }
    bool scan(std::uint64_t number, bool onScreen) {
        return place->scanned({drivers::TicketKind::bucket, number}, onScreen);
    }

    records::testing::Shop shop;
    drivers::ManualClock clock;
    wording::Speech speech;
    PlaceNeeds needs;
    std::unique_ptr<InksPlace> place;
    std::vector<std::string> told;
    std::vector<PrintWish> printed;
    std::vector<shop::Right> asked;
    bool signs = true;
    bool diskFull = false;
};

std::int64_t newestBucket(Frame& frame) {
    const auto all = records::buckets(frame.shop.db(), true);
    REQUIRE(all);
    REQUIRE_FALSE(all->empty());
    return all->back().number;
}

} // namespace

TEST_CASE("a bucket scanned anywhere answers what it cures at and with what it may run", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    const auto number = newestBucket(frame);
    REQUIRE(frame.place->act("inks.back"));
    CHECK(frame.scan(static_cast<std::uint64_t>(number), false));
    CHECK(frame.says("Cures at 285\xC2\xA0°F")); // contracts, starters: low-cure 285 °F
    CHECK(frame.says("100% polyester"));
    CHECK(frame.says("beside"));
    CHECK(frame.place->act("inks.label"));
    REQUIRE(frame.printed.size() == 1);
    CHECK(frame.printed.front().number == number);
    CHECK_FALSE(frame.place->scanned({drivers::TicketKind::run, 1}, true));
}

TEST_CASE("an unknown bucket is told and leaves no other bucket's answer standing", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    CHECK(frame.says("Cures at"));
    CHECK(frame.scan(4711, true));
    CHECK(frame.told.size() == 1);
    CHECK_FALSE(frame.says("Cures at"));
}

TEST_CASE("an expired bucket says so before anything else", "[stock][places]") {
    Frame frame;
    frame.open("low-cure", "2026-02-20"); // the book's clock stands at 2026-02-25
    const auto page = frame.place->sheet();
    REQUIRE_FALSE(page.blocks.isEmpty());
    CHECK(page.blocks.front().kind == SheetKinds::Lead);
    CHECK(page.blocks.front().text.contains(QStringLiteral("Past its date")));
}

TEST_CASE("a mix takes scanned buckets, is drawn as a tree, and cannot contain itself", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    const auto first = newestBucket(frame);
    frame.open("standard");
    const auto second = newestBucket(frame);
    REQUIRE(frame.place->act("inks.mix"));
    CHECK(frame.scan(static_cast<std::uint64_t>(first), true));
    CHECK(frame.scan(static_cast<std::uint64_t>(second), true));
    CHECK(frame.scan(static_cast<std::uint64_t>(second + 1), true)); // the label the mix will wear
    REQUIRE(frame.place->enter("inks.field.name", "team red"));
    for (const auto number : {first, second, second + 1}) {
        REQUIRE(frame.place->enter("inks.field.part." + std::to_string(number), number == first ? "3" : "1"));
    }
    const auto before = frame.entries();
    CHECK(frame.place->act("inks.save"));
    CHECK(frame.entries() == before);
    CHECK(frame.says("cannot contain itself"));
    CHECK(frame.place->act("inks.remove-part"));
    CHECK(frame.place->act("inks.save"));
    CHECK(frame.entries() == before + 1);
    CHECK(frame.says("Cures at 320\xC2\xA0°F")); // decisions 1, Mix: the highest cure; standard 320 °F
    CHECK(frame.says("75.0"));                   // 3 of 4 parts by mass
    CHECK(frame.says("25.0"));
    CHECK(frame.place->act("inks.mislabelled"));
    CHECK(frame.says("mislabelled"));
}

TEST_CASE("a revision is signed, counts one up, and every fault stands at its field", "[stock][places]") {
    Frame frame;
    REQUIRE(frame.place->act("inks.pick.family.low-cure"));
    REQUIRE(frame.place->act("inks.revise"));
    REQUIRE(frame.place->enter("inks.field.cure", "hot"));
    REQUIRE(frame.place->enter("inks.field.ease", "0"));
    const auto before = frame.entries();
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.asked.empty());
    CHECK(frame.says("“hot” is no number"));
    CHECK(frame.says("“0” is no rank"));
    REQUIRE(frame.place->enter("inks.field.cure", "290"));
    REQUIRE(frame.place->enter("inks.field.ease", "2"));
    frame.signs = false;
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.asked == std::vector<shop::Right>{shop::Right::reviseInks});
    CHECK(frame.entries() == before);
    frame.signs = true;
    frame.diskFull = true;
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.told.size() == 1);
    CHECK(frame.says("Revise low-cure")); // the form stays as it was typed
    frame.diskFull = false;
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.entries() == before + 1);
    CHECK(frame.says("Cures at 290\xC2\xA0°F"));
    CHECK(frame.says("Revision 2"));
    CHECK(frame.says("Revision 1"));
}

TEST_CASE("every page and form of the inks has all its sentences", "[stock][places]") {
    Frame frame;
    CHECK(frame.says("Pick an ink"));
    for (const std::string id : {"inks.new-family", "inks.new-cloth", "inks.open-bucket", "inks.mix"}) {
        REQUIRE(frame.place->act(id));
        CHECK(frame.says("Keep it"));
        REQUIRE(frame.place->act("inks.save")); // empty: faults, nothing written
        CHECK(frame.says("Keep it"));
        REQUIRE(frame.place->act("inks.back"));
    }
    for (const std::string id : {"inks.pick.family.silicone", "inks.pick.cloth.100% polyester"}) {
        REQUIRE(frame.place->act(id));
        CHECK(frame.says("From memory")); // contracts, starters: marked from memory
        CHECK(frame.says("Revisions"));
    }
    CHECK_FALSE(frame.place->act("runs.new"));
    CHECK_FALSE(frame.place->enter("runs.title", "x"));
}
