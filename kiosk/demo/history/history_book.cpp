#include "kiosk/demo/history/history_book.hpp"

#include "kiosk/demo/history/history_story.hpp"

namespace holdfast::kiosk::demo {

ledger::Result<void> writeHistory(const HistoryFacts& facts, int utcOffsetMinutes, const std::string& probeAddress,
                                  const KeepRequest& keep) {
    HistoryPen pen{facts, utcOffsetMinutes, keep};
    telling::Story story{facts, pen};
    telling::tellOpening(story, probeAddress);
    for (int day = 0; day < facts.days; ++day) {
        telling::tellChecks(story, day);
        telling::tellFloor(story, day);
        telling::tellRetained(story, day);
        telling::tellDecisions(story, day); // of the morning: what is scrapped is tested no more
        telling::tellBench(story, day);
        telling::tellDecisions(story, day); // because of what was seen
        telling::tellComplaints(story, day);
        if (auto done = pen.finishDay(day); !done) {
            return done;
        }
    }
    return pen.finish();
}

} // namespace holdfast::kiosk::demo
