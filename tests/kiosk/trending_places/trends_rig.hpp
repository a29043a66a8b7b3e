#pragma once

// First: the files that Trends writes are painted.
#include <QGuiApplication>

#include "kiosk/screens/presenting/trending/trends_place.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <string>

namespace holdfast::kiosk::screens::testing {

/// Before any rig: rigs need an application, and paint with this one.
inline QGuiApplication& painting() {
    static int count = 3;
    static char name[] = "trends_test";
    static char platform[] = "-platform";
    static char offscreen[] = "offscreen";
    static char* arguments[] = {name, platform, offscreen, nullptr};
    static auto* app = new QGuiApplication{count, arguments}; // never deleted: threads of its own outlive statics
    return *app;
}

struct Painting {
    Painting() { painting(); }
};

/// Trends on a real book of its own: two dryers, fourteen weeks with two days each, a run a day on each dryer. Two of
/// three runs are read at the aim; what a mix went into came out under-cured.
class TrendsRig final : private Painting, public PlaceRig {
public:
    static constexpr std::int64_t kDay = 86'400'000;
    static constexpr int kWeeks = 14;
    static constexpr std::int64_t kMonday = 1'759'708'800'000; ///< 2025-10-06 00:00 UTC
    static constexpr std::int64_t kBadMix = 118;

    TrendsRig() {
        needs.study = [this](const StudyWork& work, const StudyDone& then) {
            ++studies;
            std::stop_source stop;
            if (waits) {
                later.emplace_back([this, work, then, stop] {
                    work(shop.book().reader(), stop.get_token());
                    if (!stop.stop_requested()) {
                        then(std::nullopt);
                    }
                });
                return stop;
            }
            work(shop.book().reader(), stop.get_token());
            then(std::nullopt);
            return stop;
        };
        needs.trace = [this](const std::string& run) { traced.push_back(run); };
        describe();
        floor.floor.dryer.emplace().described.dryer = "north";
        clock.setWall({kMonday + kWeeks * 7 * kDay, 0});
    }

    /// What happens at a moment, in one commit.
    void at(std::int64_t when, const std::vector<records::Record>& list) {
        ledger::CommitRequest request;
        for (const auto& record : list) {
            ledger::EntryDraft draft;
            draft.id = shop.freshId();
            draft.wallMilliseconds = when;
            draft.kind = records::rowOf(record).kind;
            draft.version = records::rowOf(record).version;
            draft.body = records::bodyOf(record);
            request.entries.push_back(draft);
        }
        const auto receipt = shop.book().commit(request);
        INFO((receipt ? std::string{} : receipt.error().what));
        REQUIRE(receipt);
    }

