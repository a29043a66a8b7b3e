#include "kiosk/screens/presenting/places/print_recall.hpp"

#include "kiosk/records/queries.hpp"

namespace holdfast::kiosk::screens {
namespace {

/// Nothing if its moves could not be read: a recall that leaves a carton out is worse than none.
std::optional<reports::RecallLot> lotToCall(const PrintSource& source, const records::LotRow& lot,
                                            const records::RunPlanned& plan) {
    const auto& database = source.book.reader();
    const auto moves = records::movesOfLot(database, lot.id);
    const auto pieces = records::piecesOfLot(database, lot.id);
    if (!moves || !pieces) {
        return std::nullopt;
    }
    reports::RecallLot out{plan.number, plan.title, lot.number, lot.state, *pieces, {}};
    for (const auto& move : *moves) {
        if (!move.corrected) {
            out.shipped.push_back(move.moved);
        }
    }
    return out;
}

std::optional<reports::RecallLot> lotToCall(const PrintSource& source, const std::string& id) {
    const auto lot = records::lotById(source.book.reader(), id);
    if (!lot || !*lot) {
        return std::nullopt;
    }
    const auto run = records::runById(source.book.reader(), (*lot)->run);
    return run && *run ? lotToCall(source, **lot, (*run)->plan) : std::nullopt;
}

std::optional<reports::RecallList> recallListFor(const PrintSource& source, const reports::RecallSubject& subject,
                                                 const std::vector<reports::RecallLot>& lots) {
    auto list = reports::recallListOf(subject, lots);
    list.shop = source.shop;
    list.printed = source.now;
    return list;
}

/// Nothing if it went into nothing.
std::optional<reports::RecallList> reachedBy(const PrintSource& source, const reports::RecallSubject& subject,
                                             const ledger::Result<std::vector<records::ReachedCarton>>& rows) {
    if (!rows || rows->empty()) {
        return std::nullopt;
    }
    std::vector<reports::RecallLot> reached;
    for (const auto& row : *rows) {
        auto one = lotToCall(source, row.lot);
        if (!one) {
            return std::nullopt;
        }
        reached.push_back(std::move(*one));
    }
    return recallListFor(source, subject, reached);
}

} // namespace

std::optional<reports::RecallList> recallOfLot(const PrintSource& source, const std::string& lot) {
    const auto found = lotToCall(source, lot);
    if (!found) {
        return std::nullopt;
    }
    return recallListFor(source, {reports::RecallReach::lot, {}, found->run, found->lot}, {*found});
}

std::optional<reports::RecallList> recallOfRun(const PrintSource& source, std::int64_t run) {
    const auto& database = source.book.reader();
    const auto found = records::runByNumber(database, records::PlanKind::run, run);
    if (!found || !*found) {
        return std::nullopt;
    }
    const auto lots = records::lotsOfRun(database, (*found)->plan.run);
    if (!lots) {
        return std::nullopt;
    }
    std::vector<reports::RecallLot> reached;
    for (const auto& lot : *lots) {
        auto one = lotToCall(source, lot, (*found)->plan);
        if (!one) {
            return std::nullopt;
        }
        reached.push_back(std::move(*one));
    }
    return recallListFor(source, {reports::RecallReach::run, {}, run, 0}, reached);
}

std::optional<reports::RecallList> recallOfBatch(const PrintSource& source, const std::string& batch) {
    return reachedBy(source, {reports::RecallReach::batch, batch, 0, 0},
                     records::reachedByBatch(source.book.reader(), batch));
}

std::optional<reports::RecallList> recallOfBucket(const PrintSource& source, std::int64_t bucket) {
    return reachedBy(source, {reports::RecallReach::bucket, std::to_string(bucket), 0, 0},
                     records::reachedByBucket(source.book.reader(), bucket));
}

PrintWanted recallOfBucketFor(const PrintSource& source, std::int64_t bucket) {
    const auto list = recallOfBucket(source, bucket);
    return list ? PrintWanted{reports::recallList(*list, source.style)} : std::nullopt;
}

std::optional<reports::RecallList> recallOfLots(const PrintSource& source, std::int64_t complaint,
                                                const std::vector<std::string>& lots) {
    std::vector<reports::RecallLot> reached;
    for (const auto& lot : lots) {
        auto one = lotToCall(source, lot);
        if (!one) {
            return std::nullopt;
        }
        reached.push_back(std::move(*one));
    }
    return recallListFor(source, {reports::RecallReach::complaint, {}, complaint, 0}, reached);
}

PrintWanted recallOfLotsFor(const PrintSource& source, std::int64_t complaint, const std::vector<std::string>& lots) {
    const auto list = recallOfLots(source, complaint, lots);
    return list ? PrintWanted{reports::recallList(*list, source.style)} : std::nullopt;
}

PrintWanted recallFor(const PrintSource& source, const std::string& id, std::int64_t number) {
    auto list = id.empty() ? recallOfRun(source, number) : recallOfLot(source, id);
    if (!list && !id.empty()) {
        list = recallOfBatch(source, id);
    }
    return list ? PrintWanted{reports::recallList(*list, source.style)} : std::nullopt;
}

} // namespace holdfast::kiosk::screens
