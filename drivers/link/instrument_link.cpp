#include "drivers/link/instrument_link.hpp"

#include "drivers/link/conversation.hpp"
#include "drivers/link/port_keeper.hpp"
#include "drivers/link/stamper.hpp"
#include "drivers/link/status_teller.hpp"

#include <QTimer>

#include <algorithm>
#include <utility>

namespace holdfast::drivers {

namespace {

constexpr MonotonicTime kReopenAfter = std::chrono::seconds{10}; // longer than an instrument takes to start
constexpr MonotonicTime kLookEvery = std::chrono::milliseconds{250};

/// Faults that only an answer can cure; opening the port again does not.
bool isAboutAnswers(LinkFault fault) noexcept {
    return fault == LinkFault::wrongDevice || fault == LinkFault::silent || fault == LinkFault::garbled ||
           fault == LinkFault::wrongBaud || fault == LinkFault::wrongUnit;
}

} // namespace

/// What an InstrumentLink does in its thread.
class InstrumentLink::Work final : public QObject {
public:
    Work(InstrumentLink& link, InstrumentDescription description, Address address, const Clock& clock,
         PortOpener& opener, const std::string& instrumentSerial);
    void start();
    void stop();

private:
    void opened(const QString& path);
    void unplugged();
    void received(const QByteArray& bytes);
    void look();
    void follow(const ConversationStep& step);
    void hand(const std::vector<LineReading>& readings);
    void judgeAnswerer();
    void judgeSilence();
    [[nodiscard]] LinkFault faultNow(bool isLong) const;
    void become(LinkState state, LinkFault cause);
    void tell(const std::optional<LinkStatus>& status);

    InstrumentLink& m_link;
    InstrumentDescription m_description;
    const Clock& m_clock;
    std::unique_ptr<Conversation> m_conversation;
    Stamper m_stamper;
    PortKeeper m_port;
    QTimer m_look;
    StatusTeller m_status;
    bool m_isOpen = false;
    MonotonicTime m_openedAt{0};
    MonotonicTime m_lastGood{0};
};

InstrumentLink::Work::Work(InstrumentLink& link, InstrumentDescription description, Address address, const Clock& clock,
                           PortOpener& opener, const std::string& instrumentSerial)
    : QObject{&link}, m_link{link}, m_description{std::move(description)}, m_clock{clock},
      m_conversation{makeConversation(m_description, instrumentSerial)}, m_stamper{m_description.interval},
      m_port{std::move(address), m_description.serial, clock, opener} {
    m_port.setParent(this); // both go to the link's thread
    m_look.setParent(this);
    m_look.setTimerType(Qt::PreciseTimer);
    m_status.status.instrument = m_description.id;
    connect(&m_port, &PortKeeper::opened, this, &Work::opened);
    connect(&m_port, &PortKeeper::unplugged, this, &Work::unplugged);
    connect(&m_port, &PortKeeper::received, this, &Work::received);
    connect(&m_port, &PortKeeper::failed, this, [this](LinkFault fault) {
        become(fault == LinkFault::portMissing ? LinkState::absent : LinkState::opening, fault);
    });
    connect(&m_look, &QTimer::timeout, this, &Work::look);
}

void InstrumentLink::Work::start() {
    const MonotonicTime period = m_description.isScpi()
                                     ? std::min<MonotonicTime>(MonotonicTime{m_description.interval} / 4, kLookEvery)
                                     : kLookEvery;
    become(LinkState::opening, LinkFault::none);
    m_look.start(realDelay(m_clock, period));
    m_port.start();
}

void InstrumentLink::Work::stop() {
    m_look.stop();
    m_port.stop();
    m_isOpen = false;
    tell(m_status.stop());
}

void InstrumentLink::Work::opened(const QString& path) {
    const MonotonicTime now = m_clock.now();
    m_isOpen = true;
    m_openedAt = now;
    m_stamper.opened(now);
    m_status.status.port = path.toStdString();
    become(LinkState::identifying, isAboutAnswers(m_status.status.cause) ? m_status.status.cause : LinkFault::none);
    follow(m_conversation->opened(now));
}

void InstrumentLink::Work::unplugged() {
    m_isOpen = false;
    become(LinkState::absent, LinkFault::unplugged);
}

void InstrumentLink::Work::received(const QByteArray& bytes) {
    follow(m_conversation->received({bytes.constData(), static_cast<std::size_t>(bytes.size())}, m_clock.now()));
}

void InstrumentLink::Work::look() {
    if (!m_isOpen) {
        return;
    }
    follow(m_conversation->timePassed(m_clock.now()));
    if (m_isOpen) {
        judgeSilence();
    }
}

void InstrumentLink::Work::follow(const ConversationStep& step) {
    if (!step.toSend.empty()) {
        m_port.send(QByteArray::fromStdString(step.toSend));
    }
    for (const ScpiError& error : step.errors) {
        emit m_link.instrumentError(error.number, QString::fromStdString(error.text));
    }
    judgeAnswerer();
    hand(step.readings);
}

void InstrumentLink::Work::judgeAnswerer() {
    if (m_conversation->answerer() == Answerer::wrong && !m_status.isReady()) {
        m_status.status.serialNumber = m_conversation->serialNumber();
        m_status.status.identity = m_conversation->identity();
        become(LinkState::identifying, LinkFault::wrongDevice);
    }
}

void InstrumentLink::Work::hand(const std::vector<LineReading>& readings) {
    if (readings.empty()) {
        return;
    }
    const auto stamps = m_stamper.stamps(readings.size(), m_clock.now());
    QVector<Sample> samples;
    samples.reserve(static_cast<qsizetype>(readings.size()));
    bool anyGood = false;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        samples.push_back({stamps[i], readings[i].counts, readings[i].flags});
        if (!has(readings[i].flags, SampleFlag::unreadable)) {
            anyGood = true;
            m_lastGood = stamps[i];
        }
    }
    if (anyGood && m_isOpen) {
        m_status.status.serialNumber = m_conversation->serialNumber();
        m_status.status.identity = m_conversation->identity();
        become(LinkState::ready, LinkFault::none);
    }
    emit m_link.sampled(samples);
}

