#pragma once

#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

/// Textbook tables whose licence keeps them out of the tree; read where they are at hand.
namespace tables {

/// Rows of numbers after the first line; words (TRUE, FALSE) are 1 and 0. Empty, and said so, where the file is absent.
inline std::vector<std::vector<double>> rows(const std::string& name) {
    std::string path = HOLDFAST_SOURCE_DIR "/../shared/data/spc/";
    path.append(name);
    std::ifstream file{path};
    std::vector<std::vector<double>> result;
    std::string line;
    std::getline(file, line);
    while (std::getline(file, line)) {
        std::istringstream words{line};
        std::vector<double> row;
        for (std::string word; words >> word;) {
            row.push_back(word == "TRUE" ? 1.0 : word == "FALSE" ? 0.0 : std::stod(word));
        }
        if (!row.empty()) {
            result.push_back(row);
        }
    }
    if (result.empty()) {
        std::cout << "SKIPPED: " << name << " is not at hand\n";
    }
    return result;
}

} // namespace tables
