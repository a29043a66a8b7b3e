#include "tests/drivers/link/link_bench.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <mutex>
#include <string>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

namespace {

/// A device that a test makes speak or fail, whatever thread it lives in.
class FakeDevice final : public QIODevice {
public:
    FakeDevice() { open(QIODevice::ReadWrite | QIODevice::Unbuffered); }
    void say(const QByteArray& bytes) {
        m_bytes += bytes;
        emit readyRead();
    }
    [[nodiscard]] bool isSequential() const override { return true; }
    [[nodiscard]] qint64 bytesAvailable() const override { return m_bytes.size() + QIODevice::bytesAvailable(); }

protected:
    qint64 readData(char* data, qint64 most) override {
        const qint64 count = std::min<qint64>(most, m_bytes.size());
        std::copy_n(m_bytes.constData(), count, data);
        m_bytes.remove(0, static_cast<qsizetype>(count));
        return count;
    }
    qint64 writeData(const char*, qint64) override { return -1; }

private:
    QByteArray m_bytes;
};

class FakeOpener final : public PortOpener {
public:
    tl::expected<OpenPort, PortFailure> open(const Address&, const SerialSettings&) override {
        if (fault != LinkFault::none) {
            ++tries;
            return tl::unexpected(PortFailure{fault, "a fake fault"});
        }
        auto device = std::make_unique<FakeDevice>();
        last = device.get();
        ++tries; // after `last`: a test waits for the one to use the other
        return OpenPort{std::move(device), "fake"};
    }
    std::atomic<int> tries{0};
    std::atomic<LinkFault> fault{LinkFault::none};
    std::atomic<FakeDevice*> last{nullptr};
};

/// Runs in the link's thread.
void inThread(FakeOpener& opener, const std::function<void(FakeDevice&)>& act) {
    FakeDevice* device = opener.last;
    QMetaObject::invokeMethod(
        device, [device, act] { act(*device); }, Qt::BlockingQueuedConnection);
}

} // namespace

TEST_CASE("lines that arrive in one read get stamps of their own", "[drivers][link]") {
    ManualClock clock;
    FakeOpener opener;
    WatchedLink link{*findInstrument("line-type-k-celsius"), Address::atPath("x"), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::identifying); }));
    inThread(opener, [](FakeDevice& device) { device.say("half a li"); });
    clock.advance(1s);
    inThread(opener, [](FakeDevice& device) {
        device.say("ne\r\n+0024.0 C SN1\r\n+0024.1 C SN1\r\n+0024.2 C SN1\r\n+0024.3 C SN1\r\n+0024.4 C SN1\r\n");
    });
    REQUIRE(comes([&] { return link.samples.size() == 5; }));
    for (std::size_t i = 0; i < 5; ++i) {
        CHECK(link.samples[i].at == static_cast<int>(i + 1) * 200ms); // a second, spread evenly
        CHECK(link.samples[i].counts == static_cast<int>(240 + i));
    }
}

TEST_CASE("a fault to open is told once for each cause, however often it is tried", "[drivers][link]") {
    const ScaledClock clock{100.0, {}};
    FakeOpener opener;
    opener.fault = LinkFault::permission;
    WatchedLink link{*findInstrument("line-type-k-celsius"), Address::atPath("x"), clock, opener};
    REQUIRE(comes([&] { return opener.tries > 20; }));
    REQUIRE(comes([&] { return link.is(LinkState::opening, LinkFault::permission); }));
    CHECK(link.statuses.size() <= 2); // opening, and why not
    opener.fault = LinkFault::none;
    REQUIRE(comes([&] { return link.is(LinkState::identifying, LinkFault::none); }));
}

TEST_CASE("a port that closes in its reader's hands is let go without a crash", "[drivers][link]") {
    const ScaledClock clock{100.0, {}};
    FakeOpener opener;
    WatchedLink link{*findInstrument("line-type-k-celsius"), Address::atPath("x"), clock, opener};
    for (int round = 0; round < 20; ++round) {
        REQUIRE(comes([&] { return link.is(LinkState::identifying) || link.is(LinkState::lost); }));
        const int before = opener.tries;
        inThread(opener, [](FakeDevice& device) {
            QObject::connect(&device, &QIODevice::readyRead, &device, [&device] { device.close(); });
            device.say("\r\n+0024.0 C SN1\r\n");
        });
        REQUIRE(comes([&] { return opener.tries > before; }));
    }
    REQUIRE(comes([&] { return link.samples.size() == 20; }));
    CHECK(link.count(LinkState::ready) == 20);
    CHECK(link.stampsRise());
}

TEST_CASE("a query that cannot be written closes the port", "[drivers][link]") {
    const ScaledClock clock{100.0, {}};
    FakeOpener opener; // its devices refuse to write
    WatchedLink link{*findInstrument("scpi-thermometer"), Address::atPath("x"), clock, opener};
    REQUIRE(comes([&] { return opener.tries >= 5; }));
    CHECK(link.count(LinkState::ready) == 0);
    CHECK(link.samples.empty());
}
