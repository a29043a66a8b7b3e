#include "analytics/lots/piece_count.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr double kSecondsPerMinute = 60.0;

bool isFigure(double value) noexcept {
    return std::isfinite(value) && value >= 0.0;
}

tl::expected<int, CountFault> wholePieces(double pieces) {
    if (!isFigure(pieces) || pieces > kMostPieces) {
        return tl::unexpected(CountFault::notPossible);
    }
    return static_cast<int>(std::floor(pieces + kDecisionTolerance));
}

tl::expected<int, CountFault> soundNumber(int number, const std::optional<int>& before) {
    if (number < 0) {
        return tl::unexpected(CountFault::negative);
    }
    if (number > kMostPieces) {
        return tl::unexpected(CountFault::notPossible);
    }
    if (before && number < *before) {
        return tl::unexpected(CountFault::runsBackwards);
    }
    return number;
}

} // namespace

tl::expected<int, CountFault> piecesByRate(const std::vector<BeltRan>& ran, std::optional<double> piecesPerMetre) {
    if (!piecesPerMetre || ran.empty()) {
        return tl::unexpected(CountFault::nothingKnown);
    }
    double metres = 0.0;
    for (const auto& span : ran) {
        if (!isFigure(span.metresPerMinute) || !isFigure(span.running.count())) {
            return tl::unexpected(CountFault::notPossible);
        }
        metres += span.metresPerMinute * span.running.count() / kSecondsPerMinute;
    }
    return wholePieces(metres * *piecesPerMetre);
}

tl::expected<PieceCount, CountFault> countPieces(const CountKnown& known) {
    if (known.counter) {
        return soundNumber(*known.counter, known.before).map([](int pieces) {
            return PieceCount{pieces, CountSource::counter};
        });
    }
    const auto byRate = piecesByRate(known.ran, known.piecesPerMetre);
    if (!byRate && byRate.error() == CountFault::notPossible) {
        return tl::unexpected(byRate.error());
    }
    if (!known.typed && !byRate) {
        return tl::unexpected(CountFault::nothingKnown);
    }
    int pieces = byRate.value_or(0);
    if (known.typed) {
        if (*known.typed < 0) {
            return tl::unexpected(CountFault::negative);
        }
        const auto sum = wholePieces(static_cast<double>(*known.typed) + pieces);
        if (!sum) {
            return tl::unexpected(sum.error());
        }
        const auto sound = soundNumber(*sum, known.before);
        if (!sound) {
            return tl::unexpected(sound.error());
        }
        return PieceCount{*sound, CountSource::typed};
    }
    return PieceCount{std::max(pieces, known.before.value_or(0)), CountSource::rate};
}

std::optional<int> piecesInTunnel(std::optional<double> heatedLengthMetres, std::optional<double> piecesPerMetre) {
    if (!heatedLengthMetres || !piecesPerMetre) {
        return std::nullopt;
    }
    const double pieces = *heatedLengthMetres * *piecesPerMetre;
    if (!std::isfinite(pieces) || *heatedLengthMetres <= 0.0 || *piecesPerMetre <= 0.0 || pieces > kMostPieces) {
        return std::nullopt;
    }
    return static_cast<int>(std::ceil(pieces - kDecisionTolerance));
}

} // namespace holdfast::analytics
