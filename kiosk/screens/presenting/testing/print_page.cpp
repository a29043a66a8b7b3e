#include "kiosk/screens/presenting/testing/print_page.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/screens/presenting/testing/tests_form.hpp"
#include "kiosk/shop/testing/asked.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/series.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using records::MethodDescribed;
using records::TestKind;
using records::TestRow;
using wording::Speech;

std::string coloursOf(const records::PrintRow& print) {
    std::string all;
    for (auto layer = print.layers.rbegin(); layer != print.layers.rend(); ++layer) {
        if (!layer->underbase && !layer->colour.empty()) {
            all += (all.empty() ? "" : ", ") + layer->colour;
        }
    }
    return all.empty() ? print.runTitle : all;
}

std::vector<const TestRow*> testsBy(const PrintFacts& facts, const std::string& method) {
    std::vector<const TestRow*> all;
    for (const auto& one : facts.tests) {
        if (one.done.method == method) {
            all.push_back(&one);
        }
    }
    return all;
}

GradeSeries seriesOf(const std::vector<const TestRow*>& tests, analytics::Quantity quantity, const std::string& name,
                     PointShape shape) {
    GradeSeries series;
    series.name = toQString(name);
    series.shape = shape;
    for (const auto* test : tests) {
        for (const auto& result : test->done.results) {
            const auto* grade = std::get_if<analytics::Grade>(&result.value);
            if (result.quantity == quantity && grade != nullptr && test->done.cycle && shop::counts(*test)) {
                series.points.append({*test->done.cycle, grade->number()});
            }
        }
    }
    return series;
}

std::optional<double> gradeLimit(const MethodDescribed& method) {
    std::optional<double> limit;
    for (const auto& one : method.rule ? method.rule->criteria : std::vector<analytics::Criterion>{}) {
        const auto* grade = std::get_if<analytics::Grade>(&one.limit);
        if (grade != nullptr && one.bound == analytics::Bound::atLeast) {
            limit = std::max(limit.value_or(grade->number()), grade->number());
        }
    }
    return limit;
}

std::string spokenPoints(const QList<GradeSeries>& all) {
    std::string text;
    for (const auto& series : all) {
        for (const auto& point : series.points) {
            text += (text.empty() ? "" : ", ") + series.name.toStdString() + " " + std::to_string(point.cycle) + ": " +
                    shop::numberTyped(point.grade);
        }
    }
    return text;
}

SheetBlock chartOf(const PrintFacts& facts, const MethodDescribed& method, const std::optional<int>& due,
                   const Speech& speech) {
    const auto tests = testsBy(facts, method.key);
    auto block = textBlock(SheetKinds::GradeChart, wording::testTitle(method, std::nullopt, speech));
    block.note = toQString(wording::methodName(method, speech));
    auto& chart = block.chart;
    for (auto series :
         {seriesOf(tests, analytics::Quantity::changeGrade, speech.text("tests.series.colour"), PointShape::Disc),
          seriesOf(tests, analytics::Quantity::stainingGrade, speech.text("tests.series.stain"), PointShape::Square)}) {
        if (!series.points.isEmpty()) {
            chart.series.append(series);
        }
    }
    chart.limit = gradeLimit(method);
    if (chart.limit) {
        chart.limitWord = toQString(speech.text("tests.series.below", {{"limit", shop::numberTyped(*chart.limit)}}));
    }
    chart.newWord = toQString(speech.text("tests.print.picture-new"));
    chart.lastCycle = method.programme ? method.programme->cycles : 0;
    chart.dueCycle = due;
    chart.noneWord = toQString(speech.text("tests.series.none"));
    chart.spoken = toQString(speech.text("tests.series.spoken", {{"points", spokenPoints(chart.series)}}));
    return block;
}

/// The first picture of each test of a series.
std::optional<SheetBlock> picturesOf(const PrintFacts& facts, const MethodDescribed& method,
                                     const std::optional<int>& due, const Speech& speech) {
    auto block = textBlock(SheetKinds::Pictures, speech.text("tests.print.pictures"));
    block.underChart = method.kind == TestKind::wash;
    block.note = toQString(block.underChart ? speech.text("tests.print.after-wash")
                                            : wording::testTitle(method, std::nullopt, speech));
    bool any = false;
    for (const auto* test : testsBy(facts, method.key)) {
        PictureEntry entry;
        entry.cycle = test->done.cycle.value_or(-1);
        entry.label = test->done.cycle == 0 ? toQString(speech.text("tests.print.picture-new"))
                                            : toQString(wording::testTitle(method, test->done.cycle, speech));
        entry.word = toQString(speech.text("tests.print.picture-none"));
        entry.spoken = toQString(speech.text("tests.print.picture-spoken",
                                             {{"what", wording::testTitle(method, test->done.cycle, speech)}}));
        if (!test->done.pictures.empty()) {
            entry.source = pictureUrl(test->done.pictures.back().sha256);
            entry.id = pictureId(test->done.pictures.back().sha256);
            any = true;
        }
        block.pictures.append(entry);
    }
    if (due) {
        PictureEntry entry;
        entry.cycle = *due;
        entry.due = true;
        entry.word = toQString(speech.text("tests.print.picture-due"));
        block.pictures.append(entry);
    }
    return any ? std::optional{block} : std::nullopt;
}

