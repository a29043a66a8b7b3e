#include "kiosk/demo/demo_bench.hpp"

#include "kiosk/demo/demo_picture.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/shop/testing/load_draft.hpp"
#include "kiosk/shop/testing/method_draft.hpp"
#include "kiosk/shop/testing/print_draft.hpp"

namespace holdfast::kiosk::demo {
namespace {

constexpr std::int64_t kAtBench = 2;
constexpr const char* kHouseWash = "wash-house";

ledger::Result<void> cannotAtBench(const std::string& what, const shop::TestFaults& faults = {}) {
    std::string said = "demo: " + what;
    for (const auto& fault : faults) {
        said += " [" + std::to_string(static_cast<int>(fault.cause)) + " " + fault.field + "]";
    }
    return tl::unexpected(ledger::Failure{ledger::FailureCode::refused, said});
}

shop::LabDraft labOf(const std::vector<double>& colour) {
    const auto typed = [&](std::size_t i) {
        auto text = std::to_string(colour[i]);
        return text.substr(0, text.find('.') + 2);
    };
    return colour.size() == 3 ? shop::LabDraft{typed(0), typed(1), typed(2)} : shop::LabDraft{};
}

/// What a stretch's pulls showed, or the answers in the form's order; lengths as they were read.
void fill(shop::TestDraft& draft, const TestsPrint& test) {
    const bool pulls = draft.method.kind == records::TestKind::stretch;
    for (std::size_t i = 0; i < test.answers.size(); ++i) {
        if (pulls && i < draft.pulls.size()) {
            draft.pulls[i].seen = test.answers[i];
        } else if (!pulls && i < draft.answers.size()) {
            draft.answers[i].typed = test.answers[i];
        }
    }
    const auto& lengths = test.lengths;
    if (pulls && lengths.size() == 3) {
        draft.lengthwise = {lengths[0], lengths[1], lengths[2]};
    } else if (lengths.size() == 4) {
        draft.lengthwise = {lengths[0], {}, lengths[1]};
        draft.widthwise = {lengths[2], {}, lengths[3]};
    }
    draft.cycle = test.cycle;
    draft.before = labOf(test.before);
    draft.after = labOf(test.after);
    draft.note = test.note;
}

} // namespace

ledger::Result<void> DemoBench::operator()(const NamesPrint& name) {
    const auto& reader = m_book.reader();
    const auto run = records::runByNumber(reader, records::PlanKind::run, name.run);
    const auto number = records::nextPrint(reader);
    if (!run || !*run || !number) {
        return cannotAtBench("no run " + std::to_string(name.run));
    }
    shop::PrintContext context;
    context.run = (*run)->plan.run;
    const auto lots = records::lotsOfRun(reader, *context.run);
    context.lots = lots ? *lots : std::vector<records::LotRow>{};
    context.nextNumber = *number;
    context.printId = m_pen.newId();
    context.now = now();
    context.utcOffsetMinutes = m_clock.wall().utcOffsetMinutes;
    shop::PrintDraft draft;
    draft.run = std::to_string(name.run);
    for (const auto& lot : context.lots) {
        if (lot.number == name.lot) {
            draft.lot = lot.id;
        }
    }
    draft.piece = std::to_string(name.piece);
    if (!name.shelf.empty()) {
        const auto until = drivers::localDay(m_clock.wall()) + std::chrono::days{name.keptForDays};
        draft.retained = {true, name.shelf, records::toText(analytics::Date{until}), name.reprintAllowed};
    }
    auto made = shop::printFrom(draft, context);
    if (!made) {
        return cannotAtBench("name " + name.print, made.error());
    }
    m_prints[name.print] = made->named.print;
    std::vector<records::Record> list{made->named};
    if (made->moved) {
        list.emplace_back(*made->moved);
    }
    return m_pen.writeSigned(kAtBench, list);
}

ledger::Result<void> DemoBench::operator()(const CutsPrint& cut) {
    const auto whole = print(cut.print);
    const auto number = records::nextPrint(m_book.reader());
    if (!whole || !number) {
        return cannotAtBench("no print " + cut.print);
    }
    shop::PrintContext context;
    context.nextNumber = *number;
    context.printId = m_pen.newId();
    context.now = now();
    const auto half = shop::halfOf(*whole, context);
    if (!half) {
        return cannotAtBench("cut " + cut.print, half.error());
    }
    m_prints[cut.half] = half->named.print;
    return m_pen.writeSigned(kAtBench, {half->named});
}

ledger::Result<void> DemoBench::operator()(const EndsPrint& end) {
    const auto one = print(end.print);
    if (!one) {
        return cannotAtBench("no print " + end.print);
    }
    const auto changed = shop::ended(*one, end.end);
    return changed ? m_pen.writeSigned(kAtBench, {*changed}) : cannotAtBench("end " + end.print, changed.error());
}

ledger::Result<void> DemoBench::operator()(const DescribesMethod&) {
    shop::MethodDraft draft;
    draft.name = "Fold under a warm iron";
    draft.mark = analytics::Mark::commonPractice;
    draft.source = "demo shop";
    draft.rest = "1";
    draft.steps = {"Fold the print face to face.", "Iron it warm for ten seconds through a cloth.",
                   "Open it when it is cold and look at the fold."};
    draft.cautions = {"The iron and the print are hot: mind your hands."};
    shop::CriterionDraft opens;
    opens.quantity = analytics::Quantity::ownYesNo;
    opens.ownName = "fold sticks";
    opens.bound = analytics::Bound::is;
    opens.limit = "no";
    shop::CriterionDraft looks;
    looks.ownName = "look of the fold";
    looks.limit = "4";
    draft.rule = {opens, looks};
    m_fold = m_pen.newId();
    const auto made = shop::methodFrom(draft, {}, m_fold);
    return made ? m_pen.writeSigned(kAtBench, {*made}) : cannotAtBench("describe a method", made.error());
}

ledger::Result<void> DemoBench::operator()(const Washes& wash) {
    shop::LoadDraft draft;
    draft.machine = wash.machine;
    draft.programme = method(kHouseWash);
    draft.temperature = "60";
    draft.detergent = "D 44";
    draft.besides = "two white towels";
    draft.goodWitness = wash.goodMark;
    draft.weakWitness = "W-2";
    for (const auto& name : wash.prints) {
        if (auto one = print(name)) {
            draft.prints.push_back(*std::move(one));
        }
    }
    const auto number = records::nextLoad(m_book.reader());
    if (!number || draft.prints.size() != wash.prints.size()) {
        return cannotAtBench("fill the drum");
    }
    const auto load = shop::loadFrom(draft, m_pen.newId(), *number, now());
    return load ? m_pen.writeSigned(kAtBench, {*load}) : cannotAtBench("wash", load.error());
}

ledger::Result<void> DemoBench::operator()(const JudgesLoad& judge) {
    const auto& reader = m_book.reader();
    const auto newest = records::loads(reader, 1);
    if (!newest || newest->empty()) {
        return cannotAtBench("no load");
    }
    const auto& washed = newest->front().washed;
    const auto earlier = records::judgedLoads(reader, washed.machine, washed.programme);
    const auto limits = shop::limitsFor(earlier ? *earlier : std::vector<records::LoadRow>{}, washed.load);
    const auto finding = shop::judgedFrom({judge.good, judge.weak, false}, washed.load, limits);
    return finding ? m_pen.writeSigned(kAtBench, {finding->judged}) : cannotAtBench("judge a load", finding.error());
}

ledger::Result<void> DemoBench::operator()(const TestsPrint& test) {
    const auto one = print(test.print);
    const auto how = method(test.method == "fold" ? m_fold : test.method);
    const auto context = one ? contextOf(*one) : std::nullopt;
    if (!how || !context) {
        return cannotAtBench("test " + test.print + " by " + test.method);
    }
    auto draft = shop::draftFor(one->named.print, *how);
    fill(draft, test);
    for (const auto& load : context->loads) { // the newest that it was in
        draft.load = load.washed.programme == how->key ? std::optional{load.washed.load} : draft.load;
    }
    std::vector<ledger::BlobDraft> pictures;
    if (test.wear >= 0) {
        const auto& layers = one->layers;
        auto bytes = pictureOfPrint({one->garmentColour, layers.empty() ? "" : layers.back().colour,
                                     static_cast<int>(one->named.number), test.wear});
        const bool washed = how->kind == records::TestKind::wash && test.wear > 0;
        draft.pictures.push_back({ledger::toHex(ledger::sha256(bytes)),
                                  washed ? records::PictureSide::washed : records::PictureSide::unwashed});
        pictures.push_back({"picture", std::move(bytes)});
    }
    const auto kept = shop::testFrom(draft, *context);
    if (!kept) {
        return cannotAtBench("test " + test.print + " by " + test.method + " " + test.cycle, kept.error());
    }
    std::vector<records::Record> list{kept->done};
    if (kept->hold) {
        list.emplace_back(*kept->hold);
    }
    return m_pen.writeSigned(kAtBench, list, {context->testId}, std::move(pictures));
}

std::optional<records::PrintRow> DemoBench::print(const std::string& name) const {
    const auto known = m_prints.find(name);
    const auto row = known == m_prints.end() ? ledger::Result<std::optional<records::PrintRow>>{}
                                             : records::printById(m_book.reader(), known->second);
    return row ? *row : std::nullopt;
}

std::optional<records::MethodDescribed> DemoBench::method(const std::string& key) const {
    const auto all = records::methods(m_book.reader());
    for (const auto& one : all ? *all : std::vector<records::MethodDescribed>{}) {
        if (one.key == key) {
            return one;
        }
    }
    return std::nullopt;
}

std::optional<shop::TestContext> DemoBench::contextOf(const records::PrintRow& print) {
    const auto& reader = m_book.reader();
    const auto tests = records::testsOfPrint(reader, print.named.print);
    const auto loads = records::loadsOfPrint(reader, print.named.print);
    const auto holds = records::holdsOfLot(reader, print.named.lot);
    const auto pieces = records::piecesOfLot(reader, print.named.lot);
    const auto bin = records::nextBin(reader);
    if (!tests || !loads || !holds || !pieces || !bin) {
        return std::nullopt;
    }
    shop::TestContext context;
    context.print = print;
    context.lotScrapped = print.lotState == records::LotState::scrapped;
    for (const auto& one : *tests) {
        if (one.done.print == print.named.print) {
            context.tests.push_back(one);
        }
    }
    context.loads = *loads;
    context.holds = *holds;
    context.shipped = pieces->shipped > 0;
    context.pieces = pieces->made;
    context.now = now();
    context.nextBin = *bin;
    context.testId = m_pen.newId();
    context.holdId = m_pen.newId();
    return context;
}

} // namespace holdfast::kiosk::demo