void InstrumentLink::Work::judgeSilence() {
    const MonotonicTime now = m_clock.now();
    const MonotonicTime since = std::max(m_openedAt, m_lastGood);
    const bool isLong = now - since > quietLimit(m_description);
    if (m_status.isReady()) {
        if (isLong) {
            become(LinkState::lost, faultNow(true));
            emit m_link.wentQuiet(m_lastGood.count());
        }
        return;
    }
    if (const LinkFault fault = faultNow(isLong); fault != LinkFault::none) {
        become(LinkState::identifying, fault);
    }
    if (now - since > kReopenAfter) {
        m_isOpen = false;
        m_port.reopen();
    }
}

LinkFault InstrumentLink::Work::faultNow(bool isLong) const {
    if (m_conversation->answerer() == Answerer::wrong) {
        return LinkFault::wrongDevice;
    }
    switch (m_conversation->look()) {
    case StreamLook::noise:
        return LinkFault::wrongBaud;
    case StreamLook::garbled:
        return LinkFault::garbled;
    case StreamLook::otherUnit:
        return LinkFault::wrongUnit;
    case StreamLook::quiet:
    case StreamLook::text:
        break;
    }
    return isLong ? LinkFault::silent : LinkFault::none;
}

void InstrumentLink::Work::become(LinkState state, LinkFault cause) {
    tell(m_status.become(state, cause));
}

void InstrumentLink::Work::tell(const std::optional<LinkStatus>& status) {
    if (status) {
        emit m_link.statusChanged(*status);
    }
}

InstrumentLink::InstrumentLink(InstrumentDescription description, Address address, const Clock& clock,
                               PortOpener& opener, std::string instrumentSerial) {
    qRegisterMetaType<QVector<Sample>>();
    qRegisterMetaType<LinkStatus>();
    m_work = new Work(*this, std::move(description), std::move(address), clock, opener, instrumentSerial);
}

InstrumentLink::~InstrumentLink() = default;

void InstrumentLink::start() {
    m_work->start();
}

void InstrumentLink::stop() {
    m_work->stop();
}

MonotonicTime InstrumentLink::quietLimit(const InstrumentDescription& description) noexcept {
    constexpr MonotonicTime shortest = std::chrono::seconds{2};
    constexpr MonotonicTime longest = std::chrono::seconds{5};
    return std::clamp<MonotonicTime>(4 * MonotonicTime{description.interval}, shortest, longest);
}

} // namespace holdfast::drivers
