#include "kiosk/shop/opening/opening.hpp"

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/test_queries.hpp"

namespace holdfast::kiosk::shop {

namespace {

std::vector<records::Record> firstRecords(const std::string& dryerId) {
    std::vector<records::Record> list;
    list.push_back(records::BookOpened{"Our shop", "Dryer end", "0.1.0", false});
    records::DryerDescribed dryer;
    dryer.dryer = dryerId;
    dryer.name = "Dryer 1";
    list.push_back(dryer);
    for (const auto& family : analytics::starterFamilies()) {
        list.push_back(records::recordOf(family, analytics::TemperatureUnit::fahrenheit));
    }
    for (const auto& fabric : analytics::starterFabrics()) {
        list.push_back(records::recordOf(fabric, analytics::TemperatureUnit::fahrenheit));
    }
    return list;
}

using MakeId = std::function<std::string()>;

ledger::Result<void> write(ledger::Book& book, const std::vector<records::Record>& list, const std::string& kiosk,
                           drivers::WallTime now, const MakeId& newId) {
    ledger::CommitRequest request;
    for (const auto& record : list) {
        const auto& row = records::rowOf(record);
        request.entries.push_back({newId(), kiosk, now.millisecondsSinceEpoch, now.utcOffsetMinutes, 0,
                                   std::string{row.kind}, row.version, records::bodyOf(record)});
    }
    const auto done = book.commit(request);
    return done ? ledger::Result<void>{} : tl::unexpected(done.error());
}

std::string joined(const std::vector<std::string>& names) {
    std::string out;
    for (const auto& name : names) {
        out += (out.empty() ? "" : ", ") + name;
    }
    return out;
}

} // namespace

ledger::Result<KioskIdentity> openShop(ledger::Book& book, drivers::WallTime now,
                                       const std::function<ledger::UuidRandom()>& random,
                                       const std::vector<records::MethodDescribed>& methods) {
    ledger::UuidSequence ids;
    const MakeId newId = [&] { return ids.next(static_cast<std::uint64_t>(now.millisecondsSinceEpoch), random()); };
    const auto head = book.head();
    if (!head) {
        return tl::unexpected(head.error());
    }
    if (head->sequence == 0 && !book.readOnly()) {
        const auto kiosk = newId();
        if (auto written = write(book, firstRecords(newId()), kiosk, now, newId); !written) {
            return tl::unexpected(written.error());
        }
    }
    const auto unknown = records::unknownKinds(book.reader());
    if (unknown && !unknown->empty()) {
        book.makeReadOnly({ledger::FailureCode::newerBook, "unknown kinds of entries: " + joined(*unknown)});
    }
    const auto first = book.entry(1);
    if (!first) {
        return tl::unexpected(first.error());
    }
    KioskIdentity identity{first->kiosk, {}};
    const auto known = records::methods(book.reader(), true);
    if (known && known->empty() && !methods.empty() && !book.readOnly()) {
        const std::vector<records::Record> list{methods.begin(), methods.end()};
        if (auto written = write(book, list, first->kiosk, now, newId); !written) {
            return tl::unexpected(written.error());
        }
    }
    if (const auto dryers = records::dryers(book.reader()); dryers && !dryers->empty()) {
        identity.dryer = dryers->front().dryer;
    }
    return identity;
}

} // namespace holdfast::kiosk::shop
