#include "kiosk/screens/presenting/places/print_wishes.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "kiosk/reports/briefing.hpp"
#include "kiosk/reports/cards.hpp"
#include "kiosk/reports/labels.hpp"
#include "kiosk/reports/run_ticket.hpp"
#include "kiosk/screens/presenting/places/print_certificate.hpp"
#include "kiosk/screens/presenting/places/print_holds.hpp"
#include "kiosk/screens/presenting/places/print_recall.hpp"
#include "kiosk/screens/presenting/places/print_source.hpp"
#include "kiosk/shop/keeping/badge.hpp"

#include <algorithm>
#include <chrono>

namespace holdfast::kiosk::screens {
namespace {

using What = PrintWish::What;
using Wanted = PrintWanted;

constexpr const char* kSheetPaper = "a4"; ///< where the shop has not said another

class Wishes final {
public:
    Wishes(const ledger::Book& book, const drivers::WallTime& now, const wording::Speech& speech)
        : m_book{book}, m_reader{book.reader()}, m_now{now} {
        m_style.speech = speech;
        if (const auto opened = records::shop(m_reader); opened && *opened) {
            m_style.demo = (*opened)->demo;
            m_shop = (*opened)->shop;
        }
        const auto sheet = records::setting(m_reader, "sheet_paper");
        if (const auto* key = sheet && *sheet ? std::get_if<std::string>(&**sheet) : nullptr) {
            m_sheet = *key;
        }
    }

    Wanted run(std::int64_t number) {
        const auto ticket = ticketOf(records::PlanKind::run, number);
        on(m_sheet);
        return ticket ? Wanted{reports::runTicket(*ticket, m_style)} : std::nullopt;
    }

    Wanted windowCard(std::int64_t number) {
        const auto ticket = ticketOf(records::PlanKind::windowCard, number);
        on(m_sheet);
        return ticket ? Wanted{reports::windowCard(*ticket, m_style)} : std::nullopt;
    }

    Wanted certificate(std::int64_t number) {
        const auto ticket = ticketOf(records::PlanKind::run, number);
        return ticket ? certificateFor(source(), *ticket) : std::nullopt;
    }

    /// For lists and records: on the shop's sheets.
    PrintSource source() {
        on(m_sheet);
        return {m_book, m_now, m_style, m_shop};
    }

    Wanted cards() {
        on(m_sheet);
        reports::ActionCards cards;
        cards.dryer = {shop::ActionCard::beltSlower, shop::ActionCard::beltFaster,  shop::ActionCard::hotter,
                       shop::ActionCard::cooler,     shop::ActionCard::feedStopped, shop::ActionCard::started,
                       shop::ActionCard::pulled,     shop::ActionCard::problem,     shop::ActionCard::takenOver,
                       shop::ActionCard::alsoOnBelt};
        return reports::actionCards(cards, m_style);
    }

    Wanted bucket(std::int64_t number) {
        const auto found = records::bucketByNumber(m_reader, number);
        if (!found || !*found) {
            return std::nullopt;
        }
        const auto& bucket = **found;
        reports::BucketLabel label;
        label.number = bucket.number;
        label.name = bucket.name;
        label.colour = bucket.colour;
        label.batch = bucket.batch;
        label.expiry = bucket.expiry;
        if (const auto ink = records::inkOfBucket(m_reader, number); ink && *ink) {
            label.cure = (*ink)->requirement.cure;
            label.hold = (*ink)->requirement.hold;
            if (bucket.potLifeStartsAt && (*ink)->requirement.potLife) {
                label.potLifeUntil = drivers::WallTime{
                    *bucket.potLifeStartsAt + static_cast<std::int64_t>((*ink)->requirement.potLife->count() * 1000.0),
                    m_now.utcOffsetMinutes};
            }
        }
        if (const auto tree = records::ancestry(m_reader, number); tree && *tree) {
            for (const auto& part : (*tree)->parts) {
                label.parts.push_back({part.bucket.name, part.share});
            }
        }
        on(kLabelPaper);
        return reports::bucketLabel(label, m_style);
    }

    Wanted badge(std::int64_t number) {
        const auto people = records::peopleOnFile(m_reader);
        const auto person =
            people ? std::find_if(people->begin(), people->end(), [&](const auto& one) { return one.number == number; })
                   : std::vector<records::PersonOnFile>::const_iterator{};
        if (!people || person == people->end()) {
            return std::nullopt;
        }
        reports::PersonBadge badge;
        badge.number = shop::badgeNumberOf(*person);
        badge.name = personName(number);
        badge.shop = m_shop;
        on("card");
        return reports::personBadge(badge, m_style);
    }

