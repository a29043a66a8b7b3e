#include "kiosk/command/judge_input.hpp"

#include "analytics/metrology/instrument_faults.hpp"
#include "kiosk/command/typed_values.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>

namespace holdfast::kiosk::command {

using analytics::Instrument;
using analytics::InstrumentKind;

namespace {

tl::unexpected<CommandFault> inputFault(std::string key, wording::Arguments arguments) {
    return tl::unexpected(CommandFault{std::move(key), std::move(arguments)});
}

tl::expected<records::ShopStock, CommandFault> stockFrom(const std::optional<std::string>& typed) {
    if (!typed) {
        return records::starterStock();
    }
    const auto& path = *typed;
    std::ifstream in{path, std::ios::binary};
    if (!in) {
        return inputFault("shop-file-missing", {{"path", path}});
    }
    const std::string text{std::istreambuf_iterator<char>{in}, {}};
    const auto file = records::readShopFile(text);
    if (!file) {
        std::string list;
        for (const auto& item : file.error()) {
            list += "\n  " + item.path + ": " + item.what;
        }
        return inputFault("shop-file-faulty", {{"path", path}, {"list", list}});
    }
    return records::stockOf(*file);
}

template <class Items>
std::string namesOf(const Items& items) {
    std::string out;
    for (const auto& item : items) {
        out += (out.empty() ? "" : ", ") + item.name;
    }
    return out;
}

tl::expected<analytics::RunPlan, CommandFault> planFrom(const JudgeOptions& options, const records::ShopStock& stock) {
    analytics::RunPlan plan;
    const auto* fabric = stock.fabricNamed(options.fabric);
    if (fabric == nullptr) {
        return inputFault("fabric-unknown", {{"name", options.fabric}, {"known", namesOf(stock.fabrics)}});
    }
    plan.fabric = *fabric;
    for (const auto& text : options.inks) {
        const auto spec = inkFrom(text);
        auto ink = stock.inkNamed(spec.name);
        if (!ink) {
            return inputFault(
                "ink-unknown",
                {{"name", spec.name}, {"known", namesOf(stock.families)}, {"mixes", namesOf(stock.mixes)}});
        }
        plan.layers.push_back({spec.colour, std::move(*ink), std::nullopt});
    }
    if (plan.layers.empty()) {
        return inputFault("no-layers", {});
    }
    return plan;
}

InstrumentKind kindAsked(const JudgeOptions& options) {
    if (options.strip) {
        return InstrumentKind::strip;
    }
    if (options.spot) {
        return InstrumentKind::spot;
    }
    return options.surface ? InstrumentKind::gun : InstrumentKind::probe;
}

bool hasReading(const JudgeOptions& options) {
    return options.trace || options.strip || options.spot || options.surface;
}

std::optional<analytics::Placement> placementFrom(const std::string& text) {
    if (text == "wet") {
        return analytics::Placement::wetInk;
    }
    if (text == "taped") {
        return analytics::Placement::tapedOnFilm;
    }
    return text == "cloth" ? std::optional{analytics::Placement::inOrUnderCloth} : std::nullopt;
}

/// Ten rides tell the spread of the placement they were taken in, and of no other. A gun has none.
void place(Instrument& instrument, analytics::Placement placement) {
    if (instrument.kind != InstrumentKind::gun && instrument.placement != placement) {
        instrument.ownPlacement.reset();
    }
    instrument.placement = placement;
}

/// An unnamed strip has just the steps that were typed.
void addStepsTyped(const std::string& text, Instrument& instrument) {
    const auto spec = stripFrom(text);
    if (!spec || !instrument.strip) {
        return;
    }
    for (const auto& step : {spec->lastDark, spec->firstLight}) {
        if (step) {
            instrument.strip->steps.push_back(*step);
        }
    }
}

tl::expected<void, CommandFault> chooseInstrument(const JudgeOptions& options, JudgeInput& input) {
    const auto placement = options.placement ? placementFrom(*options.placement) : std::nullopt;
    if (options.placement && !placement) {
        return inputFault("placement-unknown", {{"text", *options.placement}});
    }
    Instrument instrument;
    if (!options.instrument) {
        if (!hasReading(options)) {
            return {};
        }
        instrument = assumedInstrument(kindAsked(options), input.today);
        addStepsTyped(options.strip.value_or(""), instrument);
        input.assumed = true;
    } else if (const auto* known = input.stock.instrumentNamed(*options.instrument)) {
        instrument = *known;
    } else {
        return inputFault("instrument-unknown",
                          {{"name", *options.instrument}, {"known", namesOf(input.stock.instruments)}});
    }
    if (const auto faults = analytics::validate(instrument); !input.assumed && !faults.empty()) {
        return inputFault("instrument-faulty", {{"name", instrument.name}, {"count", std::to_string(faults.size())}});
    }
    if (hasReading(options) && instrument.kind != kindAsked(options)) {
        return inputFault("instrument-of-other-kind", {{"name", *options.instrument}});
    }
    if (placement) {
        place(instrument, *placement);
    }
    input.instrument.emplace(std::move(instrument), input.today);
    return {};
}

} // namespace

Instrument assumedInstrument(InstrumentKind kind, analytics::Date today) {
    Instrument instrument;
    instrument.kind = kind;
    instrument.placement = analytics::Placement::wetInk;
    if (kind == InstrumentKind::probe || kind == InstrumentKind::spot) {
        instrument.name = "class 1 type K probe";
        instrument.type = analytics::ThermocoupleType::k;
        instrument.toleranceClass = analytics::ToleranceClass::iecClass1;
        instrument.checks.push_back({analytics::CheckKind::ice, true, today, today});
    } else if (kind == InstrumentKind::gun) {
        instrument.name = "surface gun";
        instrument.statedTolerance = analytics::TemperatureDifference::fromCelsius(2.0);
        instrument.checks.push_back({analytics::CheckKind::comparison, true, today, today});
    } else {
        instrument.name = "strip";
        instrument.strip = analytics::StripSteps{{}, analytics::TemperatureDifference::fromFahrenheit(2.0), {}};
    }
    return instrument;
}

tl::expected<JudgeInput, CommandFault> judgeInputFrom(const JudgeOptions& options) {
    const std::array typed{options.trace.has_value(), options.strip.has_value(), options.spot.has_value(),
                           options.surface.has_value()};
    const auto readings = std::count(typed.begin(), typed.end(), true);
    if (readings > 1) {
        return inputFault("several-readings", {});
    }
    JudgeInput input;
    input.today = options.todayByClock;
    if (options.today) {
        const auto date = dateFrom(*options.today);
        if (!date) {
            return inputFault("no-such-day", {{"text", *options.today}});
        }
        input.today = *date;
    }
    auto stock = stockFrom(options.shopFile);
    if (!stock) {
        return tl::unexpected(stock.error());
    }
    input.stock = std::move(*stock);
    auto plan = planFrom(options, input.stock);
    if (!plan) {
        return tl::unexpected(plan.error());
    }
    input.plan = std::move(*plan);
    if (auto chosen = chooseInstrument(options, input); !chosen) {
        return tl::unexpected(chosen.error());
    }
    return input;
}

} // namespace holdfast::kiosk::command
