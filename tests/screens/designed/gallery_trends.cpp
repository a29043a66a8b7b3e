#include "tests/screens/designed/gallery_parts.hpp"
#include "tests/screens/designed/invented_charts.hpp"

namespace holdfast::kiosk::screens::invented {
namespace {

SheetBlock chart(TrendChartState trend) {
    return {.kind = SheetKinds::TrendChart, .trend = std::move(trend)};
}

SheetPageState page(QList<SheetBlock> blocks) {
    SheetPageState state;
    state.heading = q("What to look at");
    state.list = {{.id = q("trends.north"), .title = q("North dryer"), .detail = q("sinking"), .chosen = true},
                  {.id = q("trends.south"), .title = q("South dryer"), .detail = q("steady")},
                  {.id = q("trends.failures"), .title = q("Failed lots"), .detail = q("week 48 over the limit")}};
    state.blocks = std::move(blocks);
    state.detailOnly = true; // upright the chart is what is looked at
    state.back = action("trends.back", "All trends");
    state.actions = {action("trends.lots", "Lots with M-118", true, "M-118"), action("trends.csv", "Keep the figures")};
    return state;
}

GalleryState state(const char* name, SheetPageState sheet, bool whole = false) {
    HeaderState head = header("Next test", "24 h look, 16:00", "2 lots", "14:31");
    head.title = {q("Trends · North"), q("last 40 runs, 2 Sep – 25 Nov"), q("dryer")};
    KioskState kiosk = frame("trends", head);
    kiosk.places = {{q("dryer"), q("Dryer")}, {q("run"), q("Run")},       {q("tests"), q("Tests")},
                    {q("holds"), q("Holds")}, {q("trends"), q("Trends")}, {q("complaint"), q("Complaint")},
                    {q("inks"), q("Inks")},   {q("shop"), q("Shop")}};
    if (whole) {
        sheet.heading.clear();
        sheet.list.clear();
    }
    return {q(name), [=](KioskModel& model) {
                model.openScanEntry(false);
                model.setState(kiosk);
                model.sheet()->setState(sheet);
                model.openPad({});
            }};
}

} // namespace

std::vector<GalleryState> trendStates() {
    return {state("sheet-trends", page({chart(marginChart()), chart(failureChart())})),
            state("sheet-trends-whole", page({chart(marginChart())}), true),
            state("sheet-trends-shares", page({chart(sharedChart())})),
            state("sheet-trends-since", page({chart(sinceChart()), chart(driftChart())})),
            state("sheet-trends-survival", page({chart(survivalChart()), chart(ladderChart())})),
            state("sheet-trends-strips", page({chart(stripChart()), chart(briefingChart())})),
            state("sheet-trends-many", page({chart(denseChart()), chart(emptyChart())})),
            state("sheet-trends-long", page({chart(longChart())}))};
}

} // namespace holdfast::kiosk::screens::invented
