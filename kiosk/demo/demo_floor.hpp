#pragma once

#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/demo/demo_pen.hpp"
#include "kiosk/demo/demo_ride.hpp"
#include "kiosk/demo/demo_steps.hpp"
#include "kiosk/shop/proving/proving_desk.hpp"

#include <map>
#include <memory>

namespace holdfast::kiosk::demo {

/// The kiosks at the dryers: a proving desk at each dryer that is used, fed with scans, presses and
/// simulated samples. Needs a QCoreApplication. Everything asked of a desk is on the disk when a step returns.
class DemoFloor final {
public:
    /// All must outlive the floor.
    DemoFloor(ledger::Book& book, ledger::Writer& writer, DemoPen& pen, DemoClock& clock)
        : m_book{book}, m_writer{writer}, m_pen{pen}, m_clock{clock} {}

    /// The kiosk there is switched off, and on again when it is next used: then nothing is announced.
    void switchOff(DemoDryer dryer) { m_desks.erase(dryer); }
    /// Instruments are as they stand on the clock's new day.
    void newDay();
    [[nodiscard]] ledger::Result<void> play(DemoDryer dryer, const DemoAct& act);
    /// Of what is written away from the dryers and changes what is on the belts.
    void tell(const std::vector<records::Record>& written);

    // what a step does at the desk that play() chose
    void operator()(const ScansRun& scan);
    void operator()(const ScansAlso& scan);
    void operator()(const ScansCard& scan);
    void operator()(const Claims& claim);
    void operator()(const Rides& ride);
    void operator()(const RidesIfDue& ride);
    void operator()(const KeepsStrip& strip);
    void operator()(const TypesSpot& spot);
    void operator()(const TypesGun& gun);
    void operator()(const NotesFlash& flash);
    void operator()(const Acts& act);
    template <class Other>
    void operator()(const Other&) {} ///< not done at a dryer

private:
    [[nodiscard]] ledger::Result<void> open(DemoDryer dryer);
    void scan(drivers::TicketKind kind, std::int64_t number);
    void settle();
    void fence();
    [[nodiscard]] bool isBusy() const;
    [[nodiscard]] std::string dryerId() const;
    [[nodiscard]] std::string spotName() const;
    [[nodiscard]] RideShape shapeOf(const Rides& ride) const;

    ledger::Book& m_book;
    ledger::Writer& m_writer;
    DemoPen& m_pen;
    DemoClock& m_clock;
    std::map<DemoDryer, std::unique_ptr<shop::ProvingDesk>> m_desks;
    DemoDryer m_dryer = DemoDryer::north;
    shop::ProvingDesk* m_desk = nullptr; ///< at m_dryer
};

} // namespace holdfast::kiosk::demo
