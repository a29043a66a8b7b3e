// A check that is kept, and what a failed one throws into doubt: both in one commit.
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/places/instruments_place.hpp"
#include "kiosk/shop/deciding/doubt_query.hpp"

namespace holdfast::kiosk::screens {
namespace {

using shop::deciding::InstrumentHolds;

std::vector<records::CheckDone> checksIn(const std::vector<records::Record>& list) {
    std::vector<records::CheckDone> checks;
    for (const auto& record : list) {
        if (const auto* check = std::get_if<records::CheckDone>(&record)) {
            checks.push_back(*check);
        }
    }
    return checks;
}

std::string saidOf(const InstrumentHolds& holds, const wording::Speech& speech) {
    const auto readings = std::to_string(holds.noLongerCured);
    std::string said =
        holds.looked == 0 ? speech.text("holds.check.nothing-read")
        : holds.noLongerCured > 0
            ? speech.text("holds.check.held", {{"count", std::to_string(holds.lots.size())}, {"readings", readings}})
        : holds.notComputed == 0 ? speech.text("holds.check.none-held", {{"count", std::to_string(holds.looked)}})
                                 : std::string{};
    if (holds.notComputed > 0) {
        said += (said.empty() ? "" : " ") +
                speech.text("holds.check.not-computed", {{"count", std::to_string(holds.notComputed)}});
    }
    return said;
}

} // namespace

void InstrumentsPlace::saveCheck() {
    auto list = m_check->records();
    const auto instrument = m_check->of().instrument;
    if (!shop::deciding::worstFailed(checksIn(list))) {
        keepSigned(std::move(list), instrument);
    } else if (!m_keeping) {
        m_needs.sign(shop::Right::keepInstruments, [this, list = std::move(list), instrument](std::int64_t person) {
            judgeAgain(list, instrument, person);
        });
    }
}

/// Traces are loaded and judged beside the main thread; the check is not kept without what it throws into doubt.
void InstrumentsPlace::judgeAgain(std::vector<records::Record> list, const std::string& instrument,
                                  std::int64_t person) {
    if (m_keeping) { // a second press while the first is under way
        return;
    }
    m_keeping = true;
    Keeping keeping;
    keeping.person = person;
    for (std::size_t i = 0; i < list.size(); ++i) {
        keeping.ids.push_back(m_needs.newId());
    }
    const auto checks = checksIn(list);
    const auto worst = *shop::deciding::worstFailed(checks);
    const auto wall = m_needs.clock->wall();
    const shop::deciding::CheckFailed failed{keeping.ids[worst], checks[worst], wall.millisecondsSinceEpoch,
                                             wall.utcOffsetMinutes, m_needs.floor().guard};
    keeping.list = std::move(list);
    m_needs.tell({m_needs.speech().text("holds.check.judging"), {}, {}});
    m_beside.run(
        [this, folder = m_needs.book->folder(), failed, keeping = std::move(keeping), instrument]() -> Beside::Answer {
            return [this, holds = shop::deciding::holdsOfFailedCheck(folder, failed), keeping, instrument] {
                keepDoubt(holds, keeping, instrument);
                m_needs.show();
            };
        });
}

void InstrumentsPlace::keepDoubt(const ledger::Result<InstrumentHolds>& judged, Keeping keeping,
                                 const std::string& instrument) {
    const auto bin = records::nextBin(m_needs.book->reader());
    if (!judged || !bin) { // what was found in the bath stays on the screen
        m_keeping = false;
        const auto& failure = judged ? bin.error() : judged.error();
        m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
        return;
    }
    auto holds = *judged;
    shop::deciding::number(holds, m_needs.newId, *bin);
    keeping.list.insert(keeping.list.end(), holds.list.begin(), holds.list.end());
    m_needs.keep(std::move(keeping), [this, instrument, said = saidOf(holds, m_needs.speech())](
                                         const std::optional<ledger::Failure>& failure) {
        m_keeping = false;
        if (failure) {
            m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
            return;
        }
        closeSheets();
        reload();
        choose(instrument);
        m_needs.tell({said, {}, {}});
    });
}

} // namespace holdfast::kiosk::screens
