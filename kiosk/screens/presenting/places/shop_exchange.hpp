#pragma once

#include "kiosk/screens/presenting/places/shop_section.hpp"
#include "kiosk/shop/keeping/exchange.hpp"

namespace holdfast::kiosk::screens {

/// The shop file: written to the exchange folder, and read from there with a look at what it would change first. Both
/// with an owner's signature.
class ShopExchange final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;

private:
    void look();
    void choose(std::size_t index);
    void takeOver(std::int64_t person);
    void exportFile();
    void addPreview(SheetPageState& page) const;

    std::vector<std::filesystem::path> m_files;
    std::optional<std::filesystem::path> m_chosen;
    bool m_unreadable = false;
    std::vector<records::RecordFault> m_faults;
    std::optional<records::ShopFile> m_file; ///< sound
    shop::ImportPlan m_plan;                 ///< what it would become
    std::string m_said;                      ///< how the last thing went
};

} // namespace holdfast::kiosk::screens
