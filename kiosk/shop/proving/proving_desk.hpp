#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/link/link_state.hpp"
#include "drivers/link/sample.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/uuid.hpp"
#include "kiosk/ledger/writer.hpp"
#include "kiosk/shop/proving/proving_state.hpp"

#include <QObject>
#include <QString>
#include <QTimer>
#include <QVector>

#include <functional>
#include <map>
#include <memory>

namespace holdfast::kiosk::shop {

/// What the desk stands on; all of it must outlive the desk.
struct DeskNeeds final {
    ledger::Book& book;
    ledger::Writer& writer;
    const drivers::Clock& clock;
    std::function<ledger::UuidRandom()> random;
    std::string kiosk; ///< id of this kiosk
    std::string dryer; ///< id of the dryer it stands at; may be empty
};

/// What a place wants written, in one commit.
struct DeskKeeping final {
    std::vector<records::Record> list{};
    std::vector<std::string> ids{}; ///< of the entries, where others in `list` name them; short or empty: made here
    std::vector<ledger::BlobDraft> blobs{};
    std::vector<ledger::PersonName> persons{}; ///< names stand beside the entries, outside the chain
    std::int64_t signedBy = 0;                 ///< stands in each entry; 0: nobody signed
};

/// Holds the state of proving and does what it asks for. Lives in Qt's main thread and never waits for the disk:
/// look-ups, spools and commits run on the writer's thread, their answers come back by queued call.
class ProvingDesk final : public QObject {
    Q_OBJECT
public:
    explicit ProvingDesk(DeskNeeds needs, QObject* parent = nullptr);
    /// Waits until the writer's thread has done all that this desk asked.
    ~ProvingDesk() override;

    [[nodiscard]] const ProvingState& state() const noexcept { return m_state; }
    /// Loads instruments, turns left-over spools into readings, starts the timer.
    void start();
    /// The book has new instruments, certificates, families or settings.
    void reload();
    void send(const ProvingEvent& event);
    /// Writes entries that are no readings (a plan, a setting) and tells in this thread how it went.
    void keep(const DeskKeeping& keeping, std::function<void(std::optional<ledger::Failure>)> then);
    [[nodiscard]] std::string newId();

public slots:
    /// `probe` is the instrument's name in the book. For queued connections from a link.
    void onSamples(const QString& probe, const QVector<holdfast::drivers::Sample>& samples);
    void onLink(const QString& probe, const holdfast::drivers::LinkStatus& status, double step, bool fahrenheit);
    /// A scan as it came, also from the keyboard.
    void onScan(const QString& text);

signals:
    void changed();
    /// For lamp and sound; the state says the same.
    void refused();
    void verdictShown(int word);
    /// Something new stands in the book: lists may be asked again.
    void bookGrew();

private:
    class Disk;
    void perform(const ProvingEffect& effect);
    void lookUp(const LookUpRun& effect);
    void openSpool(const OpenSpool& effect);
    void appendSpool(const AppendSpool& effect);
    void commit(const Commit& effect);
    [[nodiscard]] ledger::CommitRequest requestOf(const Commit& effect);
    [[nodiscard]] std::vector<ledger::EntryDraft>
    draftsOf(const std::vector<records::Record>& list, const std::vector<std::string>& ids, std::int64_t person = 0);
    [[nodiscard]] analytics::Date today() const;
    [[nodiscard]] records::Moment moment() const;
    void loadFloor();
    void tick();
    /// Runs `work` on the writer's thread.
    void onDisk(std::function<void(Disk&)> work);
    /// Back into the main thread.
    void answer(ProvingEvent event);

    DeskNeeds m_needs;
    ProvingState m_state;
    ledger::UuidSequence m_ids;
    std::map<std::int64_t, ledger::CommitRequest>
        m_requests; ///< by key, until they are kept: a retry sends the same, save one that the book refused
    std::map<std::int64_t, std::string> m_spoolNames; ///< file names
    std::shared_ptr<Disk> m_disk;
    analytics::Date m_day{};
    QTimer m_timer;
};

} // namespace holdfast::kiosk::shop
