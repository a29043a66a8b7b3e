#include "kiosk/shop/proving/proving_desk.hpp"

#include "kiosk/shop/proving/desk_disk.hpp"

#include <QMetaObject>

#include <algorithm>
#include <future>
#include <utility>

namespace holdfast::kiosk::shop {
namespace {

constexpr auto kTick = std::chrono::milliseconds{100};
constexpr std::size_t kFewestFreshIds = 24; // a lot, an entry and a hold for each of six runs, and some
std::uint64_t wordOf(const ledger::UuidRandom& random) {
    std::uint64_t word = 0;
    for (const auto byte : random) {
        word = word << 8U | byte;
    }
    return word;
}

constexpr std::size_t kMostLeftOver = 64; // spools turned into readings at one start; the rest wait for the next

} // namespace

ProvingDesk::ProvingDesk(DeskNeeds needs, QObject* parent)
    : QObject{parent}, m_needs{std::move(needs)}, m_disk{std::make_shared<Disk>(m_needs.book, m_needs.dryer)} {
    connect(&m_timer, &QTimer::timeout, this, &ProvingDesk::tick);
}

ProvingDesk::~ProvingDesk() {
    m_timer.stop();
    std::promise<void> drained;
    m_needs.writer.post([this, &drained] {
        m_disk.reset(); // connection and spools belong to that thread
        drained.set_value();
    });
    drained.get_future().wait();
}

void ProvingDesk::start() {
    reload();
    std::vector<std::string> freshLots;
    std::generate_n(std::back_inserter(freshLots), kMostLeftOver, [&] { return newId(); });
    onDisk([this, freshLots = std::move(freshLots), now = moment()](Disk& disk) {
        if (auto loaded = disk.floor()) {
            loaded->afterPowerLoss = disk.anyLeftOver();
            answer(std::move(*loaded));
        }
        for (auto& event : disk.leftOver(freshLots, now)) {
            answer(std::move(event));
        }
        answer(disk.earlierRides());
    });
    m_timer.start(drivers::realDelay(m_needs.clock, kTick));
}

void ProvingDesk::reload() {
    m_day = today();
    onDisk([this, day = m_day](Disk& disk) {
        if (auto loaded = disk.instruments(day)) {
            answer(std::move(*loaded));
        }
    });
}

void ProvingDesk::loadFloor() {
    onDisk([this](Disk& disk) {
        if (auto loaded = disk.floor()) {
            answer(std::move(*loaded));
        }
    });
}

void ProvingDesk::send(const ProvingEvent& event) {
    if (m_state.freshIds.size() < kFewestFreshIds || m_state.watch.words.empty()) {
        FreshIds fresh;
        std::generate_n(std::back_inserter(fresh.ids), 2 * kFewestFreshIds, [&] { return newId(); });
        std::generate_n(std::back_inserter(fresh.words), kFewestFreshIds, [&] { return wordOf(m_needs.random()); });
        m_state = step(std::move(m_state), fresh).state;
    }
    auto next = step(std::move(m_state), event);
    m_state = std::move(next.state);
    for (const auto& effect : next.effects) {
        perform(effect);
    }
    emit changed();
}

void ProvingDesk::onSamples(const QString& probe, const QVector<drivers::Sample>& samples) {
    send(SamplesArrived{probe.toStdString(), {samples.begin(), samples.end()}});
}

void ProvingDesk::onLink(const QString& probe, const drivers::LinkStatus& status, double step, bool fahrenheit) {
    const auto unit = fahrenheit ? drivers::ReadingUnit::fahrenheit : drivers::ReadingUnit::celsius;
    send(LinkChanged{probe.toStdString(), status, {step, unit}});
}

void ProvingDesk::onScan(const QString& text) {
    send(ScannedText{text.toStdString()});
}

void ProvingDesk::tick() {
    if (today() != m_day) {
        reload();
    }
    send(Tick{m_needs.clock.now()});
}

void ProvingDesk::onDisk(std::function<void(Disk&)> work) {
    m_needs.writer.post([disk = m_disk.get(), work = std::move(work)] { work(*disk); });
}

void ProvingDesk::answer(ProvingEvent event) {
    QMetaObject::invokeMethod(
        this, [this, event = std::move(event)] { send(event); }, Qt::QueuedConnection);
}

void ProvingDesk::perform(const ProvingEffect& effect) {
    if (const auto* ask = std::get_if<LookUpRun>(&effect)) {
        lookUp(*ask);
    } else if (const auto* strip = std::get_if<LookUpStrip>(&effect)) {
        onDisk([this, number = strip->number](Disk& disk) { answer(disk.strip(number)); });
    } else if (const auto* open = std::get_if<OpenSpool>(&effect)) {
        openSpool(*open);
    } else if (const auto* append = std::get_if<AppendSpool>(&effect)) {
        appendSpool(*append);
    } else if (const auto* sync = std::get_if<SyncSpool>(&effect)) {
        onDisk([spool = sync->spool](Disk& disk) { disk.syncSpool(spool); });
    } else if (const auto* discard = std::get_if<DiscardSpool>(&effect)) {
        onDisk([spool = discard->spool, name = m_spoolNames[discard->spool]](Disk& disk) {
            disk.discardSpool(spool, name);
        });
    } else if (const auto* wanted = std::get_if<Commit>(&effect)) {
        commit(*wanted);
    } else if (const auto* load = std::get_if<LoadTrace>(&effect)) {
        onDisk([this, reading = load->reading](Disk& disk) { answer(disk.trace(reading)); });
    } else if (const auto* verdict = std::get_if<ShowVerdict>(&effect)) {
        emit verdictShown(static_cast<int>(verdict->word));
    } else {
        emit refused();
    }
}

void ProvingDesk::lookUp(const LookUpRun& effect) {
    onDisk(
        [this, effect, freshLot = newId(), now = moment()](Disk& disk) { answer(disk.lookUp(effect, freshLot, now)); });
}

void ProvingDesk::openSpool(const OpenSpool& effect) {
    const auto name = newId();
    m_spoolNames[effect.spool] = name + std::string{ledger::Spool::suffix};
    onDisk([this, effect, name](Disk& disk) {
        if (const auto failure = disk.openSpool(effect, name)) {
            answer(SpoolFailed{effect.spool, *failure});
        }
    });
}

void ProvingDesk::appendSpool(const AppendSpool& effect) {
    onDisk([this, effect](Disk& disk) {
        if (const auto failure = disk.appendSpool(effect)) {
            answer(SpoolFailed{effect.spool, *failure});
        }
    });
}

std::vector<ledger::EntryDraft> ProvingDesk::draftsOf(const std::vector<records::Record>& list,
                                                      const std::vector<std::string>& ids, std::int64_t person) {
    const auto wall = m_needs.clock.wall();
    std::vector<ledger::EntryDraft> drafts;
    for (const auto& record : list) {
        ledger::EntryDraft draft;
        const bool named = drafts.size() < ids.size() && !ids[drafts.size()].empty();
        draft.id = named ? ids[drafts.size()] : newId();
        draft.kiosk = m_needs.kiosk;
        draft.wallMilliseconds = wall.millisecondsSinceEpoch;
        draft.utcOffsetMinutes = wall.utcOffsetMinutes;
        draft.person = person;
        draft.kind = records::rowOf(record).kind;
        draft.version = records::rowOf(record).version;
        draft.body = records::bodyOf(record);
        drafts.push_back(std::move(draft));
    }
    return drafts;
}

void ProvingDesk::keep(const DeskKeeping& keeping, std::function<void(std::optional<ledger::Failure>)> then) {
    ledger::CommitRequest request;
    request.entries = draftsOf(keeping.list, keeping.ids, keeping.signedBy);
    request.blobs = keeping.blobs;
    request.persons = keeping.persons;
    m_needs.writer.submit(std::move(request), [this, list = keeping.list, then = std::move(then)](const auto& receipt) {
        const auto failure = receipt ? std::optional<ledger::Failure>{} : std::optional{receipt.error()};
        QMetaObject::invokeMethod(
            this,
            [this, list, then, failure] {
                if (!failure) {
                    send(KeptElsewhere{list});
                }
                then(failure);
                loadFloor();
                emit bookGrew();
            },
            Qt::QueuedConnection);
    });
}

ledger::CommitRequest ProvingDesk::requestOf(const Commit& effect) {
    ledger::CommitRequest request;
    request.entries = draftsOf(effect.records, effect.ids);
    if (!effect.trace.empty()) {
        request.blobs.push_back({"trace", effect.trace});
    }
    if (!effect.spools.empty()) {
        request.spoolMadeRedundant = m_spoolNames[effect.spools.back()];
    } else if (!effect.spoolFile.empty()) {
        request.spoolMadeRedundant = effect.spoolFile;
    }
    return request;
}

void ProvingDesk::commit(const Commit& effect) {
    auto known = m_requests.find(effect.key);
    if (known == m_requests.end()) {
        known = m_requests.emplace(effect.key, requestOf(effect)).first;
    }
    std::vector<std::string> ids;
    for (const auto& entry : known->second.entries) {
        ids.push_back(entry.id);
    }
    std::vector<std::pair<std::int64_t, std::string>> spools;
    for (const auto spool : effect.spools) {
        spools.emplace_back(spool, m_spoolNames[spool]);
    }
    const auto done = [this, key = effect.key, ids, spools,
                       disk = m_disk.get()](ledger::Result<ledger::CommitReceipt> receipt) {
        if (!receipt) {
            QMetaObject::invokeMethod(
                this,
                [this, failed = CommitFailed{key, receipt.error()}] {
                    if (failed.failure.code == ledger::FailureCode::refused) {
                        m_requests.erase(failed.key); // the next try may be another
                    }
                    send(failed);
                },
                Qt::QueuedConnection);
            return;
        }
        for (const auto& [spool, name] : spools) {
            disk->discardSpool(spool, name); // the book removed the last; earlier ones of the same ride go too
        }
        auto kept = Committed{key, ids, receipt->sequences};
        QMetaObject::invokeMethod(
            this,
            [this, kept = std::move(kept)] {
                m_requests.erase(kept.key);
                send(kept);
                loadFloor();
                emit bookGrew();
            },
            Qt::QueuedConnection);
    };
    m_needs.writer.submit(known->second, done);
}

std::string ProvingDesk::newId() {
    const auto wall = m_needs.clock.wall().millisecondsSinceEpoch;
    return m_ids.next(static_cast<std::uint64_t>(wall), m_needs.random());
}

records::Moment ProvingDesk::moment() const {
    return {m_needs.clock.wall().millisecondsSinceEpoch, today()};
}

analytics::Date ProvingDesk::today() const {
    return drivers::localDay(m_needs.clock.wall());
}

} // namespace holdfast::kiosk::shop
