#pragma once

#include "analytics/cure/ink.hpp"
#include "kiosk/records/ink_records.hpp"
#include "kiosk/records/instrument_records.hpp"
#include "kiosk/records/record_fault.hpp"

#include <optional>

#include <string>
#include <string_view>
#include <vector>

/// The exchange format of the kiosk's import and export and of `--shop` (contracts, Shop file); its JSON Schema is
/// shop_file.schema.json beside this.
namespace holdfast::kiosk::records {

/// A part is a family or another mix of the file, never both.
struct MixPartSpec final {
    std::string name;
    bool isMix = false;
    double mass = 0.0;
};

struct MixSpec final {
    std::string name;
    std::vector<MixPartSpec> parts;
};

struct InstrumentInFile final {
    InstrumentSpec spec;
    std::vector<CertificateSpec> certificates;
    std::vector<CheckSpec> checks;
};

struct ShopFile final {
    std::vector<FamilyRecord> families;
    std::vector<FabricRecord> fabrics;
    std::vector<MixSpec> mixes;
    std::vector<InstrumentInFile> instruments;
};

/// Strict: unknown keys are refused by name, and every fault is listed with its path. Also refused: names used twice
/// within a list or by a family and a mix, faulty families and fabrics, mixes of unknown parts, of several chemistries,
/// or of themselves through any number of steps.
[[nodiscard]] RecordResult<ShopFile> readShopFile(std::string_view text);
/// Ends with a newline; read again it gives the same.
[[nodiscard]] std::string writeShopFile(const ShopFile& file);

/// The file as analytics values.
struct ShopStock final {
    std::vector<analytics::InkFamily> families;
    std::vector<analytics::Fabric> fabrics;
    std::vector<analytics::Ink> mixes; ///< flattened to families
    std::vector<analytics::Instrument> instruments;

    /// A family or mix by name; null if there is none.
    [[nodiscard]] std::optional<analytics::Ink> inkNamed(std::string_view name) const;
    [[nodiscard]] const analytics::Fabric* fabricNamed(std::string_view name) const;
    [[nodiscard]] const analytics::Instrument* instrumentNamed(std::string_view name) const;
};

/// Of a file that readShopFile gave.
[[nodiscard]] ShopStock stockOf(const ShopFile& file);
/// The starters of contracts.md, which `--ink` and `--fabric` take without `--shop`.
[[nodiscard]] ShopStock starterStock();

} // namespace holdfast::kiosk::records
