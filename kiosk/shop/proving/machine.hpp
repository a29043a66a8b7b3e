#pragma once

#include "kiosk/shop/proving/proving_state.hpp"

#include <algorithm>

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
/// Cards that are no action at the dryer.
void onCard(Machine& m, ActionCard card);
// probe.cpp
void refreshProbe(Machine& m, Probe& probe);
void onLink(Machine& m, const LinkChanged& event);
void onInstruments(Machine& m, const InstrumentsLoaded& event);
// in_check.cpp
void onInCheck(Machine& m, const InstrumentInCheck& event);
/// Whether a rise to this may be a ride.
[[nodiscard]] bool mayStart(const Probe& probe, analytics::Temperature t);
/// A sample after a check, in place of the last minute's: what comes before the room's own temperature is of the bath.
/// A probe that warms up again after ice is no ride; one that goes on a print at once loses nothing of it.
void feedFromBath(Probe& probe, const drivers::Sample& sample, const std::optional<analytics::Temperature>& t);
// ride.cpp
void onSamples(Machine& m, const SamplesArrived& event);
void watchAges(Machine& m);
void onStop(Machine& m);
/// Gives the belt's runs to rides that nobody announced.
void claimRides(Machine& m);
/// A ride is on and not yet judged.
[[nodiscard]] bool rideIsOn(const ProvingState& state);
// ride_spool.cpp
/// It was no ride: nothing of it is kept.
void discardRecording(Machine& m, Probe& probe);
void openSpool(Machine& m, const Probe& probe, Recording& recording);
/// Hands over what is not yet in the spool, and tries again one that failed.
void feedSpool(Machine& m, Probe& probe);
void reopenSpool(Machine& m, const SpoolFailed& event);
// judging.cpp
/// Judges what was recorded and sends it towards the book.
void judge(Machine& m, Probe& probe, Recording& recording);
/// Readings of every pass for every run of the recording, and its trace.
[[nodiscard]] PendingKeep pendingOf(Machine& m, const std::optional<KnownInstrument>& known,
                                    const drivers::CountScale& link, const Recording& recording);
/// In the link's scale, as the instrument spoke it.
[[nodiscard]] analytics::RawTrace rawTraceOf(const Recording& recording, const drivers::CountScale& scale,
                                             const analytics::Instrument& about);
[[nodiscard]] std::shared_ptr<const analytics::Calibration> calibrationFor(const std::optional<KnownInstrument>& known,
                                                                           const std::string& name);
/// The fields of a reading that do not depend on the evidence.
void describeReading(records::ReadingTaken& reading, const AnnouncedRun* run, const KnownInstrument* known,
                     const std::string& name, const analytics::Calibration& calibration,
                     const analytics::GuardSetting& guard);
// ride_facts.cpp
/// Of every pass of a recording, with what this dryer's good rides so far make its usual.
[[nodiscard]] std::vector<std::shared_ptr<const RideFacts>>
rideFactsOf(const ProvingState& state, const std::vector<analytics::Pass>& passes,
            const std::shared_ptr<const analytics::Calibration>& calibration);
