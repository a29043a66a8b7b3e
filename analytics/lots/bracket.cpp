#include "analytics/lots/bracket.hpp"

#include "analytics/lots/below_zero.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

std::optional<BracketFault> faultOf(const BracketFacts& facts) {
    if (isBelowZero(facts.made) || isBelowZero(facts.inTunnel) || isBelowZero(facts.planned)) {
        return BracketFault::countBelowZero;
    }
    if (facts.badPiece < std::max(1, facts.firstPiece) || (facts.endOfRun && facts.badPiece > *facts.endOfRun)) {
        return BracketFault::pieceNotInRun;
    }
    if ((facts.lastProven && *facts.lastProven >= facts.badPiece) ||
        (facts.nextProven && *facts.nextProven <= facts.badPiece)) {
        return BracketFault::provenOutOfOrder;
    }
    return std::nullopt;
}

/// The last piece that exists or will, as far as it is known.
std::optional<int> mostOf(const BracketFacts& facts) {
    if (facts.endOfRun) {
        return facts.endOfRun;
    }
    return facts.planned ? std::optional{std::max(*facts.planned, facts.made.value_or(0))} : std::nullopt;
}

} // namespace

tl::expected<Bracket, BracketFault> bracketOf(const BracketFacts& facts) {
    if (const auto fault = faultOf(facts)) {
        return tl::unexpected(*fault);
    }
    Bracket bracket;
    bracket.pieces.first = std::max(facts.firstPiece, facts.lastProven.value_or(0) + 1);
    const int atLeast = facts.badPiece + facts.inTunnel.value_or(0);
    const int upTo = facts.nextProven ? *facts.nextProven - 1 : facts.endOfRun.value_or(facts.made.value_or(0));
    bracket.pieces.last = std::max(atLeast, upTo);
    if (const auto most = mostOf(facts)) {
        bracket.pieces.last = std::max(facts.badPiece, std::min(bracket.pieces.last, *most));
    }
    bracket.open = !facts.nextProven && !facts.endOfRun;
    return bracket;
}

std::optional<PieceSpan> tunnelBracket(int made, std::optional<int> inTunnel) noexcept {
    if (made < 1 || !inTunnel || *inTunnel < 1) {
        return std::nullopt;
    }
    return PieceSpan{std::max(1, made - *inTunnel + 1), made};
}

SetUpPieces setUpPieces(int first, int count, SetUpUse use) noexcept {
    if (count < 1) {
        return {};
    }
    if (use == SetUpUse::waste) {
        return {count, std::nullopt};
    }
    return {0, PieceSpan{first, first + count - 1}};
}

JoinedBrackets joinBrackets(std::vector<NumberedBracket> brackets) {
    std::sort(brackets.begin(), brackets.end(), [](const auto& a, const auto& b) {
        return std::pair{a.pieces, a.bin} < std::pair{b.pieces, b.bin};
    });
    JoinedBrackets joined;
    std::optional<std::size_t> open; // the undecided one that reaches furthest
    for (const auto& bracket : brackets) {
        auto* before = open ? &joined.brackets[*open] : nullptr;
        if (!bracket.decided && before != nullptr && before->pieces.overlaps(bracket.pieces)) {
            const auto kept = std::min(before->bin, bracket.bin);
            const auto emptied = std::max(before->bin, bracket.bin);
            for (auto& moved : joined.movedIntoBin) {
                moved.second = moved.second == emptied ? kept : moved.second;
            }
            joined.movedIntoBin.emplace_back(emptied, kept);
            before->bin = kept;
            before->pieces.last = std::max(before->pieces.last, bracket.pieces.last);
            continue;
        }
        joined.brackets.push_back(bracket);
        if (!bracket.decided) {
            open = joined.brackets.size() - 1;
        }
    }
    return joined;
}

} // namespace holdfast::analytics
