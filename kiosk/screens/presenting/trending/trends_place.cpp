#include "kiosk/screens/presenting/trending/trends_place.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/presenting/trending/briefing_sheet.hpp"
#include "kiosk/screens/presenting/trending/trends_files.hpp"
#include "kiosk/wording/notices.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::screens {
namespace {

using records::BeltPosition;
using trending::FactIndex;
using trending::kNoFact;

constexpr std::string_view kDryer = "trends.dryer.";
constexpr std::string_view kFamily = "trends.family.";
constexpr std::string_view kPosition = "trends.position.";
constexpr std::string_view kSpan = "trends.span.";
constexpr std::string_view kDrop = "trends.drop.";

std::optional<std::string> restOf(const std::string& id, std::string_view start) {
    return id.compare(0, start.size(), start) == 0 ? std::optional{id.substr(start.size())} : std::nullopt;
}

std::optional<std::string> chosenOf(const std::string& name) {
    return name.empty() ? std::nullopt : std::optional{name};
}

std::optional<BeltPosition> positionOf(const std::string& name) {
    return name == "left"     ? std::optional{BeltPosition::left}
           : name == "centre" ? std::optional{BeltPosition::centre}
           : name == "right"  ? std::optional{BeltPosition::right}
                              : std::nullopt;
}

TrendsSpan spanOf(const std::string& name) {
    return name == "quarter"     ? TrendsSpan::quarter
           : name == "half-year" ? TrendsSpan::halfYear
           : name == "year"      ? TrendsSpan::year
                                 : TrendsSpan::all;
}

template <class T>
const T* named(const std::vector<T>& list, const std::string& id) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id == id; });
    return found == list.end() ? nullptr : &*found;
}

std::optional<std::size_t> numberOf(const std::string& text) {
    std::size_t number = 0;
    const auto* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    return read.ec == std::errc{} && read.ptr == end ? std::optional{number} : std::nullopt;
}

} // namespace

TrendsPlace::TrendsPlace(PlaceNeeds needs) : m_needs{std::move(needs)} {}

TrendsPlace::~TrendsPlace() {
    stop();
    m_writing.request_stop();
}

void TrendsPlace::stop() {
    m_stop.request_stop();
    m_stop = std::stop_source{std::nostopstate};
    m_busy = false;
    m_again = false;
}

void TrendsPlace::left() {
    stop();
    if (m_briefing) {
        m_briefing->left();
    }
}

void TrendsPlace::reload() {
    if (m_view == View::briefing) {
        m_briefing->reload();
    }
    const auto head = m_needs.book->head();
    if (!head) {
        m_needs.tell(wording::noticeOf(head.error(), wording::Kept::book, m_needs.speech()));
        return;
    }
    const bool asked = m_found && m_found->question == m_question;
    if (m_busy) {
        m_again = true; // what runs is let through: a busy shop would never see an answer otherwise
    } else if (!asked || m_found->sequence != head->sequence) {
        study();
    }
}

void TrendsPlace::study() {
    const auto head = m_needs.book->head();
    TrendsStudy study;
    study.question = m_question;
    study.sequence = head ? head->sequence : -1;
    study.now = m_needs.clock->wall().millisecondsSinceEpoch;
    if (const auto& dryer = m_needs.floor().floor.dryer) {
        study.home = dryer->described.dryer;
    }
    if (m_found && m_found->sequence == study.sequence) {
        study.facts = m_found->facts;
    }
    m_busy = true;
    m_again = false;
    m_failure.reset();
    const auto result = std::make_shared<ledger::Result<Found>>();
    auto source =
        m_needs.study([study, result](const SQLite::Database& reader,
                                      const std::stop_token& token) { *result = studyTrends(reader, study, token); },
                      [this, result](const std::optional<ledger::Failure>& failure) {
                          studied(failure ? ledger::Result<Found>{tl::unexpected(*failure)} : std::move(*result));
                      });
    if (m_busy) { // it may have been told at once
        m_stop = std::move(source);
    }
}

void TrendsPlace::studied(const ledger::Result<Found>& found) {
    m_busy = false;
    if (!found) {
        m_failure = found.error();
        m_needs.tell(wording::noticeOf(found.error(), wording::Kept::book, m_needs.speech()));
    } else if (*found) {
        m_found = *found;
    }
    if (m_again) {
        study();
    }
    m_needs.show();
}

void TrendsPlace::ask(TrendsQuestion question) {
    if (question == m_question) {
        return;
    }
    m_question = std::move(question);
    stop();
    study();
}