    /// A run with one lot and two drawn readings; its id.
    std::string printed(std::int64_t when, const std::string& dryer, std::int64_t bucket, double marginKelvin,
                        analytics::Word word) {
        const auto number = std::to_string(++m_runs);
        records::RunPlanned plan;
        plan.run = "run-" + number;
        plan.number = 20'000 + m_runs;
        plan.title = "order " + number;
        plan.pieces = 60;
        plan.dryer = dryer;
        plan.fabric = "100% cotton";
        plan.layers = {{"white", "low-cure", {{"low-cure", 1.0}}}};
        plan.layers.front().buckets = {bucket};
        records::LotOpened lot;
        lot.lot = "lot-" + number;
        lot.run = plan.run;
        lot.dryer = dryer;
        lot.revisions = {{{"low-cure", 1}}, {"100% cotton", 1}};
        records::ActionTaken started;
        started.dryer = dryer;
        started.action = records::FloorAction::started;
        at(when, {plan, started, lot});
        for (int i = 0; i < 2; ++i) {
            auto reading = records::testing::sampleReading();
            reading.run = plan.run;
            reading.lot = lot.lot;
            reading.dryer = dryer;
            reading.instrument = "probe-3";
            reading.reason = records::ReadingReason::drawn;
            reading.piece = 10 + i;
            reading.verdict->word = word;
            const auto margin = analytics::TemperatureDifference::fromCelsius(marginKelvin + 0.25 * i);
            reading.verdict->margin = analytics::MarginRange{margin, margin};
            at(when + (i + 1) * 600'000, {reading});
        }
        records::LotClosed closed;
        closed.lot = lot.lot;
        at(when + 3'600'000, {closed});
        return plan.run;
    }

    /// The fourteen weeks.
    void history() {
        constexpr std::int64_t kMorning = 8 * 3'600'000;
        for (int week = 0; week < kWeeks; ++week) {
            for (int day = 0; day < 2; ++day) {
                const auto when = kMonday + (week * 7 + day) * kDay + kMorning;
                const double wander = 0.4 * ((week * 2 + day) * 7 % 5 - 2);
                const bool bad = day == 1 && week >= 6 && week < 12;
                last = printed(when, "north", bad ? kBadMix : 31, bad ? -3.0 : 5.0 + wander,
                               bad ? analytics::Word::underCured : analytics::Word::cured);
                printed(when + 2 * 3'600'000, "east", 31, 6.0 - wander, analytics::Word::cured);
            }
        }
    }

    /// What waits is worked out now, in the order asked.
    void finish() {
        auto list = std::move(later);
        later.clear();
        for (const auto& one : list) {
            one();
        }
    }

    TrendsPlace& opened() {
        place = std::make_unique<TrendsPlace>(needs);
        place->reload();
        return *place;
    }

    std::unique_ptr<TrendsPlace> place;
    std::vector<std::string> traced;
    std::vector<std::function<void()>> later;
    std::string last; ///< run printed last on North
    int studies = 0;
    bool waits = false;

private:
    void describe() {
        const auto when = kMonday - 7 * kDay;
        at(when, {records::recordOf(analytics::starterFamilies().front(), analytics::TemperatureUnit::fahrenheit),
                  records::recordOf(analytics::starterFabrics().front(), analytics::TemperatureUnit::fahrenheit)});
        records::DryerDescribed north;
        north.dryer = "north";
        north.name = "North";
        records::DryerDescribed east;
        east.dryer = "east";
        east.name = "East";
        records::InstrumentDescribed probe;
        for (const auto& sample : records::testing::sampleOfEveryKind()) {
            if (const auto* described = std::get_if<records::InstrumentDescribed>(&sample)) {
                probe = *described;
            }
        }
        probe.instrument = "probe-3";
        records::BucketOpened pail;
        pail.bucket = "pail-31";
        pail.number = 31;
        pail.family = "low-cure";
        pail.colour = "white";
        records::MixMade mix;
        mix.bucket = "mix-118";
        mix.number = kBadMix;
        mix.name = "white mix";
        mix.colour = "white";
        mix.parts = {{"pail-31", 2.0}};
        at(when, {north, east, probe, pail, mix});
    }

    int m_runs = 0;
};

/// Everything that a person could read on it, charts too.
[[nodiscard]] inline std::string readAll(const SheetPlace& place) {
    const auto page = place.sheet();
    auto text = QString::fromStdString(allText(page)) + u'\n' + page.head + u'\n' + page.headHow;
    const auto add = [&](const QList<SheetBlock>& blocks) {
        for (const auto& block : blocks) {
            text += u'\n' + block.text;
            for (const auto& row : block.rows) {
                text += u'\n' + row.title + u'\n' + row.detail + u'\n' + row.value;
            }
            const auto& chart = block.trend;
            text += u'\n' + chart.title + u'\n' + chart.detail + u'\n' + chart.note + u'\n' + chart.none + u'\n' +
                    chart.pressHint;
            for (const auto& row : chart.rows) {
                text += u'\n' + row.rank + u' ' + row.name + u' ' + row.word + u'\n' + row.counts;
            }
            for (const auto& rule : chart.rules) {
                text += u'\n' + rule.text;
            }
            for (const auto& event : chart.events) {
                text += u'\n' + event.text;
            }
            for (const auto& bracket : chart.brackets) {
                text += u'\n' + bracket.text;
            }
        }
    };
    add(page.blocks);
    add(page.beside);
    for (const auto& action : page.besideActions) {
        text += u'\n' + action.label;
    }
    return text.toStdString();
}

/// Whether it stands there; and that no sentence lacks its table or a filling.
[[nodiscard]] inline bool reads(const SheetPlace& place, const std::string& words) {
    const auto text = readAll(place);
    INFO(text);
    CHECK(text.find("[trends") == std::string::npos);
    CHECK(text.find("[holds") == std::string::npos);
    CHECK(text.find('{') == std::string::npos);
    return text.find(words) != std::string::npos;
}

} // namespace holdfast::kiosk::screens::testing
