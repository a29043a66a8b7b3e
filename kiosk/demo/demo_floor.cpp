#include "kiosk/demo/demo_floor.hpp"

#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/records/queries.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::kiosk::demo {
namespace {

using analytics::AuthoredTemperature;

constexpr int kTicketWidth = 4;
constexpr double kProbeStep = 0.1; ///< °C a count
constexpr int kMostRounds = 40;    ///< of asking the disk, far more than any step needs

AuthoredTemperature fahrenheit(double value) {
    return {value, analytics::TemperatureUnit::fahrenheit};
}

ledger::Failure notDone(const char* what) {
    return {ledger::FailureCode::inputOutput, std::string{"the demo's desk did not "} + what};
}

bool isOfTheBelt(const records::Record& record) {
    return std::holds_alternative<records::RunFinished>(record) ||
           std::holds_alternative<records::RunReplanned>(record) ||
           std::holds_alternative<records::LotClosed>(record) ||
           std::holds_alternative<records::DecisionSigned>(record);
}

} // namespace

ledger::Result<void> DemoFloor::play(DemoDryer dryer, const DemoAct& act) {
    if (auto opened = open(dryer); !opened) {
        return opened;
    }
    m_desk->send(shop::Tick{m_clock.now()});
    std::visit(*this, act);
    settle();
    if (!isBusy()) {
        return {};
    }
    const auto& pending = m_desk->state().pending;
    return tl::unexpected(!pending.empty() && pending.front().failure ? *pending.front().failure
                                                                      : notDone("come to rest"));
}

void DemoFloor::newDay() {
    for (auto& [dryer, desk] : m_desks) {
        m_desk = desk.get();
        m_desk->reload();
        settle();
    }
}

void DemoFloor::tell(const std::vector<records::Record>& written) {
    if (std::none_of(written.begin(), written.end(), isOfTheBelt)) {
        return;
    }
    for (auto& [dryer, desk] : m_desks) {
        m_desk = desk.get();
        m_desk->send(shop::Tick{m_clock.now()});
        m_desk->send(shop::KeptElsewhere{written});
        settle();
    }
}

ledger::Result<void> DemoFloor::open(DemoDryer dryer) {
    m_dryer = dryer;
    auto& desk = m_desks[dryer];
    m_desk = desk.get();
    if (m_desk != nullptr) {
        return {};
    }
    desk = std::make_unique<shop::ProvingDesk>(
        shop::DeskNeeds{m_book, m_writer, m_clock, [this] { return m_pen.chance(); }, kDemoKiosk, dryerId()});
    m_desk = desk.get();
    m_desk->start();
    settle();
    if (m_desk->state().instruments.empty()) {
        return tl::unexpected(notDone("load its instruments"));
    }
    m_desk->onLink(QString::fromLatin1(probeOf(dryer)),
                   {drivers::LinkState::ready, kDemoCatalogueId, kDemoSerialNumber, drivers::LinkFault::none},
                   kProbeStep, false);
    return {};
}

void DemoFloor::operator()(const ScansRun& run) {
    scan(drivers::TicketKind::run, run.run);
}

void DemoFloor::operator()(const ScansAlso& also) {
    m_desk->send(shop::ActionPressed{shop::ActionCard::alsoOnBelt});
    scan(drivers::TicketKind::run, also.run);
}

void DemoFloor::operator()(const ScansCard& card) {
    scan(drivers::TicketKind::window, card.number);
}

void DemoFloor::operator()(const Claims& claim) {
    const auto& unclaimed = m_desk->state().floor.unclaimed;
    if (!unclaimed.empty()) {
        m_desk->send(shop::ClaimPressed{unclaimed.front().id});
    }
    scan(drivers::TicketKind::run, claim.run);
}

void DemoFloor::operator()(const Rides& ride) {
    if (ride.retake) {
        m_desk->send(shop::RetakePressed{});
    }
    if (ride.reason) {
        m_desk->send(shop::ReasonChosen{*ride.reason});
    }
    if (ride.position) {
        m_desk->send(shop::PositionTouched{*ride.position});
    }
    m_desk->send(shop::PlacementChosen{ride.placement});
    const auto wall = m_clock.wall();
    const auto seed = static_cast<std::uint64_t>(m_clock.now().count());
    const auto simulated = samplesOf(shapeOf(ride), seed, m_clock.now());
    m_desk->onSamples(QString::fromLatin1(probeOf(m_dryer)), simulated.samples);
    m_clock.moveTo(wall, simulated.length);
    m_desk->send(shop::Tick{m_clock.now()});
}

