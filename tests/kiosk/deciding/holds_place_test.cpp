// Holds as a person uses it: presses, typed texts and scans in, sheets and entries out, on a real book.
#include "tests/kiosk/deciding/deciding_rig.hpp"

#include <fstream>
#include <sstream>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using records::DecisionWord;
using records::LotState;

namespace {

void openForm(DecidingRig& rig, const std::string& word) {
    rig.places.holds->act("holds.hold.h1");
    rig.places.holds->act("holds.decide");
    rig.places.holds->act("holds.form.word." + word);
    rig.places.holds->enter("holds.form.reason", "thick film");
}

const SheetField* fieldNamed(const SheetPageState& page, const QString& id) {
    for (const auto& block : page.blocks) {
        for (const auto& field : block.fields) {
            if (field.id == id) {
                return &field;
            }
        }
    }
    return nullptr;
}

} // namespace

TEST_CASE("nothing on hold is said as such", "[deciding][holds]") {
    DecidingRig rig;
    CHECK(shows(*rig.places.holds, "No red bin is open"));
    CHECK(rig.places.holds->sheet().list.isEmpty());
}

TEST_CASE("a bad reading answers which pieces to pull, and that the others may go", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    REQUIRE(rig.places.holds->sheet().list.size() == 2);     // the heading and the hold
    CHECK(shows(*rig.places.holds, "1 red bin, 28 pieces")); // 140 − 113 + 1
    rig.places.holds->act("holds.hold.h1");
    CHECK(shows(*rig.places.holds, "Pull pieces 113 to 140, 28 pieces, into bin 14."));
    CHECK(shows(*rig.places.holds, "The other pieces of the lot may go."));
    CHECK(shows(*rig.places.holds, "QA or owner: Ana, Ben"));
    CHECK(shows(*rig.places.holds, "A reading was under-cured or overheated."));
    const auto page = rig.places.holds->sheet();
    const auto bar = std::find_if(page.blocks.begin(), page.blocks.end(),
                                  [](const auto& block) { return block.kind == SheetKinds::PieceBar; });
    REQUIRE(bar != page.blocks.end());
    const auto& stretches = bar->pieces.stretches;
    const auto held = std::find_if(stretches.begin(), stretches.end(),
                                   [](const auto& one) { return one.kind == PieceKind::Bracket; });
    REQUIRE(held != stretches.end());
    CHECK(held->first == 113);
    CHECK(held->last == 140);
}

TEST_CASE("what caused a hold is one press away", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.places.holds->act("holds.hold.h1");
    CHECK(rig.places.holds->act("holds.because.h1"));
    CHECK(shows(*rig.places.holds, "Under-cured"));
    CHECK(offers(*rig.places.holds, "holds.strike"));
    rig.places.holds->act("holds.back");
    CHECK(shows(*rig.places.holds, "Pull pieces 113"));
}

TEST_CASE("a bracket is run again: one signature, a new lot, the hold is gone", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    openForm(rig, "re-run");
    CHECK(shows(*rig.places.holds, "One signature"));
    CHECK(rig.places.holds->isWriting());
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.asked == std::vector{shop::Right::decideHolds});
    REQUIRE(rig.decisions().size() == 1);
    const auto decision = rig.decisions().front().signedAs;
    CHECK(decision.word == DecisionWord::reRun);
    CHECK(decision.reason == "thick film");
    CHECK(decision.signers == std::vector<std::int64_t>{1});
    CHECK(rig.signedBy() == 1);
    const auto lots = records::lotsOfRun(rig.shop.db(), rig.run());
    REQUIRE(lots);
    REQUIRE(lots->size() == 2);
    CHECK(lots->back().id == decision.reRunLot);
    CHECK(lots->back().reRunOf == rig.lot());
    CHECK(shows(*rig.places.holds, "run again as lot 2"));
    CHECK_FALSE(rig.places.holds->isWriting());
    CHECK(shows(*rig.places.holds, "No red bin is open"));
}

TEST_CASE("a release below the limit asks two people, each by badge and PIN", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    openForm(rig, "released");
    CHECK(shows(*rig.places.holds, "Two signatures of different people"));
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.asked.size() == 2);
    REQUIRE(rig.decisions().size() == 1);
    CHECK(rig.decisions().front().signedAs.signers == std::vector<std::int64_t>{1, 2});
    CHECK(rig.decisions().front().signedAs.belowLimit);
    CHECK(rig.state() == LotState::released);
}

