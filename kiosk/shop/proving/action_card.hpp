#pragma once

#include <cstdint>

namespace holdfast::kiosk::shop {

/// The number behind an action card's code (A…). Numbers are printed on cards: never changed, only added.
enum class ActionCard : std::uint64_t {
    setUp = 1, ///< what follows is set-up: without consequence
    ready = 2, ///< set-up is over
    retake = 3,
    beltSlower = 4,
    hotter = 5,
    feedStopped = 6,
    pulled = 7,
    problem = 8,
    wipe = 9,
    next = 10,
    stop = 11,
    tryAgain = 12, ///< write again what could not be written
    keepStrip = 13,
    beltFaster = 14,
    cooler = 15,
    started = 16,    ///< belt and feed run again
    takenOver = 17,  ///< the next crew has read the hand-over
    alsoOnBelt = 18, ///< the next ticket joins the belt, or leaves it
    worry = 19,      ///< "this one worries me": the next reading's reason
    left = 20,
    centre = 21,
    right = 22,
    drawn = 23,         ///< the next reading is one that was due
    allLight = 100,     ///< of a strip
    firstStep = 101,    ///< the strip's coolest step is the last dark one; the next step is one more, and so on
    pulledPieces = 200, ///< 200 + N: N pieces pulled, 1 to 99; `pulled` alone asks for the number
};
inline constexpr std::uint64_t kMostStripSteps = 40;
inline constexpr std::uint64_t kMostPulledByCard = 99;

} // namespace holdfast::kiosk::shop
