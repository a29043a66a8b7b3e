#include "kiosk/screens/tour/tour_kiosk.hpp"

#include "kiosk/demo/demo_history.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/tour/tour_shop.hpp"
#include "kiosk/shop/opening/opening.hpp"
#include "kiosk/shop/testing/starters.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QThread>

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kStep = 0.1; // °C a count
constexpr int kSamplesPerSecond = 5;
constexpr double kSecondsInside = 40.0;
constexpr int kMostSeconds = 600;
constexpr int kMostWakes = 20'000;
constexpr int kMostBreaths = 1'000;
constexpr unsigned long kBreath = 10; // ms of real time, for another thread

constexpr const char* kKiosk = "019ac000-0000-7000-8000-000000000001";
/// Tuesday 2026-03-03, 06:52 in a zone an hour ahead of UTC.
constexpr drivers::WallTime kMorning{1'772'496'000'000 + (5 * 60 + 52) * 60'000LL, 60};

/// The same day, 14:20.
constexpr drivers::WallTime kAfternoon{kMorning.millisecondsSinceEpoch + (7 * 60 + 28) * 60'000LL, 60};

bool matches(const QString& id, const std::string& wanted) {
    const auto text = toQString(wanted);
    return text.endsWith(QLatin1Char{'*'}) ? id.startsWith(text.chopped(1)) : id == text;
}

void append(QStringList& ids, const QList<ActionState>& actions) {
    for (const auto& action : actions) {
        ids.append(action.id);
    }
}

QStringList idsOf(const DryerPageState& page) {
    QStringList ids{page.scan.id, page.belt.actionId};
    for (const auto& row : page.earlier) {
        ids.append(row.id);
    }
    for (const auto& row : page.due) {
        ids.append(row.id);
    }
    for (const auto& row : page.holds) {
        ids.append(row.id);
    }
    append(ids, page.actions);
    return ids;
}

QStringList idsOf(const RunPageState& page) {
    QStringList ids;
    for (const auto& way : page.waysOut) {
        ids.append(way.id);
    }
    append(ids, page.actions);
    return ids;
}

QStringList idsOf(const StripPageState& page) {
    QStringList ids{page.keep.id, page.leave.id};
    for (const auto& step : page.steps) {
        ids.append(step.id);
    }
    for (const auto& list : {page.positions, page.marks, page.placements}) {
        for (const auto& choice : list) {
            ids.append(choice.id);
        }
    }
    return ids;
}

QStringList idsOf(const SheetPageState& page) {
    QStringList ids{page.back.id};
    for (const auto& row : page.list) {
        ids.append(row.id);
    }
    append(ids, page.listActions);
    for (const auto& block : page.blocks + page.beside) {
        append(ids, block.actions);
        for (const auto& point : block.trend.points) {
            ids.append(point.id);
        }
        for (const auto& bar : block.trend.bars) {
            ids.append(bar.id);
        }
        for (const auto& row : block.trend.rows) {
            ids.append(row.id);
        }
        for (const auto& row : block.rows) {
            ids.append(row.id);
        }
        for (const auto& crack : block.cracks) {
            ids.append(crack.id);
        }
        for (const auto& tick : block.ticks) {
            ids.append(tick.id);
        }
        for (const auto& entry : block.trail) {
            ids.append(entry.id);
        }
        for (const auto& field : block.fields) {
            ids.append(QStringLiteral("field.") + field.id);
        }
    }
    append(ids, page.actions);
    append(ids, page.besideActions);
    return ids;
}

} // namespace

TourKiosk::TourKiosk(Shop shop, Tour& tour)
    : m_tour{tour}, m_folder{QDir::tempPath() + QStringLiteral("/holdfast-tour-XXXXXX")}, m_clock{shop == Shop::demo
                                                                                                      ? kAfternoon
                                                                                                      : kMorning} {
    openBook(shop);
    open();
}

TourKiosk::~TourKiosk() {
    close();
}

void TourKiosk::miss(const std::string& what) {
    m_tour.missed.append(QStringLiteral("after %1: %2").arg(m_last, toQString(what)));
}

void TourKiosk::openBook(Shop shop) {
    auto book = ledger::Book::open(m_folder.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                   ledger::OpenMode::firstStart);
    if (!book) {
        miss(book.error().what);
        return;
    }
    m_book = std::move(*book);
    if (shop == Shop::none) {
        return;
    }
    if (shop == Shop::demo) {
        ledger::Writer writer{*m_book};
        if (const auto done = demo::writeDemo(*m_book, writer, m_clock.wall(), "demo-probe"); !done) {
            miss(done.error().what);
        }
        return;
    }
    ledger::UuidSequence ids;
    const auto random = [this] {
        ledger::UuidRandom bytes{};
        std::generate(bytes.begin(), bytes.end(), [this] { return static_cast<std::uint8_t>(m_chance() & 0xFFU); });
        return bytes;
    };
    const auto wall = m_clock.wall();
    const auto makeId = [&] { return ids.next(static_cast<std::uint64_t>(wall.millisecondsSinceEpoch), random()); };
    const auto invented = tourShop(makeId, drivers::localDay(wall));
    ledger::CommitRequest request;
    for (const auto& record : invented.records) {
        const auto& row = records::rowOf(record);
        request.entries.push_back({makeId(), kKiosk, wall.millisecondsSinceEpoch, wall.utcOffsetMinutes, 0,
                                   std::string{row.kind}, row.version, records::bodyOf(record)});
    }
    request.persons = invented.names;
    if (const auto done = m_book->commit(request); !done) {
        miss(done.error().what);
    }
}

void TourKiosk::open() {
    if (!m_book) {
        return;
    }
    const auto random = [this] {
        ledger::UuidRandom bytes{};
        std::generate(bytes.begin(), bytes.end(), [this] { return static_cast<std::uint8_t>(m_chance() & 0xFFU); });
        return bytes;
    };
    m_writer = std::make_unique<ledger::Writer>(*m_book);
    const auto identity = shop::openShop(*m_book, m_clock.wall(), random, shop::starterMethods());
    if (!identity) {
        miss(identity.error().what);
    }
    const auto who = identity.value_or(shop::KioskIdentity{});
    m_desk =
        std::make_unique<shop::ProvingDesk>(shop::DeskNeeds{*m_book, *m_writer, m_clock, random, who.kiosk, who.dryer});
    m_presenter = std::make_unique<KioskPresenter>(*m_desk, *m_book, m_clock, m_model, m_folder.path().toStdString());
    m_presenter->start();
    m_desk->start();
    settle();
}

void TourKiosk::close() {
    m_presenter.reset();
    m_desk.reset();
    m_writer.reset();
    m_book.reset();
}

void TourKiosk::restart() {
    close();
    auto book = ledger::Book::open(m_folder.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                   ledger::OpenMode::readWrite);
    if (!book) {
        miss(book.error().what);
        return;
    }
    m_book = std::move(*book);
    m_scenario = {};
    open();
}

/// What the disk was asked is answered in order, and each answer may ask it again.
void TourKiosk::settle() {
    constexpr int kRounds = 4;
    for (int i = 0; i < kRounds; ++i) {
        bool answered = false;
        m_writer->post([this, &answered] {
            QMetaObject::invokeMethod(
                &m_context, [&answered] { answered = true; }, Qt::QueuedConnection);
        });
        while (!answered) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        }
    }
}

