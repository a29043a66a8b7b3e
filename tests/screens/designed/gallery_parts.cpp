#include "tests/screens/designed/gallery_parts.hpp"

#include <array>
#include <utility>

namespace holdfast::kiosk::screens::invented {

QString q(const char* text) {
    return QString::fromUtf8(text);
}

ActionState action(const char* id, const char* label, bool primary, const char* shortLabel) {
    return {.id = q(id), .label = q(label), .primary = primary, .shortLabel = q(shortLabel)};
}

HeaderState header(const char* due, const char* dueHow, const char* holds, const char* clock) {
    return {.title = {q("North · Run 20418"), q("144 red jerseys, 100 % polyester"), q("dryer")},
            .crew = {q("Crew of 3"), q("early shift"), q("crew")},
            .probe = {q("Probe P-3"), q("live · 0.1 s"), q("instruments")},
            .due = {q(due), q(dueHow), q("due")},
            .hold = {q("On hold"), q(holds), q("holds")},
            .clock = {q(clock), q("Tuesday"), q("")},
            .demo = true};
}

KioskState frame(const char* place, const HeaderState& head) {
    return {.place = q(place),
            .header = head,
            .places = {{q("dryer"), q("Dryer")}, {q("run"), q("Run")}},
            .refusal = {},
            .scanEntry = {},
            .touchLocked = {}};
}

/// A ride: slow warm-up to the knee, an arch to the peak, a fast fall, a tail. Ends at `until`.
QList<TracePoint> ride(double peak, double until) {
    const auto rise = [peak](double share) { return 243.0 + share * (peak - 243.0); };
    const std::vector<std::pair<double, double>> knots = {
        {0, 70},         {7, 95},          {12, 130},       {18, 178},        {23, 212},       {27, 243},
        {30, rise(.32)}, {34, rise(.59)},  {38, rise(.77)}, {42, rise(.887)}, {46, rise(.97)}, {50, peak},
        {54, rise(.98)}, {57, rise(.935)}, {60, rise(.84)}, {63, rise(.59)},  {66, rise(.24)}, {68, 236},
        {72, 205},       {78, 172},        {84, 145}};
    QList<TracePoint> points;
    std::size_t i = 0;
    for (double s = 0.0; s <= until; s += 0.25) {
        while (i + 2 < knots.size() && knots[i + 1].first < s) {
            ++i;
        }
        const auto [s0, t0] = knots[i];
        const auto [s1, t1] = knots[i + 1];
        const double m0 = i > 0 ? (t1 - knots[i - 1].second) / (s1 - knots[i - 1].first) : (t1 - t0) / (s1 - s0);
        const double m1 =
            i + 2 < knots.size() ? (knots[i + 2].second - t0) / (knots[i + 2].first - s0) : (t1 - t0) / (s1 - s0);
        const double w = s1 - s0;
        const double u = (s - s0) / w;
        const double t = (1 + 2 * u) * (1 - u) * (1 - u) * t0 + u * (1 - u) * (1 - u) * w * m0 +
                         u * u * (3 - 2 * u) * t1 + u * u * (u - 1) * w * m1;
        points.append({.seconds = s, .atShown = t});
    }
    return points;
}

/// The run's window: cure 285, cloth 300, gel 255, g 5 °F; the aim is the middle of 290 to 295.
HeatScaleState windowScale() {
    HeatScaleState scale;
    scale.cures = {{.atShown = 285, .guardShown = 5, .axisText = q("285"), .word = q("cure · low-cure")}};
    scale.bleedCeiling =
        CeilingLine{.atShown = 300, .guardShown = 5, .axisText = q("300"), .word = q("too hot for polyester")};
    scale.hardCeiling = std::nullopt;
    scale.gel = ScaleNote{255, q("255"), q("gel")};
    scale.aim = ScaleNote{292.5, {}, q("aim 292.5")};
    return scale;
}

HeatScaleState judgedScale(double peak, MarkKind verdict, const char* text, const char* secondsOver, double from,
                           double to) {
    HeatScaleState scale = windowScale();
    scale.trace = ride(peak);
    scale.verdict = verdict;
    scale.peak = PeakNote{50, peak, q(text), q(secondsOver), from, to};
    scale.spoken = q("Heat scale: cure 285, ceiling 300, peak ") + q(text);
    return scale;
}

RefusalState unknownCode() {
    return {.happened = q("No run 20481 is known here."),
            .keptHeading = q("Kept"),
            .kept = q("Run 20418 stands as it was. The scan is noted."),
            .toDoHeading = q("What to do"),
            .toDo = q("Scan the ticket again, or open the run by its number."),
            .help = action("scan", "Type the number"),
            .leave = action("dismiss", "Close")};
}

} // namespace holdfast::kiosk::screens::invented
