#include "kiosk/shop/planning/plan_draft.hpp"

#include "kiosk/shop/planning/revisions.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::shop {
namespace {

constexpr int kMostPieces = 1'000'000;
template <class Things>
auto named(const Things& things, const std::string& name) {
    return std::find_if(things.begin(), things.end(), [&](const auto& one) { return sameName(one.name, name); });
}

class Checker final {
public:
    explicit Checker(const Stock& stock) : m_stock{stock} {}

    std::string text(const std::string& typed, const char* field) {
        auto text = trimmed(typed);
        const auto wrong = textFault(text);
        if (wrong == TextFault::tooLong) {
            fault(PlanFaultCause::textTooLong, field, firstSigns(text));
        } else if (wrong == TextFault::controlSign) {
            fault(PlanFaultCause::controlSign, field, {});
        }
        return text;
    }

    std::optional<int> pieces(const std::string& typed) {
        const auto text = trimmed(typed);
        if (text.empty()) {
            return std::nullopt;
        }
        int count = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
        if (error != std::errc{} || end != text.data() + text.size() || count < 1 || count > kMostPieces) {
            fault(PlanFaultCause::piecesNotANumber, "pieces", firstSigns(text));
            return std::nullopt;
        }
        return count;
    }

    std::string fabric(const std::string& typed) {
        const auto name = text(typed, "fabric");
        if (name.empty()) {
            fault(PlanFaultCause::fabricMissing, "fabric", {});
            return name;
        }
        const auto found = named(m_stock.fabrics, name);
        if (found == m_stock.fabrics.end()) {
            fault(PlanFaultCause::fabricUnknown, "fabric", firstSigns(name));
            return name;
        }
        return found->name;
    }

    records::PlannedLayer layer(const DraftLayer& draft, int position) {
        const auto field = "layer." + std::to_string(position);
        records::PlannedLayer made;
        made.colour = text(draft.colour, (field + ".colour").c_str());
        made.buckets = draft.buckets;
        made.underbase = draft.underbase;
        if (!draft.buckets.empty()) {
            fromBuckets(draft, field, position, made);
            return made;
        }
        const auto name = text(draft.ink, (field + ".ink").c_str());
        const auto found = named(m_stock.families, name);
        if (found != m_stock.families.end()) {
            made.ink = found->name;
            made.parts = {{found->name, 1.0}};
        } else if (name.empty()) {
            fault(PlanFaultCause::inkMissing, field + ".ink", {}, position);
        } else {
            fault(PlanFaultCause::inkUnknown, field + ".ink", firstSigns(name), position);
        }
        return made;
    }

    void fromBuckets(const DraftLayer& draft, const std::string& field, int position, records::PlannedLayer& made) {
        made.ink = text(draft.ink, (field + ".ink").c_str());
        for (const auto number : draft.buckets) {
            const auto* bucket = bucketOf(m_stock, number);
            if (bucket == nullptr) {
                fault(PlanFaultCause::bucketUnknown, field + ".ink", std::to_string(number), position);
                continue;
            }
            made.ink = made.ink.empty() ? bucket->name : made.ink;
            for (const auto& part : bucket->parts) {
                const auto known = std::find_if(made.parts.begin(), made.parts.end(),
                                                [&](const auto& one) { return one.family == part.family; });
                if (known == made.parts.end()) {
                    made.parts.push_back(part);
                } else {
                    known->mass += part.mass;
                }
            }
        }
    }

    void fault(PlanFaultCause cause, std::string field, std::string shown, std::optional<int> layer = {}) {
        faults.push_back({cause, std::move(field), std::move(shown), layer});
    }

    std::vector<PlanFault> faults;

private:
    const Stock& m_stock;
};

bool sameInks(const records::RunPlanned& one, const records::RunPlanned& other) {
    return one.fabric == other.fabric &&
           std::equal(one.layers.begin(), one.layers.end(), other.layers.begin(), other.layers.end(),
                      [](const auto& a, const auto& b) { return a.colour == b.colour && a.ink == b.ink; });
}

bool sameBuckets(const records::RunPlanned& one, const records::RunPlanned& other) {
    return std::equal(one.layers.begin(), one.layers.end(), other.layers.begin(), other.layers.end(),
                      [](const auto& a, const auto& b) { return a.buckets == b.buckets; });
}

} // namespace

