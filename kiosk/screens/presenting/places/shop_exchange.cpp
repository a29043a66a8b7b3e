#include "kiosk/screens/presenting/places/shop_exchange.hpp"

#include "kiosk/screens/presenting/places/brought_file.hpp"
#include "kiosk/screens/presenting/places/listed.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <cstdlib>
#include <fstream>
#include <iterator>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kBroughtFile = "shop.file.pick.";
constexpr const char* kExportName = "holdfast-shop.json";

/// Whole or not at all: what stood there before stays until the new one is written.
bool writeWhole(const std::filesystem::path& file, const std::string& text) {
    std::error_code fault;
    std::filesystem::create_directories(file.parent_path(), fault);
    auto beside = file;
    beside += ".part";
    {
        std::ofstream out{beside, std::ios::binary | std::ios::trunc};
        out << text;
        out.flush();
        if (!out) {
            return false;
        }
    }
    std::filesystem::rename(beside, file, fault);
    return !fault;
}

} // namespace

void ShopExchange::reload() {
    look();
}

void ShopExchange::look() {
    m_files.clear();
    std::error_code ignored;
    for (const auto& item : std::filesystem::directory_iterator{needs().exchange, ignored}) {
        const auto ending = item.path().extension().string();
        if (item.is_regular_file(ignored) && (ending == ".json" || ending == ".JSON")) {
            m_files.push_back(item.path());
        }
    }
    std::sort(m_files.begin(), m_files.end());
}

void ShopExchange::addTo(SheetPageState& page) const {
    page.blocks.append(
        textBlock(SheetKinds::Sentence, text("shop.file.sentence", {{"folder", needs().exchange.string()}})));
    if (!m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, m_said));
    }
    page.blocks.append(textBlock(SheetKinds::Heading, text("shop.file.import-heading")));
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < m_files.size(); ++i) {
        auto row = factRow(m_files[i].filename().string(), {});
        row.id = toQString(std::string{kBroughtFile} + std::to_string(i));
        row.chosen = m_chosen == m_files[i];
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("shop.file.none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
    addPreview(page);
    if (m_file && !m_plan.list.empty()) {
        page.actions.append(pressOf("shop.file.import-now", text("shop.file.import-now"), true));
    }
    page.actions.append(pressOf("shop.file.export", text("shop.file.export")));
}

void ShopExchange::addPreview(SheetPageState& page) const {
    if (!m_chosen) {
        return;
    }
    const auto say = [&](SheetKinds::Block kind, const std::string& line) {
        page.blocks.append(textBlock(kind, line));
    };
    const auto file = m_chosen->filename().string();
    if (m_unreadable) {
        say(SheetKinds::Lead, text("shop.file.unreadable", {{"file", file}}));
        return;
    }
    if (!m_file) {
        say(SheetKinds::Lead, text("shop.file.faulty", {{"file", file}, {"count", std::to_string(m_faults.size())}}));
        const auto shown = std::min(kMostFaultsShown, m_faults.size());
        for (std::size_t i = 0; i < shown; ++i) {
            say(SheetKinds::Sentence, wording::sentence(m_faults[i], speech()));
        }
        if (shown < m_faults.size()) {
            say(SheetKinds::Note, text("shop.file.more-faults", {{"count", std::to_string(m_faults.size() - shown)}}));
        }
        return;
    }
    if (m_plan.list.empty()) {
        say(SheetKinds::Lead, text("shop.file.nothing"));
    }
    if (!m_plan.added.empty()) {
        say(SheetKinds::Sentence, text("shop.file.added", {{"names", listed(m_plan.added)}}));
    }
    if (!m_plan.changed.empty()) {
        say(SheetKinds::Sentence, text("shop.file.changed", {{"names", listed(m_plan.changed)}}));
    }
    if (m_plan.same > 0 && !m_plan.list.empty()) {
        say(SheetKinds::Sentence, text("shop.file.same", {{"count", std::to_string(m_plan.same)}}));
    }
    if (m_plan.mixesLeftOut > 0) {
        say(SheetKinds::Note, text("shop.file.mixes", {{"count", std::to_string(m_plan.mixesLeftOut)}}));
    }
}

bool ShopExchange::act(const std::string& id) {
    if (const auto index = restOf(id, kBroughtFile)) {
        choose(static_cast<std::size_t>(std::atoi(index->c_str())));
    } else if (id == "shop.file.import-now" && m_file) {
        needs().sign(shop::Right::exchangeShopFile, [this](std::int64_t person) { takeOver(person); });
    } else if (id == "shop.file.export") {
        needs().sign(shop::Right::exchangeShopFile, [this](std::int64_t) { exportFile(); });
    } else {
        return false;
    }
    return true;
}

void ShopExchange::choose(std::size_t index) {
    m_said.clear();
    m_faults.clear();
    m_file.reset();
    m_plan = {};
    if (index >= m_files.size()) {
        m_chosen.reset();
        return;
    }
    m_chosen = m_files[index];
    const auto bytes = bytesOf(*m_chosen);
    m_unreadable = !bytes;
    if (!bytes) {
        return;
    }
    auto file = records::readShopFile(*bytes);
    if (!file) {
        m_faults = std::move(file.error());
        return;
    }
    const auto stock = shop::bookStock(needs().book->reader());
    if (!stock) {
        tell(stock.error());
        m_chosen.reset();
        return;
    }
    m_file = std::move(*file);
    m_plan = shop::importOf(*m_file, *stock, needs().newId);
}

/// Planned again: the book may have grown while somebody signed.
void ShopExchange::takeOver(std::int64_t person) {
    const auto stock = shop::bookStock(needs().book->reader());
    if (!stock || !m_file) {
        if (!stock) {
            tell(stock.error());
        }
        return;
    }
    auto plan = shop::importOf(*m_file, *stock, needs().newId);
    const auto count = plan.list.size();
    if (count == 0) {
        m_plan = std::move(plan);
        return;
    }
    keep({std::move(plan.list), person}, [this, count] {
        m_chosen.reset();
        m_file.reset();
        m_plan = {};
        m_said = text("shop.file.imported", {{"count", std::to_string(count)}});
    });
}

void ShopExchange::exportFile() {
    const auto stock = shop::bookStock(needs().book->reader());
    if (!stock) {
        tell(stock.error());
        return;
    }
    const auto written = writeWhole(needs().exchange / kExportName, records::writeShopFile(shop::exportOf(*stock)));
    m_said = text(written ? "shop.file.exported" : "shop.file.not-written",
                  {{"file", kExportName}, {"folder", needs().exchange.string()}});
    look();
}

} // namespace holdfast::kiosk::screens
