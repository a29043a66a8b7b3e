#include "analytics/metrology/fixed_points/check_procedure.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace holdfast::analytics;
using namespace std::chrono_literals;

namespace {

CheckProcedure procedure() {
    Instrument probe;
    probe.type = ThermocoupleType::k;
    probe.toleranceClass = ToleranceClass::iecClass1;
    probe.resolution = TemperatureDifference::fromCelsius(0.1);
    return CheckProcedure{Calibration{probe, Date{std::chrono::days{20000}}}};
}
PressureSource pressure(double kilopascals, std::optional<Altitude> shop = {}) {
    return StationReading{Pressure::fromKilopascal(kilopascals), shop, {}};
}
void hold(CheckProcedure& p, double celsius, int from, int to) {
    for (int s = from; s <= to; ++s) {
        p.sample({std::chrono::seconds{s}, Temperature::fromCelsius(celsius)});
    }
}
template <class Step>
bool at(const CheckProcedure& p) {
    return std::holds_alternative<Step>(p.step());
}

} // namespace

TEST_CASE("an ice check goes step by step to its result and again", "[fixed_points]") {
    auto p = procedure();
    CHECK(at<ChooseBath>(p));
    REQUIRE(p.choose(CheckKind::ice));
    CHECK(at<PrepareBath>(p));
    REQUIRE(p.bathReady());
    REQUIRE(p.inserted(0s));
    hold(p, 0.3, 0, 29);
    CHECK(at<WaitForRest>(p));
    hold(p, 0.3, 30, 30);
    REQUIRE(at<CheckShown>(p));
    CHECK(std::get<CheckShown>(p.step()).result.outcome == CheckOutcome::passed);
    REQUIRE(p.repeat());
    CHECK(at<InsertProbe>(p));
    REQUIRE(p.inserted(100s));
    hold(p, 4.0, 100, 131);
    REQUIRE(at<CheckShown>(p));
    REQUIRE(p.results().size() == 2);
    CHECK(p.results()[0].outcome == CheckOutcome::passed); // stays
    CHECK(p.results()[1].outcome == CheckOutcome::failed);
}

TEST_CASE("a boiling check asks for the pressure until it can be one", "[fixed_points]") {
    auto p = procedure();
    REQUIRE(p.choose(CheckKind::boiling));
    REQUIRE(at<GivePressure>(p));
    CHECK_FALSE(p.bathReady());
    REQUIRE(p.givePressure(pressure(1013.25)));
    REQUIRE(at<GivePressure>(p));
    CHECK(std::get<GivePressure>(p.step()).refused == PressureFault::stationTooHigh);
    CHECK_FALSE(p.confirmPressure()); // nothing to confirm
    REQUIRE(p.givePressure(pressure(101.3, Altitude::fromMetres(1609))));
    REQUIRE(at<GivePressure>(p));
    CHECK(std::get<GivePressure>(p.step()).confirm);
    REQUIRE(p.givePressure(SeaLevelReport{Pressure::fromKilopascal(101.325), Altitude::fromMetres(1609.344)}));
    REQUIRE(at<PrepareBath>(p));
    // 94.618 °C at 1609.344 m geopotential (python3-iapws 1.5.3); the geometric mile is 0.0014 °C warmer.
    CHECK(p.reference()->at.celsius() == Approx(94.618).margin(0.003));
    REQUIRE(p.air());
    auto confirmed = procedure();
    confirmed.choose(CheckKind::boiling);
    confirmed.givePressure(pressure(101.3, Altitude::fromMetres(1609)));
    REQUIRE(confirmed.confirmPressure());
    CHECK(at<PrepareBath>(confirmed));
}

TEST_CASE("boiling water shows its cautions", "[fixed_points]") {
    const auto has = [](CheckKind kind, BathCaution caution) {
        const auto all = cautionsOf(kind);
        return std::find(all.begin(), all.end(), caution) != all.end();
    };
    CHECK(has(CheckKind::boiling, BathCaution::boilingWater));
    CHECK(has(CheckKind::boiling, BathCaution::steam));
    CHECK(has(CheckKind::boiling, BathCaution::kettleNearWater));
    CHECK_FALSE(has(CheckKind::ice, BathCaution::steam));
    CHECK(cautionsOf(CheckKind::comparison).empty());
    CHECK(hintsOf(CheckKind::comparison).empty());
    CHECK_FALSE(hintsOf(CheckKind::ice).empty());
    CHECK_FALSE(hintsOf(CheckKind::boiling).empty());
}

TEST_CASE("a probe far off times out, and is judged once it is said to be in the bath", "[fixed_points]") {
    auto p = procedure();
    p.choose(CheckKind::ice);
    p.bathReady();
    p.inserted(0s);
    hold(p, 14.0, 0, 301);
    REQUIRE(at<CheckNotJudged>(p));
    CHECK(std::get<CheckNotJudged>(p.step()).timedOut->reason == TimeoutReason::neverNear);
    CHECK(p.results().empty());
    REQUIRE(p.judgeElsewhere());
    CHECK(std::get<CheckShown>(p.step()).result.outcome == CheckOutcome::failed);
    auto silent = procedure();
    silent.choose(CheckKind::ice);
    silent.bathReady();
    silent.inserted(0s);
    silent.waited(300s);
    REQUIRE(at<CheckNotJudged>(silent));
    CHECK_FALSE(silent.judgeElsewhere()); // nothing was read
    CHECK(silent.repeat());
}

TEST_CASE("an event out of turn changes nothing", "[fixed_points]") {
    auto p = procedure();
    CHECK_FALSE(p.choose(CheckKind::comparison));
    CHECK_FALSE(p.inserted(0s));
    CHECK_FALSE(p.sample({0s, Temperature::fromCelsius(0)}));
    CHECK_FALSE(p.waited(9s));
    CHECK_FALSE(p.repeat());
    CHECK_FALSE(p.judgeElsewhere());
    CHECK_FALSE(p.confirmPressure());
    CHECK_FALSE(p.givePressure(pressure(101)));
    CHECK(at<ChooseBath>(p));
}

TEST_CASE("no order of events breaks the procedure", "[fixed_points]") {
    std::mt19937 random{3};
    auto p = procedure();
    int second = 0;
    std::size_t results = 0;
    for (int i = 0; i < 20000; ++i) {
        switch (random() % 64) {
        case 0:
            p.startOver();
            break;
        case 1:
            p.choose(CheckKind::boiling);
            break;
        case 2:
            p.givePressure(pressure(45.0 + static_cast<double>(random() % 70)));
            break;
        case 3:
            p.choose(CheckKind::ice);
            break;
        case 4:
            p.bathReady();
            break;
        case 5:
            p.inserted(std::chrono::seconds{second});
            break;
        case 6:
            p.judgeElsewhere();
            break;
        case 7:
            p.repeat();
            break;
        default:
            hold(p, 0.0, second + 1, second + 8);
            second += 8;
        }
        CHECK(p.results().size() >= results); // none is ever lost
        results = p.results().size();
        CHECK((at<ChooseBath>(p) || p.kind()));
        CHECK((at<ChooseBath>(p) || at<GivePressure>(p) || p.reference()));
    }
    CHECK(results > 10);
}
