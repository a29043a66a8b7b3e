// Which place stands on the screen: presses, scans, and what is half typed behind them.
#include "kiosk/screens/presenting/places/place_frame.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::screens;

namespace {

struct FakePlace final : SheetPlace {
    explicit FakePlace(drivers::TicketKind kind) : wants{kind} {}

    void reload() override { ++reloads; }
    [[nodiscard]] SheetPageState sheet() const override { return {}; }
    bool act(const std::string&) override { return false; }
    bool enter(const std::string&, const std::string&) override { return false; }
    bool scanned(const drivers::TicketCode& code, bool) override {
        const bool wanted = code.kind == wants;
        scans += wanted ? 1 : 0;
        return wanted;
    }
    void left() override { ++leavings; }
    [[nodiscard]] bool isWriting() const override { return writing; }

    drivers::TicketKind wants;
    bool writing = false;
    int reloads = 0;
    int leavings = 0;
    int scans = 0;
};

/// Inks wants buckets, Shop badges, Instruments and the signature nothing.
struct Frame final {
    Frame() {
        inks = add("inks", drivers::TicketKind::bucket);
        shop = add("shop", drivers::TicketKind::person);
        instruments = add("instruments", drivers::TicketKind::instrument);
        signIn = add("sign-in", drivers::TicketKind::print);
        places.tellBy({[this] { ++unasked; }, [this](const std::string& place) { kept.push_back(place); }});
    }
    FakePlace* add(const std::string& id, drivers::TicketKind kind) {
        auto place = std::make_unique<FakePlace>(kind);
        auto* raw = place.get();
        places.add(id, std::move(place), id != "sign-in");
        return raw;
    }

    KioskModel model;
    PlaceFrame places{model};
    FakePlace* inks = nullptr;
    FakePlace* shop = nullptr;
    FakePlace* instruments = nullptr;
    FakePlace* signIn = nullptr;
    int unasked = 0;
    std::vector<std::string> kept;
};

constexpr drivers::TicketCode kBadge{drivers::TicketKind::person, 3};
constexpr drivers::TicketCode kBucket{drivers::TicketKind::bucket, 12};

} // namespace

TEST_CASE("a badge changes nothing behind a place that does not ask for one", "[places]") {
    Frame frame;
    REQUIRE(frame.places.scanned(kBadge)); // nothing of ours on the screen: the crew's card comes
    CHECK(frame.places.now() == "shop");
    REQUIRE(frame.places.open("instruments"));
    CHECK(frame.places.scanned(kBadge));
    CHECK(frame.unasked == 1);
    CHECK(frame.shop->scans == 1);
    CHECK(frame.places.now() == "instruments");
}

TEST_CASE("a scan that turns the screen says what is kept behind, a press does not", "[places]") {
    Frame frame;
    frame.places.open("instruments");
    frame.instruments->writing = true;
    CHECK(frame.places.scanned(kBucket));
    CHECK(frame.places.now() == "inks");
    CHECK(frame.kept == std::vector<std::string>{"instruments"});
    CHECK(frame.instruments->leavings == 1);
    frame.places.open("instruments");
    frame.places.open("inks");
    frame.places.leave();
    CHECK(frame.kept.size() == 1);
    frame.places.open("instruments");
    frame.places.close(); // a ticket
    CHECK(frame.kept.size() == 2);
}

TEST_CASE("what lies under a signature is not left by it, but by what ends it", "[places]") {
    Frame frame;
    frame.places.open("instruments");
    frame.instruments->writing = true;
    frame.places.cover("sign-in");
    CHECK(frame.places.now() == "sign-in");
    CHECK(frame.instruments->leavings == 0);
    SECTION("the signature ends") {
        frame.places.uncover();
        CHECK(frame.places.now() == "instruments");
        CHECK(frame.instruments->leavings == 0);
    }
    SECTION("a scan ends it") {
        CHECK(frame.places.scanned(kBucket));
        CHECK(frame.signIn->leavings == 1);
        CHECK(frame.instruments->leavings == 1);
        CHECK(frame.kept == std::vector<std::string>{"instruments"});
        frame.places.uncover(); // a late answer finds nothing to bring back
        CHECK(frame.places.now() == "inks");
    }
}
