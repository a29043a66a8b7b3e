#include "kiosk/demo/demo_history.hpp"

#include "kiosk/demo/demo_player.hpp"
#include "kiosk/demo/history/history_book.hpp"
#include "kiosk/demo/history/history_model.hpp"
#include "kiosk/records/told_projection.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QTemporaryDir>

#include <algorithm>
#include <future>

namespace holdfast::kiosk::demo {

namespace {

constexpr std::int64_t kAll = 1'000'000;
constexpr const char* kScratch = "holdfast-demo-";

/// What a program that was ended while it wrote has left: its folder has its process's number.
void removeLeftovers(const QString& where) {
    for (const auto& name : QDir{where}.entryList({QString::fromLatin1(kScratch) + QStringLiteral("*")}, QDir::Dirs)) {
        bool isNumber = false;
        const auto process = name.section(QLatin1Char{'-'}, 2, 2);
        process.toLongLong(&isNumber);
        if (isNumber && !QFileInfo::exists(QStringLiteral("/proc/") + process)) {
            QDir{where + QLatin1Char{'/'} + name}.removeRecursively();
        }
    }
}

/// Where no disk must be waited for, if the system has such a place: what is written there is only kept when it is put
/// into the demo's own book, or into its place.
QString scratchTemplate() {
    const QString memory = QStringLiteral("/dev/shm");
    const auto where = QFileInfo{memory}.isWritable() ? memory : QDir::tempPath();
    removeLeftovers(where);
    return where + QLatin1Char{'/'} + QString::fromLatin1(kScratch) +
           QString::number(QCoreApplication::applicationPid()) + QStringLiteral("-XXXXXX");
}

/// Of the readings' traces, each once.
ledger::Result<void> addTraces(const ledger::Book& book, ledger::CommitRequest& request) {
    const auto rows = records::latestReadings(book.reader(), static_cast<int>(kAll));
    if (!rows) {
        return tl::unexpected(rows.error());
    }
    std::vector<std::string> seen;
    for (const auto& row : *rows) {
        const auto digest = ledger::fromHex(row.trace);
        if (!digest || std::find(seen.begin(), seen.end(), row.trace) != seen.end()) {
            continue;
        }
        auto bytes = book.blob(*digest);
        if (!bytes) {
            return tl::unexpected(bytes.error());
        }
        seen.push_back(row.trace);
        request.blobs.push_back({"trace", *std::move(bytes)});
    }
    return {};
}

ledger::Result<ledger::CommitRequest> wholeOf(const ledger::Book& book) {
    const auto entries = book.entries(1, kAll);
    const auto names = book.personNames();
    if (!entries || !names) {
        return tl::unexpected(!entries ? entries.error() : names.error());
    }
    ledger::CommitRequest request;
    request.entries.assign(entries->begin(), entries->end());
    request.persons = *names;
    if (auto added = addTraces(book, request); !added) {
        return tl::unexpected(added.error());
    }
    return request;
}

ledger::Result<ledger::CommitRequest> played(drivers::WallTime now, const std::string& probeAddress) {
    const QTemporaryDir scratch{scratchTemplate()};
    auto book = ledger::Book::open(scratch.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                   ledger::OpenMode::firstStart);
    if (!book) {
        return tl::unexpected(book.error());
    }
    ledger::Writer writer{**book};
    DemoPlayer player{**book, writer, now, probeAddress};
    if (auto done = player.play(); !done) {
        return tl::unexpected(done.error());
    }
    auto request = wholeOf(**book);
    if (request) {
        request->blobs.insert(request->blobs.end(), player.pictures().begin(), player.pictures().end());
    }
    return request;
}

/// What keeps and what makes work side by side: a request is made while the one before it is kept.
class Keeping final {
public:
    explicit Keeping(ledger::Writer& writer) : m_writer{writer} {}
    ~Keeping() { (void)done(); }
    Keeping(const Keeping&) = delete;
    Keeping& operator=(const Keeping&) = delete;

