#pragma once

#include "kiosk/screens/presenting/deciding/deciding_places.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <string>

namespace holdfast::kiosk::screens::testing {

/// Holds, Trace and Complaint on a real book: the run of the samples (20418) with lot 1, two people who may decide (1
/// and 2), one who may not (5).
class DecidingRig : public PlaceRig {
public:
    explicit DecidingRig(bool childrensWear = false) {
        shop.plan(childrensWear);
        write({records::PersonAdded{1, "P1", {records::Role::qualityAssurance}}}, ledger::PersonName{1, "Ana"});
        write({records::PersonAdded{2, "P2", {records::Role::owner}}}, ledger::PersonName{2, "Ben"});
        write({records::PersonAdded{5, "P5", {records::Role::operatorAtDryer}}}, ledger::PersonName{5, "Carl"});
        second = 2;
        needs.study = [this](const StudyWork& work, const StudyDone& then) {
            std::stop_source stop;
            ++studies;
            const auto run = [this, work, then, stop] {
                if (!stop.stop_requested()) {
                    work(shop.db(), stop.get_token());
                    then(std::nullopt);
                }
            };
            if (studiesLater) {
                studiesWaiting.emplace_back(run);
            } else {
                run();
            }
            return stop;
        };
        places = decidingPlaces(needs);
        places.holds->reload();
    }

    [[nodiscard]] std::string lot() const { return *records::testing::sampleReading().lot; }
    [[nodiscard]] std::string run() const { return *records::testing::sampleReading().run; }

    /// Of this piece; its id.
    std::string read(analytics::Word word, int piece) {
        auto reading = records::testing::sampleReading();
        reading.verdict->word = word;
        reading.reason = records::ReadingReason::drawn;
        reading.piece = piece;
        const auto id = shop.freshId();
        REQUIRE(shop.tell(reading, id));
        return id;
    }
    /// Piece 112 cured, 120 under-cured: 113 to 140 in bin 14. The reading that caused it.
    std::string bracket() {
        read(analytics::Word::cured, 112);
        const auto bad = read(analytics::Word::underCured, 120);
        records::HoldPlaced hold;
        hold.hold = "h1";
        hold.lot = lot();
        hold.because = bad;
        hold.pieces = records::PieceRange{113, 140};
        hold.bin = 14;
        write({hold});
        places.holds->reload();
        return bad;
    }
    void made(int pieces) {
        records::PiecesCounted counted;
        counted.lot = lot();
        counted.made = pieces;
        write({counted});
    }
    void shipped(int pieces, const std::string& customer, std::vector<std::string> cartons) {
        records::PiecesMoved move;
        move.lot = lot();
        move.count = pieces;
        move.customer = customer;
        move.cartons = std::move(cartons);
        write({move});
        places.holds->reload();
    }
    [[nodiscard]] records::LotState state() {
        const auto row = records::lotById(shop.db(), lot());
        REQUIRE(row);
        REQUIRE(*row);
        return (*row)->state;
    }
    [[nodiscard]] std::vector<records::DecisionRow> decisions() {
        const auto rows = records::decisionsOfLot(shop.db(), lot());
        REQUIRE(rows);
        return *rows;
    }

    DecidingPlaces places;
    /// Long work waits here while `studiesLater`, else it is done at once.
    std::vector<std::function<void()>> studiesWaiting;
    bool studiesLater = false;
    int studies = 0;
};

/// As an upright screen shows it: what stands beside comes under the rest.
[[nodiscard]] inline SheetPageState uprightOf(const SheetPlace& place) {
    auto page = place.sheet();
    page.blocks += page.beside;
    page.actions += page.besideActions;
    page.beside.clear();
    page.besideActions.clear();
    return page;
}

/// What allText does not read: histories and ticks.
[[nodiscard]] inline std::string everything(const SheetPlace& place) {
    const auto page = uprightOf(place);
    auto text = QString::fromStdString(allText(page));
    for (const auto& block : page.blocks) {
        for (const auto& entry : block.trail) {
            text += u'\n' + entry.title + u'\n' + entry.detail + u'\n' + entry.value;
        }
        for (const auto& entry : block.ticks) {
            text += u'\n' + entry.title + u'\n' + entry.detail + u'\n' + entry.value + u'\n' + entry.word;
        }
    }
    for (const auto& action : page.listActions) {
        text += u'\n' + action.label;
    }
    return text.toStdString();
}

[[nodiscard]] inline bool shows(const SheetPlace& place, const std::string& words) {
    const auto text = everything(place);
    INFO(text);
    CHECK(text.find('[') == std::string::npos); // a sentence that no table has
    CHECK(text.find('{') == std::string::npos); // a brace that nobody filled
    return text.find(words) != std::string::npos;
}

[[nodiscard]] inline bool offers(const SheetPlace& place, const std::string& id) {
    const auto page = uprightOf(place);
    const auto wanted = QString::fromStdString(id);
    const auto has = [&](const QList<ActionState>& actions) {
        return std::any_of(actions.begin(), actions.end(), [&](const auto& action) { return action.id == wanted; });
    };
    return has(page.actions) || has(page.listActions) ||
           std::any_of(page.blocks.begin(), page.blocks.end(), [&](const auto& block) { return has(block.actions); });
}

} // namespace holdfast::kiosk::screens::testing
