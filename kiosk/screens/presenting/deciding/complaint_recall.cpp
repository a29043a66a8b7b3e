#include "kiosk/screens/presenting/deciding/complaint_recall.hpp"

#include "kiosk/screens/presenting/deciding/file_laid.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/screens/presenting/places/print_recall.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {} // namespace

ComplaintRecall::ComplaintRecall(const PlaceNeeds& needs, std::int64_t complaint, std::vector<std::string> lots)
    : HoldsPage{needs, {}}, m_complaint{complaint}, m_lots{std::move(lots)} {
    reload();
}

void ComplaintRecall::reload() {
    m_list = recallOfLots({*needs().book, needs().clock->wall(), {}, {}}, m_complaint, m_lots);
}

bool ComplaintRecall::act(const std::string& id) {
    if (id == "complaint.recall.print" && m_list) {
        needs().print({PrintWish::What::recallOfLots, m_complaint, {}, m_lots});
    } else if (id == "complaint.recall.csv" && m_list) {
        writeFile();
    } else {
        return false;
    }
    return true;
}

void ComplaintRecall::writeFile() {
    const auto day = wording::dateText(drivers::localDay(needs().clock->wall()));
    const auto name = "recall-complaint-" + std::to_string(m_complaint) + "-" + day + ".csv";
    const bool written = layFile(needs().exchange / name, reports::csvOf(*m_list, speech()));
    m_said = text(written ? "holds.recall.written" : "holds.recall.not-written",
                  {{"file", name}, {"folder", needs().exchange.string()}});
}

void ComplaintRecall::addCustomer(SheetPageState& page, const reports::RecallCustomer& customer) const {
    page.blocks.append(
        textBlock(SheetKinds::Heading,
                  text("holds.risk.recall-customer",
                       {{"customer", customer.name.empty() ? text("holds.recall.no-customer") : customer.name},
                        {"pieces", text("holds.risk.pieces", {{"count", std::to_string(customer.pieces)}})}})));
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < customer.lines.size() && i < kMostShown; ++i) {
        const auto& line = customer.lines[i];
        rows.push_back(factRow(line.cartons.empty() ? text("holds.recall.no-cartons") : shop::namesJoined(line.cartons),
                               text("holds.risk.pieces", {{"count", std::to_string(line.pieces)}}),
                               text("holds.recall.detail",
                                    {{"run", std::to_string(line.run)},
                                     {"lot", std::to_string(line.lot)},
                                     {"day", line.day ? wording::dateText(*line.day) : text("holds.recall.no-day")}})));
    }
    page.blocks.append(rowsBlock(SheetKinds::Facts, rows));
    if (customer.lines.size() > kMostShown) {
        page.blocks.append(
            textBlock(SheetKinds::Note,
                      text("holds.recall.more", {{"count", std::to_string(customer.lines.size() - kMostShown)}})));
    }
}

void ComplaintRecall::addTo(SheetPageState& page) const {
    page.title = toQString(text("holds.risk.recall-title", {{"number", std::to_string(m_complaint)}}));
    if (!m_said.empty()) {
        page.blocks.append(leadBlock(m_said));
    }
    if (!m_list || m_list->customers.empty()) {
        page.blocks.append(
            textBlock(SheetKinds::Sentence, text(m_list ? "holds.risk.recall-nothing" : "holds.risk.not-worked-out")));
    } else {
        page.blocks.append(leadBlock(wording::recallSumText(
            m_list->pieces, m_list->cartons, static_cast<int>(m_list->customers.size()), m_list->lots, speech())));
        for (const auto& customer : m_list->customers) {
            addCustomer(page, customer);
        }
        page.actions.append(pressOf("complaint.recall.print", text("holds.recall.print"), true));
        page.actions.append(pressOf("complaint.recall.csv", text("holds.recall.csv")));
    }
    page.actions.append(pressOf("complaint.back", text("holds.leave")));
}

} // namespace holdfast::kiosk::screens
