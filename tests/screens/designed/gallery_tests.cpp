#include "tests/screens/designed/gallery_parts.hpp"

#include <initializer_list>

/// Tests and Holds in invented texts.
namespace holdfast::kiosk::screens::invented {
namespace {

SheetRow testRow(const char* id, const char* title, const char* detail, const char* value, bool chosen = false,
                 bool strong = false) {
    return {.id = q(id), .title = q(title), .detail = q(detail), .value = q(value), .chosen = chosen, .strong = strong};
}

SheetBlock block(SheetKinds::Block kind, const char* text, const char* note = "") {
    return {.kind = kind, .text = q(text), .note = q(note)};
}

GradeSeries line(const char* name, PointShape shape, std::initializer_list<double> grades) {
    GradeSeries series{.name = q(name), .shape = shape};
    for (const double grade : grades) {
        series.points.append({static_cast<int>(series.points.size()), grade});
    }
    return series;
}

GradeChartState washChart() {
    GradeChartState chart;
    chart.series = {line("colour", PointShape::Disc, {5, 5, 4.5, 4.5, 4}),
                    line("stain", PointShape::Square, {5, 4.5, 4, 4, 3.5})};
    chart.limit = 3.5;
    chart.limitWord = q("below 3.5 the lot goes on hold");
    chart.dueCycle = 5;
    chart.spoken = q("After wash 4: colour 4, stain 3.5. Wash 5 is due.");
    return chart;
}

PictureEntry picture(const char* id, const char* label, int cycle) {
    return {.id = q(id),
            .label = q(label),
            .cycle = cycle,
            .source = QUrl(QStringLiteral("image://picture/wash-%1").arg(cycle)),
            .spoken = q("picture, ") + q(label)};
}

SheetBlock pictures(const char* text, const char* note, const char* due) {
    SheetBlock made = block(SheetKinds::Pictures, text, note);
    made.underChart = true;
    made.pictures = {picture("tests.picture.0", "new", 0), picture("tests.picture.1", "1", 1),
                     picture("tests.picture.2", "2", 2), picture("tests.picture.3", "3", 3),
                     picture("tests.picture.4", "4", 4)};
    made.pictures.append({.id = q("tests.take"), .label = q("5"), .cycle = 5, .word = q(due), .due = true});
    return made;
}

SheetBlock gradeKeys(const char* text, const char* note) {
    SheetBlock keys = block(SheetKinds::GradeKeys, text, note);
    for (const char* grade : {"5", "4.5", "4", "3.5", "3", "2.5", "2", "1.5", "1"}) {
        keys.actions.append(action((std::string("tests.grade.") + grade).c_str(), grade));
    }
    return keys;
}

SheetBlock crackKeys(const char* text, const char* note, std::initializer_list<const char*> labels) {
    SheetBlock keys = block(SheetKinds::CrackKeys, text, note);
    const CrackKind kinds[] = {CrackKind::Whole, CrackKind::Hairline, CrackKind::Breaks, CrackKind::Powders};
    for (const char* label : labels) {
        const int at = static_cast<int>(keys.cracks.size());
        keys.cracks.append({QStringLiteral("tests.crack.%1").arg(at), q(label), kinds[at]});
    }
    keys.chosenId = q("tests.crack.1");
    return keys;
}

QList<SheetRow> dueList() {
    return {testRow("tests.20398", "Stretch", "run 20398 · to 50 %", "late, Tue", false, true),
            testRow("tests.20391", "Wash 5", "run 20391 · hot", "now", true),
            testRow("tests.20405", "24 h look", "run 20405 · white on red", "by 16:00"),
            testRow("tests.rub", "Rub, wet", "run 20405 · black", "today"),
            testRow("tests.shrink", "Shrink", "run 20388 · hoodie", "today")};
}

SheetPageState printUnderTest() {
    SheetPageState page;
    page.heading = q("Due");
    page.list = dueList();
    page.listActions = {action("tests.scan", "Scan a swatch")};
    page.title = q("Run 20391 · lot 3 · piece 12");
    SheetBlock stretch = block(SheetKinds::Stretch, "Stretch", "15 Oct");
    stretch.pulls = {{q("25 %"), q("no crack"), CrackKind::Whole}, {q("50 %"), q("hairline"), CrackKind::Hairline}};
    stretch.result = q("passed");
    stretch.resultNote = q("hairline allowed");
    SheetBlock chart = block(SheetKinds::GradeChart, "Wash", "hot, tumble");
    chart.chart = washChart();
    page.blocks = {block(SheetKinds::Note, "White, low-bleed, on blue half-polyester · cured +4 °F, 14 Oct"), stretch,
                   chart, pictures("Pictures", "after wash", "due"), gradeKeys("Grade now", "colour, wash 5")};
    page.actions = {action("tests.picture", "Take a picture"), action("tests.meter", "Read the colour meter")};
    page.back = action("tests.back", "All that is due");
    page.detailOnly = true;
    return page;
}

SheetPageState printUnderTestLong() {
    SheetPageState page = printUnderTest();
    page.title = q("Tirada 20391 · lote 3 · estampado número 12 en la manga izquierda");
    SheetBlock& stretch = page.blocks[1];
    stretch.text = q("Estiramiento");
    stretch.note = q("15 oct., en frío");
    stretch.pulls = {{q("25 %"), q("sin grietas"), CrackKind::Whole},
                     {q("50 %"), q("grietas finas"), CrackKind::Hairline},
                     {q("75 %"), q("se rompe la película"), CrackKind::Breaks},
                     {q("100 %"), q("pendiente"), CrackKind::Whole, false}};
    stretch.result = q("no superado");
    stretch.resultNote = q("se admiten solo grietas finas");
    GradeChartState& chart = page.blocks[2].chart;
    page.blocks[2].text = q("Lavado doméstico");
    page.blocks[2].note = q("caliente, con secadora de tambor");
    chart.series = {line("cambio de color", PointShape::Disc, {5, 4.5, 4, 3, 2.5}),
                    line("descarga en algodón", PointShape::Square, {5, 4.5, 4, 3.5, 3.5}),
                    line("frote en seco", PointShape::Triangle, {5, 5, 4.5, 4}),
                    line("frote en húmedo", PointShape::Diamond, {5, 4, 3.5, 3, 2.5})};
    chart.limitWord = q("por debajo de 3.5 el lote queda en retención hasta que alguien con derecho decida");
    chart.newWord = q("nuevo");
    chart.dueWord = q("pendiente");
    page.blocks[3] = pictures("Imágenes", "después de cada lavado", "pendiente");
    page.blocks[4] = gradeKeys("Grado ahora", "descarga sobre algodón, lavado 5");
    page.blocks[4].chosenId = q("tests.grade.3.5");
    page.blocks.append(
        crackKeys("Grietas", "al 50 % de alargamiento", {"sin grietas", "grietas finas", "se rompe", "se pulveriza"}));
    page.actions = {action("tests.picture", "Tomar una imagen del estampado"),
                    action("tests.meter", "Leer el medidor de color")};
    page.back.label = q("Todo lo pendiente");
    return page;
}

SheetPageState fiftyWashes() {
    SheetPageState page = printUnderTest();
    GradeChartState chart = washChart();
    chart.series = {{.name = q("colour"), .shape = PointShape::Disc},
                    {.name = q("stain"), .shape = PointShape::Square}};
    for (int cycle = 0; cycle <= 43; ++cycle) {
        chart.series[0].points.append({cycle, cycle < 9 ? 5.0 : cycle < 22 ? 4.5 : cycle < 37 ? 4.0 : 3.5});
        if (cycle % 5 == 0) {
            chart.series[1].points.append({cycle, cycle < 10 ? 5.0 : cycle < 30 ? 4.0 : 3.0});
        }
    }
    chart.lastCycle = 50;
    chart.dueCycle = 44;
    chart.dueWord = q("due");
    SheetBlock empty = block(SheetKinds::GradeChart, "Rub", "dry and wet");
    empty.chart.limit = 3.0;
    empty.chart.limitWord = q("below 3 the lot goes on hold");
    empty.chart.lastCycle = 3;
    empty.chart.noneWord = q("Nothing was graded yet.");
    empty.chart.spoken = q("Nothing was graded yet.");
    page.blocks[2].chart = chart;
    page.blocks[3].note = q("fifteen of them");
    page.blocks[3].pictures.clear();
    for (int cycle = 0; cycle <= 42; cycle += 3) {
        page.blocks[3].pictures.append(
            picture(("tests.picture." + std::to_string(cycle)).c_str(), std::to_string(cycle).c_str(), cycle));
    }
    page.blocks[3].pictures[4].source.clear();
    page.blocks[3].pictures[4].word = q("none");
    page.blocks.insert(4, empty);
    return page;
}

SheetPageState halves(bool dark) {
    SheetPageState page = printUnderTest();
    page.title = q("Wash 4 of piece 12");
    SheetBlock pair = block(SheetKinds::Halves, "Halves", "side by side, as they lay under the lamp");
    pair.halves.left = {.id = q("tests.half.left"),
                        .caption = q("unwashed half"),
                        .source = QUrl(q("image://picture/half-0")),
                        .colour = QColor(0xB3, 0x24, 0x2B),
                        .figures = q("L* 39.4 · a* 54.1 · b* 32.0")};
    pair.halves.right = {.id = q("tests.half.right"),
                         .caption = q("washed half"),
                         .source = dark ? QUrl{} : QUrl(q("image://picture/half-4")),
                         .word = q("no picture yet"),
                         .colour = QColor(0xBE, 0x3A, 0x3F),
                         .figures = q("L* 43.8 · a* 50.2 · b* 28.6")};
    pair.halves.grade = q("4.5");
    pair.halves.gradeNote = q("grade of colour by the meter · ΔE 1.9, towards grey");
    SheetBlock patches = block(SheetKinds::Halves, "Colours alone");
    patches.halves = pair.halves;
    patches.halves.left.source = patches.halves.right.source = QUrl{};
    patches.halves.left.word = patches.halves.right.word = QString{};
    patches.halves.left.id = patches.halves.right.id = QString{};
    patches.halves.grade.clear();
    page.blocks = {pair, crackKeys("Cracks", "at 50 %", {"no crack", "hairline", "breaks", "powders"}), patches};
    page.actions = {action("tests.keep", "Keep the grade", true), action("tests.leave", "Leave")};
    return page;
}

SheetPageState history() {
    SheetPageState page = printUnderTest();
    page.title = q("Print C7K4M");
    SheetBlock trail{.kind = SheetKinds::Trail};
    trail.trail = {{.id = q("tests.entry.6"),
                    .time = q("14:02"),
                    .day = q("24 Oct"),
                    .title = q("Wash 4"),
                    .detail = q("colour 4, stain 3.5 · load 118, witness within its limits"),
                    .value = q("passed"),
                    .source = QUrl(q("image://picture/wash-4")),
                    .strong = true},
                   {.id = q("tests.entry.5"),
                    .time = q("09:40"),
                    .day = q("19 Oct"),
                    .title = q("Lot 3 on hold"),
                    .detail = q("reading of piece 36 under cure"),
                    .value = q("24 pieces"),
                    .marked = true,
                    .mark = MarkKind::UnderCured},
                   {.time = q("11:15"),
                    .day = q("15 Oct"),
                    .title = q("Stretch, cold"),
                    .detail = q("no crack at 25 %, hairline at 50 %"),
                    .value = q("passed")},
                   {.time = q("16:30"),
                    .day = q("14 Oct"),
                    .title = q("Cured +4 °F"),
                    .detail = q("probe P-3, centre"),
                    .marked = true,
                    .mark = MarkKind::Cured}};
    page.blocks = {block(SheetKinds::Lead, "Retained on shelf 4 until 14 October 2028."), trail,
                   block(SheetKinds::Note, "A reprint is allowed.")};
    page.actions = {action("tests.retest", "Test it again"), action("tests.print", "Print the page")};
    return page;
}

SheetPageState quarantine(const char* word, const char* not_, const char* total, const char* note, const char* bin) {
    SheetPageState page;
    page.heading = q("On hold");
    page.list = {testRow("holds.1", "Run 20413, lot 2", "24 pieces · since 09:15", "decide", true, true),
                 testRow("holds.2", "Run 20402, lot 1", "36 pieces · since Monday", "waits")};
    page.title = q("Quarantine shelf");
    SheetBlock bar = block(SheetKinds::PieceBar, "Pieces", "run 20413");
    bar.pieces.pieces = 144;
    bar.pieces.made = 96;
    bar.pieces.stretches = {{1, 36, PieceKind::Proven, q("1–36")},
                            {37, 72, PieceKind::Bracket, q("37–72")},
                            {73, 84, PieceKind::Gone, q("73–84")},
                            {85, 96, PieceKind::Waiting, q("85–96")}};
    bar.pieces.reads = {{1, MarkKind::Cured, q("1")},
                        {36, MarkKind::Cured, q("36")},
                        {72, MarkKind::UnderCured, q("72")},
                        {84, MarkKind::NotProven, q("84")}};
    bar.pieces.firstText = q("1");
    bar.pieces.lastText = q("144");
    bar.pieces.madeText = q("96 made");
    bar.pieces.spoken = q("Pull pieces 37 to 72 of 144.");
    SheetBlock ticks{.kind = SheetKinds::Ticks, .text = q(total), .note = q(note)};
    for (int i = 1; i <= 5; ++i) {
        ticks.ticks.append({QStringLiteral("holds.bin.%1").arg(i), q(bin) + QStringLiteral(" %1").arg(10 + i),
                            QStringLiteral("run 2041%1 · lot %2").arg(i).arg(1 + i % 3),
                            QStringLiteral("%1 pieces").arg(5 * i), q(i <= 3 ? word : not_), i <= 3});
    }
    page.blocks = {block(SheetKinds::Lead, "Pull pieces 37 to 72 into bin 14."), bar, ticks};
    page.actions = {action("holds.decide", "Decide", true), action("holds.label", "Print the bin label")};
    page.back = action("holds.back", "All holds");
    page.detailOnly = true;
    return page;
}

/// Brackets of one piece in a run of thousands, and readings that crowd.
SheetPageState crowdedBar() {
    SheetPageState page = quarantine("contado", "sin contar", "3 de 5 contenedores contados, 41 de 60 piezas",
                                     "Cuente lo que hay en el estante, no lo que dice la etiqueta.", "Contenedor");
    PieceBarState& bar = page.blocks[1].pieces;
    bar.pieces = 5000;
    bar.made = 4200;
    bar.stretches = {{1, 2100, PieceKind::Proven, q("1–2100")},
                     {2101, 2101, PieceKind::Bracket, q("2101")},
                     {2102, 2180, PieceKind::Proven, q("2102–2180")},
                     {2181, 2260, PieceKind::Bracket, q("2181–2260")},
                     {4000, 9000, PieceKind::Bracket, q("4000–5000")}};
    bar.reads.clear();
    for (int piece = 1; piece < 4200; piece += 150) {
        bar.reads.append({piece, piece == 2101 ? MarkKind::Overheated : MarkKind::Cured, QString::number(piece)});
    }
    bar.lastText = q("5000");
    bar.madeText = q("4200 hechas");
    return page;
}

GalleryState state(const char* name, const char* place, SheetPageState page, bool whole = false) {
    HeaderState head = header("Next test", "24 h look, 16:00", "2 lots", "14:20");
    head.title = {q("Tests"), q("5 due, 1 of them late"), q("dryer")};
    KioskState kiosk = frame(place, head);
    kiosk.places = {{q("dryer"), q("Dryer")}, {q("run"), q("Run")},   {q("tests"), q("Tests")},
                    {q("holds"), q("Holds")}, {q("inks"), q("Inks")}, {q("instruments"), q("Instruments")},
                    {q("runs"), q("Runs")},   {q("shop"), q("Shop")}};
    if (whole) { // no list beside it: the whole width
        page.heading.clear();
        page.list.clear();
        page.listActions.clear();
    }
    return {q(name), [=](KioskModel& model) {
                model.openScanEntry(false);
                model.setState(kiosk);
                model.sheet()->setState(page);
                model.openPad({});
            }};
}

} // namespace

std::vector<GalleryState> testStates() {
    const SheetPageState shelf = quarantine("counted", "not counted", "3 of 5 bins counted, 41 of 60 pieces",
                                            "Count what lies there, not what the label says.", "Bin");
    return {state("sheet-tests", "tests", printUnderTest()),
            state("sheet-tests-long", "tests", printUnderTestLong()),
            state("sheet-tests-fifty", "tests", fiftyWashes()),
            state("sheet-tests-whole", "tests", printUnderTest(), true),
            state("sheet-tests-halves", "tests", halves(false)),
            state("sheet-tests-half-missing", "tests", halves(true)),
            state("sheet-tests-history", "tests", history()),
            state("sheet-holds-shelf", "holds", shelf),
            state("sheet-holds-shelf-whole", "holds", shelf, true),
            state("sheet-holds-crowded", "holds", crowdedBar())};
}

} // namespace holdfast::kiosk::screens::invented