TEST_CASE("without the second signature nothing is written and everything typed stays", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.second = 0;
    openForm(rig, "released");
    const auto before = rig.entries();
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.entries() == before);
    CHECK(shows(*rig.places.holds, "It needs a second signature"));
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.form.reason")->value == "thick film");
}

TEST_CASE("a release by somebody who is not entitled is refused with a sentence", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.signer = 5;
    openForm(rig, "re-run");
    const auto before = rig.entries();
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.entries() == before);
    CHECK(shows(*rig.places.holds, "the signature of somebody who may decide about holds"));
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.form.reason")->value == "thick film");
}

TEST_CASE("without a word or a reason nobody is asked for a badge", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.places.holds->act("holds.hold.h1");
    rig.places.holds->act("holds.decide");
    rig.places.holds->act("holds.form.sign");
    CHECK(shows(*rig.places.holds, "Choose what becomes of the pieces."));
    rig.places.holds->act("holds.form.word.scrapped");
    rig.places.holds->act("holds.form.sign");
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.form.reason")->fault ==
          "Give a reason: it stands in the book beside your name.");
    CHECK(rig.asked.empty());
}

TEST_CASE("a full disk leaves the decision as it was typed", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    openForm(rig, "scrapped");
    rig.diskFull = true;
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.decisions().empty());
    CHECK_FALSE(rig.told.empty());
    CHECK(rig.places.holds->isWriting());
    rig.diskFull = false;
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.decisions().size() == 1);
}

TEST_CASE("scrapping a bracket scraps those pieces, and a decided hold is not decided again", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    openForm(rig, "scrapped");
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.decisions().front().signedAs.word == DecisionWord::scrapped);
    CHECK(rig.state() != LotState::onHold);
    CHECK(rig.state() != LotState::scrapped); // the rest of the lot stays
}

TEST_CASE("children's wear under-cured cannot be released, and the word safe is never said", "[deciding][holds]") {
    DecidingRig rig{true};
    rig.bracket();
    rig.places.holds->act("holds.hold.h1");
    rig.places.holds->act("holds.decide");
    CHECK_FALSE(offers(*rig.places.holds, "holds.form.word.released"));
    CHECK(offers(*rig.places.holds, "holds.form.word.re-run"));
    CHECK(shows(*rig.places.holds, "may not be released as it stands"));
    CHECK(shows(*rig.places.holds, "accredited laboratory"));
    CHECK(everything(*rig.places.holds).find("safe") == std::string::npos);
}

TEST_CASE("a bin's label leads to its hold from everywhere", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    CHECK(rig.places.holds->scanned({drivers::TicketKind::bin, 14}, false));
    CHECK(shows(*rig.places.holds, "Pull pieces 113 to 140"));
    CHECK(rig.places.holds->scanned({drivers::TicketKind::bin, 99}, false));
    CHECK(wasTold(rig, "No open hold has bin 99."));
    CHECK_FALSE(rig.places.holds->scanned({drivers::TicketKind::print, 31}, true)); // Tests takes it
}

TEST_CASE("what is half typed is not lost to another row", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    openForm(rig, "re-run");
    rig.places.holds->act("holds.hold.h1");
    CHECK(wasTold(rig, "half typed"));
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.form.reason")->value == "thick film");
}

TEST_CASE("the bin's label, the recall list and the certificate are printed from the hold", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.shipped(60, "Kestrel", {"C-1", "C-2"});
    rig.places.holds->act("holds.hold.h1");
    rig.places.holds->act("holds.label");
    rig.places.holds->act("holds.certificate");
    rig.places.holds->act("holds.recall");
    rig.places.holds->act("holds.recall.print");
    REQUIRE(rig.printed.size() == 3);
    CHECK(rig.printed.at(0).what == PrintWish::What::binLabel);
    CHECK(rig.printed.at(0).number == 14);
    CHECK(rig.printed.at(1).what == PrintWish::What::certificate);
    CHECK(rig.printed.at(1).number == 20418);
    CHECK(rig.printed.at(2).what == PrintWish::What::recall);
    CHECK(rig.printed.at(2).id == rig.lot());
}

