#include "tests/screens/designed/gallery.hpp"

#include "tests/screens/designed/gallery_parts.hpp"

namespace holdfast::kiosk::screens {
namespace {

using namespace invented;

HeatScaleState listScale(double cure, double ceiling, double guard, double peak, MarkKind verdict) {
    HeatScaleState scale;
    scale.cures = {{.atShown = cure, .guardShown = guard}};
    scale.hardCeiling = CeilingLine{.atShown = ceiling, .guardShown = guard};
    scale.peak = PeakNote{.seconds = 0, .atShown = peak};
    scale.verdict = verdict;
    return scale;
}

DryerPageState dryer() {
    DryerPageState page;
    page.scan = {.id = q("scan"),
                 .label = q("Scan a run"),
                 .primary = true,
                 .hint = q("ticket, badge, bucket or probe · or touch to type")};
    page.belt = {.heading = q("On the belt · run 20418, red jerseys"),
                 .mark = MarkKind::Cured,
                 .word = q("Cured"),
                 .note = q("+6 °F · lot 1 cleared"),
                 .showScale = true,
                 .scale = judgedScale(291, MarkKind::Cured, "291 °F", "", 0, 0),
                 .actionId = q("run")};
    page.earlierHeading = q("Earlier today");
    page.earlierNone = q("No run was read before today.");
    page.earlier = {{q("run-20417"), MarkKind::Cured, q("Run 20417"), q("Cured"), q("96 navy hoodies, blend"),
                     listScale(285, 330, 5, 292, MarkKind::Cured), q("+7 °F"), q("12:48")},
                    {q("run-20416"), MarkKind::Cured, q("Run 20416"), q("Cured"), q("60 white tees, cotton"),
                     listScale(320, 350, 5, 329, MarkKind::Cured), q("+9 °F"), q("11:30")},
                    {q("run-20413"), MarkKind::UnderCured, q("Run 20413"), q("Under-cured"), q("48 black tees, cotton"),
                     listScale(320, 350, 5, 312, MarkKind::UnderCured), q("−8 °F"), q("09:15")}};
    page.dueHeading = q("Due");
    page.dueNone = q("Nothing is due.");
    page.due = {{q("due-reading"), q("Reading, piece 72"), q("run 20418"), q("11 min"), true},
                {q("due-look"), q("24 h look"), q("white on run 20405"), q("by 16:00")},
                {q("due-wash"), q("Wash 5"), q("print of run 20391"), q("today")}};
    page.holdHeading = q("On hold · QA decides");
    page.holdNone = q("Nothing is on hold.");
    page.holds = {{q("hold-1"), MarkKind::UnderCured, q("Run 20413, lot 2"), q("24 pieces · since 09:15")},
                  {q("hold-2"), MarkKind::Overheated, q("Run 20402, lot 1"), q("36 pieces · since Monday")}};
    page.caution = q("Hot belt, hot prints: gloves on, sleeves and leads clear.");
    page.actions = {action("problem", "Problem"), action("ticket", "Print a ticket")};
    return page;
}

HeaderState dryerHeader() {
    HeaderState head = header("Next reading", "piece 72, 11 min", "2 lots", "14:02");
    head.title = {q("North dryer"), q("run 20418 · piece 41 of 144"), q("")};
    return head;
}

DryerPageState dryerEmpty() {
    DryerPageState page = dryer();
    page.belt = {.heading = q("On the belt"),
                 .mark = MarkKind::Blank,
                 .word = q("Nothing yet today"),
                 .sentence = q("Scan a ticket and send the probe through.\nThe rest happens by itself.")};
    page.earlierHeading = q("Yesterday");
    page.due[0] = {q("due-ice"), q("Ice check"), q("probe P-3"), q("first thing"), true};
    page.holdHeading = q("On hold");
    page.holds = {};
    page.actions[1] = action("ice", "Ice check");
    return page;
}

DryerPageState dryerFirstDay() {
    DryerPageState page = dryerEmpty();
    page.earlier = {};
    page.earlierHeading = q("Earlier");
    page.earlierNone = q("The first run that is read will stand here.");
    page.due = {};
    return page;
}

DryerPageState dryerUnderCured() {
    DryerPageState page = dryer();
    page.belt.mark = MarkKind::UnderCured;
    page.belt.word = q("Under-cured");
    page.belt.note = q("−8 °F · pull pieces 37–72");
    page.belt.scale = judgedScale(277, MarkKind::UnderCured, "277 °F", "", 0, 0);
    return page;
}

HeaderState stripHeader() {
    HeaderState head = header("Reading due", "centre, piece 72", "2 lots", "14:13");
    head.probe = {q("Strip"), q("S-12 · ±2 °F"), q("instruments")};
    return head;
}

StripPageState stripAsked() {
    StripPageState page;
    page.title = q("Which is the last dark step?");
    page.progress = {{q(""), q("1 strip")}, {q(""), q("2 step"), true}, {q(""), q("3 keep")}};
    page.steps = {{q("step-none"), q("all light"), q(""), StepKind::Unknown, false}};
    for (const char* step : {"280", "285", "290", "295", "300"}) {
        page.steps.append({q("step-") + q(step), q(step), q(""), StepKind::Unknown});
    }
    page.scale = windowScale();
    page.scale.aim.reset();
    page.scale.cures[0].guardShown = 0;
    page.scale.bleedCeiling->guardShown = 0;
    page.scale.timed = false;
    page.preview = {.heading = q("This would prove"),
                    .sentence = q("Nothing is chosen yet."),
                    .note = q("A strip shows the peak, never the time.")};
    page.positionsHeading = q("Where on the belt · planned");
    page.positions = {{q("left"), q("Left")}, {q("centre"), q("Centre"), true}, {q("right"), q("Right")}};
    page.keep = {.id = {}, .label = q("Touch or scan the last dark step.")};
    page.footNote = q("The strip card carries a code for each step: scan it instead of touching.");
    page.leave = action("leave", "Leave, keep nothing");
    return page;
}

StripPageState stripChosen() {
    StripPageState page = stripAsked();
    page.title = q("Last dark step: 290 °F");
    page.progress = {{q(""), q("1 strip")}, {q(""), q("2 step")}, {q(""), q("3 keep"), true}};
    for (StripStepState& step : page.steps) {
        const int value = step.value.toInt();
        step.kind = value == 290 ? StepKind::LastDark : value > 0 && value < 290 ? StepKind::Dark : StepKind::Light;
        step.word = value == 0 ? QString() : value == 290 ? q("last dark") : value < 290 ? q("dark") : q("light");
    }
    page.scale.strip = StripInterval{283.6, 301.4, q("283.6–301.4")};
    page.scale.verdict = MarkKind::NotProven;
    page.preview = {
        .heading = q("This would prove"),
        .mark = MarkKind::NotProven,
        .word = q("Not proven"),
        .margin = q("−1.4 to +16.4 °F"),
        .sentence =
            q("290 is dark, 295 is light, sure to ±2 and ±4.4 for the place. So the film peaked at 283.6 to 301.4 °F."),
        .note = q("A strip shows the peak, never the time.")};
    page.keep = {.id = q("keep"), .label = q("Keep this reading"), .primary = true, .hint = q("or scan “next”")};
    return page;
}

StripPageState stripProven() {
    StripPageState page = stripChosen();
    page.scale = listScale(320, 350, 0, 0, MarkKind::Cured);
    page.scale.peak.reset();
    page.scale.cures = {{.atShown = 320, .axisText = q("320"), .word = q("cure · standard")}};
    page.scale.hardCeiling = CeilingLine{.atShown = 350, .axisText = q("350"), .word = q("too hot for cotton")};
    page.scale.gel = ScaleNote{280, q("280"), q("gel")};
    page.scale.strip = StripInterval{323.6, 341.4, q("323.6–341.4")};
    page.title = q("Last dark step: 330 °F");
    page.steps = {{q("step-none"), q("all light"), q(""), StepKind::Light, false}};
    for (const char* step : {"310", "315", "320", "325", "330", "335", "340", "345"}) {
        const int value = q(step).toInt();
        page.steps.append({q("step-") + q(step), q(step),
                           value < 330    ? q("dark")
                           : value == 330 ? q("last dark")
                                          : q("light"),
                           value < 330    ? StepKind::Dark
                           : value == 330 ? StepKind::LastDark
                                          : StepKind::Light});
    }
    page.preview.mark = MarkKind::Cured;
    page.preview.word = q("Cured");
    page.preview.margin = q("+3.6 °F at the least");
    page.preview.sentence =
        q("330 is dark, 335 is light, sure to ±2 and ±4.4 for the place. So the film peaked at 323.6 to 341.4 °F.");
    return page;
}

RefusalState otherRun() {
    RefusalState refusal = unknownCode();
    refusal.happened = q("This strip was used on run 20416.");
    refusal.kept = q("Its reading of 11:30. Nothing was added.");
    refusal.toDo = q("Stick a new strip on piece 72 and send it through.");
    refusal.help = {};
    return refusal;
}

GalleryState dryerState(const char* name, const DryerPageState& page, const HeaderState& head,
                        const RefusalState& refusal = {}) {
    return {q(name), [=](KioskModel& kiosk) {
                KioskState state = frame("dryer", head);
                state.refusal = refusal;
                kiosk.openScanEntry(false);
                kiosk.setState(state);
                kiosk.dryer()->setState(page);
            }};
}

GalleryState stripState(const char* name, const StripPageState& page, const RefusalState& refusal = {}) {
    return {q(name), [=](KioskModel& kiosk) {
                KioskState state = frame("strip", stripHeader());
                state.refusal = refusal;
                kiosk.openScanEntry(false);
                kiosk.setState(state);
                kiosk.strip()->setState(page);
            }};
}

GalleryState scanEntryState() {
    return {q("scan-entry"), [](KioskModel& kiosk) {
                kiosk.setState(frame("dryer", dryerHeader()));
                kiosk.dryer()->setState(dryer());
                kiosk.openScanEntry(true);
            }};
}

} // namespace

std::vector<GalleryState> gallery() {
    std::vector<GalleryState> states = runStates();
    HeaderState morning = header("Next reading", "first run", "none", "06:52");
    morning.title = {q("North dryer"), q("nothing on the belt"), q("")};
    morning.probe.how = q("ready · 72 °F");
    states.push_back(dryerState("dryer", dryer(), dryerHeader()));
    states.push_back(dryerState("dryer-under-cured", dryerUnderCured(), dryerHeader()));
    states.push_back(dryerState("dryer-empty", dryerEmpty(), morning));
    states.push_back(dryerState("dryer-first-day", dryerFirstDay(), morning));
    states.push_back(dryerState("dryer-refused", dryer(), dryerHeader(), unknownCode()));
    states.push_back(scanEntryState());
    states.push_back(stripState("strip-asked", stripAsked()));
    states.push_back(stripState("strip", stripChosen()));
    states.push_back(stripState("strip-cured", stripProven()));
    states.push_back(stripState("strip-refused", stripAsked(), otherRun()));
    const std::vector<GalleryState> sheets = sheetStates();
    states.insert(states.end(), sheets.begin(), sheets.end());
    const std::vector<GalleryState> tests = testStates();
    states.insert(states.end(), tests.begin(), tests.end());
    const std::vector<GalleryState> trends = trendStates();
    states.insert(states.end(), trends.begin(), trends.end());
    return states;
}

std::vector<QSize> gallerySizes() {
    return {{1280, 800}, {1920, 1080}, {800, 1280}};
}

} // namespace holdfast::kiosk::screens
