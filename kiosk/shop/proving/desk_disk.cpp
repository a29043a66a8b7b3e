#include "kiosk/shop/proving/desk_disk.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/shop/proving/spool_header.hpp"

#include <algorithm>
#include <climits>
#include <system_error>

namespace holdfast::kiosk::shop {
namespace {

constexpr int kMostUnclaimed = 40; // "whose was this?" lists no more

std::vector<ledger::TracePoint> pointsOf(const std::vector<drivers::Sample>& samples) {
    std::vector<ledger::TracePoint> points;
    points.reserve(samples.size());
    for (const auto& sample : samples) {
        points.push_back({sample.at.count(), sample.counts, static_cast<std::uint8_t>(sample.flags)});
    }
    return points;
}

std::vector<drivers::Sample> samplesOf(const std::vector<ledger::TracePoint>& points) {
    std::vector<drivers::Sample> samples;
    samples.reserve(points.size());
    for (const auto& point : points) {
        samples.push_back(
            {drivers::MonotonicTime{point.microseconds}, point.counts, static_cast<drivers::SampleFlag>(point.flags)});
    }
    return samples;
}

KnownInstrument known(const records::InstrumentOnFile& one, analytics::Date today) {
    KnownInstrument known;
    known.id = one.described.instrument;
    known.name = one.described.spec.name;
    if (one.described.number) {
        known.number = static_cast<std::uint64_t>(*one.described.number);
    }
    known.kind = one.described.spec.kind;
    known.pack = one.described.pack;
    known.calibration = std::make_shared<const analytics::Calibration>(one.instrument, today);
    if (one.described.spec.strip) {
        known.stripSteps = one.described.spec.strip->steps;
    }
    return known;
}

analytics::GuardSetting guardOf(const std::optional<records::SettingValue>& risk) {
    analytics::GuardSetting guard;
    if (risk && std::holds_alternative<double>(*risk)) {
        guard.risk = analytics::Probability::fromPercent(std::get<double>(*risk));
    } else if (risk && std::holds_alternative<std::int64_t>(*risk)) {
        guard.risk = analytics::Probability::fromPercent(static_cast<double>(std::get<std::int64_t>(*risk)));
    }
    return guard;
}

/// A setting of so many, 1 or more; nothing else counts as one.
std::optional<std::int64_t> countSet(const SQLite::Database& database, const char* key) {
    const auto found = records::setting(database, key);
    const auto* number = found && *found ? std::get_if<std::int64_t>(&**found) : nullptr;
    return number != nullptr && *number >= 1 && *number <= analytics::kMostPieces ? std::optional{*number}
                                                                                  : std::nullopt;
}

analytics::ReadingPlanSettings planSettings(const SQLite::Database& database) {
    analytics::ReadingPlanSettings settings;
    if (const auto pieces = countSet(database, "reading_every_pieces")) {
        settings.everyPieces = static_cast<int>(*pieces);
    }
    if (const auto minutes = countSet(database, "reading_every_minutes")) {
        settings.every = std::chrono::minutes{*minutes};
    }
    return settings;
}

bool isTightened(const SQLite::Database& database, const std::string& dryer) {
    constexpr int kLooked = 60; // lots; a succession of five good ones ends it long before (MEM)
    const auto past = records::pastLots(database, dryer, kLooked);
    std::vector<analytics::LotOutcome> outcomes;
    for (const auto& one : past ? *past : std::vector<records::PastLot>{}) {
        const bool good = one.lot.state == records::LotState::cleared;
        outcomes.push_back(one.wasHeld ? analytics::LotOutcome::held
                           : good      ? analytics::LotOutcome::good
                                       : analytics::LotOutcome::unproven);
    }
    std::reverse(outcomes.begin(), outcomes.end());
    return analytics::isTightened(outcomes);
}

} // namespace

ledger::Result<SQLite::Database*> ProvingDesk::Disk::reader() {
    if (!m_reader) {
        auto opened = m_book.openReader();
        if (!opened) {
            return tl::unexpected(opened.error());
        }
        m_reader = std::move(*opened);
    }
    return m_reader.get();
}

std::shared_ptr<const AnnouncedRun> ProvingDesk::Disk::announced(records::RunOnFile run, const std::string& freshLot) {
    auto announced = std::make_shared<AnnouncedRun>();
    announced->lotId = run.lot ? run.lot->id : freshLot;
    announced->lotNumber = run.lot ? run.lot->number : run.lotsSoFar + 1;
    announced->dryer = m_dryer;
    announced->onFile = std::move(run);
    return announced;
}

ProvingEvent ProvingDesk::Disk::lookUp(const LookUpRun& asked, const std::string& freshLot,
                                       const records::Moment& now) {
    const auto database = reader();
    if (!database) {
        return LookUpFailed{asked.number, database.error()};
    }
    const auto kind = asked.windowCard ? records::PlanKind::windowCard : records::PlanKind::run;
    auto run = records::runByNumber(**database, kind, static_cast<std::int64_t>(asked.number), now);
    if (!run) {
        return LookUpFailed{asked.number, run.error()};
    }
    if (!*run) {
        return RunNotFound{asked.number};
    }
    return RunLoaded{asked.number, announced(std::move(**run), freshLot)};
}

ledger::Result<InstrumentsLoaded> ProvingDesk::Disk::instruments(analytics::Date today) {
    const auto database = reader();
    if (!database) {
        return tl::unexpected(database.error());
    }
    const auto instruments = records::instruments(**database);
    const auto families = records::newestFamilies(**database);
    const auto risk = records::setting(**database, "risk_percent");
    if (!instruments || !families || !risk) {
        return tl::unexpected(!instruments ? instruments.error() : !families ? families.error() : risk.error());
    }
    InstrumentsLoaded loaded;
    for (const auto& one : *instruments) {
        loaded.instruments.push_back(known(one, today));
    }
    for (const auto& family : *families) {
        loaded.families.push_back(records::toFamily(family));
    }
    loaded.guard = guardOf(*risk);
    loaded.today = today;
    return loaded;
}

std::shared_ptr<const AnnouncedRun> ProvingDesk::Disk::runOf(const std::string& id, const std::string& freshLot,
                                                             const records::Moment& now) {
    const auto database = reader();
    if (!database) {
        return nullptr;
    }
    auto run = records::runById(**database, id, now);
    // A finished run takes no lot any more: the ride is kept as nobody's.
    const bool takes = run && *run && (*run)->usable && (!(*run)->finished || (*run)->lot);
    return takes ? announced(std::move(**run), freshLot) : nullptr;
}

ProvingEvent ProvingDesk::Disk::readLeftOver(const std::string& fileName, const std::string& freshLot,
                                             const records::Moment& now) {
    const auto contents = ledger::Spool::read(m_book.folder() / fileName);
    const auto header = contents ? readHeader(contents->header) : records::RecordResult<SpoolHeader>{};
    if (!contents || !header || !reader() || contents->points.empty()) {
        return SpoolUnreadable{fileName};
    }
    SpoolFound found{fileName, header->probe,    header->scale,    samplesOf(contents->points),
                     nullptr,  header->corrects, header->position, {}};
    if (header->run) {
        found.run = runOf(*header->run, freshLot, now);
    }
    for (const auto& other : header->others) {
        const auto number =
            std::to_string(found.others.size() + 1); // one fresh id a spool is enough to tell them apart
        if (auto run = runOf(other.run, freshLot + "-" + number, now)) {
            found.others.push_back({std::move(run), other.corrects});
        }
    }
    return found;
}

std::vector<ProvingEvent> ProvingDesk::Disk::leftOver(const std::vector<std::string>& freshLots,
                                                      const records::Moment& now) {
    std::vector<ProvingEvent> events;
    const auto names = ledger::Spool::findLeftOver(m_book.folder());
    for (std::size_t i = 0; names && i < names->size() && i < freshLots.size(); ++i) {
        events.push_back(readLeftOver((*names)[i], freshLots[i], now));
    }
    return events;
}

bool ProvingDesk::Disk::anyLeftOver() const {
    const auto names = ledger::Spool::findLeftOver(m_book.folder());
    return names && !names->empty();
}

ledger::Result<FloorLoaded> ProvingDesk::Disk::floor() {
    const auto database = reader();
    if (!database) {
        return tl::unexpected(database.error());
    }
    const auto dryers = records::dryersNow(**database);
    auto unanswered = records::unanswered(**database);
    auto unclaimed = records::unclaimed(**database, kMostUnclaimed);
    if (!dryers || !unanswered || !unclaimed) {
        return tl::unexpected(!dryers ? dryers.error() : !unanswered ? unanswered.error() : unclaimed.error());
    }
    FloorLoaded loaded;
    const auto here = std::find_if(dryers->begin(), dryers->end(),
                                   [&](const auto& dryer) { return dryer.described.dryer == m_dryer; });
    loaded.dryer = here == dryers->end() ? std::nullopt : std::optional{*here};
    loaded.unanswered = std::move(*unanswered);
    loaded.unclaimed = std::move(*unclaimed);
    if (const auto bin = records::nextBin(**database)) {
        loaded.nextBin = *bin;
    }
    loaded.settings = planSettings(**database);
    loaded.tightened = isTightened(**database, m_dryer);
    return loaded;
}

ledger::Result<std::vector<ledger::TracePoint>> ProvingDesk::Disk::points(const std::string& sha256) {
    const auto digest = ledger::fromHex(sha256);
    if (!digest) {
        return tl::unexpected(ledger::Failure{ledger::FailureCode::damaged, "no hash of a trace: " + sha256});
    }
    if (!m_traces) { // the book's own reading connection belongs to another thread
        auto book = ledger::Book::open(m_book.folder(), std::make_shared<const records::ShopProjection>(),
                                       ledger::OpenMode::readOnly);
        if (!book) {
            return tl::unexpected(book.error());
        }
        m_traces = *std::move(book);
    }
    const auto bytes = m_traces->blob(*digest);
    return bytes ? ledger::decodeTrace(*bytes) : tl::unexpected(bytes.error());
}

std::optional<records::ReadingRow> ProvingDesk::Disk::rowOf(const records::ReadingTaken& taken, const std::string& id) {
    const auto database = reader();
    if (!database) {
        return std::nullopt;
    }
    const auto rows =
        taken.run ? records::readingsOfRun(**database, *taken.run) : records::unclaimed(**database, INT_MAX);
    if (rows) {
        for (const auto& row : *rows) {
            if (row.id == id) {
                return row;
            }
        }
    }
    return std::nullopt;
}

StripLookedUp ProvingDesk::Disk::strip(std::int64_t number) {
    const auto database = reader();
    const auto used = database ? records::readingOfStrip(**database, number) : tl::unexpected(database.error());
    return {number, used && used->has_value(), !used};
}

ProvingEvent ProvingDesk::Disk::trace(const std::string& reading) {
    const auto database = this->reader();
    if (!database) {
        return TraceNotLoaded{reading, RefusalCause::bookUnreadable};
    }
    const auto taken = records::readingInFull(**database, reading);
    const auto row = taken && *taken ? rowOf(**taken, reading) : std::nullopt;
    if (!row) {
        return TraceNotLoaded{reading, taken ? RefusalCause::rideNotFound : RefusalCause::bookUnreadable};
    }
    const auto* seen = std::get_if<records::TraceSeen>(&(*taken)->evidence);
    const auto points =
        seen != nullptr ? this->points(seen->sha256) : ledger::Result<std::vector<ledger::TracePoint>>{};
    if (!points || points->empty()) {
        return TraceNotLoaded{reading, RefusalCause::traceUnreadable};
    }
    TraceLoaded loaded{reading, **taken, {}, samplesOf(*points)};
    const auto instrument = records::instrumentById(**database, (*taken)->instrument);
    if (instrument && *instrument) {
        loaded.instrument = known(**instrument, drivers::localDay({row->takenAt, row->utcOffsetMinutes}));
    } else {
        loaded.instrument.name = (*taken)->instrument;
    }
    return loaded;
}

std::optional<ledger::Failure> ProvingDesk::Disk::openSpool(const OpenSpool& open, const std::string& name) {
    const auto at = open.samples.empty() ? std::int64_t{0} : open.samples.back().at.count();
    auto spool = ledger::Spool::create(m_book.folder(), name, headerOf(open), at);
    if (!spool) {
        return spool.error();
    }
    const auto written = spool->append(pointsOf(open.samples), at);
    m_spools.insert_or_assign(open.spool, std::move(*spool));
    return written ? std::nullopt : std::optional{written.error()};
}

std::optional<ledger::Failure> ProvingDesk::Disk::appendSpool(const AppendSpool& append) {
    const auto spool = m_spools.find(append.spool);
    if (spool == m_spools.end() || append.samples.empty()) {
        return std::nullopt; // its opening failed, which was told
    }
    const auto written = spool->second.append(pointsOf(append.samples), append.samples.back().at.count());
    return written ? std::nullopt : std::optional{written.error()};
}

void ProvingDesk::Disk::syncSpool(std::int64_t spool) {
    if (const auto found = m_spools.find(spool); found != m_spools.end()) {
        (void)found->second.sync(); // the next append tells of a bad disk
    }
}

void ProvingDesk::Disk::discardSpool(std::int64_t spool, const std::string& fileName) {
    m_spools.erase(spool);
    std::error_code ignored; // what stays is found at the next start
    std::filesystem::remove(m_book.folder() / fileName, ignored);
}

} // namespace holdfast::kiosk::shop
