#include "kiosk/screens/presenting/places/runs_place.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/plan_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr int kMostListed = 500;
constexpr int kTicketWidth = 4;
} // namespace

void RunsPlace::reload() {
    m_rows.clear();
    for (const auto kind : {records::PlanKind::run, records::PlanKind::windowCard}) {
        if (auto rows = records::runsOnFile(m_needs.book->reader(), kind, m_finished, kMostListed)) {
            m_rows.insert(m_rows.end(), rows->begin(), rows->end());
        }
    }
    if (m_run) {
        choose(m_run->plan.run);
    }
}

void RunsPlace::choose(const std::string& run) {
    const auto found = records::runById(m_needs.book->reader(), run);
    if (!m_run || m_run->plan.run != run) { // what is typed for this one outlives a reload
        m_finishing.reset();
    }
    m_run = found ? *found : std::nullopt;
}

bool RunsPlace::act(const std::string& id) {
    if (id == "runs.back") {
        const bool wasOver = isFormShown() || m_import || m_finishing;
        if (isFormShown()) {
            m_form.reset();
        }
        m_import.reset();
        m_finishing.reset();
        if (!wasOver) {
            m_run.reset();
        }
    } else if (id == "runs.toggle") {
        m_finished = !m_finished;
        m_run.reset();
        reload();
    } else if (id == "runs.new") {
        startForm({});
    } else if (id == "runs.resume" && m_form) {
        m_aside = false;
        m_import.reset();
        m_finishing.reset();
    } else if (id == "runs.import") {
        startImport();
    } else if (id.compare(0, kRunsPick.size(), kRunsPick) == 0) {
        m_aside = true; // a form that is half typed is kept
        m_import.reset();
        choose(id.substr(kRunsPick.size()));
    } else {
        return actOnForm(id) || actOnRun(id);
    }
    return true;
}

bool RunsPlace::actOnForm(const std::string& id) {
    if (id == "runs.save" && isFormShown()) {
        savePlan();
        return true;
    }
    if (id == "runs.import-now" && m_import) {
        importPlans();
        return true;
    }
    return (isFormShown() && m_form->act(id)) || (m_import && m_import->act(id));
}

bool RunsPlace::actOnRun(const std::string& id) {
    if (!m_run) {
        return false;
    }
    const auto& plan = m_run->plan;
    const bool isRun = plan.kind == records::PlanKind::run;
    if (id == "runs.belt") {
        m_needs.scan(drivers::encode(isRun ? drivers::TicketKind::run : drivers::TicketKind::window,
                                     static_cast<std::uint64_t>(plan.number), kTicketWidth));
    } else if (id == "runs.ticket") {
        m_needs.print({isRun ? PrintWish::What::runTicket : PrintWish::What::windowCard, plan.number});
    } else if (id == "runs.change") {
        startForm(shop::draftOf(plan));
    } else if (id == "runs.finish") {
        m_finishing = Finishing{plan.pieces ? std::to_string(*plan.pieces) : std::string{}, {}};
    } else if (id == "runs.finish-now" && m_finishing) {
        finish();
    } else {
        return false;
    }
    return true;
}

bool RunsPlace::enter(const std::string& field, const std::string& typed) {
    if (m_finishing && (field == "runs.made" || field == "runs.spoiled")) {
        (field == "runs.made" ? m_finishing->made : m_finishing->spoiled) = typed;
        m_finishing->tried = false;
        return true;
    }
    return isFormShown() && m_form->enter(field, typed);
}

/// A ticket goes to the belt from everywhere.
bool RunsPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (code.kind != drivers::TicketKind::bucket || !onScreen || !isFormShown()) {
        return false;
    }
    if (const auto fault = m_form->pour(static_cast<std::int64_t>(code.number))) {
        m_needs.tell({wording::sentence(*fault, m_needs.speech()), {}, {}});
    }
    return true;
}

bool RunsPlace::isWriting() const {
    return (m_form && m_form->isTouched()) || m_finishing.has_value();
}

} // namespace holdfast::kiosk::screens
