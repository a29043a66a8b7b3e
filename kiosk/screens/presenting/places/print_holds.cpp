#include "kiosk/screens/presenting/places/print_holds.hpp"

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/reports/labels.hpp"
#include "kiosk/reports/quarantine_list.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

analytics::Date dayOf(std::int64_t wallMilliseconds, const PrintSource& source) {
    return drivers::localDay({wallMilliseconds, source.now.utcOffsetMinutes});
}

} // namespace

PrintWanted binLabelFor(const PrintSource& source, std::int64_t bin) {
    const auto hold = records::holdByBin(source.book.reader(), bin);
    if (!hold || !*hold) {
        return std::nullopt;
    }
    const auto& row = **hold;
    reports::BinLabel label;
    label.number = bin;
    label.run = row.runNumber;
    label.runTitle = row.runTitle;
    label.lot = row.lotNumber;
    if (row.placed.pieces) {
        label.firstPiece = row.placed.pieces->first;
        label.lastPiece = row.placed.pieces->last;
    }
    label.count = row.placed.count;
    label.reason = wording::sentence(row.placed.cause, source.style.speech);
    label.date = dayOf(row.at, source);
    return reports::binLabel(label, source.on(kLabelPaper));
}

PrintWanted printLabelFor(const PrintSource& source, std::int64_t print) {
    const auto found = records::printByNumber(source.book.reader(), print);
    if (!found || !*found) {
        return std::nullopt;
    }
    const auto& row = **found;
    reports::PrintLabel label;
    label.number = print;
    label.run = row.runNumber;
    label.runTitle = row.runTitle;
    label.lot = row.lotNumber;
    label.piece = row.named.piece;
    label.position = row.named.position;
    label.retained = row.named.retained;
    label.printedOn = dayOf(row.named.printedAt, source);
    return reports::printLabel(label, source.on(kLabelPaper));
}

PrintWanted quarantineFor(const PrintSource& source) {
    const auto open = records::openHolds(source.book.reader());
    if (!open) {
        return std::nullopt;
    }
    return reports::quarantineList({source.shop, reports::quarantineBins(*open), source.now}, source.style);
}

} // namespace holdfast::kiosk::screens
