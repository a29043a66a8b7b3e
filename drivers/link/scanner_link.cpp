#include "drivers/link/scanner_link.hpp"

#include "drivers/link/port_keeper.hpp"
#include "drivers/link/status_teller.hpp"
#include "drivers/protocol/line_framer.hpp"

#include <QTimer>

#include <utility>

namespace holdfast::drivers {

namespace {

constexpr std::size_t kLongestLine = 4 * kLongestScan; // bytes; a character of UTF-8 has at most four
constexpr MonotonicTime kUnfinishedAfter = std::chrono::seconds{1};

} // namespace

/// What a ScannerLink does in its thread.
class ScannerLink::Work final : public QObject {
public:
    Work(ScannerLink& link, Address address, SerialSettings settings, const Clock& clock, PortOpener& opener)
        : QObject{&link}, m_link{link}, m_clock{clock}, m_port{std::move(address), settings, clock, opener} {
        m_port.setParent(this);
        m_unfinished.setParent(this);
        m_unfinished.setSingleShot(true);
        connect(&m_port, &PortKeeper::opened, this, &Work::opened);
        connect(&m_port, &PortKeeper::unplugged, this, [this] { become(LinkState::absent, LinkFault::unplugged); });
        connect(&m_port, &PortKeeper::received, this, &Work::received);
        connect(&m_port, &PortKeeper::failed, this, [this](LinkFault fault) {
            become(fault == LinkFault::portMissing ? LinkState::absent : LinkState::opening, fault);
        });
        connect(&m_unfinished, &QTimer::timeout, this, [this] {
            m_framer.reset(false);
            emit m_link.unreadable(ScanFault::unfinished);
        });
    }

    void start() {
        become(LinkState::opening, LinkFault::none);
        m_port.start();
    }

    void stop() {
        m_unfinished.stop();
        m_port.stop();
        tell(m_status.stop());
    }

private:
    void opened(const QString& path) {
        m_framer.reset(false);
        m_status.status.port = path.toStdString();
        become(LinkState::ready, LinkFault::none);
    }

    void received(const QByteArray& bytes) {
        for (const FramedLine& line : m_framer.feed({bytes.constData(), static_cast<std::size_t>(bytes.size())})) {
            const auto text = line ? checkScan(*line) : tl::unexpected(ScanFault::tooLong);
            if (text) {
                emit m_link.scanned(QString::fromStdString(*text));
            } else {
                emit m_link.unreadable(text.error());
            }
        }
        if (m_framer.isUnfinished()) {
            m_unfinished.start(realDelay(m_clock, kUnfinishedAfter));
        } else {
            m_unfinished.stop();
        }
    }

    void become(LinkState state, LinkFault cause) { tell(m_status.become(state, cause)); }

    void tell(const std::optional<LinkStatus>& status) {
        if (status) {
            emit m_link.statusChanged(*status);
        }
    }

    ScannerLink& m_link;
    const Clock& m_clock;
    PortKeeper m_port;
    LineFramer m_framer{"", kLongestLine};
    QTimer m_unfinished;
    StatusTeller m_status;
};

ScannerLink::ScannerLink(Address address, SerialSettings settings, const Clock& clock, PortOpener& opener)
    : m_work{new Work{*this, std::move(address), settings, clock, opener}} {
    qRegisterMetaType<ScanFault>();
    qRegisterMetaType<LinkStatus>();
}

ScannerLink::~ScannerLink() = default;

void ScannerLink::start() {
    m_work->start();
}

void ScannerLink::stop() {
    m_work->stop();
}

} // namespace holdfast::drivers
