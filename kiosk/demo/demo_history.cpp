#include "kiosk/demo/demo_history.hpp"

#include "kiosk/demo/demo_player.hpp"
#include "kiosk/records/shop_projection.hpp"

#include <QDir>
#include <QFileInfo>
#include <QTemporaryDir>

#include <algorithm>
#include <future>

namespace holdfast::kiosk::demo {

namespace {

constexpr std::int64_t kAll = 1'000'000;

/// Where no disk must be waited for, if the system has such a place: what is played there is kept only by the one
/// commit into the demo's own book.
QString scratchTemplate() {
    const QString memory = QStringLiteral("/dev/shm");
    return (QFileInfo{memory}.isWritable() ? memory : QDir::tempPath()) + QStringLiteral("/holdfast-demo-XXXXXX");
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

} // namespace

ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                               const std::string& probeAddress) {
    const auto head = book.head();
    if (!head) {
        return tl::unexpected(head.error());
    }
    if (head->sequence != 0) {
        return {};
    }
    auto request = played(now, probeAddress);
    if (!request) {
        return tl::unexpected(request.error());
    }
    std::promise<ledger::Result<ledger::CommitReceipt>> kept;
    writer.submit(*std::move(request), [&kept](auto receipt) { kept.set_value(std::move(receipt)); });
    const auto receipt = kept.get_future().get();
    return receipt ? ledger::Result<void>{} : tl::unexpected(receipt.error());
}

} // namespace holdfast::kiosk::demo
