#include "kiosk/shop/deciding/doubt_query.hpp"

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/records/stock_queries.hpp"

#include <algorithm>
#include <set>

namespace holdfast::kiosk::shop::deciding {
namespace {

using analytics::LotStanding;
using ledger::Book;
using ledger::Result;
using records::ReadingTaken;

std::int64_t startOf(analytics::Date day, int utcOffsetMinutes) {
    constexpr std::int64_t kMinute = 60'000;
    return std::chrono::milliseconds{day.time_since_epoch()}.count() - utcOffsetMinutes * kMinute;
}

/// Looks at the instrument before this check.
Result<std::vector<analytics::InstrumentLook>> looksOf(const SQLite::Database& database, const CheckFailed& failed) {
    const auto checks = records::checksOf(database, failed.done.instrument);
    const auto certificates = records::certificatesOf(database, failed.done.instrument);
    if (!checks || !certificates) {
        return tl::unexpected(!checks ? checks.error() : certificates.error());
    }
    std::vector<analytics::InstrumentLook> looks;
    for (const auto& done : *checks) {
        looks.push_back({startOf(done.check.date, failed.utcOffsetMinutes), done.check.passed});
    }
    for (const auto& added : *certificates) {
        looks.push_back({startOf(added.certificate.date, failed.utcOffsetMinutes), true});
    }
    return looks;
}

std::optional<analytics::InkFamily> familyAt(const SQLite::Database& database, const records::RevisionUsed& used) {
    const auto revisions = records::revisionsOfFamily(database, used.name);
    for (const auto& one : revisions ? *revisions : std::vector<records::FamilyRecord>{}) {
        if (one.revision == used.revision) {
            return records::toFamily(one);
        }
    }
    return std::nullopt;
}

/// The ink of the same families as they were then. Which mass a part has does not matter, only that it has some
/// (decisions 1).
std::optional<analytics::Ink> inkThen(const SQLite::Database& database, const analytics::Ink& ink,
                                      const records::RevisionsUsed& used) {
    std::vector<analytics::MixPart> parts;
    for (const auto& part : ink.parts) {
        const auto revision = std::find_if(used.families.begin(), used.families.end(),
                                           [&](const auto& one) { return one.name == part.name; });
        auto family = revision == used.families.end() ? std::nullopt : familyAt(database, *revision);
        if (!family) {
            return std::nullopt;
        }
        parts.push_back({analytics::pureInk(std::move(*family)), 1.0});
    }
    auto mixed = analytics::mixInks(ink.name, parts);
    return mixed ? std::optional{std::move(*mixed)} : std::nullopt;
}

Result<std::vector<ledger::TracePoint>> pointsOf(const Book& book, const std::string& sha256) {
    const auto digest = ledger::fromHex(sha256);
    if (!digest) {
        return tl::unexpected(ledger::Failure{ledger::FailureCode::damaged, "no hash of a trace: " + sha256});
    }
    const auto bytes = book.blob(*digest);
    return bytes ? ledger::decodeTrace(*bytes) : tl::unexpected(bytes.error());
}

std::optional<analytics::SeenEvidence> traceThen(const Book& book, const records::TraceSeen& seen,
                                                 const analytics::Instrument& instrument) {
    const auto points = pointsOf(book, seen.sha256);
    if (!points || points->empty()) {
        return std::nullopt;
    }
    analytics::RawTrace raw;
    raw.samples.reserve(points->size());
    for (const auto& point : *points) {
        raw.samples.push_back(
            {analytics::MonotonicTime{point.microseconds},
             analytics::Temperature::from(static_cast<double>(point.counts) * seen.step.value, seen.step.unit),
             point.flags != 0});
    }
    raw.unit = seen.step.unit;
    raw.resolution = seen.step.difference();
    raw.range = instrument.range;
    raw.unitConfirmed = seen.unitConfirmed;
    raw.stoppedByHand = seen.stoppedByHand;
    raw.cutOff = seen.cutOff;
    return raw;
}

DoubtfulReading doubtful(const Book& book, const records::ReadingRow& row, const ReadingTaken& taken,
                         const analytics::Instrument& instrument) {
    DoubtfulReading reading;
    reading.id = row.id;
    reading.takenAt = row.takenAt;
    reading.taken = taken;
    auto placed = instrument;
    placed.placement = taken.placement;
    reading.calibration.emplace(placed, drivers::localDay({row.takenAt, row.utcOffsetMinutes}));
    auto plan = planThen(book.reader(), taken);
    auto evidence = evidenceThen(book, taken, placed);
    if (plan && evidence) {
        const auto* trace = std::get_if<records::TraceSeen>(&taken.evidence);
        reading.doubt = analytics::ReadingInDoubt{
            std::move(*plan), std::move(*evidence), trace != nullptr ? trace->pass : 1, std::nullopt, {}};
    }
    return reading;
}

Result<void> addReadings(const Book& book, const CheckFailed& failed, const analytics::Instrument& instrument,
                         InstrumentDoubt& doubt) {
    const auto& database = book.reader();
    const auto rows = records::readingsByInstrument(database, failed.done.instrument, doubt.time.from.value_or(0));
    if (!rows) {
        return tl::unexpected(rows.error());
    }
    for (const auto& row : *rows) {
        const bool asked = !row.refused && !row.struck && row.word == analytics::Word::cured && !row.lot.empty();
        const auto taken = asked ? records::readingInFull(database, row.id) : Result<std::optional<ReadingTaken>>{};
        if (!taken) {
            return tl::unexpected(taken.error());
        }
        if (*taken) {
            doubt.readings.push_back(doubtful(book, row, **taken, instrument));
        }
    }
    return {};
}

Result<void> addLots(const SQLite::Database& database, InstrumentDoubt& doubt) {
    std::set<std::string> lots;
    for (const auto& reading : doubt.readings) {
        lots.insert(reading.taken.lot.value_or(std::string{}));
    }
    for (const auto& id : lots) {
        const auto row = records::lotById(database, id);
        const auto pieces = records::piecesOfLot(database, id);
        if (!row || !pieces) {
            return tl::unexpected(!row ? row.error() : pieces.error());
        }
        if (*row) {
            const bool scrapped = (*row)->state == records::LotState::scrapped;
            doubt.lots.push_back({id, scrapped ? LotStanding::scrapped : LotStanding::onHold, pieces->made});
        }
    }
    return {};
}

} // namespace

std::optional<analytics::SeenEvidence> evidenceThen(const Book& book, const ReadingTaken& taken,
                                                    const analytics::Instrument& instrument) {
    if (const auto* trace = std::get_if<records::TraceSeen>(&taken.evidence)) {
        return traceThen(book, *trace, instrument);
    }
    if (const auto* spot = std::get_if<records::SpotSeen>(&taken.evidence)) {
        analytics::SpotReading reading;
        reading.held = spot->held.temperature();
        if (spot->beforeUse) {
            reading.beforeUse = spot->beforeUse->temperature();
        }
        return reading;
    }
    if (const auto* gun = std::get_if<records::GunSeen>(&taken.evidence)) {
        return analytics::SurfaceReading{gun->surface.temperature(), gun->place};
    }
    return std::nullopt;
}

std::optional<analytics::RunPlan> planThen(const SQLite::Database& database, const ReadingTaken& taken) {
    const auto run = taken.run && taken.revisions ? records::runById(database, *taken.run)
                                                  : Result<std::optional<records::RunOnFile>>{};
    if (!run || !*run || !(*run)->usable) {
        return std::nullopt;
    }
    auto plan = (*run)->layers;
    const bool sameShape =
        taken.guards.layers.size() == plan.layers.size() && taken.revisions->fabric.name == plan.fabric.name;
    if (!sameShape) {
        return std::nullopt;
    }
    for (auto& layer : plan.layers) {
        auto ink = inkThen(database, layer.ink, *taken.revisions);
        if (!ink) {
            return std::nullopt;
        }
        layer.ink = std::move(*ink);
    }
    const auto cloths = records::revisionsOfFabric(database, plan.fabric.name);
    for (const auto& cloth : cloths ? *cloths : std::vector<records::FabricRecord>{}) {
        if (cloth.revision == taken.revisions->fabric.revision) {
            plan.fabric = records::toFabric(cloth);
        }
    }
    return plan;
}

Result<std::optional<InstrumentDoubt>> instrumentDoubt(const Book& book, const CheckFailed& failed) {
    const auto& database = book.reader();
    const auto onFile = records::instrumentById(database, failed.done.instrument);
    const auto looks = looksOf(database, failed);
    if (!onFile || !looks) {
        return tl::unexpected(!onFile ? onFile.error() : looks.error());
    }
    if (!*onFile) {
        return std::nullopt;
    }
    const auto& instrument = (*onFile)->instrument;
    const auto today = drivers::localDay({failed.at, failed.utcOffsetMinutes});
    const auto found = errorFound(failed.done, analytics::Calibration{instrument, today});
    if (!found) {
        return std::nullopt;
    }
    InstrumentDoubt doubt;
    doubt.check = failed.id;
    doubt.found = *found;
    doubt.time = analytics::doubtfulTime(*looks, failed.at);
    doubt.guard = failed.guard;
    auto added = addReadings(book, failed, instrument, doubt);
    if (added) {
        added = addLots(database, doubt);
    }
    return added ? Result<std::optional<InstrumentDoubt>>{std::move(doubt)} : tl::unexpected(added.error());
}

Result<InstrumentHolds> holdsOfFailedCheck(const std::filesystem::path& bookFolder, const CheckFailed& failed) {
    const auto book =
        Book::open(bookFolder, std::make_shared<const records::ShopProjection>(), ledger::OpenMode::readOnly);
    if (!book) {
        return tl::unexpected(book.error());
    }
    const auto doubt = instrumentDoubt(**book, failed);
    if (!doubt) {
        return tl::unexpected(doubt.error());
    }
    return *doubt ? instrumentHolds(**doubt) : InstrumentHolds{};
}

} // namespace holdfast::kiosk::shop::deciding