void DemoFloor::operator()(const RidesIfDue& ride) {
    const auto& state = m_desk->state();
    const auto& runs = state.watch.runs;
    const bool due = std::any_of(runs.begin(), runs.end(), [&](const shop::RunWatch& one) {
        return one.run->onFile.plan.number == ride.run && one.due && one.due->reading.now;
    });
    const auto& window = shop::shownWindow(state);
    const bool closed = window && window->state == analytics::WindowState::closed;
    if (due && state.run && !closed && !state.floor.setUp) {
        (*this)(Rides{});
    }
}

void DemoFloor::operator()(const KeepsStrip& strip) {
    scan(drivers::TicketKind::instrument, strip.label);
    settle();
    m_desk->send(shop::StripStepTouched{strip.lastDark});
    if (strip.nextUnsure) {
        m_desk->send(shop::StripUnsureTouched{});
    }
    if (strip.usedBefore) {
        m_desk->send(shop::StripUsedTouched{});
    }
    m_desk->send(shop::StripKept{});
}

void DemoFloor::operator()(const TypesSpot& spot) {
    m_desk->send(shop::HandOpened{spotName()});
    m_desk->send(shop::HandBeforeTyped{fahrenheit(spot.beforeFahrenheit)});
    m_desk->send(shop::HandTyped{fahrenheit(spot.heldFahrenheit)});
    m_desk->send(shop::HandKept{});
}

void DemoFloor::operator()(const TypesGun& gun) {
    m_desk->send(shop::HandOpened{gun.instrument});
    m_desk->send(
        shop::ShotPlaceChosen{gun.inTunnel ? analytics::ShotPlace::inTunnelHottest : analytics::ShotPlace::outfeed});
    m_desk->send(shop::HandTyped{fahrenheit(gun.surfaceFahrenheit)});
    m_desk->send(shop::HandKept{});
}

void DemoFloor::operator()(const NotesFlash& flash) {
    m_desk->send(shop::FlashOpened{spotName()});
    m_desk->send(shop::FlashLayerChosen{flash.layer});
    m_desk->send(shop::FlashTyped{fahrenheit(flash.peakFahrenheit)});
    m_desk->send(shop::FlashKept{});
}

void DemoFloor::operator()(const Acts& act) {
    shop::ActionPressed pressed{act.card, act.pieces, act.beltMetresPerMinute, {}};
    if (act.setPointFahrenheit) {
        pressed.setPoint = fahrenheit(*act.setPointFahrenheit);
    }
    m_desk->send(pressed);
}

void DemoFloor::scan(drivers::TicketKind kind, std::int64_t number) {
    m_desk->send(shop::ScannedText{drivers::encode(kind, static_cast<std::uint64_t>(number), kTicketWidth)});
}

/// Until the desk waits for nothing; then once more, for what the book says of the floor by now.
void DemoFloor::settle() {
    for (int round = 0; round < kMostRounds; ++round) {
        fence();
        if (!isBusy()) {
            fence();
            return;
        }
    }
}

/// Whatever was asked of the disk before is done, and its answers have come.
void DemoFloor::fence() {
    bool passed = false;
    m_writer.post([this, &passed] {
        QMetaObject::invokeMethod(
            m_desk, [&passed] { passed = true; }, Qt::QueuedConnection);
    });
    while (!passed) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
}

bool DemoFloor::isBusy() const {
    const auto& state = m_desk->state();
    return state.lookingUp || state.lookingUpStrip || state.claim || !state.pending.empty();
}

std::string DemoFloor::dryerId() const {
    const auto all = records::dryers(m_book.reader());
    for (const auto& one : all ? *all : std::vector<records::DryerDescribed>{}) {
        if (one.name == nameOf(m_dryer)) {
            return one.dryer;
        }
    }
    return {};
}

std::string DemoFloor::spotName() const {
    for (const auto& one : m_desk->state().instruments) {
        if (one.kind == analytics::InstrumentKind::spot) {
            return one.name;
        }
    }
    return {};
}

RideShape DemoFloor::shapeOf(const Rides& ride) const {
    const auto& window = shop::shownWindow(m_desk->state());
    auto shape = window ? fittingRide(*window) : RideShape{};
    shape.peakFahrenheit = ride.peakFahrenheit.value_or(shape.peakFahrenheit);
    shape.silentSeconds = ride.silentSeconds;
    return shape;
}

} // namespace holdfast::kiosk::demo
