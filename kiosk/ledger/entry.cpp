#include "kiosk/ledger/entry.hpp"

namespace holdfast::kiosk::ledger {

namespace {

void addColumn(Hasher& hasher, std::int64_t value) {
    hasher.addInteger(8);
    hasher.addInteger(value);
}

} // namespace

Digest chainHash(const Digest& previous, const Entry& entry) {
    Hasher hasher;
    hasher.add(previous);
    addColumn(hasher, entry.sequence);
    hasher.addPrefixed(entry.id);
    hasher.addPrefixed(entry.kiosk);
    addColumn(hasher, entry.wallMilliseconds);
    addColumn(hasher, entry.utcOffsetMinutes);
    addColumn(hasher, entry.person);
    hasher.addPrefixed(entry.kind);
    addColumn(hasher, entry.version);
    hasher.addPrefixed(entry.body);
    return hasher.finish();
}

} // namespace holdfast::kiosk::ledger
