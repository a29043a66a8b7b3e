#include "analytics/statistics/charts/normality.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <random>
#include <string>

using namespace holdfast::analytics::statistics;

namespace {

std::vector<double> column(const std::string& name) {
    std::string path = HOLDFAST_SOURCE_DIR "/tests/data/statistics/strd_";
    path.append(name).append(".csv");
    std::ifstream file{path};
    std::vector<double> values;
    for (std::string line; std::getline(file, line);) {
        if (!line.empty() && line.front() != '#') {
            values.push_back(std::stod(line));
        }
    }
    return values;
}

/// Flow of the Nile at Aswan 1871 to 1970, 10⁸ m³ (Cobb 1978).
const std::vector<double> kNile{1120, 1160, 963, 1210, 1160, 1160, 813,  1230, 1370, 1140, 995,  935,  1110, 994,  1020,
                                960,  1180, 799, 958,  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774,  840,
                                874,  694,  940, 833,  701,  916,  692,  1020, 1050, 969,  831,  726,  456,  824,  702,
                                1120, 1100, 832, 764,  821,  768,  845,  864,  862,  698,  845,  744,  796,  1040, 759,
                                781,  865,  845, 944,  984,  897,  822,  1010, 771,  676,  649,  846,  812,  742,  801,
                                1040, 860,  874, 848,  890,  744,  749,  838,  1050, 918,  986,  797,  923,  975,  815,
                                1020, 906,  901, 1170, 912,  746,  919,  718,  714,  740};

} // namespace

TEST_CASE("Anderson–Darling statistics of the NIST sets and the Nile", "[statistics][charts]") {
    // scipy 1.10.1 stats.anderson(x).statistic
    CHECK(andersonDarling(column("michelso"))->statistic == Approx(0.460764).margin(1e-6));
    CHECK(andersonDarling(column("lew"))->statistic == Approx(6.000647).margin(1e-6));
    const auto nile = andersonDarling(kNile);
    CHECK(nile->statistic == Approx(1.031974).margin(1e-6));
    CHECK(nile->p == Approx(0.009821).margin(1e-6)); // R 4.2.2, package nortest 1.0-4, ad.test
}

TEST_CASE("The five per cent point of the adjusted statistic is 0.752", "[statistics][charts]") {
    // Stephens 1974. Under normal values the adjusted statistic exceeds it, and p falls below 5 %, one time in twenty.
    std::mt19937_64 random{9};
    std::normal_distribution<double> normal{50.0, 5.0};
    int beyond = 0;
    int rejected = 0;
    const int rounds = 8000;
    for (int round = 0; round < rounds; ++round) {
        std::vector<double> values(20);
        for (auto& value : values) {
            value = normal(random);
        }
        const auto got = andersonDarling(values);
        beyond += got->adjusted > 0.752 ? 1 : 0;
        rejected += got->p < 0.05 ? 1 : 0;
    }
    CHECK(beyond / static_cast<double>(rounds) == Approx(0.05).margin(0.01));
    CHECK(rejected == Approx(beyond).margin(rounds * 0.002));
}

TEST_CASE("Anderson–Darling of hostile columns", "[statistics][charts][hostile]") {
    CHECK(andersonDarling({}).error() == StatisticsFault::NoValues);
    CHECK(andersonDarling(std::vector<double>(7, 1.0)).error() == StatisticsFault::TooFewValues);
    CHECK(andersonDarling(std::vector<double>(70, 1.0)).error() == StatisticsFault::NoSpread);
    CHECK(andersonDarling(std::vector<double>(10, std::nan(""))).error() == StatisticsFault::NotFinite);
    std::vector<double> wild(1'000'000, 0.0);
    for (std::size_t i = 0; i < wild.size(); ++i) {
        wild[i] = i == 0 ? 1e9 : static_cast<double>(i % 7); // its tail is far below the smallest double
    }
    const auto got = andersonDarling(wild);
    REQUIRE(got);
    CHECK(std::isfinite(got->statistic));
    CHECK(got->p < 1e-20);
}
