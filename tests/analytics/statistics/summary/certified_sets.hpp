#pragma once

#include <fstream>
#include <string>
#include <vector>

/// The NIST Statistical Reference Datasets for univariate summaries (https://www.itl.nist.gov/div898/strd/).
namespace certified {

inline std::vector<double> column(const std::string& name) {
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

/// The constructed sets: one value, then two others in turn, 500 times.
inline std::vector<double> inTurn(double first, double low, double high) {
    std::vector<double> values{first};
    for (int i = 0; i < 500; ++i) {
        values.push_back(low);
        values.push_back(high);
    }
    return values;
}

struct Set final {
    const char* name;
    std::vector<double> values;
    std::size_t count;
    double mean;
    double sd;
    double lag1;
};

/// Certified values, 15 digits, as printed in the files of NIST StRD. Accuracy is by construction for NumAcc1 to 4.
inline std::vector<Set> sets() {
    return {
        {"PiDigits", column("pidigits"), 5000, 4.53480000000000, 2.86733906028871, -0.00355099287237972},
        {"Lottery", column("lottery"), 218, 518.958715596330, 291.699727470969, -0.120948622967393},
        {"Lew", column("lew"), 200, -177.435000000000, 277.332168044316, -0.307304800605679},
        {"Mavro", column("mavro"), 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248},
        {"Michelso", column("michelso"), 100, 299.852400000000, 0.0790105478190518, 0.535199668621283},
        {"NumAcc1", {10000001, 10000003, 10000002}, 3, 10000002, 1, -0.5},
        {"NumAcc2", inTurn(1.2, 1.1, 1.3), 1001, 1.2, 0.1, -0.999},
        {"NumAcc3", inTurn(1000000.2, 1000000.1, 1000000.3), 1001, 1000000.2, 0.1, -0.999},
        {"NumAcc4", inTurn(10000000.2, 10000000.1, 10000000.3), 1001, 10000000.2, 0.1, -0.999},
    };
}

} // namespace certified
