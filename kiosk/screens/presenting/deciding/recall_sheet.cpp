#include "kiosk/screens/presenting/deciding/recall_sheet.hpp"

#include "kiosk/screens/presenting/deciding/file_laid.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/screens/presenting/places/print_recall.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr double kSecond = 1e6; // microseconds

} // namespace

RecallSheet::RecallSheet(const PlaceNeeds& needs, Done done, LotShown lot)
    : HoldsPage{needs, std::move(done)}, m_lot{std::move(lot)} {
    reload();
}

void RecallSheet::reload() {
    if (!m_lot) {
        return;
    }
    auto lot = lotShown(*needs().book, m_lot->row.id);
    if (!lot) {
        tell(lot.error());
        return;
    }
    if (*lot) {
        m_lot = std::move(**lot);
    }
    m_found = shop::deciding::MockRecall{
        shop::deciding::recallOf(m_lot->moves, m_lot->plan.run, m_lot->plan.number, m_lot->row.id, m_lot->row.number)};
}

bool RecallSheet::scanned(const drivers::TicketCode& code) {
    if (m_lot || code.kind != drivers::TicketKind::bucket) {
        return false;
    }
    recallBucket(static_cast<std::int64_t>(code.number));
    return true;
}

void RecallSheet::recallBatch(const std::string& batch) {
    m_bucket = 0;
    const auto since = needs().clock->now();
    finish(records::reachedByBatch(needs().book->reader(), batch), since,
           text("holds.mock.of-batch", {{"batch", batch}}));
}

void RecallSheet::recallBucket(std::int64_t number) {
    m_bucket = number;
    m_batch.clear();
    const auto since = needs().clock->now();
    finish(records::reachedByBucket(needs().book->reader(), number), since,
           text("holds.mock.of-bucket", {{"bucket", std::to_string(number)}}));
}

void RecallSheet::finish(const ledger::Result<std::vector<records::ReachedCarton>>& reached,
                         drivers::MonotonicTime since, const std::string& of) {
    if (!reached) {
        tell(reached.error());
        return;
    }
    m_said.clear();
    m_of = of;
    m_found.emplace();
    m_found->list = shop::deciding::recallOf(*reached);
    m_found->seconds = static_cast<double>((needs().clock->now() - since).count()) / kSecond;
}

bool RecallSheet::enter(const std::string& field, const std::string& typed) {
    if (field != "holds.recall.batch" || m_lot) {
        return false;
    }
    m_batch = shop::trimmed(typed);
    m_found.reset();
    if (!m_batch.empty()) {
        recallBatch(m_batch);
    }
    return true;
}

bool RecallSheet::act(const std::string& id) {
    if (id == "holds.recall.print" && m_found) {
        needs().print(m_lot          ? PrintWish{PrintWish::What::recall, 0, m_lot->row.id}
                      : m_bucket > 0 ? PrintWish{PrintWish::What::recallOfBucket, m_bucket}
                                     : PrintWish{PrintWish::What::recall, 0, m_batch});
    } else if (id == "holds.recall.csv" && m_found) {
        writeFile();
    } else if (id == "holds.recall.again") {
        m_found.reset();
        m_batch.clear();
        m_said.clear();
    } else {
        return false;
    }
    return true;
}

void RecallSheet::writeFile() {
    const PrintSource source{*needs().book, needs().clock->wall(), {}, {}};
    const auto list = m_lot          ? recallOfLot(source, m_lot->row.id)
                      : m_bucket > 0 ? recallOfBucket(source, m_bucket)
                                     : recallOfBatch(source, m_batch);
    const auto day = wording::dateText(drivers::localDay(needs().clock->wall()));
    const auto name = m_lot ? "recall-run-" + std::to_string(m_lot->plan.number) + "-lot-" +
                                  std::to_string(m_lot->row.number) + "-" + day + ".csv"
                            : "mock-recall-" + day + ".csv";
    const bool written = list && layFile(needs().exchange / name, reports::csvOf(*list, speech()));
    m_said = text(written ? "holds.recall.written" : "holds.recall.not-written",
                  {{"file", name}, {"folder", needs().exchange.string()}});
}

void RecallSheet::addList(SheetPageState& page) const {
    const auto& list = m_found->list;
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < list.lines.size() && i < kMostShown; ++i) {
        const auto& line = list.lines[i];
        auto row = factRow(text("holds.recall.row",
                                {{"customer", line.customer.empty() ? text("holds.recall.no-customer") : line.customer},
                                 {"count", std::to_string(line.pieces)}}),
                           line.cartons.empty() ? text("holds.recall.no-cartons") : shop::namesJoined(line.cartons),
                           text("holds.recall.detail",
                                {{"run", std::to_string(line.runNumber)},
                                 {"lot", std::to_string(line.lotNumber)},
                                 {"day", line.day ? wording::dateText(*line.day) : text("holds.recall.no-day")}}));
        row.id = toQString(std::string{kHoldsReached} + line.run);
        rows.push_back(row);
    }
    if (!rows.empty()) {
        page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    }
    if (list.lines.size() > kMostShown) {
        page.blocks.append(textBlock(
            SheetKinds::Note, text("holds.recall.more", {{"count", std::to_string(list.lines.size() - kMostShown)}})));
    }
}

void RecallSheet::addMock(SheetPageState& page) const {
    page.title = toQString(text("holds.mock.title"));
    page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.mock.lead")));
    page.blocks.append(fieldsBlock({fieldOf("holds.recall.batch", text("holds.mock.field"), m_batch)}));
    if (!m_found) {
        return;
    }
    const auto& list = m_found->list;
    page.blocks.append(textBlock(SheetKinds::Heading, m_of));
    page.blocks.append(
        leadBlock(list.lots == 0 ? text("holds.mock.nothing")
                                 : text("holds.mock.result", {{"lots", std::to_string(list.lots)},
                                                              {"pieces", std::to_string(list.pieces)},
                                                              {"cartons", std::to_string(list.cartons)},
                                                              {"seconds", wording::numberText(m_found->seconds, 1)}})));
}

void RecallSheet::addTo(SheetPageState& page) const {
    if (m_lot) {
        page.title = toQString(text("holds.recall.title", {{"run", std::to_string(m_lot->plan.number)},
                                                           {"lot", std::to_string(m_lot->row.number)}}));
    } else {
        addMock(page);
    }
    if (!m_said.empty()) {
        page.blocks.append(leadBlock(m_said));
    }
    if (m_found && m_lot) {
        const auto& list = m_found->list;
        page.blocks.append(leadBlock(list.lines.empty() ? text("holds.recall.nothing")
                                                        : wording::recallSumText(list.pieces, list.cartons,
                                                                                 list.customers, list.lots, speech())));
    }
    if (m_found) {
        if (!m_lot && m_found->list.lotsHere > 0) {
            page.blocks.append(textBlock(
                SheetKinds::Sentence, text("holds.recall.here", {{"count", std::to_string(m_found->list.lotsHere)}})));
        }
        addList(page);
    }
    if (m_found && !m_found->list.lines.empty()) {
        page.actions.append(pressOf("holds.recall.print", text("holds.recall.print"), true));
        page.actions.append(pressOf("holds.recall.csv", text("holds.recall.csv")));
    }
    if (!m_lot && m_found) {
        page.actions.append(pressOf("holds.recall.again", text("holds.mock.again")));
    }
    page.actions.append(pressOf("holds.back", text("holds.back")));
}

} // namespace holdfast::kiosk::screens