void TourKiosk::keepPictures() {
    const auto tests = records::testsSince(m_book->reader(), 0);
    for (const auto& test : tests ? *tests : std::vector<records::TestRow>{}) {
        for (const auto& picture : test.done.pictures) {
            const auto digest = ledger::fromHex(picture.sha256);
            const auto bytes = digest ? m_book->blob(*digest) : ledger::Result<ledger::Bytes>{};
            if (!bytes || bytes->empty()) {
                miss("no picture " + picture.sha256);
                continue;
            }
            m_tour.pictures[toQString(picture.sha256)] =
                QByteArray{reinterpret_cast<const char*>(bytes->data()), static_cast<qsizetype>(bytes->size())};
        }
    }
}

void TourKiosk::waitForPin(std::int64_t person) {
    const auto has = [&] {
        const auto people = records::peopleOnFile(m_book->reader());
        return people && std::any_of(people->begin(), people->end(),
                                     [&](const auto& one) { return one.number == person && !one.pinHash.empty(); });
    };
    for (int i = 0; i < kMostBreaths && !has(); ++i) {
        QThread::msleep(kBreath);
        settle();
    }
    if (!has()) {
        miss("person " + std::to_string(person) + " has no PIN");
    }
}

void TourKiosk::waitUntilGone(const std::string& id) {
    for (int i = 0; i < kMostBreaths && offers(id); ++i) {
        QThread::msleep(kBreath);
        settle();
    }
    if (offers(id)) {
        miss("still there: " + id);
    }
}