SheetBlock stretchOf(const TestRow& test, const MethodDescribed& method, const Speech& speech,
                     const drivers::WallTime& now) {
    auto block = textBlock(SheetKinds::Stretch, wording::testTitle(method, std::nullopt, speech));
    const auto day = drivers::localDay({test.at, now.utcOffsetMinutes});
    block.note = toQString(wording::dayText(day, drivers::localDay(now), speech));
    for (const auto& result : test.done.results) {
        const auto* seen = std::get_if<analytics::CrackClass>(&result.value);
        if (seen != nullptr && result.place.elongation) {
            PullEntry pull;
            pull.elongation = toQString(wording::valueText(*result.place.elongation, speech));
            pull.seen = toQString(wording::word(*seen, speech));
            pull.crack = crackKindOf(*seen);
            block.pulls.append(pull);
        }
    }
    block.result = toQString(wording::word(test.counts, speech));
    for (const auto& one : method.rule ? method.rule->criteria : std::vector<analytics::Criterion>{}) {
        if (const auto* worst = std::get_if<analytics::CrackClass>(&one.limit)) {
            block.resultNote =
                toQString(speech.text("tests.stretch.allowed", {{"seen", wording::word(*worst, speech)}}));
        }
    }
    return block;
}

const records::TestPicture* pictureOf(const records::TestDone& done, records::PictureSide side) {
    const auto found =
        std::find_if(done.pictures.begin(), done.pictures.end(), [&](const auto& one) { return one.side == side; });
    return found == done.pictures.end() ? nullptr : &*found;
}

/// The newest test with two colours, or with pictures of both halves.
std::optional<SheetBlock> halvesOf(const PrintFacts& facts, const MethodDescribed& method, const Speech& speech) {
    const auto tests = testsBy(facts, method.key);
    for (auto test = tests.rbegin(); test != tests.rend(); ++test) {
        const auto& done = (*test)->done;
        const auto* unwashed = pictureOf(done, records::PictureSide::unwashed);
        const auto* washed = pictureOf(done, records::PictureSide::washed);
        const bool colours = done.before && done.after;
        if (!colours && (unwashed == nullptr || washed == nullptr)) {
            continue;
        }
        auto block = textBlock(SheetKinds::Halves, speech.text("tests.print.compare"));
        block.note = toQString(wording::testTitle(method, done.cycle, speech));
        const bool wash = method.kind == TestKind::wash;
        block.halves.left =
            halfOfColour(speech.text(wash ? "tests.print.unwashed" : "tests.print.before"), done.before);
        block.halves.right = halfOfColour(speech.text(wash ? "tests.print.washed" : "tests.print.after"), done.after);
        if (unwashed != nullptr || washed != nullptr) {
            block.halves.left.source = unwashed == nullptr ? QUrl{} : pictureUrl(unwashed->sha256);
            block.halves.right.source = washed == nullptr ? QUrl{} : pictureUrl(washed->sha256);
            block.halves.left.id = unwashed == nullptr ? QString{} : pictureId(unwashed->sha256);
            block.halves.right.id = washed == nullptr ? QString{} : pictureId(washed->sha256);
            block.halves.left.word = block.halves.right.word = toQString(speech.text("tests.print.no-picture"));
        }
        if (colours) {
            const auto found = shop::colourFound(*done.before, *done.after, done.garment, shop::ColourScale::change,
                                                 done.colourLimit.value_or(shop::kRepeatLimit));
            if (found) {
                block.halves.grade = toQString(shop::numberTyped(found->grade.number()));
                block.halves.gradeNote = toQString(wording::sentence(*found, shop::ColourScale::change, speech));
            }
        }
        return block;
    }
    return std::nullopt;
}

MarkKind markFor(analytics::Word word) noexcept {
    switch (word) {
    case analytics::Word::cured:
        return MarkKind::Cured;
    case analytics::Word::underCured:
        return MarkKind::UnderCured;
    case analytics::Word::overheated:
        return MarkKind::Overheated;
    case analytics::Word::notProven:
    case analytics::Word::refused:
        break;
    }
    return MarkKind::NotProven;
}

/// A line of the history with the time it stands at.
using Dated = std::pair<std::int64_t, TrailEntry>;

