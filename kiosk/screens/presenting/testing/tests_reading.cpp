#include "kiosk/screens/presenting/testing/tests_reading.hpp"

#include "kiosk/shop/testing/due_reading.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
ledger::Result<std::vector<shop::DueTest>> dueNow(const SQLite::Database& book, const drivers::WallTime& now) {
    const auto facts = shop::dueFacts(book);
    return facts ? ledger::Result<std::vector<shop::DueTest>>{shop::dueTests(*facts, now)}
                 : tl::unexpected(facts.error());
}

std::string nextTestText(const SQLite::Database& book, const drivers::WallTime& now, const wording::Speech& speech) {
    const auto due = dueNow(book, now);
    const auto methods = records::methods(book);
    if (!due || due->empty() || !methods) {
        return {};
    }
    const auto& first = due->front();
    const auto method =
        std::find_if(methods->begin(), methods->end(), [&](const auto& one) { return one.key == first.method; });
    if (method == methods->end()) {
        return {};
    }
    const auto what = first.step == shop::DueStep::judgeLoad
                          ? speech.text("tests.due.judge", {{"load", std::to_string(first.loadNumber)}})
                          : wording::testTitle(*method, first.cycle, speech);
    return speech.text("tests.due.next", {{"what", what}, {"when", wording::dueText(first, now, speech)}});
}

} // namespace holdfast::kiosk::screens
