#include "kiosk/shop/stock/family_draft.hpp"

#include "kiosk/shop/stock/form_reader.hpp"
#include "kiosk/shop/typed/typed.hpp"

namespace holdfast::kiosk::shop {
namespace {

using analytics::AuthoredTemperature;
using records::FamilyRecord;

constexpr double kPercent = 100.0;

const char* fieldOf(analytics::FamilyFault fault) {
    using Fault = analytics::FamilyFault;
    switch (fault) {
    case Fault::nameEmpty:
        return "name";
    case Fault::gelReversed:
        return "gel-low";
    case Fault::cureBelowGel:
    case Fault::notFinite:
        return "cure";
    case Fault::cureAboveCeiling:
        return "ceiling";
    case Fault::holdNegative:
        return "hold";
    case Fault::pairsNotHotterShorter:
    case Fault::pairsNotAboveGel:
        return "hotter";
    case Fault::bandReversed:
        return "band-low";
    }
    return "";
}

std::string percentTyped(double fraction) {
    return numberTyped(fraction * kPercent);
}

/// A field whose text was not touched keeps the fraction the book has.
double fractionOf(double percent, const std::string& typed, std::optional<double> before) {
    return before && trimmed(typed) == percentTyped(*before) ? *before : percent / kPercent;
}

void readHeat(StockReader& read, const FamilyDraft& draft, const std::optional<FamilyRecord>& before,
              FamilyRecord& family) {
    const auto old = [&](auto member) {
        return before && before->gel ? std::optional{(*before->gel).*member} : std::nullopt;
    };
    const auto low = read.temperature(draft.gelLow, "gel-low", old(&records::AuthoredGel::low));
    const auto high = read.temperature(draft.gelHigh, "gel-high", old(&records::AuthoredGel::high));
    read.together({{"gel-low", draft.gelLow}, {"gel-high", draft.gelHigh}});
    family.gel = low && high ? std::optional{records::AuthoredGel{*low, *high}} : std::nullopt;
    const auto cure = read.temperature(draft.cure, "cure", before ? std::optional{before->cure} : std::nullopt);
    if (trimmed(draft.cure).empty()) {
        read.fault({StockFaultCause::cureMissing, "cure"});
    }
    family.cure = cure.value_or(AuthoredTemperature{});
    family.hold = read.span(draft.hold, "hold", 1.0, before ? std::optional{before->hold} : std::nullopt)
                      .value_or(analytics::Duration{0});
    family.ceiling = read.temperature(draft.ceiling, "ceiling", before ? before->ceiling : std::nullopt);
}

void readPairs(StockReader& read, const FamilyDraft& draft, const std::optional<FamilyRecord>& before,
               FamilyRecord& family) {
    const auto old = before ? before->pairs : std::nullopt;
    const auto hotterTime =
        read.span(draft.hotterTime, "hotter-time", 1.0, old ? std::optional{old->hotter.time} : std::nullopt);
    const auto hotter =
        read.temperature(draft.hotter, "hotter", old ? std::optional{old->hotter.temperature} : std::nullopt);
    const auto coolerTime =
        read.span(draft.coolerTime, "cooler-time", 1.0, old ? std::optional{old->cooler.time} : std::nullopt);
    const auto cooler =
        read.temperature(draft.cooler, "cooler", old ? std::optional{old->cooler.temperature} : std::nullopt);
    read.together({{"hotter-time", draft.hotterTime},
                   {"hotter", draft.hotter},
                   {"cooler-time", draft.coolerTime},
                   {"cooler", draft.cooler}});
    if (hotterTime && hotter && coolerTime && cooler) {
        family.pairs = records::AuthoredPairs{{*hotterTime, *hotter}, {*coolerTime, *cooler}};
    }
}

void readBucketRules(StockReader& read, const FamilyDraft& draft, const std::optional<FamilyRecord>& before,
                     FamilyRecord& family) {
    family.potLife = read.span(draft.potLife, "pot-life", kSecondsPerHour, before ? before->potLife : std::nullopt);
    const auto low = read.percent(draft.bandLow, "band-low");
    const auto high = read.percent(draft.bandHigh, "band-high");
    read.together({{"band-low", draft.bandLow}, {"band-high", draft.bandHigh}});
    if (low && high) {
        const auto old = before ? before->additiveBand : std::nullopt;
        family.additiveBand =
            analytics::AdditiveBand{fractionOf(*low, draft.bandLow, old ? std::optional{old->low} : std::nullopt),
                                    fractionOf(*high, draft.bandHigh, old ? std::optional{old->high} : std::nullopt)};
    }
    family.restBeforeTest =
        read.span(draft.rest, "rest", kSecondsPerHour, before ? before->restBeforeTest : std::nullopt);
}

} // namespace

FamilyDraft draftOf(const FamilyRecord& family, analytics::TemperatureUnit unit) {
    FamilyDraft draft;
    draft.unit = unit;
    draft.name = family.name;
    draft.chemistry = family.chemistry;
    if (family.gel) {
        draft.gelLow = authoredTyped(family.gel->low, unit);
        draft.gelHigh = authoredTyped(family.gel->high, unit);
    }
    draft.cure = authoredTyped(family.cure, unit);
    draft.hold = spanTyped(family.hold, 1.0);
    draft.unbroken = family.unbroken;
    draft.ceiling = authoredTyped(family.ceiling, unit);
    draft.bleedResistance = family.bleedResistance;
    draft.ease = std::to_string(family.ease);
    if (family.pairs) {
        draft.hotterTime = spanTyped(family.pairs->hotter.time, 1.0);
        draft.hotter = authoredTyped(family.pairs->hotter.temperature, unit);
        draft.coolerTime = spanTyped(family.pairs->cooler.time, 1.0);
        draft.cooler = authoredTyped(family.pairs->cooler.temperature, unit);
    }
    draft.potLife = spanTyped(family.potLife, kSecondsPerHour);
    if (family.additiveBand) {
        draft.bandLow = percentTyped(family.additiveBand->low);
        draft.bandHigh = percentTyped(family.additiveBand->high);
    }
    draft.rest = spanTyped(family.restBeforeTest, kSecondsPerHour);
    draft.mark = family.mark;
    draft.source = family.source;
    draft.before = family;
    return draft;
}

tl::expected<FamilyRecord, std::vector<StockFault>> familyFrom(const FamilyDraft& draft,
                                                               const std::vector<std::string>& taken) {
    StockReader read{draft.unit};
    const auto& before = draft.before;
    FamilyRecord family;
    if (before) {
        family.name = before->name;
        family.revision = before->revision + 1;
    } else {
        family.name = read.name(draft.name, "name");
        read.newName(family.name, "name", taken);
    }
    family.chemistry = before ? before->chemistry : draft.chemistry;
    readHeat(read, draft, before, family);
    family.unbroken = draft.unbroken && family.hold.count() > 0.0;
    family.bleedResistance = draft.bleedResistance;
    // An empty rank keeps the one the family had: a rank of its own is what the shop says, not the maker.
    family.ease = read.whole(draft.ease, "ease").value_or(before ? before->ease : 1);
    readPairs(read, draft, before, family);
    readBucketRules(read, draft, before, family);
    family.mark = draft.mark;
    family.source = read.text(draft.source, "source");
    read.source(family.mark, family.source);
    const bool cureRead = family.cure != AuthoredTemperature{};
    for (const auto fault :
         cureRead ? analytics::faultsOf(records::toFamily(family)) : std::vector<analytics::FamilyFault>{}) {
        if (fault != analytics::FamilyFault::nameEmpty) {
            StockFault one{StockFaultCause::family, fieldOf(fault)};
            one.family = fault;
            read.fault(std::move(one));
        }
    }
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return family;
}

} // namespace holdfast::kiosk::shop
