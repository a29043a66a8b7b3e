#include "kiosk/shop/keeping/exchange.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/queries.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

/// Equal in everything that is written.
bool same(const records::Record& a, const records::Record& b) {
    return records::bodyOf(a) == records::bodyOf(b);
}

template <class List>
auto named(const List& list, const std::string& name) {
    return std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.name == name; });
}

template <class Revised>
void addRevised(const std::vector<Revised>& file, const std::vector<Revised>& book, ImportPlan& plan) {
    for (auto one : file) {
        const auto known = named(book, one.name);
        if (known == book.end()) {
            one.revision = 1;
            plan.added.push_back(one.name);
            plan.list.emplace_back(std::move(one));
            continue;
        }
        one.revision = known->revision;
        if (same(one, *known)) {
            ++plan.same;
            continue;
        }
        ++one.revision;
        plan.changed.push_back(one.name);
        plan.list.emplace_back(std::move(one));
    }
}

template <class Entry, class Spec>
void addMissing(const std::string& instrument, const std::vector<Spec>& file, const std::vector<Spec>& book,
                std::vector<records::Record>& list) {
    for (const auto& spec : file) {
        Entry entry;
        entry.instrument = instrument;
        const auto entryOf = [&](const Spec& one) {
            auto copy = entry;
            if constexpr (std::is_same_v<Entry, records::CertificateAdded>) {
                copy.certificate = one;
            } else {
                copy.check = one;
            }
            return copy;
        };
        if (std::none_of(book.begin(), book.end(),
                         [&](const Spec& one) { return same(entryOf(one), entryOf(spec)); })) {
            list.emplace_back(entryOf(spec));
        }
    }
}

void addInstruments(const records::ShopFile& file, const BookStock& stock, const std::function<std::string()>& newId,
                    ImportPlan& plan) {
    auto number = stock.nextInstrument;
    for (const auto& one : file.instruments) {
        const auto known = std::find_if(stock.instruments.begin(), stock.instruments.end(),
                                        [&](const auto& other) { return other.described.spec.name == one.spec.name; });
        const bool isNew = known == stock.instruments.end();
        auto described = isNew ? records::InstrumentDescribed{} : known->described;
        described.spec = one.spec;
        if (isNew) {
            described.instrument = newId();
            described.number = number++;
        }
        const auto before = plan.list.size();
        if (isNew || !same(described, known->described)) {
            plan.list.emplace_back(described);
        }
        addMissing<records::CertificateAdded>(described.instrument, one.certificates,
                                              isNew ? std::vector<records::CertificateSpec>{} : known->certificates,
                                              plan.list);
        addMissing<records::CheckDone>(described.instrument, one.checks,
                                       isNew ? std::vector<records::CheckSpec>{} : known->checks, plan.list);
        if (isNew) {
            plan.added.push_back(one.spec.name);
        } else if (plan.list.size() > before) {
            plan.changed.push_back(one.spec.name);
        } else {
            ++plan.same;
        }
    }
}

} // namespace

ledger::Result<BookStock> bookStock(const SQLite::Database& database) {
    BookStock stock;
    auto families = records::newestFamilies(database);
    auto fabrics = records::newestFabrics(database);
    auto instruments = records::instruments(database);
    const auto next = records::nextNumber(database, records::Numbered::instrument);
    if (!families || !fabrics || !instruments || !next) {
        return tl::unexpected(!families      ? families.error()
                              : !fabrics     ? fabrics.error()
                              : !instruments ? instruments.error()
                                             : next.error());
    }
    stock.families = std::move(*families);
    stock.fabrics = std::move(*fabrics);
    stock.nextInstrument = *next;
    for (auto& one : *instruments) {
        const auto certificates = records::certificatesOf(database, one.described.instrument);
        const auto checks = records::checksOf(database, one.described.instrument);
        if (!certificates || !checks) {
            return tl::unexpected(!certificates ? certificates.error() : checks.error());
        }
        InstrumentInBook in;
        in.described = std::move(one.described);
        for (auto certificate = certificates->rbegin(); certificate != certificates->rend(); ++certificate) {
            in.certificates.push_back(certificate->certificate);
        }
        for (auto check = checks->rbegin(); check != checks->rend(); ++check) {
            in.checks.push_back(check->check);
        }
        stock.instruments.push_back(std::move(in));
    }
    return stock;
}

records::ShopFile exportOf(const BookStock& stock) {
    records::ShopFile file;
    file.families = stock.families;
    file.fabrics = stock.fabrics;
    for (const auto& one : stock.instruments) {
        file.instruments.push_back({one.described.spec, one.certificates, one.checks});
    }
    return file;
}

ImportPlan importOf(const records::ShopFile& file, const BookStock& stock, const std::function<std::string()>& newId) {
    ImportPlan plan;
    addRevised(file.families, stock.families, plan);
    addRevised(file.fabrics, stock.fabrics, plan);
    addInstruments(file, stock, newId, plan);
    plan.mixesLeftOut = static_cast<int>(file.mixes.size());
    return plan;
}

} // namespace holdfast::kiosk::shop
