#include "tests/screens/designed/gallery_parts.hpp"

namespace holdfast::kiosk::screens::invented {
namespace {

KioskState sheetFrame(const char* place, const char* title, const char* how) {
    HeaderState head = header("Next reading", "piece 72, 11 min", "2 lots", "14:02");
    head.title = {q(title), q(how), q("dryer")};
    KioskState state = frame(place, head);
    state.places = {{q("dryer"), q("Dryer")},
                    {q("run"), q("Run")},
                    {q("runs"), q("Runs")},
                    {q("inks"), q("Inks")},
                    {q("instruments"), q("Instruments")},
                    {q("shop"), q("Shop")}};
    return state;
}

SheetRow row(const char* id, const char* title, const char* detail, const char* value, bool chosen = false) {
    return {.id = q(id), .title = q(title), .detail = q(detail), .value = q(value), .chosen = chosen};
}
SheetRow judged(const char* id, const char* title, const char* detail, const char* value, MarkKind mark) {
    SheetRow made = row(id, title, detail, value);
    made.marked = true;
    made.mark = mark;
    return made;
}
SheetRow fact(const char* title, const char* value, const char* detail = "") {
    return row("", title, detail, value);
}
SheetRow branch(const char* id, const char* title, const char* detail, const char* value, int indent) {
    SheetRow made = row(id, title, detail, value);
    made.indent = indent;
    return made;
}
SheetField field(const char* id, const char* label, const char* value, const char* hint, const char* fault = "",
                 SheetKinds::Keys keys = SheetKinds::Text) {
    return {q(id), q(label), q(value), q(hint), q(fault), keys};
}
SheetBlock words(SheetKinds::Block kind, const char* text, const char* note = "") {
    return {.kind = kind, .text = q(text), .note = q(note)};
}
SheetBlock facts(QList<SheetRow> rows) {
    return {.kind = SheetKinds::Facts, .rows = std::move(rows)};
}

SheetPageState planForm() {
    SheetPageState page;
    page.heading = q("Runs, newest first");
    page.listNone = q("No run is planned.");
    SheetRow due = row("runs.20420", "Run 20420", "60 white aprons, cotton", "next");
    due.strong = true;
    page.list = {row("runs.20419", "Run 20419", "144 red jerseys, polyester", "planned", true),
                 due,
                 judged("runs.20417", "Run 20417", "96 navy hoodies", "12:48", MarkKind::Cured),
                 judged("runs.20416", "Run 20416", "60 white tees", "11:30", MarkKind::Cured),
                 judged("runs.20413", "Run 20413", "48 black tees", "09:15", MarkKind::UnderCured),
                 judged("runs.20402", "Run 20402", "36 blue shirts", "Monday", MarkKind::Overheated)};
    page.listActions = {action("runs.new", "New run"), action("runs.import", "From a list")};
    page.title = q("Plan of run 20419");
    SheetBlock cloth{.kind = SheetKinds::Choices, .text = q("Fabric")};
    cloth.actions = {action("runs.fabric.1", "Cotton"), action("runs.fabric.2", "50/50 blend"),
                     action("runs.fabric.3", "Polyester"), action("runs.fabric.4", "Dark red polyester")};
    cloth.chosenId = q("runs.fabric.3");
    SheetBlock fields{.kind = SheetKinds::Fields};
    fields.fields = {
        field("runs.name", "What it is", "144 red jerseys", "in your own words"),
        field("runs.pieces", "Pieces", "14O", "a number", "That is no number of pieces.", SheetKinds::Number),
        field("runs.order", "Order", "", "as the customer wrote it"),
        field("runs.until", "Wanted by", "", "day, as 2026-11-30", "", SheetKinds::Date)};
    SheetBlock layers{.kind = SheetKinds::Rows};
    layers.rows = {row("runs.layer.1", "Yellow", "low-cure · bucket 311", "285 °F"),
                   row("runs.layer.2", "Black", "low-cure · bucket 298", "285 °F"),
                   row("runs.layer.3", "White", "low-cure · bucket 305", "285 °F")};
    SheetBlock scale{.kind = SheetKinds::Scale, .text = q("The window is open: 285 to 300 °F. Aim at 292.5 °F.")};
    scale.scale = windowScale();
    scale.scale.spoken = q("Heat scale: cure 285, ceiling 300");
    page.blocks = {
        scale,  cloth,
        fields, words(SheetKinds::Heading, "The print, as it lies"),
        layers, words(SheetKinds::Note, "The ceiling of dark red polyester comes from its supplier's sheet.")};
    page.actions = {action("runs.keep", "Keep the plan", true), action("runs.ticket", "Print the ticket"),
                    action("runs.leave", "Leave, keep nothing")};
    page.back = action("runs.back", "All runs");
    return page;
}

SheetPageState inkFamily() {
    SheetPageState page;
    page.heading = q("Ink families");
    page.list = {row("inks.standard", "Standard", "plastisol · revision 4", "320 °F"),
                 row("inks.low", "Low-cure", "plastisol · revision 2", "285 °F", true),
                 row("inks.water", "Water-based", "water · revision 1", "320 °F, 90 s"),
                 row("inks.silicone", "Silicone", "silicone · revision 1", "265 °F, 60 s")};
    page.listActions = {action("inks.new", "New family")};
    page.title = q("Low-cure, revision 2");
    SheetBlock buckets{.kind = SheetKinds::Rows};
    buckets.rows = {row("inks.bucket.298", "Bucket 298, black", "opened 14 Nov · 3.2 kg left", "good until 14 Feb"),
                    row("inks.bucket.305", "Bucket 305, white", "opened 20 Nov · 6 kg left", "good until 20 Feb")};
    page.blocks = {words(SheetKinds::Lead, "Cures at 285 °F. Gels from 250 to 260 °F."),
                   facts({fact("Hold at cure", "none"), fact("Ceiling", "none stated"),
                          fact("Resists bleeding", "high", "may be printed on dark red polyester"),
                          fact("Rest before a wash", "24 h")}),
                   words(SheetKinds::Note, "From the maker's sheet of March, typed by person 4 on 2 November."),
                   words(SheetKinds::Heading, "Buckets of this family"), buckets};
    page.actions = {action("inks.revise", "Revise", true), action("inks.open", "Open a bucket"),
                    action("inks.mark", "Mark as bad")};
    page.back = action("inks.back", "All inks");
    return page;
}

SheetPageState bucketTree() {
    SheetPageState page = inkFamily();
    page.heading = q("Buckets");
    page.list = {row("inks.bucket.318", "Bucket 318", "navy, mixed", "low-cure", true),
                 row("inks.bucket.311", "Bucket 311", "yellow", "low-cure"),
                 row("inks.bucket.298", "Bucket 298", "black", "low-cure")};
    page.listActions = {action("inks.open", "Open a bucket"), action("inks.mix", "Mix")};
    page.title = q("Bucket 318, navy");
    SheetBlock tree{.kind = SheetKinds::Rows};
    tree.rows = {branch("inks.bucket.318", "Bucket 318, navy", "mixed 22 Nov", "4.0 kg", 0),
                 branch("inks.bucket.312", "Bucket 312, blue", "mixed 15 Nov", "3.0 kg", 1),
                 branch("inks.bucket.290", "Bucket 290, blue base", "low-cure", "2.5 kg", 2),
                 branch("inks.bucket.291", "Bucket 291, violet", "standard: cures at 320 °F", "0.5 kg", 2),
                 branch("inks.bucket.298", "Bucket 298, black", "low-cure", "1.0 kg", 1)};
    tree.rows[3].strong = true;
    page.blocks = {words(SheetKinds::Lead, "Cures at 320 °F: one part of it is standard."),
                   words(SheetKinds::Heading, "What it is made of"), tree,
                   words(SheetKinds::Note, "Parts of parts count: the hottest need is the mix's need."),
                   facts({fact("Used on", "runs 20411 and 20418"), fact("Left", "1.4 kg")})};
    page.actions = {action("inks.label", "Print the label", true), action("inks.bad", "Bad bucket"),
                    action("inks.empty", "Empty")};
    return page;
}

SheetPageState instrument() {
    SheetPageState page;
    page.heading = q("Instruments");
    SheetRow ice = row("instruments.p3", "Probe P-3", "ice check due", "ready", true);
    page.list = {ice, row("instruments.p4", "Probe P-4", "certificate until March", "absent"),
                 row("instruments.s", "Strips, pack S-12", "7 left", "in date"),
                 row("instruments.g1", "Gun G-1", "±4 °F", "in date")};
    page.listActions = {action("instruments.new", "Add an instrument")};
    page.title = q("Ice check of probe P-3");
    SheetBlock steps{.kind = SheetKinds::Actions};
    steps.actions = {action("instruments.restart", "Begin again"), action("instruments.boil", "Boiling water instead")};
    SheetBlock method{.kind = SheetKinds::Choices, .text = q("Bath")};
    method.actions = {action("instruments.ice", "Ice"), action("instruments.boiling", "Boiling water")};
    method.chosenId = q("instruments.ice");
    page.blocks = {words(SheetKinds::Figure, "32.4 °F", "live, for 41 s within 0.2 °F; 19 s more"),
                   words(SheetKinds::Sentence, "Crushed ice with just enough water to fill the gaps. Stir, and keep "
                                               "the tip off the wall."),
                   method,
                   words(SheetKinds::Heading, "What is known of it"),
                   facts({fact("Type", "K, class 1"), fact("Sure to", "±5 °F"),
                          fact("Certificate", "until 14 March", "points at 212 and 320 °F"),
                          fact("Last ice check", "passed, 18 Nov", "32.2 °F")}),
                   steps};
    page.actions = {action("instruments.keep", "Keep the check", true), action("instruments.leave", "Leave")};
    page.back = action("instruments.back", "All instruments");
    return page;
}

SheetPageState roles() {
    SheetPageState page;
    page.heading = q("Shop");
    page.list = {row("shop.people", "People", "6, two without badge", "", true), row("shop.dryers", "Dryers", "2", ""),
                 row("shop.units", "Units and language", "°F, English", ""),
                 row("shop.backup", "Backup", "", "2 h ago"), row("shop.book", "The book", "whole, checked today", "")};
    page.title = q("Who may do what");
    SheetBlock people{.kind = SheetKinds::Rows};
    people.rows = {row("shop.person.1", "Person 1", "owner", "badge"), row("shop.person.2", "Person 2", "QA", "badge"),
                   row("shop.person.3", "Person 3", "operator", "no badge")};
    page.blocks = {facts({fact("Operator", "reads, names runs, opens buckets"),
                          fact("QA", "decides holds, strikes readings, keeps checks"),
                          fact("Owner", "people, plans, units, backup", "and all that QA may")}),
                   words(SheetKinds::Heading, "People"), people};
    page.actions = {action("shop.add", "Add a person", true), action("shop.badges", "Print badges")};
    page.back = action("shop.back", "All of the shop");
    return page;
}

/// The same shape with texts 1.6 times as long, as another language may have them.
SheetPageState longTexts() {
    SheetPageState page = planForm();
    page.heading = q("Tandas planificadas, la más reciente primero");
    for (SheetRow& each : page.list) {
        each.title += q(" de la secadora norte");
        each.detail += q(", pedido pendiente de confirmar");
    }
    page.list[0].value = q("planificada");
    page.listActions = {action("runs.new", "Planificar una tanda nueva"), action("runs.import", "Desde una lista")};
    page.title = q("Planificación de la tanda 20419 con camisetas rojas de poliéster");
    page.blocks[0].text = q("La ventana está abierta de 285 a 300 °F. Apunte a 292,5 °F en la posición más fría de la "
                            "cinta transportadora.");
    page.blocks[1].text = q("Tejido de la prenda");
    page.blocks[1].actions[3].label = q("Poliéster rojo oscuro sublimado");
    page.blocks[2].fields[0].value = q("144 camisetas rojas de poliéster con estampado en la espalda y en la manga");
    page.blocks[2].fields[1].label = q("Número de piezas de la tanda");
    page.blocks[2].fields[1].fault = q("Eso no es un número de piezas: escriba solo cifras, sin letras ni espacios.");
    page.blocks[2].fields[2].hint = q("como lo escribió el cliente en su pedido original");
    page.actions = {action("runs.keep", "Guardar la planificación", true),
                    action("runs.ticket", "Imprimir la hoja de la tanda"),
                    action("runs.leave", "Salir sin guardar nada de lo escrito")};
    page.back.label = q("Todas las tandas");
    return page;
}

SheetPageState manyRuns() {
    SheetPageState page = planForm();
    page.list.clear();
    for (int number = 20419; number > 19919; --number) {
        page.list.append({.id = QStringLiteral("runs.%1").arg(number),
                          .title = QStringLiteral("Run %1").arg(number),
                          .detail = q("96 navy hoodies"),
                          .value = q("planned"),
                          .chosen = number == 20419});
    }
    return page;
}

GalleryState sheetState(const char* name, const KioskState& state, const SheetPageState& page,
                        const TypePadState& pad = {}) {
    return {q(name), [=](KioskModel& kiosk) {
                kiosk.openScanEntry(false);
                kiosk.setState(state);
                kiosk.sheet()->setState(page);
                kiosk.openPad(pad);
            }};
}

SheetPageState detailOf(SheetPageState page) {
    page.detailOnly = true;
    return page;
}

TypePadState pad(const char* id, const char* label, const char* text, const char* hint, SheetKinds::Keys keys) {
    TypePadState made;
    made.id = q(id);
    made.label = q(label);
    made.text = q(text);
    made.hint = q(hint);
    made.keys = keys;
    return made;
}

/// All the places there will ever be, in the longest words known for them.
KioskState ninePlaces(const KioskState& few) {
    KioskState state = few;
    state.places = {{q("dryer"), q("Secadora")},    {q("run"), q("Tanda")},
                    {q("tests"), q("Pruebas")},     {q("holds"), q("Retenidos")},
                    {q("trends"), q("Tendencias")}, {q("complaint"), q("Quejas")},
                    {q("inks"), q("Tintas")},       {q("instruments"), q("Instrumentos")},
                    {q("runs"), q("Tandas")}};
    return state;
}

} // namespace

std::vector<GalleryState> sheetStates() {
    const KioskState runs = sheetFrame("runs", "Runs", "2 planned, 500 kept");
    const KioskState inks = sheetFrame("inks", "Inks", "4 families, 12 buckets");
    const KioskState shop = sheetFrame("shop", "Shop", "one dryer, six people");
    const KioskState instruments = sheetFrame("instruments", "Instruments", "P-3 is due for ice");
    TypePadState spanish = pad("runs.name", "Qué es", "", "con sus propias palabras", SheetKinds::Text);
    spanish.letters = q("abcdefghijklmnñopqrstuvwxyzáéíóúü");
    spanish.enter = q("Aceptar");
    spanish.erase = q("Borrar");
    spanish.leave = q("Cerrar");
    spanish.space = q("Espacio");
    spanish.shift = q("Mayúsculas");
    SheetPageState none;
    none.heading = q("Buckets");
    none.listNone = q("No bucket is open here. Open one with the button below, or scan its label.");
    none.listActions = {action("inks.open", "Open a bucket")};
    return {
        sheetState("sheet-runs", runs, planForm()),
        sheetState("sheet-runs-detail", runs, detailOf(planForm())),
        sheetState("sheet-runs-many", runs, manyRuns()),
        sheetState("sheet-long", ninePlaces(runs), longTexts()),
        sheetState("sheet-long-detail", ninePlaces(runs), detailOf(longTexts())),
        sheetState("sheet-inks", inks, inkFamily()),
        sheetState("sheet-inks-none", inks, none),
        sheetState("sheet-bucket-detail", inks, detailOf(bucketTree())),
        sheetState("sheet-instrument-detail", instruments, detailOf(instrument())),
        sheetState("sheet-shop-detail", shop, detailOf(roles())),
        sheetState("pad-text", runs, planForm(),
                   pad("runs.name", "What it is", "144 red jerseys", "in your own words", SheetKinds::Text)),
        sheetState("pad-text-long", runs, planForm(), spanish),
        sheetState("pad-number", runs, planForm(), pad("runs.pieces", "Pieces", "144", "a number", SheetKinds::Number)),
        sheetState("pad-code", runs, planForm(), pad("runs.code", "Code", "K298", "", SheetKinds::Code)),
        sheetState("pad-date", runs, planForm(),
                   pad("runs.until", "Wanted by", "2026-11-30", "day, as 2026-11-30", SheetKinds::Date)),
        sheetState("pad-secret", shop, roles(), pad("shop.pin", "PIN", "4711", "", SheetKinds::Secret))};
}

} // namespace holdfast::kiosk::screens::invented
