#include "drivers/link/stamper.hpp"

#include <catch2/catch.hpp>

#include <random>
#include <vector>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

using Stamps = std::vector<MonotonicTime>;

TEST_CASE("the lines of one read are spread evenly back to the read before", "[drivers][stamping]") {
    // house.md, "Decided once" 5
    Stamper stamper{200ms};
    stamper.opened(1s);
    CHECK(stamper.stamps(1, 1200ms) == Stamps{1200ms});
    CHECK(stamper.stamps(4, 2s) == Stamps{1400ms, 1600ms, 1800ms, 2s});
    CHECK(stamper.stamps(0, 3s).empty());
}

TEST_CASE("two lines after a silence do not hide half of it", "[drivers][stamping]") {
    Stamper stamper{200ms};
    stamper.opened(0s);
    CHECK(stamper.stamps(1, 200ms) == Stamps{200ms});
    CHECK(stamper.stamps(2, 4200ms) == Stamps{3900ms, 4200ms}); // one and a half intervals apart, not two seconds
}

TEST_CASE("stamps rise whatever the clock says", "[drivers][stamping]") {
    std::mt19937 random{5};
    Stamper stamper{200ms};
    MonotonicTime now = 0s;
    MonotonicTime last{-1};
    for (int i = 0; i < 20'000; ++i) {
        now += MonotonicTime{random() % 3 == 0 ? 0 : random() % 400'000};
        if (random() % 50 == 0) {
            stamper.opened(now);
        }
        for (const MonotonicTime stamp : stamper.stamps(random() % 12, now)) {
            REQUIRE(stamp > last);
            last = stamp;
        }
    }
}
