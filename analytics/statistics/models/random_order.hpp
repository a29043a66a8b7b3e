#pragma once

#include <array>
#include <cassert>
#include <cstdint>
#include <utility>
#include <vector>

namespace holdfast::analytics::statistics {

/// xoshiro256++ (Blackman and Vigna, ACM Trans. Math. Softw. 47:36, 2021), for the inner loop of a permutation test,
/// where a Mersenne twister costs more than the test itself. The same numbers everywhere. Not for secrets.
class Xoshiro256 final {
public:
    using State = std::array<std::uint64_t, 4>;
    /// Not all 0.
    explicit constexpr Xoshiro256(const State& state) noexcept : m_state{state} {}
    /// From one number by splitmix64 (Steele, Lea and Flood 2014), as the authors of the generator advise.
    explicit constexpr Xoshiro256(std::uint64_t seed) noexcept {
        for (auto& word : m_state) {
            seed += 0x9e3779b97f4a7c15U;
            word = (seed ^ (seed >> 30U)) * 0xbf58476d1ce4e5b9U;
            word = (word ^ (word >> 27U)) * 0x94d049bb133111ebU;
            word ^= word >> 31U;
        }
    }
    constexpr std::uint64_t operator()() noexcept {
        auto& s = m_state;
        const std::uint64_t result = turned(s[0] + s[3], 23) + s[0];
        const std::uint64_t shifted = s[1] << 17U;
        s[2] ^= s[0];
        s[3] ^= s[1];
        s[1] ^= s[2];
        s[0] ^= s[3];
        s[2] ^= shifted;
        s[3] = turned(s[3], 45);
        return result;
    }

private:
    static constexpr std::uint64_t turned(std::uint64_t word, unsigned by) noexcept {
        return (word << by) | (word >> (64U - by));
    }
    State m_state{};
};

/// Four places can be drawn of one 64-bit number up to here.
inline constexpr std::size_t kMostShuffled = 65'536;

/// Puts the first `count` elements, at most kMostShuffled, into a random order, each order as likely as any other, and
/// calls see(element, place) as each finds its place, the last place first. Fisher and Yates; the places of four
/// elements from one draw, unbiased (Lemire, ACM Trans. Model. Comput. Simul. 29:3, 2019; Brackett-Rozinsky and Lemire,
/// Softw. Pract. Exper. 55, 2025).
template <class Element, class See>
void shuffle(std::vector<Element>& elements, std::size_t count, Xoshiro256& random, See&& see) {
    __extension__ using Wide = unsigned __int128;
    assert(count <= elements.size() && count <= kMostShuffled);
    Xoshiro256 draw = random; // in registers
    Element* const element = elements.data();
    std::size_t left = count;
    const auto pick = [](std::uint64_t& rest, std::uint64_t bound) {
        const Wide product = static_cast<Wide>(rest) * bound;
        rest = static_cast<std::uint64_t>(product);
        return static_cast<std::size_t>(product >> 64U);
    };
    const auto place = [&](std::size_t from) {
        --left;
        std::swap(element[from], element[left]);
        see(element[left], left);
    };
    const auto biased = [](std::uint64_t rest, std::uint64_t bound) {
        return rest < bound && rest < (0U - bound) % bound;
    };
    while (left >= 4) {
        std::uint64_t rest = draw();
        const std::size_t first = pick(rest, left);
        const std::size_t second = pick(rest, left - 1);
        const std::size_t third = pick(rest, left - 2);
        const std::size_t fourth = pick(rest, left - 3);
        if (!biased(rest, left * (left - 1) * (left - 2) * (left - 3))) {
            place(first);
            place(second);
            place(third);
            place(fourth);
        }
    }
    while (left > 0) {
        std::uint64_t rest = draw();
        const std::size_t from = pick(rest, left);
        if (!biased(rest, left)) {
            place(from);
        }
    }
    random = draw;
}

} // namespace holdfast::analytics::statistics