/// A ride that was just kept joins the good ones if it is cured and shows no sign of trouble.
void noteGoodRide(ProvingState& state, const KeptReading& kept);
void noteEarlierRides(ProvingState& state, const EarlierRidesLoaded& event);
/// What to turn for the verdict on the screen.
void proposeTurn(ProvingState& state);
// judging_again.cpp
void onSpoolFound(Machine& m, const SpoolFound& event);
void onUnitAnswered(Machine& m, const UnitAnswered& event);
/// Draws the recording from its samples, in the answered unit.
void redraw(const Probe& probe, Recording& recording);
// keeping.cpp
void keep(Machine& m, PendingKeep pending);
void onCommitted(Machine& m, const Committed& event);
void onCommitFailed(Machine& m, const CommitFailed& event);
void onRetry(Machine& m);
// showing.cpp
void store(Machine& m, KeptReading kept);
void showTogether(Machine& m);
void onRetake(Machine& m);
[[nodiscard]] const KeptReading* keptOf(const ProvingState& state, const KeptReading& reading);
/// The smaller, the worse.
[[nodiscard]] int rankOf(analytics::Word word);
// strip.cpp
/// `number` is that of a single strip, if its own label was scanned.
void openStrip(Machine& m, const std::string& name, std::optional<std::int64_t> number = std::nullopt);
/// True if the number is one of a pack of single strips: the book is then asked whether it was used.
bool onStripLabel(Machine& m, std::uint64_t number);
void onStripLookedUp(Machine& m, const StripLookedUp& event);
void touchStrip(Machine& m, int lastDark);
void previewStrip(Machine& m);
void keepStrip(Machine& m);
// hand.cpp
void closePages(ProvingState& state);
/// How long the film is under the heat, as far as the dryer's figures say so.
[[nodiscard]] std::optional<analytics::Duration> dwellNow(const ProvingState& state);
void openHand(Machine& m, const std::string& name);
void previewHand(Machine& m);
void keepHand(Machine& m);
// flash.cpp
void openFlash(Machine& m, const std::string& name);
void previewFlash(Machine& m);
void keepFlash(Machine& m);
void onFlashKept(ProvingState& state);
// run.cpp
void lookUp(Machine& m, std::uint64_t number, bool card);
void onRunLoaded(Machine& m, const RunLoaded& event);
void refreshWindow(Machine& m);
void clearVerdict(Machine& m);
// belt.cpp
[[nodiscard]] bool isOnBelt(const ProvingState& state, const std::string& run);
/// The run joins the belt, or leaves it if it is on it; nothing, with a refusal, if the belt is full.
void joinBelt(Machine& m, const std::shared_ptr<const AnnouncedRun>& run);
void leaveBelt(Machine& m, const std::string& run);
/// Only this run is on the belt.
void replaceBelt(Machine& m, const std::shared_ptr<const AnnouncedRun>& run);
[[nodiscard]] std::vector<std::shared_ptr<const AnnouncedRun>> othersOnBelt(const ProvingState& state);
// lots.cpp
/// With the lot that this session knows for it, or a fresh one where a change at the dryer ended it, so that two fresh
/// lots never stand for one.
[[nodiscard]] std::shared_ptr<const AnnouncedRun> withKnownLot(Machine& m, std::shared_ptr<const AnnouncedRun> run);
/// A change at the dryer ends every lot known here; runs on the belt go on with fresh ones.
[[nodiscard]] std::vector<std::string> endLots(Machine& m);
/// Runs on the belt whose lot is one of these go on with a fresh one.
void renewLots(Machine& m, const std::vector<std::string>& ended);
// elsewhere.cpp
void onKeptElsewhere(Machine& m, const KeptElsewhere& event);
/// Entries that must stand before and behind the readings or actions of `pending`.
[[nodiscard]] std::vector<records::Record> lotsToOpen(const ProvingState& state, const PendingKeep& pending);
[[nodiscard]] std::vector<records::Record> lotsToClose(const ProvingState& state, const PendingKeep& pending);
void noteLots(ProvingState& state, const std::vector<records::Record>& kept);
// floor_actions.cpp
void onActionPressed(Machine& m, const ActionPressed& event);
/// True if the number was one of pieces pulled.
bool onTypedPieces(Machine& m, const std::string& digits);
/// `pulled` waits no longer for its number.
void settlePieces(Machine& m);
void watchFloor(Machine& m);
void onActionKept(Machine& m, const PendingKeep& pending);
// floor_facts.cpp
void onFloorLoaded(Machine& m, const FloorLoaded& event);
/// A reading that was just kept: does it wait for an answer, does it make the dryer ready?
void noteReading(Machine& m, const KeptReading& kept);
/// The reason that counts from now on, after set-up or a change.
void refreshReason(ProvingState& state);
/// The reason of a reading that is taken now, as far as people said it; those that count once are used up.
[[nodiscard]] records::ReadingReason takeReason(ProvingState& state);
// counting.cpp
/// Not a window card, of which nothing is counted.
[[nodiscard]] bool isRunTicket(const std::shared_ptr<const AnnouncedRun>& run);
/// Pieces a metre of belt that are of one run, where several share it.
[[nodiscard]] std::optional<double> shareOfMetre(const ProvingState& state);
/// Counts anew; what came since the last count came in the run's dryer state.
void countRun(ProvingState& state, RunWatch& run);
/// The belt ran so long.
void addBeltTime(ProvingState& state, analytics::Duration time);
void onPiecesTyped(Machine& m, const PiecesTyped& event);
/// Pieces that a counter saw. Those of set-up are not the run's, and of two runs on one belt it cannot tell which it
/// saw.
void onPiecesPulsed(ProvingState& state, int pieces);
/// A counter counts the runs that begin, or whose number is typed, while it can be heard; what it told before it fell
/// silent stands, and belt and time go on from there.
void onCounterLink(ProvingState& state, bool live);
// watch.cpp
/// Counts what went onto the belt since the last look, and says what is due.
void watchRuns(Machine& m);
/// What is due of the run, and what was missed.
void planRun(Machine& m, RunWatch& run);
/// What is watched of the run with this id; null: it is not.
[[nodiscard]] RunWatch* watched(ProvingState& state, const std::string& run);
/// The dryer was turned, or stood too long: what was proven of it is proven no more.
void endStates(ProvingState& state);
/// The run's last piece has gone through.
void endWatch(Machine& m, const records::RunFinished& finished);
/// What is watched of the run, which begins with this if it is new; null for a window card.
[[nodiscard]] RunWatch* runWatch(ProvingState& state, const std::shared_ptr<const AnnouncedRun>& run);
[[nodiscard]] StateWatch& stateOf(ProvingState& state, const RunWatch& run);
/// Pieces of one run in the tunnel, where several share the belt.
[[nodiscard]] std::optional<int> inTunnelNow(const ProvingState& state);
// watch_readings.cpp
/// Which piece of each run is read, as the reading begins.
[[nodiscard]] std::vector<PieceTaken> takePieces(ProvingState& state,
                                                 const std::vector<std::shared_ptr<const AnnouncedRun>>& runs);
