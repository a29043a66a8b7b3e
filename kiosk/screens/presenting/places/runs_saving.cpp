// What the Runs write, and what their forms are made of.
#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/runs_place.hpp"
#include "kiosk/shop/planning/habits.hpp"
#include "kiosk/shop/planning/layer_bucket.hpp"
#include "kiosk/wording/plan_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

shop::Stock stockOf(const ledger::Book& book) {
    shop::Stock stock;
    if (const auto families = records::newestFamilies(book.reader())) {
        for (const auto& family : *families) {
            stock.families.push_back(records::toFamily(family));
        }
    }
    if (const auto fabrics = records::newestFabrics(book.reader())) {
        for (const auto& fabric : *fabrics) {
            stock.fabrics.push_back(records::toFabric(fabric));
        }
    }
    const auto covering = records::setting(book.reader(), shop::kCoveringColours);
    const auto light = records::setting(book.reader(), shop::kLightGarments);
    stock.habits = shop::habitsFrom(covering ? *covering : std::nullopt, light ? *light : std::nullopt);
    return stock;
}

} // namespace

/// One that is half typed comes back instead: nothing is typed twice.
void RunsPlace::startForm(shop::PlanDraft draft) {
    m_import.reset();
    m_finishing.reset();
    m_aside = false;
    if (isWriting()) {
        m_needs.tell({text("runs.one-form"), {}, {}});
        return;
    }
    if (draft.layers.empty()) {
        draft.layers.emplace_back();
    }
    const auto open = records::buckets(m_needs.book->reader(), false);
    m_form.emplace(std::move(draft), stockOf(*m_needs.book), open ? *open : std::vector<records::BucketOnFile>{},
                   [this](std::int64_t number, bool closedToo) { return bucketOnFile(number, closedToo); });
}

tl::expected<shop::StockBucket, shop::PlanFault> RunsPlace::bucketOnFile(std::int64_t number, bool closedToo) const {
    const auto& reader = m_needs.book->reader();
    auto tree = records::ancestry(reader, number);
    const auto ink = records::inkOfBucket(reader, number);
    if (tree && *tree && closedToo) {
        (*tree)->bucket.closed.reset();
    }
    const auto wall = m_needs.clock->wall();
    return shop::layerBucket(number, tree ? *tree : std::nullopt, ink ? *ink : std::nullopt,
                             wall.millisecondsSinceEpoch, drivers::localDay(wall));
}

void RunsPlace::startImport() {
    std::vector<std::string> known;
    for (const bool finished : {false, true}) {
        const auto rows = records::runsOnFile(m_needs.book->reader(), records::PlanKind::run, finished, INT32_MAX);
        for (const auto& row : rows ? *rows : std::vector<records::RunRow>{}) {
            if (!row.reference.empty()) {
                known.push_back(row.reference);
            }
        }
    }
    m_aside = true;
    m_imported.reset();
    m_import.emplace(m_needs.exchange, stockOf(*m_needs.book), std::move(known), m_beside, m_needs.show);
}

/// A second press while the first is under way writes nothing.
void RunsPlace::keep(std::vector<records::Record> list, std::function<void()> done) {
    if (m_keeping) {
        return;
    }
    m_keeping = true;
    m_needs.keep({std::move(list)}, [this, done = std::move(done)](const std::optional<ledger::Failure>& failure) {
        m_keeping = false;
        if (failure) { // what was typed stays
            m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
            return;
        }
        done();
    });
}

void RunsPlace::savePlan() {
    auto plan = m_form->plan();
    if (!plan) {
        return;
    }
    const bool isNew = plan->run.empty();
    if (isNew) {
        const auto kind = plan->kind == records::PlanKind::run ? records::Numbered::run : records::Numbered::windowCard;
        const auto number = records::nextNumber(m_needs.book->reader(), kind);
        if (!number) {
            m_needs.tell(wording::noticeOf(number.error(), wording::Kept::book, m_needs.speech()));
            return;
        }
        plan->run = m_needs.newId();
        plan->number = *number;
    }
    const auto before = records::runById(m_needs.book->reader(), plan->run);
    auto list = shop::recordsOfPlan(*plan, before && *before ? &**before : nullptr, stockOf(*m_needs.book).families,
                                    m_needs.newId());
    const auto run = plan->run;
    keep(std::move(list), [this, run] {
        m_form.reset();
        m_finished = false;
        reload();
        choose(run);
    });
}

void RunsPlace::finish() {
    const auto made = pieceCount(m_finishing->made);
    const auto spoiled = pieceCount(m_finishing->spoiled);
    m_finishing->tried = true;
    if (!made.readable || !spoiled.readable) {
        return;
    }
    keep(shop::recordsOfFinish(*m_run, made.value, spoiled.value), [this] {
        m_finishing.reset();
        m_run.reset();
        reload();
    });
}

void RunsPlace::importPlans() {
    auto number = records::nextNumber(m_needs.book->reader(), records::Numbered::run);
    if (!number) {
        m_needs.tell(wording::noticeOf(number.error(), wording::Kept::book, m_needs.speech()));
        return;
    }
    std::vector<records::Record> list;
    for (auto plan : m_import->plans()) {
        plan.run = m_needs.newId();
        plan.number = (*number)++;
        list.emplace_back(std::move(plan));
    }
    const auto planned = list.size();
    keep(std::move(list), [this, planned] {
        m_import.reset();
        m_imported = planned;
        m_run.reset();
        reload();
    });
}

} // namespace holdfast::kiosk::screens
