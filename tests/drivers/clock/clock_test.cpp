#include "drivers/clock/clock.hpp"

#include <catch2/catch.hpp>

#include <thread>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

TEST_CASE("a manual clock stands still until it is moved, and its wall clock moves along", "[drivers][clock]") {
    ManualClock clock{{1'000'000, 60}, 5s};
    CHECK(clock.now() == 5s);
    CHECK(clock.wall() == WallTime{1'000'000, 60});
    clock.advance(1500ms);
    CHECK(clock.now() == 6500ms);
    CHECK(clock.wall() == WallTime{1'001'500, 60});
}

TEST_CASE("setting the wall clock leaves monotonic time alone", "[drivers][clock]") {
    ManualClock clock{{1'000'000, 60}};
    clock.advance(10s);
    clock.setWall({500'000, -300});
    CHECK(clock.now() == 10s);
    clock.advance(1s);
    CHECK(clock.wall() == WallTime{501'000, -300});
}

TEST_CASE("a scaled clock runs as many times as fast as the machine's", "[drivers][clock]") {
    const SystemClock real;
    const ScaledClock scaled{50.0, {1'700'000'000'000, 0}};
    // Whatever the machine does between two lines, what passed lies between the inner and the outer pair of readings.
    const MonotonicTime before = real.now();
    const MonotonicTime begin = scaled.now();
    const MonotonicTime after = real.now();
    while (real.now() - after < 20ms) {
        std::this_thread::yield();
    }
    const MonotonicTime beforeEnd = real.now();
    const MonotonicTime passed = scaled.now() - begin;
    const MonotonicTime afterEnd = real.now();
    CHECK(passed >= 50 * (beforeEnd - after) - 1ms); // a stamp is cut to its microsecond
    CHECK(passed <= 50 * (afterEnd - before) + 1ms);
    CHECK(scaled.wall().millisecondsSinceEpoch >= 1'700'000'000'000 + passed / 1ms);
    CHECK(scaled.rate() == 50.0);
}

TEST_CASE("real waits are clock time divided by the rate, at least a millisecond", "[drivers][clock]") {
    const ScaledClock scaled{20.0, {}};
    CHECK(realDelay(scaled, 200ms) == 10ms);
    CHECK(realDelay(scaled, 250ms) == 13ms); // 12.5 rounded up
    CHECK(realDelay(scaled, 0s) == 1ms);
    CHECK(realDelay(SystemClock{}, -5s) == 1ms);
    CHECK(realDelay(ManualClock{}, 250ms) == 250ms);
}

TEST_CASE("the system clock never goes back", "[drivers][clock]") {
    const SystemClock clock;
    MonotonicTime last = clock.now();
    for (int i = 0; i < 1000; ++i) {
        const MonotonicTime now = clock.now();
        REQUIRE(now >= last);
        last = now;
    }
    CHECK(clock.wall().millisecondsSinceEpoch > 1'577'836'800'000); // 2020-01-01T00:00Z, RFC 3339 by hand
}
