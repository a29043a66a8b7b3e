#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/spool.hpp"
#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/shop/proving/proving_desk.hpp"

#include <map>
#include <optional>

namespace holdfast::kiosk::shop {

/// The part of the desk that lives on the writer's thread: its reading connection and the open spools.
class ProvingDesk::Disk final {
public:
    Disk(ledger::Book& book, std::string dryer) : m_book{book}, m_dryer{std::move(dryer)} {}

    /// The answer to a look-up; `freshLot` is the lot's id if none is open.
    [[nodiscard]] ProvingEvent lookUp(const LookUpRun& asked, const std::string& freshLot, const records::Moment& now);
    [[nodiscard]] ledger::Result<InstrumentsLoaded> instruments(analytics::Date today);
    /// One event for each left-over spool, in order of their names.
    [[nodiscard]] std::vector<ProvingEvent> leftOver(const std::vector<std::string>& freshLots,
                                                     const records::Moment& now);
    [[nodiscard]] bool anyLeftOver() const;
    [[nodiscard]] ledger::Result<FloorLoaded> floor();
    /// Of this dryer, of late; empty if the book cannot say.
    [[nodiscard]] EarlierRidesLoaded earlierRides();
    [[nodiscard]] StripLookedUp strip(std::int64_t number);
    /// The answer to LoadTrace: TraceLoaded or TraceNotLoaded.
    [[nodiscard]] ProvingEvent trace(const std::string& reading);
    [[nodiscard]] std::optional<ledger::Failure> openSpool(const OpenSpool& open, const std::string& name);
    [[nodiscard]] std::optional<ledger::Failure> appendSpool(const AppendSpool& append);
    void syncSpool(std::int64_t spool);
    void discardSpool(std::int64_t spool, const std::string& fileName);
    /// The ride is in the book.
    void forgetSpool(std::int64_t spool) { m_spools.erase(spool); }

private:
    [[nodiscard]] ledger::Result<SQLite::Database*> reader();
    [[nodiscard]] ProvingEvent readLeftOver(const std::string& fileName, const std::string& freshLot,
                                            const records::Moment& now);
    [[nodiscard]] std::shared_ptr<const AnnouncedRun> runOf(const std::string& id, const std::string& freshLot,
                                                            const records::Moment& now);
    [[nodiscard]] ledger::Result<std::vector<ledger::TracePoint>> points(const std::string& sha256);
    [[nodiscard]] std::optional<records::ReadingRow> rowOf(const records::ReadingTaken& taken, const std::string& id);
    [[nodiscard]] std::shared_ptr<const AnnouncedRun> announced(records::RunOnFile run, const std::string& freshLot);

    ledger::Book& m_book;
    std::string m_dryer;
    std::unique_ptr<SQLite::Database> m_reader;
    std::unique_ptr<ledger::Book> m_traces; ///< read-only, once a trace was asked for
    std::map<std::int64_t, ledger::Spool> m_spools;
};

} // namespace holdfast::kiosk::shop
