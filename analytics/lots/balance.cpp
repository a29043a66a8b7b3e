#include "analytics/lots/balance.hpp"

#include <utility>

namespace holdfast::analytics {

tl::expected<Balance, BalanceFault> balanceOf(const PiecesOfRun& pieces) {
    if (pieces.made < 0) {
        return tl::unexpected(BalanceFault::madeNegative);
    }
    Balance balance;
    for (const auto& [number, fault] : {std::pair{pieces.shipped, BalanceFault::shippedNegative},
                                        {pieces.here, BalanceFault::hereNegative},
                                        {pieces.retained, BalanceFault::retainedNegative},
                                        {pieces.tested, BalanceFault::testedNegative},
                                        {pieces.scrapped, BalanceFault::scrappedNegative}}) {
        if (number < 0) {
            return tl::unexpected(fault);
        }
        balance.accounted += number;
    }
    balance.difference = pieces.made - balance.accounted;
    return balance;
}

} // namespace holdfast::analytics
