#pragma once

#include "kiosk/screens/presenting/places/beside.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/planning/order_list.hpp"
#include "kiosk/wording/sentences.hpp"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// Order lists that lie in the exchange folder: chosen, read, and what they would become before it is written. A long
/// list is read beside the main thread; one that was left meanwhile, or followed by another, answers nobody.
class OrderImport final {
public:
    /// `beside` outlives this; `show` is called when a list was read.
    OrderImport(std::filesystem::path folder, shop::Stock stock, std::vector<std::string> known, Beside& beside,
                std::function<void()> show)
        : m_folder{std::move(folder)}, m_stock{std::move(stock)}, m_known{std::move(known)}, m_beside{beside},
          m_show{std::move(show)} {
        look();
    }

    /// The files in the folder, by name.
    void look();
    bool act(const std::string& id);
    [[nodiscard]] QList<SheetBlock> blocks(const wording::Speech& speech) const;
    /// What would be planned; without ids and numbers.
    [[nodiscard]] const std::vector<records::RunPlanned>& plans() const noexcept { return m_list.plans; }

private:
    void read(const std::filesystem::path& file);
    void take(std::optional<shop::OrderList> list);

    std::filesystem::path m_folder;
    shop::Stock m_stock;
    std::vector<std::string> m_known;
    std::vector<std::filesystem::path> m_files;
    std::optional<std::filesystem::path> m_chosen;
    bool m_reading = false;
    bool m_unreadable = false;
    shop::OrderList m_list;
    Beside& m_beside;
    std::function<void()> m_show;
    std::shared_ptr<int> m_asked = std::make_shared<int>(0); ///< counts up with each list chosen; gone with this
};

} // namespace holdfast::kiosk::screens
