#include "kiosk/screens/presenting/deciding/shelf_sheet.hpp"

#include "kiosk/wording/deciding_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kTick = "holds.shelf.tick.";
constexpr std::string_view kCount = "holds.shelf.field.";

} // namespace

std::vector<shop::deciding::Bin> binsOf(const std::vector<records::HoldRow>& open) {
    std::vector<shop::deciding::Bin> bins;
    for (const auto& row : open) {
        if (row.placed.bin > 0) {
            bins.push_back({row.placed.hold, row.placed.bin, shop::deciding::piecesOfHold(row.placed, std::nullopt)});
        }
    }
    std::sort(bins.begin(), bins.end(), [](const auto& one, const auto& other) { return one.number < other.number; });
    return bins;
}

void ShelfSheet::reload() {
    auto open = records::openHolds(needs().book->reader());
    auto last = records::lastShelfCount(needs().book->reader());
    auto people = peopleNow(*needs().book);
    if (!open || !last || !people) {
        tell(!open ? open.error() : !last ? last.error() : people.error());
        return;
    }
    m_open = std::move(*open);
    m_bins = binsOf(m_open);
    m_last = std::move(*last);
    m_people = std::move(*people);
}

bool ShelfSheet::scanned(const drivers::TicketCode& code) {
    if (code.kind != drivers::TicketKind::bin) {
        return false;
    }
    for (const auto& bin : m_bins) {
        if (bin.number == static_cast<std::int64_t>(code.number)) {
            m_draft.found.emplace(bin.hold, std::string{}); // scanned twice it is still there
            return true;
        }
    }
    needs().tell({text("holds.unknown-bin", {{"bin", std::to_string(code.number)}}), {}, {}});
    return true;
}

bool ShelfSheet::act(const std::string& id) {
    if (const auto hold = restOf(id, kTick)) {
        shop::deciding::tick(m_draft, *hold);
    } else if (id == "holds.shelf.print") {
        needs().print({PrintWish::What::quarantine});
        return true;
    } else if (id == "holds.shelf.keep") {
        reload();
        auto kept = shop::deciding::shelfFrom(m_draft, m_bins);
        m_faults = kept ? shop::deciding::Faults{} : kept.error();
        if (kept) {
            signOnce(shop::Right::logTests, [this](std::int64_t person) { keepCount(person); });
        }
        return true;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

bool ShelfSheet::enter(const std::string& field, const std::string& typed) {
    const auto hold = restOf(field, kCount);
    if (!hold || m_draft.found.count(*hold) == 0) {
        return false;
    }
    m_draft.found[*hold] = typed;
    m_faults.clear();
    return true;
}

void ShelfSheet::keepCount(std::int64_t person) {
    auto kept = shop::deciding::shelfFrom(m_draft, m_bins);
    if (!kept) {
        m_faults = kept.error();
        return;
    }
    const auto& sum = kept->sum;
    const auto said = sum.agrees() ? text("holds.said.shelf-agrees", {{"count", std::to_string(sum.bins)},
                                                                      {"pieces", std::to_string(sum.counted)}})
                                   : text("holds.said.shelf-differs", {{"what", wording::shelfText(sum, speech())}});
    Keeping keeping;
    keeping.list.emplace_back(std::move(kept->counted));
    keeping.person = person;
    write(std::move(keeping), [this, said] {
        m_draft = {};
        done(said);
    });
}

void ShelfSheet::addTicks(SheetPageState& page) const {
    SheetBlock block;
    block.kind = SheetKinds::Ticks;
    for (const auto& bin : m_bins) {
        const auto row =
            std::find_if(m_open.begin(), m_open.end(), [&](const auto& open) { return open.placed.hold == bin.hold; });
        TickEntry entry;
        entry.id = toQString(std::string{kTick} + bin.hold);
        entry.title = toQString(text("holds.shelf.bin", {{"bin", std::to_string(bin.number)}}));
        entry.detail = toQString(
            text("holds.list.row", {{"run", std::to_string(row->runNumber)}, {"lot", std::to_string(row->lotNumber)}}));
        entry.value = toQString(bin.pieces ? text("holds.list.pieces", {{"count", std::to_string(*bin.pieces)}})
                                           : text("holds.shelf.unknown"));
        entry.ticked = m_draft.found.count(bin.hold) > 0;
        entry.word = toQString(text(entry.ticked ? "holds.shelf.ticked" : "holds.shelf.not-ticked"));
        block.ticks.append(entry);
    }
    const auto sum = shop::deciding::sumOf(m_draft, m_bins);
    block.text = toQString(text("holds.shelf.sum", {{"ticked", std::to_string(sum.ticked)},
                                                    {"bins", std::to_string(sum.bins)},
                                                    {"counted", std::to_string(sum.counted)},
                                                    {"expected", std::to_string(sum.expected)}}));
    if (sum.ticked > 0) {
        block.note = toQString(wording::shelfText(sum, speech()));
    }
    page.blocks.append(block);
}

void ShelfSheet::addCounts(SheetPageState& page) const {
    std::vector<SheetField> fields;
    for (const auto& bin : m_bins) {
        const auto found = m_draft.found.find(bin.hold);
        if (found != m_draft.found.end()) {
            fields.push_back(fieldWith(
                std::string{kCount} + bin.hold, bin.hold,
                text("holds.shelf.count-field", {{"bin", std::to_string(bin.number)}}), found->second,
                SheetKinds::Number,
                bin.pieces ? text("holds.shelf.count-hint", {{"count", std::to_string(*bin.pieces)}}) : std::string{}));
        }
    }
    if (!fields.empty()) {
        page.blocks.append(textBlock(SheetKinds::Heading, text("holds.shelf.counts")));
        page.blocks.append(fieldsBlock(fields));
    }
}

void ShelfSheet::addLast(SheetPageState& page) const {
    page.blocks.append(
        textBlock(SheetKinds::Note,
                  m_last ? text("holds.shelf.last", {{"when", wording::whenText(m_last->at, how().utcOffsetMinutes)},
                                                     {"name", shownName(m_people, m_last->person, speech())}})
                         : text("holds.shelf.never")));
    if (m_last) {
        const auto differs = wording::shelfText(shop::deciding::sumOf(m_last->counted, m_bins), speech());
        if (!differs.empty()) {
            page.blocks.append(textBlock(SheetKinds::Note, differs));
        }
    }
}

void ShelfSheet::addTo(SheetPageState& page) const {
    page.title = toQString(text("holds.shelf.title"));
    page.blocks.append(leadBlock(text(m_bins.empty() ? "holds.shelf.none" : "holds.shelf.lead")));
    if (!m_bins.empty()) {
        addTicks(page);
        addCounts(page);
    }
    addLast(page);
    page.actions = {pressOf("holds.shelf.keep", text("holds.shelf.keep"), true),
                    pressOf("holds.shelf.print", text("holds.shelf.print")), pressOf("holds.back", text("holds.back"))};
}

} // namespace holdfast::kiosk::screens