    ledger::Result<void> keep(ledger::CommitRequest request) {
        if (auto before = done(); !before) {
            return before;
        }
        auto promise = std::make_shared<std::promise<ledger::Result<void>>>();
        m_kept = promise->get_future();
        m_writer.submit(std::move(request), [promise](const auto& receipt) {
            promise->set_value(receipt ? ledger::Result<void>{} : tl::unexpected(receipt.error()));
        });
        return {};
    }
    ledger::Result<void> done() { return m_kept.valid() ? m_kept.get() : ledger::Result<void>{}; }

private:
    ledger::Writer& m_writer;
    std::future<ledger::Result<void>> m_kept;
};

ledger::Result<void> writeTwelveDays(ledger::Writer& writer, drivers::WallTime now, const std::string& probeAddress) {
    auto request = played(now, probeAddress);
    if (!request) {
        return tl::unexpected(request.error());
    }
    Keeping keeping{writer};
    auto begun = keeping.keep(*std::move(request));
    return begun ? keeping.done() : begun;
}

/// `told` is the book's own projection, if it is one that can be told.
ledger::Result<void> writeEighteenMonths(ledger::Book& book, ledger::Writer& writer,
                                         const records::ToldProjection* told, drivers::WallTime now,
                                         const std::string& probeAddress) {
    Keeping keeping{writer};
    const auto keep = [&](ledger::CommitRequest request, KeptRecords records) {
        auto before = keeping.done();
        if (before && told != nullptr) {
            told->expect(std::move(records));
        }
        return before ? keeping.keep(std::move(request)) : before;
    };
    auto written = writeHistory(historyOf(demoHistoryPlan(now)), now.utcOffsetMinutes, probeAddress, keep);
    written = written ? keeping.done() : written;
    return written ? DemoPlayer{book, writer, now, probeAddress}.play() : written;
}

} // namespace

HistoryPlan demoHistoryPlan(drivers::WallTime now) {
    HistoryPlan plan;
    plan.end = DemoCalendar{now}.dayOf(0);
    return plan;
}

ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                               const std::string& probeAddress, DemoSize size) {
    const auto head = book.head();
    if (!head) {
        return tl::unexpected(head.error());
    }
    if (head->sequence != 0) {
        return {};
    }
    return size == DemoSize::twelveDays ? writeTwelveDays(writer, now, probeAddress)
                                        : writeEighteenMonths(book, writer, nullptr, now, probeAddress);
}

bool wantsDemoBook(const std::filesystem::path& folder) {
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (!std::filesystem::is_directory(folder, error)) {
        return false;
    }
    if (!std::filesystem::exists(folder / ledger::Book::fileName, error)) {
        return !error;
    }
    const auto book =
        ledger::Book::open(folder, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
    const auto head = book ? (*book)->head() : tl::unexpected(book.error());
    return head && head->sequence == 0;
}

ledger::Result<void> makeDemoBook(const std::filesystem::path& folder, drivers::WallTime now,
                                  const std::string& probeAddress, DemoSize size) {
    if (!wantsDemoBook(folder)) {
        return {};
    }
    const QTemporaryDir scratch{scratchTemplate()};
    const std::filesystem::path written{scratch.path().toStdString()};
    {
        const auto told = std::make_shared<records::ToldProjection>();
        auto book = ledger::Book::open(written, told, ledger::OpenMode::firstStart);
        if (!book) {
            return tl::unexpected(book.error());
        }
        ledger::Writer writer{**book};
        auto done = size == DemoSize::twelveDays ? writeTwelveDays(writer, now, probeAddress)
                                                 : writeEighteenMonths(**book, writer, told.get(), now, probeAddress);
        if (!done) {
            return done;
        }
    }
    return ledger::Book::restore(written / ledger::Book::fileName, folder);
}

} // namespace holdfast::kiosk::demo
