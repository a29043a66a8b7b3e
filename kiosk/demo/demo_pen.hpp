#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/uuid.hpp"
#include "kiosk/records/kinds.hpp"

#include <functional>
#include <random>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

inline constexpr const char* kDemoKiosk = "019ac000-0000-7000-8000-000000000001";

/// Clock that moves only when it is told to, and whose timers therefore never fall due.
class DemoClock final : public drivers::Clock {
public:
    [[nodiscard]] drivers::MonotonicTime now() const noexcept override { return m_clock.now(); }
    [[nodiscard]] drivers::WallTime wall() const override { return m_clock.wall(); }
    [[nodiscard]] double rate() const noexcept override { return 1e-6; }
    /// `passed` since the last time, but the wall says `wall`.
    void moveTo(drivers::WallTime wall, drivers::MonotonicTime passed) noexcept {
        m_clock.advance(passed);
        m_clock.setWall(wall);
    }

private:
    drivers::ManualClock m_clock;
};

/// Writes entries at the demo's time with ids that are the same every time. One thread.
class DemoPen final {
public:
    DemoPen(ledger::Book& book, const drivers::Clock& clock) : m_book{book}, m_clock{clock} {}

    [[nodiscard]] ledger::UuidRandom chance();
    [[nodiscard]] std::string newId();
    /// In one commit. `written` is told of it afterwards.
    [[nodiscard]] ledger::Result<void> write(const std::vector<records::Record>& list,
                                             const std::vector<ledger::PersonName>& names = {});
    /// The same, signed by somebody, the entries with ids that are known before (those without get new ones).
    [[nodiscard]] ledger::Result<void> writeSigned(std::int64_t person, const std::vector<records::Record>& list,
                                                   const std::vector<std::string>& ids = {},
                                                   std::vector<ledger::BlobDraft> pictures = {});
    std::function<void(const std::vector<records::Record>&)> written{};
    /// All that were written so far.
    [[nodiscard]] const std::vector<ledger::BlobDraft>& pictures() const noexcept { return m_pictures; }

private:
    [[nodiscard]] ledger::Result<void> commit(std::int64_t person, const std::vector<records::Record>& list,
                                              const std::vector<std::string>& ids,
                                              const std::vector<ledger::PersonName>& names,
                                              std::vector<ledger::BlobDraft> pictures);

    static constexpr std::uint64_t kSeed = 20411;

    ledger::Book& m_book;
    const drivers::Clock& m_clock;
    ledger::UuidSequence m_ids;
    std::mt19937_64 m_engine{kSeed};
    std::vector<ledger::BlobDraft> m_pictures;
};

} // namespace holdfast::kiosk::demo