/// Where it is read: as a person chose, else where a reading is due now.
[[nodiscard]] records::BeltPosition positionDue(const ProvingState& state, records::BeltPosition chosen, bool byPerson);
/// takeReason(), but for a reading that nobody had asked for.
[[nodiscard]] records::ReadingReason reasonNow(ProvingState& state);
void notePiece(KeptReading& kept, const std::vector<PieceTaken>& pieces);
/// Bad readings get their bracket, number and bin before they are sent; proven ones end brackets before them.
void holdWhatIsBad(Machine& m, PendingKeep& pending);
void holdTheTunnel(Machine& m, PendingKeep& pending);
/// The run has ended, and with it every bracket of it.
void closeBrackets(Machine& m, RunWatch& run);
void noteDecided(ProvingState& state, const std::vector<std::string>& holds);
/// A place gave this bin to a hold of its own: none here has it any more.
void noteBinTaken(ProvingState& state, std::int64_t bin);
/// What the book says of pieces and brackets of a run that was under way before this session.
void resume(RunWatch& run);
/// A reading that was just kept.
void noteWatched(ProvingState& state, const KeptReading& kept);
// claiming.cpp
void onClaimPressed(Machine& m, const ClaimPressed& event);
/// Ids of earlier readings whose run a scanned ticket says: one asked for by ClaimPressed, else a ride that nobody
/// announced or that a window card judged, if it is the last, younger than ten minutes, and no ride is on.
[[nodiscard]] std::vector<std::string> earlierToName(const ProvingState& state, const AnnouncedRun& run);
/// Has them judged again for the run announced.
void nameEarlier(Machine& m, std::vector<std::string> readings);
void onTraceLoaded(Machine& m, const TraceLoaded& event);
void onTraceNotLoaded(Machine& m, const TraceNotLoaded& event);
// step.cpp
void onNext(Machine& m);
void onPosition(Machine& m, records::BeltPosition position);
void onPlacement(Machine& m, analytics::Placement placement);
/// The same was scanned or pressed less than two seconds ago, and counts once.
[[nodiscard]] bool saidAgain(Machine& m, const std::string& what);

template <class T>
[[nodiscard]] bool isIn(const std::vector<T>& list, const T& value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

} // namespace holdfast::kiosk::shop
