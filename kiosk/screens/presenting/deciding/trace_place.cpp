#include "kiosk/screens/presenting/deciding/trace_place.hpp"

#include "kiosk/reports/report.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/screens/presenting/deciding/trace_query.hpp"
#include "kiosk/shop/typed/typed.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr int kMostTraced = 100;
constexpr std::string_view kRun = "trace.run.";
constexpr std::string_view kTracedLot = "trace.lot.";
constexpr std::string_view kReading = "trace.reading.";
constexpr std::string_view kPrint = "trace.print.";
constexpr std::string_view kTracedComplaint = "trace.complaint.";

} // namespace

void TracePlace::failed(const ledger::Failure& failure) const {
    m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
}

void TracePlace::reload() {
    if (m_facts) {
        load(m_facts->plan.run);
    }
    if (m_reading) {
        m_reading->reload();
    }
}

void TracePlace::load(const std::string& run) {
    auto facts = traceFacts(*m_needs.book, run);
    auto people = peopleNow(*m_needs.book);
    if (!facts || !people) {
        failed(!facts ? facts.error() : people.error());
        return;
    }
    m_facts = std::move(*facts);
    m_people = std::move(*people);
    m_page = m_facts ? shop::tracing::tracePage(*m_facts) : shop::tracing::TracePage{};
}

void TracePlace::showRun(const std::string& run) {
    m_closed = std::move(m_reading);
    m_said.clear();
    m_found.clear();
    m_clue.clear();
    m_facts.reset();
    if (!run.empty()) {
        load(run);
    }
}

/// One run alone is shown at once: two touches from the clue to everything.
void TracePlace::ask(const std::string& clue) {
    m_clue = clue;
    m_facts.reset();
    m_closed = std::move(m_reading);
    auto found = records::runsByClue(m_needs.book->reader(), clue, kMostTraced);
    if (!found) {
        failed(found.error());
        return;
    }
    m_found = std::move(*found);
    if (m_found.size() == 1) {
        load(m_found.front().run);
    }
}

bool TracePlace::enter(const std::string& field, const std::string& typed) {
    if (field != "trace.clue") {
        return m_reading && m_reading->enter(field, typed);
    }
    const auto clue = shop::trimmed(typed);
    if (clue.empty()) {
        showRun({});
    } else {
        ask(clue);
    }
    return true;
}

bool TracePlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    using Kind = drivers::TicketKind;
    const auto number = static_cast<std::int64_t>(code.number);
    if (!onScreen || m_handingOn) {
        return false;
    }
    const auto& reader = m_needs.book->reader();
    std::optional<std::string> run;
    if (code.kind == Kind::run || code.kind == Kind::window) {
        const auto kind = code.kind == Kind::run ? records::PlanKind::run : records::PlanKind::windowCard;
        const auto found = records::runByNumber(reader, kind, number);
        run = found && *found ? std::optional{(*found)->plan.run} : std::nullopt;
    } else if (code.kind == Kind::print) {
        const auto print = records::printByNumber(reader, number);
        run = print && *print ? std::optional{(*print)->named.run} : std::nullopt;
    } else if (code.kind == Kind::bin) {
        const auto hold = records::holdByBin(reader, number);
        run = hold && *hold ? std::optional{(*hold)->run} : std::nullopt;
    } else if (code.kind != Kind::bucket) {
        return false;
    }
    if (code.kind == Kind::bucket) {
        ask(std::to_string(number));
        return true;
    }
    const auto clue = reports::codeTextOf(code.kind, number);
    if (run) {
        showRun(*run);
    } else {
        showRun({});
        m_clue = clue;
    }
    return true;
}

bool TracePlace::act(const std::string& id) {
    if (id == "holds.back" || id == "trace.back") {
        if (m_reading) {
            m_closed = std::move(m_reading);
        } else if (m_facts && m_found.size() > 1) {
            m_facts.reset();
        } else {
            showRun({});
        }
        m_said.clear();
        return true;
    }
    if (m_reading && m_reading->act(id)) {
        return true;
    }
    if (const auto run = restOf(id, kRun)) {
        m_closed = std::move(m_reading);
        load(*run);
    } else if (const auto reading = restOf(id, kReading)) {
        showReading(*reading);
    } else if (const auto print = restOf(id, kPrint)) {
        showPrint(*print);
    } else if (const auto lot = restOf(id, kTracedLot)) {
        m_links->lot(*lot);
    } else if (const auto complaint = restOf(id, kTracedComplaint)) {
        m_links->complaint(*complaint);
    } else if (id == "trace.certificate" && m_facts) {
        m_needs.print({PrintWish::What::certificate, m_facts->plan.number});
    } else if (id == "trace.holds") {
        m_needs.go("holds");
    } else {
        return false;
    }
    return true;
}

void TracePlace::showReading(const std::string& reading) {
    for (const auto& row : m_facts ? m_facts->readings : std::vector<records::ReadingRow>{}) {
        if (row.id == reading) {
            m_reading = std::make_unique<ReadingSheet>(
                m_needs,
                [this](const std::string& said) {
                    m_closed = std::move(m_reading); // it is still answering
                    m_said = said;
                    reload();
                },
                row);
            return;
        }
    }
}

void TracePlace::showPrint(const std::string& print) {
    for (const auto& row : m_facts ? m_facts->prints : std::vector<records::PrintRow>{}) {
        if (row.named.print == print) {
            m_handingOn = true;
            m_needs.scan(
                drivers::encode(drivers::TicketKind::print, static_cast<std::uint64_t>(row.named.number), kPrintWidth));
            m_handingOn = false;
            return;
        }
    }
}

} // namespace holdfast::kiosk::screens
