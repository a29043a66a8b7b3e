#include "kiosk/shop/keeping/exchange.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop;

namespace {

/// Inks, cloths and an instrument with a certificate, as the samples have them.
void fill(records::testing::Shop& shop) {
    shop.plan();
    for (const auto& sample : records::testing::sampleOfEveryKind()) {
        if (std::holds_alternative<records::CertificateAdded>(sample) ||
            std::holds_alternative<records::CheckDone>(sample)) {
            REQUIRE(shop.tell(sample));
        }
    }
}

} // namespace

TEST_CASE("what a book exports, it has nothing to import of", "[keeping]") {
    records::testing::Shop shop;
    fill(shop);
    const auto stock = bookStock(shop.db());
    REQUIRE(stock);
    const auto file = records::readShopFile(records::writeShopFile(exportOf(*stock)));
    REQUIRE(file);
    CHECK_FALSE(file->instruments.empty());
    const auto plan = importOf(*file, *stock, [&] { return shop.freshId(); });
    CHECK(plan.list.empty());
    CHECK(plan.same == static_cast<int>(stock->families.size() + stock->fabrics.size() + stock->instruments.size()));
}

TEST_CASE("an empty book takes all of it, and then exports the same", "[keeping]") {
    std::string text;
    {
        records::testing::Shop shop;
        fill(shop);
        text = records::writeShopFile(exportOf(*bookStock(shop.db())));
    }
    records::testing::Shop fresh;
    const auto plan = importOf(*records::readShopFile(text), *bookStock(fresh.db()), [&] { return fresh.freshId(); });
    CHECK(plan.same == 0);
    CHECK(plan.changed.empty());
    for (const auto& record : plan.list) {
        REQUIRE(fresh.tell(record));
    }
    CHECK(records::writeShopFile(exportOf(*bookStock(fresh.db()))) == text);
}

TEST_CASE("another cure becomes the next revision, whatever revision the file says", "[keeping]") {
    records::testing::Shop shop;
    fill(shop);
    const auto stock = *bookStock(shop.db());
    auto file = exportOf(stock);
    file.families[0].cure.value += 5.0;
    file.families[0].revision = 40;
    const auto plan = importOf(file, stock, [&] { return shop.freshId(); });
    REQUIRE(plan.list.size() == 1);
    CHECK(std::get<records::FamilyRecord>(plan.list[0]).revision == stock.families[0].revision + 1);
    CHECK(plan.changed == std::vector{file.families[0].name});
    REQUIRE(shop.tell(plan.list[0]));
}

TEST_CASE("a known instrument keeps its id and label, and gets only the certificate it lacks", "[keeping]") {
    records::testing::Shop shop;
    fill(shop);
    const auto stock = *bookStock(shop.db());
    REQUIRE_FALSE(stock.instruments.empty());
    auto file = exportOf(stock);
    records::CertificateSpec newer;
    newer.date = records::testing::day(2031, 3, 1);
    newer.due = records::testing::day(2032, 3, 1);
    newer.points = {{{200, analytics::TemperatureUnit::celsius},
                     {0.5, analytics::TemperatureUnit::celsius},
                     {1.0, analytics::TemperatureUnit::celsius}}};
    file.instruments[0].certificates.push_back(newer);
    const auto plan = importOf(file, stock, [&] { return shop.freshId(); });
    REQUIRE(plan.list.size() == 1);
    const auto& added = std::get<records::CertificateAdded>(plan.list[0]);
    CHECK(added.instrument == stock.instruments[0].described.instrument);
    CHECK(added.certificate.due == newer.due);
}
