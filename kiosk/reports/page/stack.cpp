#include "kiosk/reports/page/stack.hpp"

namespace holdfast::kiosk::reports {

double heightOf(const std::vector<Block>& blocks) {
    double height = 0;
    for (const auto& block : blocks) {
        height += block.gap + block.height;
    }
    return height;
}

bool dropToFit(std::vector<Block>& blocks, double height) {
    while (heightOf(blocks) > height) {
        auto least = blocks.end();
        for (auto block = blocks.begin(); block != blocks.end(); ++block) {
            if (block->worth != Worth::must && (least == blocks.end() || block->worth <= least->worth)) {
                least = block;
            }
        }
        if (least == blocks.end()) {
            return false;
        }
        blocks.erase(least);
    }
    return true;
}

double placeAll(const std::vector<Block>& blocks, PlacedPage& page, double top) {
    for (const auto& block : blocks) {
        top += block.gap;
        block.place(page, top);
        top += block.height;
    }
    return top;
}

} // namespace holdfast::kiosk::reports
