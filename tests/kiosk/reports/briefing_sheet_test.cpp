#include "kiosk/reports/page/paint.hpp"
#include "kiosk/screens/presenting/places/print_wishes.hpp"
#include "kiosk/screens/presenting/trending/briefing_sheet.hpp"
#include "tests/kiosk/records/support/lot_book.hpp"
#include "tests/kiosk/reports/support/outside.hpp"
#include "tests/kiosk/reports/support/placed.hpp"

#include <optional>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::records::testing;
using namespace holdfast::kiosk::screens;

namespace {

/// Studies are done when `work()` is called.
struct Rig final {
    LotShop lots{};
    std::unique_ptr<drivers::ManualClock> clock{};
    wording::Speech speech{};
    std::vector<std::pair<StudyWork, StudyDone>> asked{};
    std::vector<std::stop_source> stops{};
    std::vector<PrintWish> printed{};
    int shown = 0;

    Rig() {
        const auto bad = lots.shop.read(analytics::Word::underCured);
        REQUIRE(lots.say(LotShop::hold("h1", records::HoldCause::reading, bad, records::PieceRange{113, 140}, 31)));
        clock = std::make_unique<drivers::ManualClock>(drivers::WallTime{lots.shop.now() + 1000, 0});
    }
    [[nodiscard]] PlaceNeeds needs() {
        PlaceNeeds needs;
        needs.book = &lots.shop.book();
        needs.clock = clock.get();
        needs.speech = [this]() -> const wording::Speech& { return speech; };
        needs.show = [this] { ++shown; };
        needs.print = [this](const PrintWish& wish) { printed.push_back(wish); };
        needs.study = [this](StudyWork work, StudyDone then) {
            asked.emplace_back(std::move(work), std::move(then));
            stops.emplace_back();
            return stops.back();
        };
        return needs;
    }
    void work() {
        for (std::size_t i = 0; i < asked.size(); ++i) {
            asked[i].first(lots.shop.db(), stops[i].get_token());
            if (!stops[i].stop_requested()) {
                asked[i].second(std::nullopt);
            }
        }
        asked.clear();
        stops.clear();
    }
};

QString textOf(const BriefingSheet& sheet) {
    SheetPageState page;
    sheet.addTo(page);
    QString text = page.head + u'|' + page.headHow;
    for (const auto& blocks : {page.blocks, page.beside}) {
        for (const auto& block : blocks) {
            text += u'|' + block.text;
        }
    }
    return text;
}

} // namespace

TEST_CASE("the briefing says that it is being worked out, then what it found, in either language", "[briefing]") {
    Rig rig;
    BriefingSheet sheet{rig.needs()};
    sheet.reload();
    CHECK(textOf(sheet).contains(QStringLiteral("being worked out")));
    rig.work();
    CHECK(rig.shown == 1);
    const auto english = textOf(sheet);
    INFO(english.toStdString());
    CHECK(english.contains(QStringLiteral("1 of 1 lots failed this week. There are too few lots before it")));
    CHECK(english.contains(QStringLiteral("run 20418 lot 1")));
    CHECK_FALSE(english.contains(QStringLiteral("being worked out")));
    CHECK_FALSE(english.contains(QStringLiteral("[briefing.")));
    rig.speech.language = &wording::Language::spanish();
    CHECK(textOf(sheet).contains(QStringLiteral("tirada 20418 lote 1")));
    SheetPageState page;
    sheet.addTo(page);
    int charts = 0;
    for (const auto& block : page.blocks) {
        charts += block.kind == SheetKinds::TrendChart ? 1 : 0;
        CHECK((block.kind != SheetKinds::TrendChart || block.trend.bars.size() == 14));
    }
    CHECK(charts == 1);
}

TEST_CASE("what stands on the screen is what is printed, at once", "[briefing][reports]") {
    reports_test::withFonts();
    Rig rig;
    BriefingSheet sheet{rig.needs()};
    sheet.reload();
    CHECK(sheet.act("briefing.print")); // nothing to print yet
    CHECK(rig.printed.empty());
    rig.work();
    CHECK(sheet.act("briefing.print"));
    CHECK_FALSE(sheet.act("briefing.back"));
    CHECK_FALSE(sheet.act("trends.wash"));
    REQUIRE(rig.printed.size() == 1);
    const auto report = reportFor(rig.printed.front(), rig.lots.shop.book(), rig.clock->wall(), rig.speech);
    REQUIRE(report);
    REQUIRE(*report);
    const auto text = reports_test::placedText(*report);
    INFO(text.toStdString());
    CHECK(text.contains(QStringLiteral("1 of 1 lots failed this week.")));
    const auto head = rig.lots.shop.book().head();
    REQUIRE(head);
    CHECK(text.contains(QString::fromStdString(ledger::toHex(head->hash))));
    CHECK_FALSE(reportFor({PrintWish::What::briefing, 0, {}}, rig.lots.shop.book(), rig.clock->wall(), rig.speech));
}

TEST_CASE("leaving gives up what is being worked out; coming back asks again", "[briefing]") {
    Rig rig;
    BriefingSheet sheet{rig.needs()};
    sheet.reload();
    sheet.left();
    rig.work();
    CHECK(rig.shown == 0);
    sheet.reload();
    rig.work();
    CHECK(rig.shown == 1);
    CHECK(textOf(sheet).contains(QStringLiteral("20418")));
}

TEST_CASE("a book that cannot be read is said, and what stood there stays", "[briefing]") {
    Rig rig;
    BriefingSheet sheet{rig.needs()};
    sheet.reload();
    rig.asked.front().second(ledger::Failure{});
    rig.asked.clear();
    rig.stops.clear();
    CHECK(textOf(sheet).contains(QStringLiteral("could not be read")));
    sheet.reload();
    rig.work();
    sheet.reload();
    CHECK(textOf(sheet).contains(QStringLiteral("20418"))); // while the new is worked out
}
