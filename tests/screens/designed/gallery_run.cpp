#include "tests/screens/designed/gallery_parts.hpp"

namespace holdfast::kiosk::screens::invented {
namespace {

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
    run.scale = judgedScale(291, MarkKind::Cured, "291 °F", "17 s", 41.6, 58.9);
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
    run.scale = judgedScale(286, MarkKind::NotProven, "286 °F", "8 s", 46.4, 54.2);
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
    run.scale = judgedScale(306, MarkKind::Overheated, "306 °F", "26 s", 35.6, 62.2);
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

HeaderState changed(HeaderState head, HeaderCell HeaderState::*cell, const char* what, const char* how) {
    (head.*cell).what = q(what);
    (head.*cell).how = q(how);
    return head;
}

} // namespace

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

} // namespace holdfast::kiosk::screens::invented
