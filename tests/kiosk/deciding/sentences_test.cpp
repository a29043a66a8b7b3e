#include "kiosk/wording/deciding_sentences.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace holdfast::kiosk;
using shop::deciding::Cause;

TEST_CASE("every refusal of QA's has a sentence of its own in both languages", "[deciding][wording]") {
    for (const auto* language : {&wording::Language::english(), &wording::Language::spanish()}) {
        wording::Speech speech;
        speech.language = language;
        std::set<std::string> all;
        for (int i = 0; i <= static_cast<int>(Cause::nothingSeen); ++i) {
            const auto line = wording::sentence(shop::deciding::Fault{static_cast<Cause>(i), "", "7"}, speech);
            INFO(i << ": " << line);
            CHECK(line.find('[') == std::string::npos);
            CHECK(line.find('{') == std::string::npos);
            CHECK(all.insert(line).second);
        }
    }
}

TEST_CASE("the words of holds, decisions, complaints and struck readings differ from one another",
          "[deciding][wording]") {
    const wording::Speech speech;
    std::set<std::string> all;
    int words = 0;
    const auto take = [&](const std::string& word) {
        INFO(word);
        CHECK(word.find('[') == std::string::npos);
        all.insert(word);
        ++words;
    };
    for (int i = 0; i <= static_cast<int>(records::HoldCause::beltStopped); ++i) {
        take(wording::word(static_cast<records::HoldCause>(i), speech));
        take(wording::sentence(static_cast<records::HoldCause>(i), speech));
    }
    for (int i = 0; i <= static_cast<int>(records::DecisionWord::recalled); ++i) {
        take(wording::word(static_cast<records::DecisionWord>(i), speech));
        take(wording::chosenText(static_cast<records::DecisionWord>(i), speech));
    }
    for (int i = 0; i <= static_cast<int>(records::ComplaintKind::other); ++i) {
        take(wording::word(static_cast<records::ComplaintKind>(i), speech));
    }
    for (int i = 0; i <= static_cast<int>(records::StruckCause::garbledTrace); ++i) {
        take(wording::word(static_cast<records::StruckCause>(i), speech));
    }
    CHECK(static_cast<int>(all.size()) == words);
}

TEST_CASE("a bracket is said by its numbers, one piece by one", "[deciding][wording]") {
    const wording::Speech speech;
    records::HoldPlaced hold;
    CHECK(wording::piecesText(hold, std::nullopt, speech) == "the whole lot");
    CHECK(wording::piecesText(hold, 200, speech) == "the whole lot, 200 pieces");
    hold.pieces = records::PieceRange{113, 140};
    CHECK(wording::piecesText(hold, 200, speech) == "pieces 113 to 140, 28 pieces"); // 140 − 113 + 1
    hold.pieces = records::PieceRange{120, 120};
    CHECK(wording::piecesText(hold, 200, speech) == "piece 120, 1 piece");
    hold.pieces = records::PieceRange{113, std::nullopt};
    CHECK(wording::piecesText(hold, std::nullopt, speech) == "pieces 113 and all that follow");
}