void TourKiosk::waitUntilWorkedOut() {
    const auto works = [this] { return m_model.sheet()->state().headHow.endsWith(QChar{0x2026}); };
    for (int i = 0; i < kMostBreaths && works(); ++i) {
        QThread::msleep(kBreath);
        settle();
    }
    if (works()) {
        miss("it is still being worked out");
    }
}

void TourKiosk::stop(const char* name) {
    m_last = QString::fromLatin1(name);
    m_tour.stops.push_back(Stop::of(m_model, m_last));
}

QStringList TourKiosk::offered() {
    const auto& frame = m_model.state();
    QStringList ids = frame.place == QLatin1String("dryer")   ? idsOf(m_model.dryer()->state())
                      : frame.place == QLatin1String("run")   ? idsOf(m_model.run()->state())
                      : frame.place == QLatin1String("strip") ? idsOf(m_model.strip()->state())
                                                              : idsOf(m_model.sheet()->state());
    for (const auto& place : frame.places) {
        ids.append(place.id);
    }
    for (const auto& cell : {frame.header.title, frame.header.crew, frame.header.probe, frame.header.due,
                             frame.header.hold, frame.header.clock}) {
        ids.append(cell.place);
    }
    ids.append(frame.refusal.help.id);
    ids.append(frame.refusal.leave.id);
    ids.removeAll(QString{});
    return ids;
}

bool TourKiosk::offers(const std::string& id) {
    const auto ids = offered();
    return std::any_of(ids.begin(), ids.end(), [&](const auto& one) { return matches(one, id); });
}

void TourKiosk::press(const std::string& id) {
    const auto ids = offered();
    const auto found = std::find_if(ids.begin(), ids.end(), [&](const auto& one) { return matches(one, id); });
    if (found == ids.end()) {
        miss("nothing to press is called " + id);
        return;
    }
    m_model.trigger(*found);
    settle();
}

void TourKiosk::pressIfThere(const std::string& id) {
    if (offers(id)) {
        press(id);
    }
}

void TourKiosk::pressRow(const std::string& idStart, const std::string& words) {
    auto rows = m_model.sheet()->state().list;
    for (const auto& block : m_model.sheet()->state().blocks) {
        rows.append(block.rows);
    }
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) {
        return row.id.startsWith(toQString(idStart)) && row.title.contains(toQString(words));
    });
    if (found == rows.end()) {
        miss("no row " + idStart + " with " + words);
        return;
    }
    m_model.trigger(found->id);
    settle();
}