TrailEntry entryAt(std::int64_t at, const drivers::WallTime& now, const Speech& speech) {
    TrailEntry entry;
    entry.time = toQString(wording::clockText(at, now.utcOffsetMinutes));
    entry.day =
        toQString(wording::dayText(drivers::localDay({at, now.utcOffsetMinutes}), drivers::localDay(now), speech));
    return entry;
}

void addReadings(std::vector<Dated>& all, const PrintFacts& facts, const drivers::WallTime& now, const Speech& speech) {
    for (const auto& reading : facts.readings) {
        if (reading.refused || reading.struck || !reading.word) {
            continue;
        }
        auto entry = entryAt(reading.takenAt, now, speech);
        entry.title = toQString(speech.text(
            "tests.print.reading",
            {{"position", speech.text("tests.position." + std::string{records::toWord(reading.position)})}}));
        entry.detail = toQString(reading.instrumentName);
        entry.value = toQString(wording::word(*reading.word, speech));
        entry.marked = true;
        entry.mark = markFor(*reading.word);
        all.emplace_back(reading.takenAt, entry);
    }
}

void addTests(std::vector<Dated>& all, const PrintFacts& facts, const std::vector<TestRow>& tests,
              const drivers::WallTime& now, const Speech& speech) {
    for (const auto& test : tests) {
        const auto* method = methodNamed(facts.methods, test.done.method);
        auto entry = entryAt(test.at, now, speech);
        entry.id = toQString(std::string{kTestsTest} + test.id);
        entry.title =
            toQString(method == nullptr ? test.done.method : wording::testTitle(*method, test.done.cycle, speech));
        entry.detail = toQString(resultsLine(test.done, speech));
        entry.value = toQString(wording::word(test.counts, speech));
        entry.strong = test.counts == records::TestOutcome::failed;
        if (!test.done.pictures.empty()) {
            entry.source = pictureUrl(test.done.pictures.back().sha256);
        }
        all.emplace_back(test.at, entry);
    }
}

void addHolds(std::vector<Dated>& all, const PrintFacts& facts, const drivers::WallTime& now, const Speech& speech) {
    for (const auto& hold : facts.holds) {
        auto entry = entryAt(hold.at, now, speech);
        entry.title = toQString(speech.text("tests.print.hold", {{"bin", std::to_string(hold.placed.bin)}}));
        entry.detail = toQString(speech.text(hold.placed.cause == records::HoldCause::test ? "tests.print.hold-why"
                                                                                           : "tests.print.hold-other"));
        entry.value = toQString(speech.text(hold.lifted     ? "tests.print.hold-lifted"
                                            : hold.decision ? "tests.print.hold-done"
                                                            : "tests.print.hold-open"));
        entry.strong = !hold.decision && !hold.lifted;
        all.emplace_back(hold.at, entry);
    }
}

} // namespace

std::string labLine(const analytics::Lab& colour) {
    return "L* " + wording::numberText(colour.l, 1) + " · a* " + wording::numberText(colour.a, 1) + " · b* " +
           wording::numberText(colour.b, 1);
}

HalfEntry halfOfColour(const std::string& caption, const std::optional<analytics::Lab>& colour) {
    HalfEntry half;
    half.caption = toQString(caption);
    if (colour) {
        const auto patch = shop::patchOf(*colour);
        half.colour = QColor{patch.red, patch.green, patch.blue};
        half.figures = toQString(labLine(*colour));
    }
    return half;
}

std::string printTitle(const records::PrintRow& print, const Speech& speech) {
    const auto& named = print.named;
    return speech.text(named.piece ? "tests.print.title" : "tests.print.title-no-piece",
                       {{"run", std::to_string(print.runNumber)},
                        {"lot", std::to_string(print.lotNumber)},
                        {"piece", named.piece ? std::to_string(*named.piece) : std::string{}}});
}

