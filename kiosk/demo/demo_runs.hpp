#pragma once

#include "kiosk/demo/demo_dryers.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

struct DemoLayer final {
    const char* colour = "";
    const char* family = ""; ///< ignored where a bucket is named
    std::int64_t bucket = 0; ///< number; 0: none was scanned
    bool underbase = false;
};

struct DemoRun final {
    std::int64_t number = 0;
    DemoDryer dryer = DemoDryer::north;
    const char* title = "";
    const char* customer = "";
    const char* garment = "";
    int pieces = 0;
    const char* fabric = "";
    std::vector<DemoLayer> layers{}; ///< bottom first
    bool childrensWear = false;
};

/// By number.
[[nodiscard]] const std::vector<DemoRun>& demoRuns();
/// The shop's usual windows.
[[nodiscard]] const std::vector<DemoRun>& demoWindowCards();
/// Null: none of that number.
[[nodiscard]] const DemoRun* demoRun(std::int64_t number);

/// As somebody types it at the kiosk. `dryer` is its id.
[[nodiscard]] shop::PlanDraft draftOf(const DemoRun& run, records::PlanKind kind, const std::string& dryer);

} // namespace holdfast::kiosk::demo