    Wanted instrument(std::int64_t number) {
        const auto found = instrumentNumbered(number);
        if (!found) {
            return std::nullopt;
        }
        reports::InstrumentLabel label;
        label.number = number;
        label.name = found->described.spec.name;
        on(kLabelPaper);
        return reports::instrumentLabel(label, m_style);
    }

    Wanted strips(std::int64_t firstNumber) {
        const auto all = records::instruments(m_reader);
        for (const auto& one : all ? *all : std::vector<records::InstrumentOnFile>{}) {
            const auto& pack = one.described.pack;
            if (pack && pack->firstNumber == firstNumber) {
                reports::StripLabels labels;
                labels.name = one.described.spec.name;
                labels.batch = pack->batch;
                labels.firstNumber = pack->firstNumber;
                labels.count = pack->count;
                if (one.described.spec.strip) {
                    labels.expiry = one.described.spec.strip->expiry;
                }
                on(m_sheet);
                return reports::stripLabels(labels, m_style);
            }
        }
        return std::nullopt;
    }

private:
    std::optional<reports::RunTicket> ticketOf(records::PlanKind kind, std::int64_t number) const {
        const auto found = records::runByNumber(m_reader, kind, number);
        if (!found || !*found) {
            return std::nullopt;
        }
        const auto& run = **found;
        const auto window = run.usable ? analytics::windowOf(run.layers)
                                       : tl::unexpected(std::vector{analytics::WindowFault::familyFaulty});
        return reports::runTicketOf(run, window, dryerName(run.plan.dryer));
    }

    void on(std::string_view paper) { m_style.paper = reports::paperOf(paper); }

    std::string personName(std::int64_t number) const {
        const auto names = m_book.personNames();
        for (const auto& name : names ? *names : std::vector<ledger::PersonName>{}) {
            if (name.number == number) {
                return name.name;
            }
        }
        return {};
    }

    std::string dryerName(const std::string& id) const {
        const auto dryers = records::dryers(m_reader);
        for (const auto& dryer : dryers ? *dryers : std::vector<records::DryerDescribed>{}) {
            if (dryer.dryer == id) {
                return dryer.name;
            }
        }
        return {};
    }

    std::optional<records::InstrumentOnFile> instrumentNumbered(std::int64_t number) const {
        const auto all = records::instruments(m_reader);
        for (const auto& one : all ? *all : std::vector<records::InstrumentOnFile>{}) {
            if (one.described.number == number) {
                return one;
            }
        }
        return std::nullopt;
    }

    const ledger::Book& m_book;
    const SQLite::Database& m_reader;
    drivers::WallTime m_now;
    reports::ReportStyle m_style;
    std::string m_shop;
    std::string m_sheet = kSheetPaper;
};

} // namespace

bool isLabel(const PrintWish& wish) noexcept {
    return wish.what == What::bucketLabel || wish.what == What::instrumentLabel || wish.what == What::personBadge ||
           wish.what == What::binLabel || wish.what == What::printLabel;
}

std::optional<reports::Reported> reportFor(const PrintWish& wish, const ledger::Book& book,
                                           const drivers::WallTime& now, const wording::Speech& speech) {
    Wishes wishes{book, now, speech};
    switch (wish.what) {
    case What::runTicket:
        return wishes.run(wish.number);
    case What::windowCard:
        return wishes.windowCard(wish.number);
    case What::actionCards:
        return wishes.cards();
    case What::bucketLabel:
        return wishes.bucket(wish.number);
    case What::personBadge:
        return wishes.badge(wish.number);
    case What::instrumentLabel:
        return wishes.instrument(wish.number);
    case What::stripLabels:
        return wishes.strips(wish.number);
    case What::binLabel:
        return binLabelFor(wishes.source(), wish.number);
    case What::printLabel:
        return printLabelFor(wishes.source(), wish.number);
    case What::quarantine:
        return quarantineFor(wishes.source());
    case What::recall:
        return recallFor(wishes.source(), wish.id, wish.number);
    case What::recallOfBucket:
        return recallOfBucketFor(wishes.source(), wish.number);
    case What::recallOfLots:
        return recallOfLotsFor(wishes.source(), wish.number, wish.ids);
    case What::certificate:
        return wishes.certificate(wish.number);
    case What::briefing:
        return wish.briefing ? Wanted{reports::briefing(*wish.briefing, wishes.source().style)} : std::nullopt;
    }
    return std::nullopt;
}

} // namespace holdfast::kiosk::screens
