#pragma once

#include "drivers/catalogue/catalogue.hpp"
#include "drivers/clock/clock.hpp"
#include "drivers/link/instrument_link.hpp"
#include "drivers/link/link_thread.hpp"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QTimer>

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::drivers {

/// One Qt application for the whole test executable: queued signals need its event loop.
inline void needApplication() {
    static int count = 1;
    static char name[] = "test";
    static char* arguments[] = {name, nullptr};
    static QCoreApplication application{count, arguments};
}

/// Runs the event loop until `condition` holds; false if it does not within `patience` of real time.
inline bool comes(const std::function<bool()>& condition, int patienceMilliseconds = 20'000) {
    QElapsedTimer timer;
    timer.start();
    while (!condition()) {
        if (timer.elapsed() > patienceMilliseconds) {
            return false;
        }
        QEventLoop loop;
        QTimer::singleShot(2, &loop, &QEventLoop::quit);
        loop.exec();
    }
    return true;
}

/// A link in its thread, and all it said.
class WatchedLink final {
public:
    WatchedLink(InstrumentDescription description, Address address, const Clock& clock, PortOpener& opener,
                std::string instrumentSerial = {})
        : m_thread{std::make_unique<InstrumentLink>(std::move(description), std::move(address), clock, opener,
                                                    std::move(instrumentSerial))} {
        needApplication();
        InstrumentLink& link = m_thread.link();
        QObject::connect(&link, &InstrumentLink::sampled, &m_here, [this](const QVector<Sample>& batch) {
            samples.insert(samples.end(), batch.begin(), batch.end());
        });
        QObject::connect(&link, &InstrumentLink::statusChanged, &m_here,
                         [this](const LinkStatus& status) { statuses.push_back(status); });
        QObject::connect(&link, &InstrumentLink::wentQuiet, &m_here, [this] { ++quiets; });
        m_thread.start();
    }

    [[nodiscard]] InstrumentLink& link() const { return m_thread.link(); }
    [[nodiscard]] bool is(LinkState state) const { return !statuses.empty() && statuses.back().state == state; }
    [[nodiscard]] bool is(LinkState state, LinkFault cause) const {
        return is(state) && statuses.back().cause == cause;
    }
    [[nodiscard]] std::size_t count(LinkState state) const {
        std::size_t found = 0;
        for (const LinkStatus& status : statuses) {
            found += status.state == state ? 1U : 0U;
        }
        return found;
    }
    [[nodiscard]] bool stampsRise() const {
        for (std::size_t i = 1; i < samples.size(); ++i) {
            if (samples[i].at <= samples[i - 1].at) {
                return false;
            }
        }
        return true;
    }

    std::vector<Sample> samples;
    std::vector<LinkStatus> statuses;
    int quiets = 0;

private:
    QObject m_here;
    LinkThread<InstrumentLink> m_thread; ///< last: no signal comes after the lists are gone
};

} // namespace holdfast::drivers