bool TrendsPlace::act(const std::string& id) {
    m_said.clear();
    return actOnBriefing(id) || actOnQuestion(id) || actOnView(id) || actOnShown(id);
}

bool TrendsPlace::actOnQuestion(const std::string& id) {
    auto question = m_question;
    if (const auto dryer = restOf(id, kDryer)) {
        question.dryer = *dryer;
    } else if (const auto family = restOf(id, kFamily)) {
        question.family = chosenOf(*family);
    } else if (const auto position = restOf(id, kPosition)) {
        question.position = positionOf(*position);
    } else if (const auto span = restOf(id, kSpan)) {
        question.span = spanOf(*span);
    } else if (const auto dropped = restOf(id, kDrop)) {
        question.family = *dropped == "family" ? std::nullopt : question.family;
        question.bucket = *dropped == "bucket" ? std::nullopt : question.bucket;
        question.position = *dropped == "position" ? std::nullopt : question.position;
        question.instrument = *dropped == "instrument" ? std::nullopt : question.instrument;
    } else {
        return false;
    }
    ask(std::move(question));
    return true;
}

bool TrendsPlace::actOnBriefing(const std::string& id) {
    if (id == kBriefingPress) {
        if (!m_briefing) {
            m_briefing = std::make_unique<BriefingSheet>(m_needs);
        }
        m_view = View::briefing;
        m_briefing->reload();
        return true;
    }
    if (m_view != View::briefing) {
        return false;
    }
    if (id == "briefing.back") {
        m_view = View::charts;
        m_briefing->left();
        return true;
    }
    return m_briefing->act(id);
}

bool TrendsPlace::actOnView(const std::string& id) {
    if (id == "trends.back") {
        m_view = View::charts;
    } else if (id == "trends.choose") {
        m_view = View::choose;
    } else if (id == "trends.wash") {
        m_view = View::wash;
    } else if (id == "trends.instruments") {
        m_view = View::instruments;
    } else if (id == "trends.files") {
        layFiles();
    } else {
        return false;
    }
    return true;
}

bool TrendsPlace::actOnShown(const std::string& id) {
    if (const auto run = restOf(id, kTrendsRun)) {
        m_needs.trace(*run);
    } else if (const auto instrument = restOf(id, kTrendsInstrument)) {
        auto question = m_question;
        question.instrument = *instrument;
        m_view = View::charts;
        ask(std::move(question));
    } else if (restOf(id, kTrendsSuspect) || restOf(id, kTrendsWeek)) {
        m_lots = id;
        m_lotsOf = m_found;
        m_view = lotsShown().empty() ? m_view : View::lots;
    } else {
        return false;
    }
    return true;
}

bool TrendsPlace::enter(const std::string& /*field*/, const std::string& /*text*/) {
    return false;
}

bool TrendsPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    using Kind = drivers::TicketKind;
    const auto number = static_cast<std::int64_t>(code.number);
    if (!onScreen || (code.kind != Kind::run && code.kind != Kind::bucket && code.kind != Kind::instrument)) {
        return false;
    }
    m_said.clear();
    if (!m_found) {
        tell(text("trends.page.not-yet"));
        return true;
    }
    if (code.kind == Kind::run) {
        return scannedRun(number);
    }
    if (code.kind == Kind::instrument) {
        return scannedInstrument(number);
    }
    const auto& buckets = m_found->facts->buckets;
    if (std::none_of(buckets.begin(), buckets.end(), [&](const auto& one) { return one.number == number; })) {
        tell(text("trends.page.no-bucket", {{"number", std::to_string(number)}}));
        return true;
    }
    auto question = m_question;
    question.bucket = number;
    m_view = View::charts;
    ask(std::move(question));
    return true;
}

/// Its dryer and its ink: how prints like it have done.
bool TrendsPlace::scannedRun(std::int64_t number) {
    const auto& facts = *m_found->facts;
    const auto run =
        std::find_if(facts.runs.begin(), facts.runs.end(), [&](const auto& one) { return one.number == number; });
    if (run == facts.runs.end()) {
        tell(text("trends.page.no-run", {{"number", std::to_string(number)}}));
        return true;
    }
    auto question = m_question;
    const auto at = static_cast<FactIndex>(run - facts.runs.begin());
    for (const auto& lot : facts.lots) {
        if (lot.run == at && lot.dryer != kNoFact) {
            question.dryer = facts.dryers[static_cast<std::size_t>(lot.dryer)].id;
        }
    }
    question.family = run->families.empty() ? std::nullopt : std::optional{run->families.front()};
    m_view = View::charts;
    m_said = text("trends.page.as-run", {{"number", std::to_string(number)}});
    ask(std::move(question));
    return true;
}

