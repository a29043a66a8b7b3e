#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "tests/kiosk/records/support/samples.hpp"

#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>
#include <unistd.h>

namespace holdfast::kiosk::records::testing {

/// A book in a folder of its own, gone with it.
class Shop final {
public:
    Shop() : m_folder{std::filesystem::temp_directory_path() / ("holdfast-records-" + std::to_string(::getpid()))} {
        std::filesystem::remove_all(m_folder);
        auto opened =
            ledger::Book::open(m_folder, std::make_shared<const ShopProjection>(), ledger::OpenMode::firstStart);
        REQUIRE(opened);
        m_book = std::move(*opened);
    }
    ~Shop() {
        m_book.reset();
        std::filesystem::remove_all(m_folder);
    }

    ledger::Result<ledger::CommitReceipt> tell(const Record& record, const std::string& id = {}) {
        ledger::EntryDraft draft;
        draft.id = id.empty() ? freshId() : id;
        draft.kiosk = "kiosk";
        draft.wallMilliseconds = 1'772'000'000'000 + ++m_told;
        draft.kind = rowOf(record).kind;
        draft.version = rowOf(record).version;
        draft.body = bodyOf(record);
        return m_book->commit({{draft}, {}});
    }
    /// Whether all entries applied anew give the tables that stand.
    [[nodiscard]] bool rebuildsTheSame() {
        const auto live = m_book->tablesDigest();
        REQUIRE(live);
        REQUIRE(m_book->rebuild());
        const auto rebuilt = m_book->tablesDigest();
        REQUIRE(rebuilt);
        return *live == *rebuilt;
    }
    /// Wall milliseconds of the entry told last.
    [[nodiscard]] std::int64_t now() const { return 1'772'000'000'000 + m_told; }
    ledger::Result<ledger::CommitReceipt> tellRaw(const std::string& kind, int version, const std::string& body) {
        ledger::EntryDraft draft;
        draft.id = freshId();
        draft.kind = kind;
        draft.version = version;
        draft.body = body;
        return m_book->commit({{draft}, {}});
    }
    /// Inks, cloth, the run of the samples and its lot 1.
    void plan(bool childrensWear = false) {
        const auto families = analytics::starterFamilies();
        for (const auto& family : families) {
            REQUIRE(tell(recordOf(family, analytics::TemperatureUnit::fahrenheit)));
        }
        for (const auto& fabric : analytics::starterFabrics()) {
            REQUIRE(tell(recordOf(fabric, analytics::TemperatureUnit::fahrenheit)));
        }
        for (const auto& sample : sampleOfEveryKind()) {
            if (std::holds_alternative<InstrumentDescribed>(sample)) {
                REQUIRE(tell(sample));
            } else if (const auto* run = std::get_if<RunPlanned>(&sample)) {
                auto planned = *run;
                planned.childrensWear = childrensWear;
                REQUIRE(tell(planned));
            }
        }
        LotOpened lot;
        lot.lot = *sampleReading().lot;
        lot.run = *sampleReading().run;
        lot.revisions = {{{"low-cure", 1}, {"standard", 1}}, {"100% polyester", 1}};
        REQUIRE(tell(lot));
    }
    std::string read(analytics::Word word, ReadingReason reason = ReadingReason::drawn,
                     std::optional<std::string> retakeOf = {}) {
        auto reading = sampleReading();
        reading.verdict->word = word;
        reading.reason = reason;
        reading.retakeOf = std::move(retakeOf);
        const auto id = freshId();
        REQUIRE(tell(reading, id));
        return id;
    }
    LotState lotState() {
        const auto run = runByNumber(db(), PlanKind::run, 20418);
        REQUIRE(run);
        REQUIRE(*run);
        return (*run)->lot ? (*run)->lot->state : LotState::cleared;
    }
    std::string freshId() {
        char id[40];
        std::snprintf(id, sizeof id, "01926e2a-0000-7000-9000-%012d", ++m_ids);
        return id;
    }
    [[nodiscard]] const SQLite::Database& db() const { return m_book->reader(); }
    [[nodiscard]] ledger::Book& book() { return *m_book; }

private:
    std::filesystem::path m_folder;
    std::unique_ptr<ledger::Book> m_book;
    int m_told = 0;
    int m_ids = 0;
};

} // namespace holdfast::kiosk::records::testing
