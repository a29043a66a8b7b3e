#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/ledger/uuid.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "tests/bench/folder.hpp"
#include "tests/bench/rows.hpp"
#include "tests/kiosk/records/support/samples.hpp"

#include <array>
#include <chrono>
#include <cmath>
#include <fcntl.h>
#include <random>
#include <unistd.h>

namespace holdfast::bench {
namespace {

using namespace holdfast::kiosk;

void append(benchmark::State& state) {
    const Folder folder;
    const int file = ::open((folder.path() / "bare").c_str(), O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0640);
    const std::array<char, 4096> page{};
    for (auto _ : state) {
        if (::write(file, page.data(), page.size()) != static_cast<ssize_t>(page.size()) || ::fdatasync(file) != 0) {
            state.SkipWithError("the disk refuses");
            break;
        }
    }
    ::close(file);
}

/// Drafts of one kiosk; every id is new.
class Pen final {
public:
    ledger::EntryDraft draft(const records::Record& record) {
        ledger::UuidRandom random{};
        for (auto& byte : random) {
            byte = static_cast<std::uint8_t>(m_dice() & 0xFFU);
        }
        ledger::EntryDraft made;
        made.id = ledger::uuid7(1'772'000'000'000 + ++m_drafts, random);
        made.kiosk = "kiosk";
        made.wallMilliseconds = static_cast<std::int64_t>(1'772'000'000'000 + m_drafts);
        made.kind = records::rowOf(record).kind;
        made.version = records::rowOf(record).version;
        made.body = records::bodyOf(record);
        return made;
    }

    /// A ride of 85 s at ten a second, no two alike.
    std::vector<ledger::TracePoint> ride() {
        std::vector<ledger::TracePoint> points;
        for (int i = 0; i < 850; ++i) {
            const double counts = 250.0 + 1400.0 * std::exp(-std::pow((i - 500.0) / 180.0, 2.0));
            points.push_back({i * 100'000LL + static_cast<std::int64_t>(m_dice() % 2000U),
                              std::llround(counts) + static_cast<std::int64_t>(m_dice() % 3U), 0});
        }
        return points;
    }

private:
    std::mt19937_64 m_dice{1};
    std::uint64_t m_drafts = 0;
};

/// The inks, the cloth, the probe, the run and its lot that the sample reading speaks of.
ledger::CommitRequest shop(Pen& pen) {
    ledger::CommitRequest request;
    for (const auto& family : analytics::starterFamilies()) {
        request.entries.push_back(pen.draft(records::recordOf(family, analytics::TemperatureUnit::fahrenheit)));
    }
    for (const auto& fabric : analytics::starterFabrics()) {
        request.entries.push_back(pen.draft(records::recordOf(fabric, analytics::TemperatureUnit::fahrenheit)));
    }
    for (const auto& sample : records::testing::sampleOfEveryKind()) {
        if (std::holds_alternative<records::InstrumentDescribed>(sample) ||
            std::holds_alternative<records::RunPlanned>(sample)) {
            request.entries.push_back(pen.draft(sample));
        }
    }
    records::LotOpened lot;
    lot.lot = *records::testing::sampleReading().lot;
    lot.run = *records::testing::sampleReading().run;
    lot.revisions = {{{"low-cure", 1}, {"standard", 1}}, {"100% polyester", 1}};
    request.entries.push_back(pen.draft(lot));
    return request;
}

/// From the samples of a ride and its verdict to the receipt.
void store(benchmark::State& state) {
    const Folder folder;
    auto book =
        ledger::Book::open(folder.path(), std::make_shared<records::ShopProjection>(), ledger::OpenMode::firstStart);
    Pen pen;
    if (!book || !(*book)->commit(shop(pen))) {
        state.SkipWithError("no book to write in");
        return;
    }
    for (auto _ : state) {
        const auto ride = pen.ride();
        auto reading = records::testing::sampleReading();
        const auto start = std::chrono::steady_clock::now();
        ledger::CommitRequest request;
        request.blobs.push_back({"trace", ledger::encodeTrace(ride)});
        std::get<records::TraceSeen>(reading.evidence).sha256 =
            ledger::toHex(ledger::sha256(request.blobs.front().bytes));
        request.entries.push_back(pen.draft(reading));
        const auto receipt = (*book)->commit(request);
        state.SetIterationTime(std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
        if (!receipt) {
            state.SkipWithError(receipt.error().what.c_str());
            break;
        }
        (*book)->rest(); // as the kiosk's writer does, once the receipt is given
    }
}

} // namespace

void addStoring(Rows& rows) {
    const std::string baseline = "append 4 KiB and sync";
    rows.addBaseline(baseline, append)->UseRealTime();
    rows.add({"store a reading with its trace", baseline, 2.5}, store)->UseManualTime();
}

} // namespace holdfast::bench
