#include "kiosk/shop/planning/order_list.hpp"

#include "kiosk/shop/planning/table.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <set>

namespace holdfast::kiosk::shop {
namespace {

enum class Column { title, fabric, layers, reference, customer, pieces, garment, clothLot, finish, children };

struct ColumnRow final {
    Column column;
    const char* english;
    const char* spanish;
    bool needed;
};

constexpr std::array<ColumnRow, 10> kColumns{{
    {Column::title, "title", "título", true},
    {Column::fabric, "fabric", "tela", true},
    {Column::layers, "layers", "capas", true},
    {Column::reference, "reference", "referencia", false},
    {Column::customer, "customer", "cliente", false},
    {Column::pieces, "pieces", "piezas", false},
    {Column::garment, "garment", "prenda", false},
    {Column::clothLot, "cloth lot", "lote de tela", false},
    {Column::finish, "finish", "acabado", false},
    {Column::children, "children", "niños", false},
}};

std::string small(const std::string& text) {
    auto out = trimmed(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char sign) { return static_cast<char>(std::tolower(sign)); });
    return out;
}

using Places = std::array<int, kColumns.size()>; ///< index of each column's cell; −1: not there

Places placesOf(const TableRow& head, std::vector<OrderFault>& faults) {
    Places places{};
    places.fill(-1);
    for (std::size_t cell = 0; cell < head.cells.size(); ++cell) {
        const auto name = small(head.cells[cell]);
        for (std::size_t i = 0; i < kColumns.size(); ++i) {
            if (name != kColumns[i].english && name != kColumns[i].spanish) {
                continue;
            }
            if (places[i] >= 0) {
                faults.push_back({OrderFaultCause::columnTwice, head.line, name, {}});
            }
            places[i] = static_cast<int>(cell);
        }
    }
    for (std::size_t i = 0; i < kColumns.size(); ++i) {
        if (kColumns[i].needed && places[i] < 0) {
            faults.push_back({OrderFaultCause::columnMissing, head.line, kColumns[i].english, {}});
        }
    }
    return places;
}

/// What a spreadsheet would run when the list is opened there again.
bool isFormula(const std::string& cell) {
    const auto first = cell.find_first_not_of(" \t");
    return first != std::string::npos && std::string_view{"=+-@"}.find(cell[first]) != std::string_view::npos;
}

/// "white: low-cure / black: low-cure", bottom first; nothing if a part has no ink.
std::optional<std::vector<DraftLayer>> layersFrom(const std::string& cell) {
    std::vector<DraftLayer> layers;
    std::size_t begin = 0;
    while (begin <= cell.size()) {
        const auto end = std::min(cell.find('/', begin), cell.size());
        const auto part = cell.substr(begin, end - begin);
        const auto colon = part.find(':');
        if (colon == std::string::npos || part.find(':', colon + 1) != std::string::npos) {
            return std::nullopt;
        }
        layers.push_back({small(part.substr(0, colon)), part.substr(colon + 1), {}, false});
        begin = end + 1;
    }
    return layers;
}

class RowReader final {
public:
    RowReader(const Places& places, const Stock& stock, const std::vector<std::string>& known, OrderList& list)
        : m_places{places}, m_stock{stock}, m_known{known.begin(), known.end()}, m_list{list} {}

    void read(const TableRow& row, std::size_t width) {
        if (row.cells.size() != width) {
            return fault(row, OrderFaultCause::rowOfOtherLength, std::to_string(row.cells.size()));
        }
        for (const auto place : m_places) {
            if (place >= 0 && isFormula(row.cells[static_cast<std::size_t>(place)])) {
                return fault(row, OrderFaultCause::formula, row.cells[static_cast<std::size_t>(place)]);
            }
        }
        const auto layers = layersFrom(cell(row, Column::layers));
        if (!layers) {
            return fault(row, OrderFaultCause::layersUnreadable, cell(row, Column::layers));
        }
        take(row, draftFrom(row, *layers));
    }

private:
    std::string cell(const TableRow& row, Column column) const {
        const auto place = m_places[static_cast<std::size_t>(column)];
        return place < 0 ? std::string{} : row.cells[static_cast<std::size_t>(place)];
    }

    PlanDraft draftFrom(const TableRow& row, const std::vector<DraftLayer>& layers) const {
        PlanDraft draft;
        draft.title = cell(row, Column::title);
        draft.fabric = cell(row, Column::fabric);
        draft.reference = cell(row, Column::reference);
        draft.customer = cell(row, Column::customer);
        draft.pieces = cell(row, Column::pieces);
        draft.garmentColour = cell(row, Column::garment);
        draft.clothLot = cell(row, Column::clothLot);
        draft.finish = cell(row, Column::finish);
        const auto children = small(cell(row, Column::children));
        draft.childrensWear = !children.empty() && children != "no" && children != "0";
        draft.layers = layers;
        return draft;
    }

    void take(const TableRow& row, const PlanDraft& draft) {
        auto plan = planFrom(draft, m_stock);
        if (!plan) {
            for (const auto& one : plan.error()) {
                m_list.faults.push_back({OrderFaultCause::plan, row.line, {}, one});
            }
            return;
        }
        if (!plan->reference.empty() && !m_known.insert(plan->reference).second) {
            return fault(row, OrderFaultCause::referenceTwice, plan->reference);
        }
        m_list.plans.push_back(std::move(*plan));
    }

    void fault(const TableRow& row, OrderFaultCause cause, const std::string& text) {
        m_list.faults.push_back({cause, row.line, firstSigns(text), {}});
    }

    const Places& m_places;
    const Stock& m_stock;
    std::set<std::string> m_known;
    OrderList& m_list;
};

OrderList refused(OrderFaultCause cause, int line) {
    OrderList list;
    list.faults.push_back({cause, line, {}, {}});
    return list;
}

} // namespace

OrderList readOrders(std::string_view bytes, const Stock& stock, const std::vector<std::string>& known) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (bytes.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
        bytes.remove_prefix(kByteOrderMark.size());
    }
    if (const int line = firstLineNotText(bytes); line > 0) {
        return refused(OrderFaultCause::notText, line);
    }
    const auto table = readTable(bytes, separatorOf(bytes));
    if (table.unclosedQuoteAt > 0) {
        return refused(OrderFaultCause::unclosedQuote, table.unclosedQuoteAt);
    }
    if (table.rows.size() < 2) {
        return refused(OrderFaultCause::empty, 0);
    }
    OrderList list;
    list.rows = static_cast<int>(table.rows.size()) - 1;
    if (list.rows > kMostOrders) {
        list.faults.push_back({OrderFaultCause::tooManyRows, 0, std::to_string(list.rows), {}});
        return list;
    }
    const auto places = placesOf(table.rows.front(), list.faults);
    if (!list.faults.empty()) {
        return list;
    }
    RowReader reader{places, stock, known, list};
    for (std::size_t i = 1; i < table.rows.size(); ++i) {
        reader.read(table.rows[i], table.rows.front().cells.size());
    }
    return list;
}

} // namespace holdfast::kiosk::shop