bool TrendsPlace::scannedInstrument(std::int64_t number) {
    const auto list = records::instruments(m_needs.book->reader(), true);
    if (!list) {
        m_needs.tell(wording::noticeOf(list.error(), wording::Kept::book, m_needs.speech()));
        return true;
    }
    const auto found = std::find_if(list->begin(), list->end(), [&](const auto& one) {
        return one.described.number && *one.described.number == number;
    });
    if (found == list->end()) {
        tell(text("trends.page.no-instrument"));
        return true;
    }
    auto question = m_question;
    question.instrument = found->described.instrument;
    m_view = View::charts;
    ask(std::move(question));
    return true;
}

const TrendsSuspect* TrendsPlace::suspectShown() const {
    const auto at = restOf(m_lots, kTrendsSuspect);
    const auto number = at ? numberOf(*at) : std::nullopt;
    return m_lotsOf && number && *number < m_lotsOf->named.size() ? &m_lotsOf->named[*number] : nullptr;
}

std::vector<FactIndex> TrendsPlace::lotsShown() const {
    if (const auto* suspect = suspectShown()) {
        return suspect->lots;
    }
    const auto at = restOf(m_lots, kTrendsWeek);
    const auto number = at ? numberOf(*at) : std::nullopt;
    return m_lotsOf && number && *number < m_lotsOf->failures.weeks.size()
               ? m_lotsOf->failures.weeks[*number].failedLots
               : std::vector<FactIndex>{};
}

TrendsHow TrendsPlace::how() const {
    const auto wall = m_needs.clock->wall();
    const int offset = m_found ? m_found->facts->utcOffsetMinutes : wall.utcOffsetMinutes;
    return {m_needs.speech(), offset, wall.millisecondsSinceEpoch};
}

std::string TrendsPlace::dryerName() const {
    if (!m_found) {
        return {};
    }
    const auto& dryers = m_found->facts->dryers;
    if (m_question.dryer) {
        const auto* chosen = named(dryers, *m_question.dryer);
        return chosen == nullptr ? text("trends.page.all-dryers") : chosen->name;
    }
    return m_found->dryer == kNoFact ? text("trends.page.all-dryers")
                                     : dryers[static_cast<std::size_t>(m_found->dryer)].name;
}

void TrendsPlace::layFiles() {
    if (!m_found) {
        tell(text("trends.page.not-yet"));
        return;
    }
    TrendsFiles files;
    files.folder = m_needs.exchange;
    const auto dryer = dryerName();
    const auto name = [&](const char* what) {
        return trendsFileName(what, dryer, drivers::localDay(m_needs.clock->wall()));
    };
    if (m_view == View::wash) {
        files.charts.push_back({name("wash"), chart(washes)});
    } else if (m_view == View::instruments) {
        files.charts.push_back({name("instruments"), chart(instruments)});
    } else if (m_view == View::lots) {
        files.tables.push_back({name("lots"), lotsTable(*m_lotsOf, lotsShown(), how())});
    } else {
        files.charts.push_back({name("margins"), chart(margins)});
        files.charts.back().chart.note = toQString(marginNote(*m_found, how()));
        files.charts.push_back({name("failures"), chart(failures)});
        files.charts.back().chart.note = toQString(failureNote(*m_found, how()));
        files.tables.push_back({name("shared"), suspectsTable(*m_found, how())});
    }
    m_writing.request_stop();
    const auto fault = std::make_shared<bool>(false);
    const auto written = std::make_shared<std::size_t>(0);
    m_writing = m_needs.study(
        [files, fault, written](const SQLite::Database&, const std::stop_token& token) {
            const auto done = writeTrendsFiles(files, token);
            *fault = !done;
            *written = done.value_or(0);
        },
        [this, files, fault, written](const std::optional<ledger::Failure>& failure) {
            if (failure || *fault) {
                m_needs.tell({text("trends.page.files-fault"), text("trends.page.files-fault-kept"),
                              text("trends.page.files-fault-to-do", {{"folder", files.folder.string()}})});
            } else {
                m_said =
                    text("trends.page.files", {{"count", std::to_string(*written)}, {"folder", files.folder.string()}});
            }
            m_needs.show();
        });
}

} // namespace holdfast::kiosk::screens
