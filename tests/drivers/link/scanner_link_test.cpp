#include "drivers/link/scanner_link.hpp"

#include "drivers/link/link_thread.hpp"
#include "drivers/simulated/simulated_scanner.hpp"
#include "tests/drivers/link/link_bench.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <string_view>
#include <vector>

using namespace holdfast::drivers;

namespace {

/// A scanner's link in its thread, and all it said.
class WatchedScanner final {
public:
    WatchedScanner(const std::string& path, const Clock& clock, PortOpener& opener)
        : m_thread{std::make_unique<ScannerLink>(Address::atPath(path), SerialSettings{}, clock, opener)} {
        needApplication();
        ScannerLink& link = m_thread.link();
        QObject::connect(&link, &ScannerLink::scanned, &m_here,
                         [this](const QString& text) { scans.push_back(text.toStdString()); });
        QObject::connect(&link, &ScannerLink::unreadable, &m_here,
                         [this](ScanFault fault) { faults.push_back(fault); });
        QObject::connect(&link, &ScannerLink::statusChanged, &m_here,
                         [this](const LinkStatus& status) { statuses.push_back(status); });
        m_thread.start();
    }
    [[nodiscard]] bool is(LinkState state) const { return !statuses.empty() && statuses.back().state == state; }

    std::vector<std::string> scans;
    std::vector<ScanFault> faults;
    std::vector<LinkStatus> statuses;

private:
    QObject m_here;
    LinkThread<ScannerLink> m_thread;
};

} // namespace

TEST_CASE("what is scanned arrives, and what is no scan is named", "[drivers][scanner]") {
    const ScaledClock clock{20.0, {}};
    SystemPortOpener opener;
    SimulatedScanner scanner;
    WatchedScanner link{scanner.path(), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    scanner.scan("R0471C");
    scanner.scan("W0A5");
    REQUIRE(comes([&] { return link.scans.size() == 2; }));
    CHECK(link.scans == std::vector<std::string>{"R0471C", "W0A5"});
    scanner.scan("a\x1b[2J");
    REQUIRE(comes([&] { return link.faults.size() == 1; }));
    CHECK(link.faults[0] == ScanFault::controlSign);
    scanner.send("R0471C"); // a scanner that was not set to send an end of line
    REQUIRE(comes([&] { return link.faults.size() == 2; }));
    CHECK(link.faults[1] == ScanFault::unfinished);
    scanner.scan("R0471C");
    REQUIRE(comes([&] { return link.scans.size() == 3; }));
}

TEST_CASE("what is longer than any scan and has no end swallows no scan after it", "[drivers][scanner]") {
    const ScaledClock clock{4.0, {}}; // slow: a stall while the bytes come must not pass for their end
    SystemPortOpener opener;
    SimulatedScanner scanner;
    WatchedScanner link{scanner.path(), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    const std::string endless(5 * kLongestScan, 'R'); // over the 4 bytes that a character may have
    std::string_view left = endless;
    REQUIRE(comes([&] {
        left.remove_prefix(scanner.offer(left));
        return left.empty();
    }));
    REQUIRE(comes([&] { return !link.faults.empty(); }));
    CHECK(link.faults.back() == ScanFault::unfinished);
    scanner.scan("R0471C");
    REQUIRE(comes([&] { return !link.scans.empty(); }));
    CHECK(link.scans == std::vector<std::string>{"R0471C"});
}

TEST_CASE("a scanner that is pulled out is lost once and comes back", "[drivers][scanner]") {
    const ScaledClock clock{20.0, {}};
    SystemPortOpener opener;
    SimulatedScanner scanner;
    WatchedScanner link{scanner.path(), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    const std::size_t told = link.statuses.size();
    scanner.setPlugged(false);
    REQUIRE(comes([&] { return link.is(LinkState::lost); }));
    const MonotonicTime since = clock.now();
    REQUIRE(comes([&] { return clock.now() - since > std::chrono::seconds{5}; }));
    CHECK(link.statuses.size() == told + 1);
    scanner.setPlugged(true);
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    scanner.scan("R0471C");
    REQUIRE(comes([&] { return link.scans.size() == 1; }));
}
