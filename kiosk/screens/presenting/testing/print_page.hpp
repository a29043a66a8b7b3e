#pragma once

#include "kiosk/screens/presenting/testing/print_facts.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <string>
#include <utility>
#include <vector>

/// One print on the screen: what it is, what its tests show, and its history.
namespace holdfast::kiosk::screens {

[[nodiscard]] std::string printTitle(const records::PrintRow& print, const wording::Speech& speech);
/// Colours, cloth, signs and time of printing, and whatever ends it.
void addPrintLines(QList<SheetBlock>& blocks, const PrintFacts& facts, const drivers::WallTime& now,
                   const wording::Speech& speech);
/// Grades against cycles, pulls, halves: what the tests by one method show. `due` is the cycle that is being graded.
void addMethodBlocks(QList<SheetBlock>& blocks, const PrintFacts& facts, const records::MethodDescribed& method,
                     const std::optional<int>& due, const wording::Speech& speech, const drivers::WallTime& now);
/// Of every method that the print was tested by.
void addAllMethods(QList<SheetBlock>& blocks, const PrintFacts& facts, const wording::Speech& speech,
                   const drivers::WallTime& now);
/// Readings, tests, pictures and holds in order of time, oldest first. Tests can be pressed.
[[nodiscard]] SheetBlock historyBlock(const PrintFacts& facts, const drivers::WallTime& now,
                                      const wording::Speech& speech);
/// What was seen in one test, with its outcome.
[[nodiscard]] SheetBlock testFactsBlock(const records::TestDone& done, const wording::Speech& speech);
/// What the two halves of a split test mean; empty of any other test.
[[nodiscard]] std::string splitSentence(const records::TestDone& done, const wording::Speech& speech);
/// "colour 4.5, staining 4".
[[nodiscard]] std::string resultsLine(const records::TestDone& done, const wording::Speech& speech);
/// "L* 41.2 · a* 52.0 · b* 30.1"
[[nodiscard]] std::string labLine(const analytics::Lab& colour);
[[nodiscard]] HalfEntry halfOfColour(const std::string& caption, const std::optional<analytics::Lab>& colour);

} // namespace holdfast::kiosk::screens