void addPrintLines(QList<SheetBlock>& blocks, const PrintFacts& facts, const drivers::WallTime& now,
                   const Speech& speech) {
    const auto& print = facts.print;
    auto cloth = print.fabric;
    if (!print.garmentColour.empty()) {
        cloth += ", " + print.garmentColour;
    }
    blocks.append(
        textBlock(SheetKinds::Note, speech.text("tests.print.line",
                                                {{"colours", coloursOf(print)},
                                                 {"fabric", cloth},
                                                 {"signs", shop::printSigns(print.named.number)},
                                                 {"time", wording::momentText(print.named.printedAt, now, speech)}})));
    if (!facts.kin.empty()) {
        std::string signs;
        for (const auto& one : facts.kin) {
            signs += (signs.empty() ? "" : ", ") + shop::printSigns(one.named.number);
        }
        blocks.append(
            textBlock(SheetKinds::Note,
                      speech.text(print.named.halfOf ? "tests.print.half" : "tests.print.halves", {{"signs", signs}})));
    }
    if (print.ended) {
        blocks.append(textBlock(SheetKinds::Lead,
                                speech.text("tests.print.ended", {{"end", wording::word(*print.ended, speech)}})));
    }
    if (facts.lotScrapped) {
        blocks.append(textBlock(SheetKinds::Lead, speech.text("tests.print.scrapped")));
    }
    if (const auto& place = print.named.retained) {
        const auto today = drivers::localDay(now);
        blocks.append(rowsBlock(
            SheetKinds::Facts,
            {factRow(speech.text("tests.print.shelf"), place->shelf,
                     place->reprintAllowed ? speech.text("tests.print.reprint") : std::string{}),
             factRow(speech.text("tests.print.until"),
                     !place->until ? speech.text("tests.print.no-end")
                     : *place->until < today
                         ? speech.text("tests.print.past", {{"day", wording::dayText(*place->until, today, speech)}})
                         : wording::dayText(*place->until, today, speech))}));
    }
}

void addMethodBlocks(QList<SheetBlock>& blocks, const PrintFacts& facts, const MethodDescribed& method,
                     const std::optional<int>& due, const Speech& speech, const drivers::WallTime& now) {
    const auto tests = testsBy(facts, method.key);
    if (method.kind == TestKind::wash && (due || !tests.empty())) {
        blocks.append(chartOf(facts, method, due, speech));
    } else if (method.kind == TestKind::stretch && !tests.empty()) {
        blocks.append(stretchOf(*tests.back(), method, speech, now));
    }
    if (auto pictures = picturesOf(facts, method, due, speech)) {
        blocks.append(*pictures);
    }
    if (auto halves = halvesOf(facts, method, speech)) {
        blocks.append(*halves);
    }
}

void addAllMethods(QList<SheetBlock>& blocks, const PrintFacts& facts, const Speech& speech,
                   const drivers::WallTime& now) {
    for (const auto& method : facts.methods) {
        addMethodBlocks(blocks, facts, method, std::nullopt, speech, now);
    }
}

std::string splitSentence(const records::TestDone& done, const Speech& speech) {
    std::optional<bool> asPrinted;
    std::optional<bool> again;
    for (const auto& result : done.results) {
        const auto* yes = std::get_if<bool>(&result.value);
        if (yes != nullptr && result.ownName == shop::kOtherSurvived) {
            asPrinted = *yes;
        } else if (yes != nullptr && result.ownName == shop::kReCuredSurvived) {
            again = *yes;
        }
    }
    if (!asPrinted || !again || (*asPrinted && !*again)) {
        return {};
    }
    return speech.text(*asPrinted ? "tests.split.both-held"
                       : *again   ? "tests.split.under-cured"
                                  : "tests.split.both-failed");
}

std::string resultsLine(const records::TestDone& done, const Speech& speech) {
    std::string line;
    for (const auto& result : done.results) {
        line += (line.empty() ? "" : ", ") + wording::resultText(result, speech);
    }
    return line.empty() ? speech.text("tests.test.nothing") : line;
}

SheetBlock historyBlock(const PrintFacts& facts, const drivers::WallTime& now, const Speech& speech) {
    std::vector<Dated> all;
    addReadings(all, facts, now, speech);
    addTests(all, facts, facts.tests, now, speech);
    addTests(all, facts, facts.testsOfHalves, now, speech);
    addHolds(all, facts, now, speech);
    std::stable_sort(all.begin(), all.end(),
                     [](const Dated& one, const Dated& other) { return one.first < other.first; });
    SheetBlock block;
    block.kind = SheetKinds::Trail;
    for (const auto& [at, entry] : all) {
        block.trail.append(entry);
    }
    return block;
}

SheetBlock testFactsBlock(const records::TestDone& done, const Speech& speech) {
    std::vector<SheetRow> rows;
    for (const auto& result : done.results) {
        if (result.quantity == analytics::Quantity::crackClass && result.place.elongation) {
            rows.push_back(factRow(wording::valueText(*result.place.elongation, speech),
                                   wording::valueText(result.value, speech)));
        } else {
            rows.push_back(factRow(wording::word(result.quantity, result.ownName, speech),
                                   wording::valueText(result.value, speech)));
        }
    }
    if (done.before) {
        rows.push_back(factRow(speech.text("tests.print.before"), labLine(*done.before)));
    }
    if (done.after) {
        rows.push_back(factRow(speech.text("tests.print.after"), labLine(*done.after)));
    }
    if (!done.note.empty()) {
        rows.push_back(factRow(speech.text("tests.test.note"), done.note));
    }
    return rowsBlock(SheetKinds::Facts, rows);
}

} // namespace holdfast::kiosk::screens
