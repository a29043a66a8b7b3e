#include "kiosk/screens/gallery.hpp"

#include <cmath>
#include <numbers>

namespace holdfast::kiosk::screens {
namespace {

QString q(const char* text) {
    return QString::fromUtf8(text);
}

ActionState action(const char* id, const char* label, bool primary = false, const char* shortLabel = "") {
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
QList<TracePoint> ride(double peak, double until = 84.0) {
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

PrintState print(MarkKind mark) {
    return {.heading = q("The print, as it lies"),
            .layers = {{q("Yellow"), q("low-cure · 285 °F"), mark},
                       {q("Black"), q("low-cure · 285 °F"), mark},
                       {q("White"), q("low-cure · 285 °F"), mark}},
            .cloth = {q("Red polyester"), q("bears 300 °F")},
            .windowHeading = q("Window"),
            .windowText = q("285–300 °F")};
}

RunPageState runBase(MarkKind mark) {
    RunPageState run;
    run.print = print(mark);
    run.scale = windowScale();
    run.caution = q("Hot belt, hot prints: gloves on, sleeves and leads clear.");
    run.cautionShort = q("Hot: gloves on, sleeves clear.");
    return run;
}

QList<ActionState> afterBad() {
    return {action("send-again", "Send the probe again", true, "Probe again"), action("strip", "Strip"),
            action("gun", "Surface gun", false, "Gun"), action("problem", "Problem"), action("why", "Why?")};
}

AdviceSection lead(const char* heading, const char* sentence) {
    return {q(heading), q(sentence), AdviceWeight::Lead};
}
AdviceSection text(const char* heading, const char* sentence) {
    return {q(heading), q(sentence), AdviceWeight::Text};
}

RunPageState runCured() {
    RunPageState run = runBase(MarkKind::Cured);
    run.band = {
        .mark = MarkKind::Cured, .word = q("Cured"), .margin = q("+6 °F"), .marginNote = q("over cure, sure to ±5")};
    run.scale = judgedScale(291, MarkKind::Cured, "291 °F", "18 s", 42.2, 58.9);
    run.lot = {.readingsHeading = q("Readings of lot 1"),
               .readings = {{MarkKind::Cured, q("Left"), q("+5 °F")},
                            {MarkKind::Cured, q("Centre"), q("+7 °F")},
                            {MarkKind::Cured, q("Right"), q("+6 °F"), true}},
               .lotHeading = q("Lot 1 · pieces 1–36"),
               .lotState = q("Cleared"),
               .lotNote = q("Lot 2 opens with piece 37.")};
    run.actions = {action("next", "Next run", true), action("strip", "Strip"),
                   action("gun", "Surface gun", false, "Gun"), action("problem", "Problem"), action("why", "Why?")};
    return run;
}

RunPageState runNotProven() {
    RunPageState run = runBase(MarkKind::NotProven);
    run.band = {.mark = MarkKind::NotProven,
                .word = q("Not proven"),
                .margin = q("+1 °F"),
                .marginNote = q("over cure, but sure only to ±5")};
    run.scale = judgedScale(286, MarkKind::NotProven, "286 °F", "7 s", 46.6, 54.0);
    run.advice = {lead("Do now", "Slow the belt a little. Send the probe again."),
                  text("Why", "286 °F is over 285, but P-3 can be off by 5 °F."),
                  text("Kept", "The trace. Pieces 37–72 are unproven.")};
    run.actions = afterBad();
    return run;
}

RunPageState runUnderCured() {
    RunPageState run = runBase(MarkKind::UnderCured);
    run.band = {.mark = MarkKind::UnderCured,
                .word = q("Under-cured"),
                .margin = q("−8 °F"),
                .marginNote = q("under the cure line")};
    run.scale = judgedScale(277, MarkKind::UnderCured, "277 °F", "", 0, 0);
    run.advice = {lead("Do now", "Pull pieces 37–72. Slow the belt to 11 ft/min."),
                  text("Why", "277 °F is 8 under cure, more than P-3 can be off."),
                  text("Kept", "The trace. Pieces 37–72 are on hold.")};
    run.actions = afterBad();
    return run;
}

RunPageState runOverheated() {
    RunPageState run = runBase(MarkKind::Overheated);
    run.band = {.mark = MarkKind::Overheated,
                .word = q("Overheated"),
                .margin = q("−6 °F"),
                .marginNote = q("too hot for the cloth")};
    run.scale = judgedScale(306, MarkKind::Overheated, "306 °F", "24 s", 35.6, 62.2);
    run.advice = {lead("Do now", "Lower the heat by 15 °F. Set these pieces apart."),
                  text("Why", "306 °F is 6 over what polyester bears: the white may turn pink."),
                  text("Kept", "The trace. Pieces 37–72 are on hold.")};
    run.actions = afterBad();
    return run;
}

RunPageState runBlank() {
    RunPageState run = runBase(MarkKind::Blank);
    run.band = {.mark = MarkKind::Blank,
                .word = q("No reading"),
                .status = q("first reading due"),
                .marginNote = q("left, on piece 4")};
    run.advice = {lead("Do now", "Lay the probe in the wet ink of piece 4, left."),
                  text("Then", "It records by itself when the probe warms."), text("Lot 1", "opens with piece 1")};
    run.actions = {action("ready", "Ready", true), action("strip", "Strip"), action("gun", "Surface gun", false, "Gun"),
                   action("problem", "Problem"), action("why", "Why?")};
    return run;
}

RunPageState runWaiting() {
    RunPageState run = runBase(MarkKind::Blank);
    run.band = {.mark = MarkKind::Blank,
                .status = q("rising"),
                .marginNote = q("11 °F to go to the cure line"),
                .liveFigure = q("274 °F")};
    run.scale.trace = ride(291, 35.5);
    run.scale.traceEnd = TraceEnd::Running;
    run.scale.spoken = q("Recording, 274 °F and rising");
    run.advice = {lead("Nothing to do", "It ends by itself when the probe has cooled."),
                  text("So far", "gel passed at 30 s"), text("Lot 1", "left +5, centre +7, right is running")};
    run.actions = {action("stop", "Stop"), action("strip", "Strip"), action("gun", "Surface gun", false, "Gun"),
                   action("problem", "Problem"), action("why", "Why?")};
    return run;
}

RunPageState runWriting() {
    RunPageState run = runWaiting();
    run.band = {.mark = MarkKind::Blank,
                .status = q("cooled"),
                .marginNote = q("ended by itself"),
                .liveFigure = q("188 °F"),
                .markNote = q("Writing…")};
    run.scale.trace = ride(291, 74.0);
    run.advice = {lead("Nothing to do", "The verdict stands here when it is kept."),
                  text("So far", "gel passed at 30 s")};
    return run;
}

RunPageState runLost() {
    RunPageState run = runBase(MarkKind::NotProven);
    run.band = {.mark = MarkKind::NotProven,
                .word = q("Probe lost"),
                .status = q("no answer for 38 s"),
                .marginNote = q("trace kept up to 34 s")};
    run.scale.trace = ride(291, 34.0);
    run.scale.traceEnd = TraceEnd::Lost;
    run.scale.verdict = MarkKind::NotProven;
    run.advice = {lead("Do now", "Push the probe plug in, or read a strip."),
                  text("Why", "The probe went silent at 34 s, before the peak. Nothing can be judged."),
                  text("Kept", "The trace to 34 s. Pieces 1–36 wait.")};
    run.actions = {action("strip", "Read a strip", true), action("gun", "Surface gun"), action("problem", "Problem"),
                   action("why", "Why?")};
    return run;
}

RunPageState runGun() {
    RunPageState run = runBase(MarkKind::NotProven);
    run.band = {.mark = MarkKind::NotProven,
                .word = q("Not proven"),
                .status = q("at most 283 °F"),
                .marginNote = q("a gun sees the top of the film only")};
    run.scale.gun = GunBar{283, q("at most 283")};
    run.scale.verdict = MarkKind::NotProven;
    run.advice = {lead("Do now", "Send the probe through."),
                  text("Why", "10 to 25 °F have gone when the print comes out."),
                  text("Kept", "The shot. It counts for nothing, a ride is due.")};
    run.actions = afterBad();
    return run;
}

RunPageState runClosed() {
    RunPageState run = runBase(MarkKind::Blank);
    run.band = {.mark = MarkKind::Closed,
                .word = q("Window closed"),
                .margin = q("20 °F"),
                .marginNote = q("too hot for the cloth")};
    run.print.heading = q("The print, as it would lie");
    run.print.layers[1] = {q("Black"), q("standard · 320 °F"), MarkKind::Blank, true};
    run.print.cloth.culprit = true;
    run.print.windowHeading = q("No window");
    run.print.windowText = q("320 over 300");
    HeatScaleState& scale = run.scale;
    scale.closed = true;
    scale.aim.reset();
    scale.cures = {{.atShown = 320, .axisText = q("320"), .word = q("black needs 320 °F"), .culprit = true},
                   {.atShown = 285, .axisText = q("285"), .word = q("white, yellow: 285")}};
    scale.bleedCeiling =
        CeilingLine{.atShown = 300, .axisText = q("300"), .word = q("cloth bears 300 °F"), .culprit = true};
    scale.spoken = q("Heat scale: black needs 320, the cloth bears 300. There is no window.");
    run.waysOutHeading = q("Ways out, easiest first");
    run.waysOut = {{q("way-1"), q("Black in low-cure"), q("window 285–300 · 2 buckets here")},
                   {q("way-2"), q("Black in silicone"), q("window 285–300 · none in stock")},
                   {q("way-3"), q("Another cloth"), q("half polyester: 320–330 · ask customer")},
                   {q("way-4"), q("Print with a bleed watch"), q("white may turn pink · QA signs")}};
    run.caution = {};
    run.cautionShort = {};
    run.actions = {action("plan", "Change the plan"), action("next", "Another run"), action("why", "Why?")};
    return run;
}

RunPageState runManyLayers() {
    RunPageState run = runClosed();
    run.print.layers = {{q("Yellow"), q("low-cure · 285 °F")},
                        {q("Orange"), q("low-cure · 285 °F")},
                        {q("Black"), q("standard · 320 °F"), MarkKind::Blank, true},
                        {q("Sky"), q("low-cure · 285 °F")},
                        {q("Green"), q("low-cure · 285 °F")},
                        {q("Grey"), q("low-cure · 285 °F")},
                        {q("Silver"), q("low-cure · 285 °F")},
                        {q("White"), q("low-cure · 285 °F")}};
    return run;
}

/// Spanish and °C: the longest words, and the other unit.
RunPageState runSpanish() {
    RunPageState run = runOverheated();
    run.print = {.heading = q("El estampado, por capas"),
                 .layers = {{q("Amarillo"), q("baja cura · 140.6 °C"), MarkKind::Overheated},
                            {q("Negro"), q("baja cura · 140.6 °C"), MarkKind::Overheated},
                            {q("Blanco"), q("baja cura · 140.6 °C"), MarkKind::Overheated}},
                 .cloth = {q("Poliéster rojo"), q("aguanta 148.9 °C")},
                 .windowHeading = q("Ventana"),
                 .windowText = q("140.6–148.9 °C")};
    run.band = {.mark = MarkKind::Overheated,
                .word = q("Sobrecalentado"),
                .margin = q("−3.3 °C"),
                .marginNote = q("demasiado calor para la tela")};
    const auto celsius = [](double f) { return (f - 32.0) * 5.0 / 9.0; };
    HeatScaleState& scale = run.scale;
    scale.celsius = true;
    scale.cures = {{.atShown = celsius(285), .guardShown = 2.8, .axisText = q("140.6"), .word = q("cura · baja")}};
    scale.bleedCeiling = CeilingLine{
        .atShown = celsius(300), .guardShown = 2.8, .axisText = q("148.9"), .word = q("demasiado para poliéster")};
    scale.gel = ScaleNote{celsius(255), q("123.9"), q("gel")};
    scale.aim = ScaleNote{celsius(292.5), {}, q("meta 144.7")};
    scale.room = ScaleNote{21, q("21"), {}};
    for (TracePoint& point : scale.trace) {
        point.atShown = celsius(point.atShown);
    }
    scale.peak->atShown = celsius(306);
    scale.peak->text = q("152.2 °C");
    run.advice = {lead("Hacer ahora", "Baje el calor 8 °C. Aparte estas piezas."),
                  text("Por qué", "152.2 °C pasa en 3.3 lo que aguanta el poliéster: el blanco puede teñirse."),
                  text("Guardado", "La curva. Las piezas 37–72 están retenidas.")};
    run.caution = q("Cinta y estampados queman: guantes, mangas y cables lejos.");
    run.cautionShort = q("Quema: guantes, mangas lejos.");
    run.actions = {action("send-again", "Enviar la sonda otra vez", true, "Otra sonda"), action("strip", "Tira"),
                   action("gun", "Pistola térmica", false, "Pistola"), action("problem", "Problema"),
                   action("why", "¿Por qué?")};
    return run;
}

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

RefusalState unknownCode() {
    return {.happened = q("No run 20481 is known here."),
            .keptHeading = q("Kept"),
            .kept = q("Run 20418 stands as it was. The scan is noted."),
            .toDoHeading = q("What to do"),
            .toDo = q("Scan the ticket again, or open the run by its number."),
            .help = action("scan", "Type the number"),
            .leave = action("dismiss", "Close")};
}

RefusalState otherRun() {
    RefusalState refusal = unknownCode();
    refusal.happened = q("This strip was used on run 20416.");
    refusal.kept = q("Its reading of 11:30. Nothing was added.");
    refusal.toDo = q("Stick a new strip on piece 72 and send it through.");
    refusal.help = {};
    return refusal;
}

GalleryState runState(const char* name, const RunPageState& page, const HeaderState& head,
                      const RefusalState& refusal = {}) {
    return {q(name), [=](KioskModel& kiosk) {
                KioskState state = frame("run", head);
                state.refusal = refusal;
                kiosk.openScanEntry(false);
                kiosk.setState(state);
                kiosk.run()->setState(page);
            }};
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

HeaderState changed(HeaderState head, HeaderCell HeaderState::*cell, const char* what, const char* how) {
    (head.*cell).what = q(what);
    (head.*cell).how = q(how);
    return head;
}

std::vector<GalleryState> runStates() {
    const HeaderState next = header("Next reading", "piece 72, 11 min", "2 lots", "14:02");
    const HeaderState due = header("Reading due", "piece 72, now", "3 lots", "14:16");
    const HeaderState running = header("Reading due", "right, running", "2 lots", "14:01");
    const HeaderState start =
        changed(header("Next reading", "at the start", "2 lots", "13:41"), &HeaderState::probe, "Probe P-3", "ready");
    HeaderState spanish = due;
    spanish.title = {q("Norte · Orden 20418"), q("144 camisetas rojas, 100 % poliéster"), q("dryer")};
    spanish.crew = {q("Equipo de 3"), q("turno mañana"), q("crew")};
    spanish.probe = {q("Sonda P-3"), q("en vivo · 0.1 s"), q("instruments")};
    spanish.due = {q("Toca lectura"), q("pieza 72, ahora"), q("due")};
    spanish.hold = {q("Retenido"), q("3 lotes"), q("holds")};
    return {runState("run-blank", runBlank(), start),
            runState("run-waiting", runWaiting(), running),
            runState("run-writing", runWriting(), running),
            runState("run-cured", runCured(), next),
            runState("run-under-cured", runUnderCured(), due),
            runState("run-overheated", runOverheated(), due),
            runState("run-not-proven", runNotProven(), due),
            runState("run-surface-gun", runGun(), due),
            runState("run-closed", runClosed(), start),
            runState("run-closed-many-layers", runManyLayers(), start),
            runState("run-probe-lost", runLost(), changed(running, &HeaderState::probe, "Probe P-3", "silent · 38 s")),
            runState("run-refused", runNotProven(), due, unknownCode()),
            runState("run-spanish", runSpanish(), spanish)};
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
    return states;
}

std::vector<QSize> gallerySizes() {
    return {{1280, 800}, {1920, 1080}, {800, 1280}};
}

} // namespace holdfast::kiosk::screens
