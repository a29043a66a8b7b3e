#include "kiosk/screens/presenting/deciding/complaint_causes.hpp"

#include "kiosk/screens/presenting/deciding/large_first.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPickedCause = "complaint.cause.pick.";
constexpr std::string_view kLikeComplaint = "complaint.cause.complaint.";

} // namespace

ComplaintCauses::ComplaintCauses(const PlaceNeeds& needs, std::function<void(const std::string&)> open)
    : HoldsPage{needs, {}}, m_open{std::move(open)} {
    reload();
}

ComplaintCauses::~ComplaintCauses() {
    m_stop.request_stop();
}

void ComplaintCauses::reload() {
    const auto head = needs().book->head();
    const auto sequence = head ? head->sequence : 0;
    if (!needs().study || m_working || sequence == m_sequence) {
        return;
    }
    m_sequence = sequence;
    m_working = true;
    const auto answer = std::make_shared<ledger::Result<std::shared_ptr<const Found>>>();
    m_stop = needs().study(
        [answer](const SQLite::Database& reader, const std::stop_token&) {
            auto facts = records::trendFacts(reader, {0, 0}); // findings and complaints are given wholly
            if (!facts) {
                *answer = tl::unexpected(facts.error());
                return;
            }
            auto found = std::make_shared<Found>();
            found->table = shop::trending::causeTable(*facts);
            found->facts = std::move(*facts);
            *answer = std::move(found);
        },
        [this, open = std::weak_ptr{m_alive}, answer](const std::optional<ledger::Failure>& failure) {
            if (open.expired()) {
                return;
            }
            m_working = false;
            if (failure || !*answer) {
                tell(failure ? *failure : answer->error());
            } else {
                m_found = **answer;
            }
            needs().show();
        });
}

bool ComplaintCauses::act(const std::string& id) {
    if (const auto cause = restOf(id, kPickedCause)) {
        m_chosen = m_chosen == *cause ? std::string{} : *cause;
        return true;
    }
    if (const auto complaint = restOf(id, kLikeComplaint)) {
        const auto wanted = *complaint;
        m_open(wanted); // closes this page
        return true;
    }
    return false;
}

void ComplaintCauses::addRow(SheetPageState& page, const shop::trending::CauseRow& cause) const {
    const auto name = wording::nameOf(cause.cause);
    std::vector<SheetRow> rows;
    auto row =
        factRow(largeFirst(wording::word(cause.cause, speech())).toStdString(),
                cause.findings == 0 ? text("holds.risk.cause-never")
                                    : text("holds.risk.cause-count", {{"count", std::to_string(cause.findings)}}),
                wording::decidesText(cause.cause, speech()));
    if (cause.findings > 0) {
        row.id = toQString(std::string{kPickedCause} + name);
        row.strong = true;
        row.chosen = m_chosen == name;
        auto detail = row.detail.toStdString() + "\n" +
                      text("holds.risk.cause-last", {{"day", wording::dayOf(cause.lastAt, how().utcOffsetMinutes)}});
        if (cause.provenLater > 0) {
            detail += " · " + text("holds.risk.cause-proven", {{"count", std::to_string(cause.provenLater)}});
        }
        row.detail = toQString(detail);
    }
    rows.push_back(row);
    for (const auto index : row.chosen ? cause.complaints : std::vector<records::FactIndex>{}) {
        const auto& complaint = m_found->facts.complaints[static_cast<std::size_t>(index)];
        auto one = factRow(
            text("holds.complaint.title", {{"number", std::to_string(complaint.number)}}), {},
            text("holds.complaint.row-detail", {{"what", wording::word(complaint.what, speech())},
                                                {"day", wording::dayOf(complaint.at, how().utcOffsetMinutes)}}));
        one.id = toQString(std::string{kLikeComplaint} + complaint.id);
        one.indent = 1;
        rows.push_back(one);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
}

void ComplaintCauses::addTo(SheetPageState& page) const {
    page.title = toQString(text("holds.risk.causes"));
    page.actions = {pressOf("complaint.back", text("holds.leave"))};
    if (!m_found) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.risk.working")));
        return;
    }
    const auto& table = m_found->table;
    page.blocks.append(textBlock(SheetKinds::Sentence,
                                 table.findings == 0
                                     ? text("holds.risk.causes-none")
                                     : text("holds.risk.causes-lead", {{"count", std::to_string(table.findings)}})));
    for (const auto& row : table.rows) {
        addRow(page, row);
    }
    if (!table.typed.empty()) {
        page.blocks.append(textBlock(SheetKinds::Heading, text("holds.risk.causes-typed")));
        for (const auto& typed : table.typed) {
            page.blocks.append(textBlock(SheetKinds::Sentence, typed));
        }
    }
}

} // namespace holdfast::kiosk::screens
