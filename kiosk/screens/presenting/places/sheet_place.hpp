#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/keeping/rights.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/notices.hpp"
#include "kiosk/wording/sentences.hpp"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

namespace holdfast::kiosk::reports {
struct BriefingFacts;
}

namespace holdfast::kiosk::screens {

/// What somebody wants on paper; the frame reads the rest from the book.
struct PrintWish final {
    enum class What {
        runTicket,
        windowCard,
        actionCards, ///< all of them; `number` counts for nothing
        bucketLabel,
        personBadge,
        instrumentLabel,
        stripLabels,    ///< of the pack whose first strip has this number
        binLabel,       ///< of the hold whose bin has this number
        printLabel,     ///< of a print under test, to be fixed beside it
        quarantine,     ///< the list of what is on hold, to be ticked off; `number` counts for nothing
        recall,         ///< cartons and customers of the lot `id`, or the maker's batch `id`, or the run `number`
        recallOfBucket, ///< of everything the bucket `number` went into
        recallOfLots,   ///< of the lots `ids`, for the complaint `number`
        certificate,    ///< of the run `number`
        briefing,       ///< the owner's page, of `briefing`
    };
    What what = What::runTicket;
    std::int64_t number = 0;
    std::string id{}; ///< of a lot, or a maker's batch
    std::vector<std::string> ids{};
    std::shared_ptr<const reports::BriefingFacts> briefing{}; ///< worked out beside the screen
};

/// What a place wants written, in one commit.
struct Keeping final {
    std::vector<records::Record> list{};
    std::int64_t person = 0; ///< who signed, and so stands in each of these entries; 0: nobody's name was asked for
    std::optional<ledger::PersonName> name{}; ///< stands outside the chain (ledger::CommitRequest::persons)
    std::vector<std::string> ids{}; ///< of the entries, where others in `list` name them; short or empty: made outside
    std::vector<ledger::BlobDraft> blobs{}; ///< pictures
};
/// Told in the main thread: what went wrong, or nothing.
using KeepDone = std::function<void(std::optional<ledger::Failure>)>;

/// Looks now and then whether it should stop.
using StudyWork = std::function<void(const SQLite::Database& reader, std::stop_token stop)>;
/// The book could not be opened for it, or nothing.
using StudyDone = std::function<void(std::optional<ledger::Failure>)>;

/// What a place may ask of the frame around it. All of it outlives the place; main thread only.
struct PlaceNeeds final {
    const ledger::Book* book = nullptr;
    const drivers::Clock* clock = nullptr;
    std::filesystem::path exchange{}; ///< folder where files are laid to be taken over, and written to be taken away
    /// As of the last event: links, live values, instruments.
    std::function<const shop::ProvingState&()> floor{};
    std::function<const wording::Speech&()> speech{};
    std::function<std::string()> newId{};
    /// The places are shown again after `then`.
    std::function<void(Keeping, KeepDone then)> keep{};
    /// A sentence over the page until the next scan or press.
    std::function<void(wording::Notice)> tell{};
    /// Shows another place: "run", "dryer", "runs", "tests", "holds", "inks", "instruments", "shop".
    std::function<void(const std::string& place)> go{};
    /// Everything about one run on one page.
    std::function<void(const std::string& run)> trace{};
    /// As if this code had been scanned.
    std::function<void(const std::string& code)> scan{};
    /// Runs `then` once somebody with that right has shown badge and PIN; at once while such a person still counts as
    /// signed in. Who gives up leaves everything as it was.
    std::function<void(shop::Right right, std::function<void(std::int64_t person)> then)> sign{};
    /// A signature under one thing, given by badge and PIN each time; `other` has signed it already and is refused (0:
    /// nobody has).
    std::function<void(shop::Right right, std::int64_t other, std::function<void(std::int64_t person)> then)>
        signAfresh{};
    /// Something changed that was no press, no scan and no commit: everything is shown again.
    std::function<void()> show{};
    /// The instrument is in a bath to be checked, or out of it: what it shows then is no ride
    /// (shop::InstrumentInCheck).
    std::function<void(const std::string& probe, bool inCheck)> inCheck{};
    /// Long work: runs `work` on a thread of its own, with a reading connection of its own, and tells `then` in the
    /// main thread. Nothing is told once the stop source given back was asked to stop.
    std::function<std::stop_source(StudyWork work, StudyDone then)> study{};
    /// Writes a PDF to the shelf and sends it to the printer of its kind, if one is set; tells what went wrong.
    std::function<void(const PrintWish& wish)> print{};
};

/// One place drawn as a sheet: what it shows, and what its presses, fields and scans do. Action ids begin with the
/// place's own prefix ("inks.…"), so that places never meet.
class SheetPlace {
public:
    virtual ~SheetPlace() = default;
    SheetPlace() = default;
    SheetPlace(const SheetPlace&) = delete;
    SheetPlace& operator=(const SheetPlace&) = delete;

    /// The person came here, or something new stands in the book: lists are asked again.
    virtual void reload() = 0;
    [[nodiscard]] virtual SheetPageState sheet() const = 0;
    /// False if the id is none of this place's.
    virtual bool act(const std::string& id) = 0;
    /// What was typed into a field; false if the field is none of this place's.
    virtual bool enter(const std::string& field, const std::string& text) = 0;
    /// Any code while this place stands on the screen; elsewhere only those that the proving desk has no use for (a
    /// bucket's, a person's). False: not wanted here. True: wanted, and this place comes to the screen.
    virtual bool scanned(const drivers::TicketCode& code, bool onScreen) = 0;
    /// Another place, or none, stands on the screen from now on.
    virtual void left() {}
    /// Something half typed stands in it. It stays there while another place is on the screen, until it is kept or
    /// given up.
    [[nodiscard]] virtual bool isWriting() const { return false; }
    /// Called four times a second while it stands on the screen; for live values.
    virtual void tick() {}
};

} // namespace holdfast::kiosk::screens
