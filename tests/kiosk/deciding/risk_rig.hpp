#pragma once

#include "tests/kiosk/deciding/deciding_rig.hpp"

namespace holdfast::kiosk::screens::testing {

/// A shop with one dryer and two buckets, a lot a day: what was printed from bucket 7 can fail together.
class RiskRig final : public DecidingRig {
public:
    static constexpr std::int64_t kDay = 86'400'000;
    static constexpr int kPieces = 36; ///< of each run

    RiskRig() {
        records::DryerDescribed dryer;
        dryer.dryer = "dryer-north";
        dryer.name = "North";
        tellAt(dryer, daysAgo(200));
        for (const std::int64_t number : {7, 8}) {
            records::BucketOpened pail;
            pail.bucket = "pail-" + std::to_string(number);
            pail.number = number;
            pail.family = "low-cure";
            pail.colour = "white";
            tellAt(pail, daysAgo(190));
        }
        clock.setWall({shop.now(), 0});
    }

    [[nodiscard]] std::int64_t daysAgo(int days) const { return shop.now() - days * kDay; }
    [[nodiscard]] static std::string runId(int number) { return "risk-run-" + std::to_string(number); }
    [[nodiscard]] static std::string lotId(int number) { return "risk-lot-" + std::to_string(number); }

    void tellAt(const records::Record& record, std::int64_t at, const std::string& id = {}) {
        ledger::EntryDraft draft;
        draft.id = id.empty() ? shop.freshId() : id;
        draft.wallMilliseconds = at;
        draft.kind = records::rowOf(record).kind;
        draft.version = records::rowOf(record).version;
        draft.body = records::bodyOf(record);
        const auto receipt = shop.book().commit({{draft}, {}});
        INFO((receipt ? std::string{} : receipt.error().what));
        REQUIRE(receipt);
    }

    /// Run 30000 + `number`, printed from the bucket so many days ago; two pieces were read.
    void print(int number, int days, std::int64_t bucket, analytics::Word word) {
        records::RunPlanned run;
        run.run = runId(number);
        run.number = 30'000 + number;
        run.title = "jersey " + std::to_string(number);
        run.customer = "Kestrel";
        run.reference = "PO-" + std::to_string(number);
        run.pieces = kPieces;
        run.clothLot = "C-" + std::to_string(number % 3); // shared by chance alone
        run.dryer = "dryer-north";
        run.fabric = "100% polyester";
        run.layers = {{"white", "low-cure", {{"low-cure", 1.0}}, {bucket}}};
        tellAt(run, daysAgo(days));
        records::LotOpened lot;
        lot.lot = lotId(number);
        lot.run = runId(number);
        lot.dryer = "dryer-north";
        lot.revisions = {{{"low-cure", 1}}, {"100% polyester", 1}};
        tellAt(lot, daysAgo(days));
        read(number, days, 1, word);
        read(number, days, 20, word);
        records::RunFinished finished;
        finished.run = runId(number);
        finished.made = kPieces;
        tellAt(finished, daysAgo(days) + 3 * kHour);
        records::PiecesCounted counted;
        counted.lot = lotId(number);
        counted.made = kPieces;
        tellAt(counted, daysAgo(days) + 3 * kHour);
    }

    void ship(int number, int days, int pieces, const std::string& carton) {
        records::PiecesMoved move;
        move.lot = lotId(number);
        move.count = pieces;
        move.customer = "Kestrel";
        move.cartons = {carton};
        tellAt(move, daysAgo(days));
    }

    void retain(int number, std::int64_t printNumber, const std::string& shelf) {
        records::PrintNamed print{"print-" + std::to_string(printNumber), printNumber, runId(number), lotId(number)};
        print.retained = records::RetainedPlace{shelf, std::nullopt, false};
        tellAt(print, daysAgo(1));
    }

    /// Four lots of bucket 7 that came out under-cured, ten of bucket 8 that did not.
    void fourBadOfFourteen() {
        for (int i = 0; i < 14; ++i) {
            const bool bad = i % 4 == 1;
            print(i, 60 - 3 * i, bad ? 7 : 8, bad ? analytics::Word::underCured : analytics::Word::cured);
        }
    }

    /// A complaint about that lot; the place shows it.
    std::string complain(int number, int days = 0) {
        records::ComplaintTaken taken;
        taken.complaint = "complaint-" + std::to_string(number);
        taken.number = 100 + number;
        taken.customer = "Kestrel";
        taken.pieces = 2;
        taken.clue = "PO-" + std::to_string(number);
        taken.run = runId(number);
        taken.lot = lotId(number);
        tellAt(taken, daysAgo(days));
        places.complaint->showComplaint(taken.complaint);
        return taken.complaint;
    }

    [[nodiscard]] std::vector<records::HoldPlaced> heldFor(const std::string& complaint) {
        std::vector<records::HoldPlaced> found;
        const auto open = records::openHolds(shop.db());
        REQUIRE(open);
        for (const auto& row : *open) {
            if (row.placed.because == complaint) {
                found.push_back(row.placed);
            }
        }
        return found;
    }

private:
    static constexpr std::int64_t kHour = 3'600'000;

    void read(int number, int days, int piece, analytics::Word word) {
        auto reading = records::testing::sampleReading();
        const auto margin = analytics::TemperatureDifference::fromCelsius(word == analytics::Word::cured ? 6.0 : -12.0);
        reading.run = runId(number);
        reading.lot = lotId(number);
        reading.dryer = "dryer-north";
        reading.reason = records::ReadingReason::drawn;
        reading.retakeOf.reset();
        reading.piece = piece;
        reading.verdict->word = word;
        reading.verdict->margin = analytics::MarginRange{margin, margin};
        tellAt(reading, daysAgo(days) + kHour + piece * 60'000);
    }
};

/// Where words first stand on the page; npos: nowhere.
[[nodiscard]] inline std::size_t placeOf(const SheetPlace& place, const std::string& words) {
    std::size_t at = 0;
    const auto page = uprightOf(place);
    for (const auto& block : page.blocks) {
        SheetPageState alone;
        alone.blocks.append(block);
        if (allText(alone).find(words) != std::string::npos) {
            return at;
        }
        ++at;
    }
    return std::string::npos;
}

} // namespace holdfast::kiosk::screens::testing
