#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

/// An underbase flashed between screens: noted beside the run, no reading of a lot.
namespace holdfast::kiosk::shop {
namespace {

using analytics::InstrumentKind;

const KnownInstrument* firstOf(const ProvingState& state, InstrumentKind kind, const std::string& name) {
    const auto found =
        std::find_if(state.instruments.begin(), state.instruments.end(), [&](const KnownInstrument& one) {
            return one.kind == kind && one.calibration && (name.empty() || one.name == name);
        });
    return found == state.instruments.end() ? nullptr : &*found;
}

const KnownInstrument* flashInstrument(const ProvingState& state, const std::string& name) {
    for (const auto kind : {InstrumentKind::spot, InstrumentKind::gun, InstrumentKind::probe}) {
        if (const auto* found = firstOf(state, kind, name)) {
            return found;
        }
    }
    return nullptr;
}

/// The one underbase, if the plan has exactly one.
std::optional<int> onlyUnderbase(const records::RunPlanned& plan) {
    std::optional<int> only;
    for (std::size_t i = 0; i < plan.layers.size(); ++i) {
        if (plan.layers[i].underbase) {
            if (only) {
                return std::nullopt;
            }
            only = static_cast<int>(i) + 1;
        }
    }
    return only;
}

const analytics::Layer* layerOf(const FlashEntry& entry, const AnnouncedRun& run) {
    const auto& layers = run.onFile.layers.layers;
    const bool there = entry.layer && *entry.layer >= 1 && *entry.layer <= static_cast<int>(layers.size());
    return there ? &layers[static_cast<std::size_t>(*entry.layer - 1)] : nullptr;
}

std::string causeText(const FlashEntry& entry, const AnnouncedRun& run) {
    if (entry.missing == RefusalCause::valueImpossible) {
        return typedText(*entry.peak);
    }
    const auto* layer = layerOf(entry, run);
    return layer != nullptr ? layer->colour : std::string{};
}

} // namespace

void openFlash(Machine& m, const std::string& name) {
    auto& state = m.state;
    if (!state.run) {
        m.refuse(RefusalCause::noRunAnnounced);
        return;
    }
    const auto* instrument = flashInstrument(state, name);
    if (instrument == nullptr) {
        m.refuse(RefusalCause::byHandOnly, name);
        return;
    }
    FlashEntry entry;
    entry.instrument = *instrument;
    entry.layer = onlyUnderbase(state.run->onFile.plan);
    closePages(state);
    state.flash = std::move(entry);
    previewFlash(m);
}

void previewFlash(Machine& m) {
    auto& flash = m.state.flash;
    if (!flash || !m.state.run) {
        return;
    }
    if (const auto* known = m.instrumentNamed(flash->instrument.name); known != nullptr && known->calibration) {
        flash->instrument = *known;
    }
    flash->missing.reset();
    flash->preview.reset();
    const auto* layer = layerOf(*flash, *m.state.run);
    if (layer == nullptr) {
        flash->missing = RefusalCause::flashLayerMissing;
    } else if (!layer->ink.requirement.gel) {
        flash->missing = RefusalCause::flashDoesNotApply;
    } else if (!flash->peak) {
        flash->missing = RefusalCause::valueMissing;
    } else if (!isPossible(*flash->peak)) {
        flash->missing = RefusalCause::valueImpossible;
    } else {
        const auto& calibration = *flash->instrument.calibration;
        flash->preview = analytics::judgeFlash(*layer, calibration.corrected(flash->peak->temperature()), calibration,
                                               m.state.guard);
    }
}

void keepFlash(Machine& m) {
    auto& state = m.state;
    state.refusal.reset();
    if (!state.flash || !state.run) {
        m.refuse(RefusalCause::nothingEntered);
        return;
    }
    previewFlash(m);
    const auto& flash = *state.flash;
    if (flash.missing) {
        m.refuse(*flash.missing, causeText(flash, *state.run));
        return;
    }
    records::FlashNoted noted;
    noted.run = state.run->onFile.plan.run;
    noted.position = *flash.layer;
    noted.instrument = flash.instrument.id.empty() ? flash.instrument.name : flash.instrument.id;
    noted.peak = *flash.peak;
    noted.word = flash.preview->word;
    noted.reasons = flash.preview->reasons;
    state.lastFlash = LastFlash{noted, state.run, flash.instrument.name, false};
    state.flash.reset();
    PendingKeep pending;
    pending.flash = std::move(noted);
    keep(m, std::move(pending));
}

void onFlashKept(ProvingState& state) {
    const bool isLast =
        std::none_of(state.pending.begin(), state.pending.end(), [](const PendingKeep& one) { return one.flash; });
    if (state.lastFlash && isLast) {
        state.lastFlash->kept = true;
    }
}

} // namespace holdfast::kiosk::shop