TEST_CASE("a hold on shipped pieces is a recall to decide, first in the list, and goes to a file",
          "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.made(200);
    rig.shipped(60, "Kestrel", {"C-1", "C-2"});
    CHECK(shows(*rig.places.holds, "Recalls to decide"));
    rig.places.holds->act("holds.hold.h1");
    CHECK(shows(*rig.places.holds, "Recall to decide: 60 pieces of this lot are shipped."));
    rig.places.holds->act("holds.recall");
    CHECK(shows(*rig.places.holds, "Shipped: 60 pieces, 2 cartons, 1 customer, 1 lot."));
    rig.places.holds->act("holds.recall.csv");
    std::ifstream in{rig.needs.exchange / "recall-run-20418-lot-1-2026-02-25.csv"}; // 1,772,000,000 s: 2026-02-25
    std::stringstream text;
    text << in.rdbuf();
    CHECK(text.str() == "customer,carton,pieces,run,lot,day,State,place\r\n"
                        "Kestrel,C-1,60,20418,1,,On hold,shipped\r\n"
                        "Kestrel,C-2,,20418,1,,On hold,shipped\r\n"
                        ",,140,20418,1,,On hold,here\r\n"); // 200 made less 60
}

TEST_CASE("called back pieces stay on hold until they are decided", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.shipped(60, "Kestrel", {"C-1"});
    openForm(rig, "recalled");
    rig.places.holds->act("holds.form.sign");
    CHECK(rig.decisions().front().signedAs.word == DecisionWord::recalled);
    CHECK(rig.state() == LotState::onHold);
    CHECK(shows(*rig.places.holds, "called back"));
    rig.places.holds->act("holds.hold.h1");
    CHECK(shows(*rig.places.holds, "Called back on 2026-02-25"));
}

TEST_CASE("the quarantine is ticked against the shelf, and a difference is said", "[deciding][holds][shelf]") {
    DecidingRig rig;
    rig.bracket();
    rig.places.holds->act("holds.shelf");
    CHECK(shows(*rig.places.holds, "0 of 1 bins found, 0 of 28 pieces"));
    CHECK(rig.places.holds->scanned({drivers::TicketKind::bin, 14}, true)); // its label ticks it
    CHECK(shows(*rig.places.holds, "1 of 1 bins found, 28 of 28 pieces"));
    rig.places.holds->enter("holds.shelf.field.h1", "-1");
    rig.places.holds->act("holds.shelf.keep");
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.shelf.field.h1")->fault.contains("below zero"));
    rig.places.holds->enter("holds.shelf.field.h1", "26");
    rig.places.holds->act("holds.shelf.keep");
    CHECK(shows(*rig.places.holds, "Another count than the book's: bin 14."));
    const auto last = records::lastShelfCount(rig.shop.db());
    REQUIRE(last);
    REQUIRE(*last);
    CHECK((*last)->counted.bins == std::vector<records::BinCount>{{"h1", 26}});
    rig.places.holds->act("holds.shelf");
    CHECK(shows(*rig.places.holds, "by Ana"));
    rig.places.holds->act("holds.shelf.print");
    CHECK(rig.printed.back().what == PrintWish::What::quarantine);
}

TEST_CASE("pieces are moved, corrected and counted, and the balance says what is missing", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket();
    rig.places.holds->act("holds.hold.h1");
    rig.places.holds->act("holds.pieces");
    CHECK(shows(*rig.places.holds, "Say how many were made"));
    rig.places.holds->act("holds.pieces.count");
    rig.places.holds->enter("holds.pieces.field.made", "200");
    rig.places.holds->enter("holds.pieces.field.here", "130");
    rig.places.holds->act("holds.pieces.keep");
    rig.places.holds->act("holds.pieces.add.shipped");
    rig.places.holds->enter("holds.pieces.field.count", "x");
    rig.places.holds->act("holds.pieces.keep");
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.pieces.field.count")->fault.contains("no number of pieces"));
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.pieces.field.count")->value == "x");
    rig.places.holds->enter("holds.pieces.field.count", "60");
    rig.places.holds->enter("holds.pieces.field.customer", "Kestrel");
    rig.places.holds->enter("holds.pieces.field.cartons", "C-1, C-2");
    rig.places.holds->act("holds.pieces.keep");
    CHECK(shows(*rig.places.holds, "a recall is to be decided")); // the lot is on hold
    CHECK(shows(*rig.places.holds, "10 pieces are missing"));     // 200 − 60 − 130
    const auto moves = records::movesOfLot(rig.shop.db(), rig.lot());
    REQUIRE(moves);
    rig.places.holds->act("holds.pieces.entry." + moves->front().entry);
    rig.places.holds->act("holds.pieces.correct");
    rig.places.holds->enter("holds.pieces.field.count", "70");
    rig.places.holds->act("holds.pieces.keep");
    CHECK(shows(*rig.places.holds, "Every piece is accounted for.")); // 200 = 70 + 130
    CHECK(shows(*rig.places.holds, "2 versions"));
    const auto corrected = records::movesOfLot(rig.shop.db(), rig.lot());
    rig.places.holds->act("holds.pieces.entry." + corrected->back().entry);
    CHECK(shows(*rig.places.holds, "60 shipped to Kestrel")); // as it stood before
    rig.places.holds->act("holds.pieces.count");
    rig.places.holds->enter("holds.pieces.field.made", "199");
    rig.places.holds->act("holds.pieces.keep");
    CHECK(fieldNamed(rig.places.holds->sheet(), "holds.pieces.field.made")->fault.contains("does not run backwards"));
}