void TourKiosk::pressDetail(const std::string& idStart, const std::string& words) {
    const auto rows = m_model.sheet()->state().list;
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) {
        return row.id.startsWith(toQString(idStart)) && row.value.isEmpty() &&
               (row.detail.contains(toQString(words)) || row.title.contains(toQString(words)));
    });
    if (found == rows.end()) {
        miss("no row " + idStart + " of " + words);
        return;
    }
    m_model.trigger(found->id);
    settle();
}

void TourKiosk::openPad(const std::string& field) {
    press("field." + field);
    if (m_model.typePad().id != toQString(field)) {
        miss("no pad opened for " + field);
    }
}

void TourKiosk::type(const std::string& field, const std::string& text) {
    openPad(field);
    m_model.padEntered(toQString(text));
    settle();
}

void TourKiosk::typeAll(const std::string& prefix, const std::vector<std::pair<const char*, const char*>>& fields) {
    for (const auto& [name, text] : fields) {
        type(prefix + name, text);
    }
}

void TourKiosk::scan(drivers::TicketKind kind, std::uint64_t number) {
    constexpr int kWidth = 4;
    scanText(drivers::encode(kind, number, kWidth));
}

void TourKiosk::scanText(const std::string& text) {
    m_model.closeScanEntry();
    m_presenter->scan(toQString(text));
    settle();
}

void TourKiosk::waitFor(const std::string& id) {
    for (int i = 0; i < kMostWakes && !offers(id); ++i) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
    if (!offers(id)) {
        miss("waited in vain for " + id);
    }
}

void TourKiosk::send(const shop::ProvingEvent& event) {
    m_desk->send(event);
}

void TourKiosk::second() {
    const auto begin = m_clock.now();
    QVector<drivers::Sample> samples;
    for (int i = 0; i < kSamplesPerSecond && m_plugged; ++i) {
        const auto at = begin + std::chrono::milliseconds{1000 * i / kSamplesPerSecond};
        const auto noise = drivers::noiseAt(m_scenario.seed, ++m_sampleNumber);
        const double celsius = m_bath ? *m_bath + 0.02 * noise
                                      : m_scenario.celsiusAt(at - m_scenarioBegin) + m_scenario.noiseCelsius * noise;
        samples.append({at, std::llround(celsius / kStep), drivers::SampleFlag::none});
    }
    if (!samples.isEmpty()) {
        m_desk->onSamples(QString::fromLatin1(kTourProbe), samples);
    }
    m_clock.advance(std::chrono::seconds{1});
    m_desk->send(shop::Tick{m_clock.now()});
}

void TourKiosk::pass(int seconds) {
    for (int i = 0; i < seconds; ++i) {
        second();
    }
    settle();
}

void TourKiosk::passUntilWriting() {
    for (int i = 0; i < kMostSeconds; ++i) {
        second();
        if (!m_desk->state().pending.empty()) {
            return;
        }
    }
    miss("no ride came to its end");
}

void TourKiosk::ride(double peakFahrenheit) {
    m_bath.reset();
    m_scenario = {};
    m_scenarioBegin = m_clock.now();
    m_scenario.rides.push_back({drivers::MonotonicTime{0}, (peakFahrenheit - 32.0) * 5.0 / 9.0, kSecondsInside});
}

void TourKiosk::bath(std::optional<double> celsius) {
    m_bath = celsius;
}

void TourKiosk::plugged(bool in) {
    m_plugged = in;
}

void TourKiosk::link(const char* probe, drivers::LinkState state, drivers::LinkFault fault) {
    m_desk->onLink(QString::fromLatin1(probe), {state, kTourCatalogueId, "004217", fault}, kStep, false);
    settle();
}

void TourKiosk::moveClock(std::chrono::microseconds span) {
    m_clock.advance(span);
    m_desk->send(shop::Tick{m_clock.now()});
    settle();
}

std::filesystem::path TourKiosk::exchange() const {
    return std::filesystem::path{m_folder.path().toStdString()} / "exchange";
}

} // namespace holdfast::kiosk::screens