const StockBucket* bucketOf(const Stock& stock, std::int64_t number) {
    const auto found =
        std::find_if(stock.buckets.begin(), stock.buckets.end(), [&](const auto& one) { return one.number == number; });
    return found == stock.buckets.end() ? nullptr : &*found;
}

PlanDraft draftOf(const records::RunPlanned& plan) {
    PlanDraft draft;
    draft.run = plan.run;
    draft.kind = plan.kind;
    draft.number = plan.number;
    draft.title = plan.title;
    draft.customer = plan.customer;
    draft.reference = plan.reference;
    draft.garmentColour = plan.garmentColour;
    draft.clothLot = plan.clothLot;
    draft.finish = plan.finish;
    draft.pieces = plan.pieces ? std::to_string(*plan.pieces) : std::string{};
    draft.dryer = plan.dryer;
    draft.fabric = plan.fabric;
    draft.childrensWear = plan.childrensWear;
    for (const auto& layer : plan.layers) {
        draft.layers.push_back({layer.colour, layer.ink, layer.buckets, layer.underbase});
    }
    return draft;
}

tl::expected<records::RunPlanned, std::vector<PlanFault>> planFrom(const PlanDraft& draft, const Stock& stock) {
    Checker check{stock};
    records::RunPlanned plan;
    plan.run = draft.run;
    plan.kind = draft.kind;
    plan.number = draft.number;
    plan.title = check.text(draft.title, "title");
    if (plan.title.empty()) {
        check.fault(PlanFaultCause::titleMissing, "title", {});
    }
    plan.customer = check.text(draft.customer, "customer");
    plan.reference = check.text(draft.reference, "reference");
    plan.garmentColour = check.text(draft.garmentColour, "garment");
    plan.clothLot = check.text(draft.clothLot, "cloth-lot");
    plan.finish = check.text(draft.finish, "finish");
    plan.pieces = check.pieces(draft.pieces);
    plan.dryer = draft.dryer;
    plan.fabric = check.fabric(draft.fabric);
    plan.childrensWear = draft.childrensWear;
    if (draft.layers.empty()) {
        check.fault(PlanFaultCause::noLayer, "layers", {});
    } else if (draft.layers.size() > kMostLayers) {
        check.fault(PlanFaultCause::tooManyLayers, "layers", std::to_string(draft.layers.size()));
    }
    int position = 0;
    for (const auto& layer : draft.layers) {
        plan.layers.push_back(check.layer(layer, ++position));
    }
    if (!check.faults.empty()) {
        return tl::unexpected(std::move(check.faults));
    }
    return plan;
}

std::vector<records::Record> recordsOfPlan(const records::RunPlanned& plan, const records::RunOnFile* before,
                                           const std::vector<analytics::InkFamily>& newest,
                                           const std::string& freshLot) {
    if (before == nullptr) {
        return {plan};
    }
    std::vector<records::Record> list{records::RunReplanned{plan}};
    const bool inks = sameInks(plan, before->plan);
    if (before->lot && !(inks && sameBuckets(plan, before->plan))) {
        records::LotClosed closed;
        closed.lot = before->lot->id;
        closed.why = inks ? records::LotEnd::otherBucket : records::LotEnd::newRevision;
        list.emplace_back(closed);
        list.emplace_back(nextLot(plan, *before, newest, freshLot));
    }
    return list;
}

std::vector<records::Record> recordsOfFinish(const records::RunOnFile& run, std::optional<int> made,
                                             std::optional<int> spoiled) {
    std::vector<records::Record> list;
    if (run.lot) {
        records::LotClosed closed;
        closed.lot = run.lot->id;
        closed.lastPiece = made;
        closed.why = records::LotEnd::runEnded;
        list.emplace_back(closed);
    }
    list.emplace_back(records::RunFinished{run.plan.run, made, spoiled});
    return list;
}

} // namespace holdfast::kiosk::shop
