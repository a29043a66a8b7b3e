#pragma once

#include "kiosk/shop/proving/proving_state.hpp"

/// The inside of step(): what a state becomes, and what is to be done.
namespace holdfast::kiosk::shop {

struct Machine final {
    ProvingState state;
    std::vector<ProvingEffect> effects;

    void refuse(RefusalCause cause, std::string text = {}, std::optional<std::uint64_t> number = {});
    [[nodiscard]] Probe* probeNamed(const std::string& name);
    [[nodiscard]] const KnownInstrument* instrumentNamed(const std::string& name) const;
    [[nodiscard]] std::int64_t nextNumber() { return ++state.lastNumber; }
};

// scan.cpp
void onScan(Machine& m, const std::string& bytes);
// probe.cpp
void refreshProbe(Machine& m, Probe& probe);
void onLink(Machine& m, const LinkChanged& event);
void onInstruments(Machine& m, const InstrumentsLoaded& event);
// ride.cpp
void onSamples(Machine& m, const SamplesArrived& event);
void watchAges(Machine& m);
void onStop(Machine& m);
/// Gives the run to rides that nobody announced.
void claimRides(Machine& m);
void reopenSpool(Machine& m, const SpoolFailed& event);
// judging.cpp
/// Judges what was recorded and sends it towards the book.
void judge(Machine& m, Probe& probe, Recording& recording);
void onSpoolFound(Machine& m, const SpoolFound& event);
void onUnitAnswered(Machine& m, const UnitAnswered& event);
[[nodiscard]] std::shared_ptr<const analytics::Calibration> calibrationFor(const std::optional<KnownInstrument>& known,
                                                                           const std::string& name);
/// The fields of a reading that do not depend on the evidence.
void describeReading(records::ReadingTaken& reading, const AnnouncedRun* run, const KnownInstrument* known,
                     const std::string& name, const analytics::Calibration& calibration,
                     const analytics::GuardSetting& guard);
// keeping.cpp
void keep(Machine& m, PendingKeep pending);
void onCommitted(Machine& m, const Committed& event);
void onCommitFailed(Machine& m, const CommitFailed& event);
void onRetry(Machine& m);
void onRetake(Machine& m);
void showTogether(Machine& m);
// strip.cpp
void openStrip(Machine& m, const std::string& name);
void touchStrip(Machine& m, int lastDark);
void previewStrip(Machine& m);
void keepStrip(Machine& m);
// run.cpp
void lookUp(Machine& m, std::uint64_t number, bool card);
void onRunLoaded(Machine& m, const RunLoaded& event);
void refreshWindow(Machine& m);
/// With the lot that an earlier look-up gave it, so that two fresh lots never stand for one.
[[nodiscard]] std::shared_ptr<const AnnouncedRun> withKnownLot(const ProvingState& state,
                                                               std::shared_ptr<const AnnouncedRun> run);
void clearVerdict(Machine& m);
// step.cpp
void onNext(Machine& m);
void onPosition(Machine& m, records::BeltPosition position);

} // namespace holdfast::kiosk::shop
