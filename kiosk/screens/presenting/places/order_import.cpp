#include "kiosk/screens/presenting/places/order_import.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/brought_file.hpp"
#include "kiosk/wording/plan_sentences.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kOrderFile = "runs.file.";
constexpr std::uintmax_t kReadAtOnce = 64U << 10U; // some hundred orders, within a frame

/// Nothing: the file cannot be read.
std::optional<shop::OrderList> readList(const std::filesystem::path& file, const shop::Stock& stock,
                                        const std::vector<std::string>& known) {
    const auto bytes = bytesOf(file);
    return bytes ? std::optional{shop::readOrders(*bytes, stock, known)} : std::nullopt;
}

} // namespace

void OrderImport::look() {
    m_files.clear();
    std::error_code ignored;
    for (const auto& item : std::filesystem::directory_iterator{m_folder, ignored}) {
        const auto ending = item.path().extension().string();
        if (item.is_regular_file(ignored) && (ending == ".csv" || ending == ".CSV" || ending == ".tsv")) {
            m_files.push_back(item.path());
        }
    }
    std::sort(m_files.begin(), m_files.end());
}

bool OrderImport::act(const std::string& id) {
    if (id.compare(0, kOrderFile.size(), kOrderFile) != 0) {
        return false;
    }
    const auto index = static_cast<std::size_t>(std::atoi(id.c_str() + kOrderFile.size()));
    if (index < m_files.size()) {
        read(m_files[index]);
    }
    return true;
}

void OrderImport::read(const std::filesystem::path& file) {
    m_chosen = file;
    const auto asked = ++*m_asked;
    std::error_code unknown; // its size: then it is read beside, and told there
    if (const auto size = std::filesystem::file_size(file, unknown); !unknown && size <= kReadAtOnce) {
        take(readList(file, m_stock, m_known));
        return;
    }
    m_reading = true;
    const std::weak_ptr<int> life = m_asked;
    m_beside.run([this, life, asked, file, stock = m_stock, known = m_known]() -> Beside::Answer {
        return [this, life, asked, list = readList(file, stock, known)] {
            const auto now = life.lock();
            if (now && *now == asked) {
                take(list);
                m_show();
            }
        };
    });
}

void OrderImport::take(std::optional<shop::OrderList> list) {
    m_reading = false;
    m_unreadable = !list;
    m_list = list ? std::move(*list) : shop::OrderList{};
}

QList<SheetBlock> OrderImport::blocks(const wording::Speech& speech) const {
    QList<SheetBlock> blocks;
    const auto folder = m_folder.string();
    blocks.append(textBlock(SheetKinds::Heading, speech.text("runs.import-heading", {{"folder", folder}})));
    if (m_files.empty()) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("runs.import-none", {{"folder", folder}})));
        return blocks;
    }
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < m_files.size(); ++i) {
        auto row = factRow(m_files[i].filename().string(), {});
        row.id = toQString(std::string{kOrderFile} + std::to_string(i));
        row.chosen = m_chosen == m_files[i];
        rows.push_back(row);
    }
    blocks.append(rowsBlock(SheetKinds::Rows, rows));
    if (!m_chosen) {
        return blocks;
    }
    if (m_reading) {
        blocks.append(
            textBlock(SheetKinds::Lead, speech.text("runs.import-reading", {{"file", m_chosen->filename().string()}})));
        return blocks;
    }
    if (m_unreadable) {
        blocks.append(textBlock(SheetKinds::Lead,
                                speech.text("runs.import-unreadable", {{"file", m_chosen->filename().string()}})));
        return blocks;
    }
    if (m_list.rows > 0) {
        blocks.append(textBlock(SheetKinds::Lead,
                                speech.text("runs.import-found", {{"plans", std::to_string(m_list.plans.size())},
                                                                  {"rows", std::to_string(m_list.rows)}})));
    }
    const auto shown = std::min(kMostFaultsShown, m_list.faults.size());
    for (std::size_t i = 0; i < shown; ++i) {
        blocks.append(textBlock(SheetKinds::Sentence, wording::sentence(m_list.faults[i], speech)));
    }
    if (shown < m_list.faults.size()) {
        blocks.append(
            textBlock(SheetKinds::Note,
                      speech.text("runs.import-more", {{"count", std::to_string(m_list.faults.size() - shown)}})));
    }
    return blocks;
}

} // namespace holdfast::kiosk::screens