TEST_CASE("a reading without its trace cannot be struck", "[deciding][holds]") {
    DecidingRig rig;
    rig.bracket(); // the sample's trace stands in no blob
    rig.places.holds->act("holds.hold.h1");
    rig.places.holds->act("holds.because.h1");
    rig.places.holds->act("holds.strike");
    rig.places.holds->act("holds.strike.cause.probe-fell-out");
    const auto before = rig.entries();
    rig.places.holds->act("holds.strike.sign");
    CHECK(shows(*rig.places.holds, "Neither a trace nor a picture shows it"));
    CHECK(rig.entries() == before);
    CHECK(rig.asked.empty());
}

TEST_CASE("a struck reading lifts the hold that it caused", "[deciding][holds]") {
    DecidingRig rig;
    rig.read(analytics::Word::cured, 112);
    auto reading = records::testing::sampleReading();
    reading.verdict->word = analytics::Word::underCured;
    reading.evidence = records::GunSeen{{305.0, analytics::TemperatureUnit::fahrenheit}};
    const auto id = rig.shop.freshId();
    REQUIRE(rig.shop.tell(reading, id));
    rig.places.holds->reload();
    CHECK(rig.state() == LotState::onHold);
    rig.places.holds->act("holds.lot." + rig.lot());
    CHECK(shows(*rig.places.holds, "No bracket was drawn"));
    rig.places.holds->act("holds.reading." + id);
    rig.places.holds->act("holds.strike");
    rig.places.holds->act("holds.strike.sign");
    CHECK(shows(*rig.places.holds, "Say what it was."));
    rig.places.holds->act("holds.strike.cause.wrong-print");
    rig.places.holds->act("holds.strike.sign");
    CHECK(rig.signedBy() == 1);
    CHECK(rig.state() != LotState::onHold);
    CHECK(shows(*rig.places.holds, "struck: it was another print"));
}

TEST_CASE("an unproven lot is listed and released in one press and one signature", "[deciding][holds]") {
    DecidingRig rig;
    rig.read(analytics::Word::notProven, 20);
    rig.write({records::LotClosed{rig.lot(), 200, records::LotEnd::runEnded}});
    rig.places.holds->reload();
    REQUIRE(rig.state() == LotState::unproven);
    CHECK(shows(*rig.places.holds, "Unproven"));
    rig.places.holds->act("holds.lot." + rig.lot());
    rig.places.holds->act("holds.release-unproven");
    CHECK(rig.asked == std::vector{shop::Right::decideHolds});
    CHECK(rig.state() == LotState::released);
}

TEST_CASE("a mock recall says what was found and in how many seconds", "[deciding][holds][recall]") {
    DecidingRig rig;
    rig.places.holds->act("holds.mock");
    CHECK(shows(*rig.places.holds, "The time runs from the scan to the list."));
    rig.places.holds->enter("holds.recall.batch", "no such batch");
    CHECK(shows(*rig.places.holds, "Nothing in the book was printed from it."));
    const auto before = rig.entries();
    CHECK(rig.places.holds->scanned({drivers::TicketKind::bucket, 7}, true));
    CHECK(rig.entries() == before); // a mock recall writes nothing
}

TEST_CASE("everything at Holds is said in Spanish too", "[deciding][holds][spanish]") {
    DecidingRig rig;
    rig.bracket();
    rig.shipped(60, "Kestrel", {"C-1"});
    rig.speech.language = &wording::Language::spanish();
    rig.places.holds->act("holds.hold.h1");
    CHECK(shows(*rig.places.holds, "Retirada por decidir"));
    rig.places.holds->act("holds.decide");
    rig.places.holds->act("holds.form.sign");
    CHECK(shows(*rig.places.holds, "Elija qu\xC3\xA9 pasa con las piezas."));
}
