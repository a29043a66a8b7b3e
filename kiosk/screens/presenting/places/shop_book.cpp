#include "kiosk/screens/presenting/places/shop_book.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <chrono>
#include <cstdio>

namespace holdfast::kiosk::screens {
namespace {

/// "holdfast-book-20260301-1402.sqlite", in the shop's own time.
std::string copyName(const drivers::WallTime& wall) {
    const std::chrono::year_month_day day{drivers::localDay(wall)};
    char text[80];
    const auto clock = wording::clockText(wall.millisecondsSinceEpoch, wall.utcOffsetMinutes);
    std::snprintf(text, sizeof text, "holdfast-book-%04d%02u%02u-%.2s%.2s.sqlite", static_cast<int>(day.year()),
                  static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()), clock.c_str(),
                  clock.c_str() + 3);
    return text;
}

} // namespace

void ShopBook::reload() {
    tick();
    const auto shop = records::shop(needs().book->reader());
    const auto head = needs().book->head();
    if (!shop || !head) {
        tell(!shop ? shop.error() : head.error());
        return;
    }
    m_shop = *shop ? (*shop)->shop : std::string{};
    m_kiosk = *shop ? (*shop)->kiosk : std::string{};
    m_entries = head->sequence;
}

void ShopBook::addTo(SheetPageState& page) const {
    page.blocks.append(rowsBlock(SheetKinds::Facts,
                                 {factRow(text("shop.book.shop"), m_shop), factRow(text("shop.book.kiosk"), m_kiosk),
                                  factRow(text("shop.book.entries"), std::to_string(m_entries))}));
    if (m_work != Work::none) {
        page.blocks.append(textBlock(SheetKinds::Lead,
                                     text(m_work == Work::checking ? "shop.book.checking" : "shop.book.backing-up")));
    }
    addResults(page);
    page.blocks.append(textBlock(SheetKinds::Note, text("shop.book.backup-note")));
    if (m_work == Work::none) {
        page.actions = {pressOf("shop.book.check", text("shop.book.check")),
                        pressOf("shop.book.backup", text("shop.book.backup"))};
    }
}

void ShopBook::addResults(SheetPageState& page) const {
    if (m_report) {
        auto kind = SheetKinds::Lead;
        for (const auto& line : wording::sentences(*m_report, speech())) {
            page.blocks.append(textBlock(kind, line));
            kind = SheetKinds::Sentence;
        }
    }
    if (!m_copied.empty()) {
        page.blocks.append(
            textBlock(SheetKinds::Lead,
                      text("shop.book.backed-up", {{"file", m_copied}, {"folder", needs().exchange.string()}})));
    }
}

bool ShopBook::act(const std::string& id) {
    if (id == "shop.book.check" && m_work == Work::none) {
        startCheck();
    } else if (id == "shop.book.backup" && m_work == Work::none) {
        startCopy();
    } else {
        return false;
    }
    return true;
}

void ShopBook::startCheck() {
    m_report.reset();
    m_work = Work::checking;
    m_done = false;
    m_worker = std::jthread{[this, book = needs().book](const std::stop_token& stop) {
        m_checkResult = book->check(stop);
        m_done = true;
    }};
}

void ShopBook::startCopy() {
    m_copied.clear();
    m_copying = copyName(needs().clock->wall());
    m_work = Work::copying;
    m_done = false;
    m_worker = std::jthread{[this, book = needs().book, folder = needs().exchange, name = m_copying] {
        std::error_code fault;
        std::filesystem::create_directories(folder, fault);
        m_copyResult = fault ? ledger::Result<void>{tl::unexpected(
                                   ledger::failureFromErrno(fault.value(), "make the exchange folder"))}
                             : book->backupTo(folder / name);
        m_done = true;
    }};
}

void ShopBook::tick() {
    if (m_work == Work::none || !m_done) {
        return;
    }
    m_worker.join();
    if (m_work == Work::checking) {
        if (*m_checkResult) {
            m_report = **m_checkResult;
        } else {
            tell(m_checkResult->error());
        }
    } else if (*m_copyResult) {
        m_copied = m_copying;
    } else {
        tell(m_copyResult->error());
    }
    m_work = Work::none;
}

} // namespace holdfast::kiosk::screens
