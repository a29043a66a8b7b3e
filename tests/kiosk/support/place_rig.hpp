#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <QCoreApplication>
#include <QTimer>
#include <catch2/catch.hpp>

#include <functional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens::testing {

/// Answers of work that runs beside come through it.
inline QCoreApplication& application() {
    if (auto* made = QCoreApplication::instance()) { // by a test that paints
        return *made;
    }
    static int count = 1;
    static char name[] = "places_test";
    static char* arguments[] = {name, nullptr};
    static QCoreApplication app{count, arguments};
    return app;
}

/// Lets them arrive until the condition holds.
template <class Condition>
bool until(Condition holds) {
    application();
    QTimer wake; // an answer that never comes fails the test, and does not hang it
    wake.start(10);
    for (int i = 0; i < 1000 && !holds(); ++i) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
    return holds();
}

/// The frame around a place, without windows, on a real book: writes at once, signs or refuses, notes what it was
/// asked.
class PlaceRig {
public:
    PlaceRig() {
        application();
        needs.book = &shop.book();
        needs.clock = &clock;
        needs.exchange = shop.book().folder() / "exchange";
        needs.floor = [this]() -> const shop::ProvingState& { return floor; };
        needs.speech = [this]() -> const wording::Speech& { return speech; };
        needs.newId = [this] { return shop.freshId(); };
        needs.tell = [this](const wording::Notice& notice) { told.push_back(notice.line()); };
        needs.go = [this](const std::string& place) { went.push_back(place); };
        needs.scan = [this](const std::string& code) { scanned.push_back(code); };
        needs.inCheck = [this](const std::string& probe, bool inCheck) {
            checks.emplace_back(probe, inCheck);
            for (auto& one : floor.probes) {
                one.inCheck = one.name == probe ? inCheck : one.inCheck;
            }
        };
        needs.show = [this] { ++shown; };
        needs.print = [this](const PrintWish& wish) { printed.push_back(wish); };
        needs.sign = [this](shop::Right right, const std::function<void(std::int64_t)>& then) {
            asked.push_back(right);
            if (signs) {
                then(signer);
            }
        };
        needs.signAfresh = [this](shop::Right right, std::int64_t other,
                                  const std::function<void(std::int64_t)>& then) {
            asked.push_back(right);
            const auto person = other == signer ? second : signer;
            if (signs && person != 0) {
                then(person);
            }
        };
        needs.keep = [this](const Keeping& keeping, const KeepDone& then) { keep(keeping, then); };
        clock.setWall({shop.now(), 0});
    }

    /// Entries as they came, nobody's name on them.
    void write(std::vector<records::Record> list, std::optional<ledger::PersonName> name = {}) {
        keep({std::move(list), 0, std::move(name)}, {});
    }
    [[nodiscard]] std::int64_t entries() { return shop.book().head()->sequence; }
    /// Who signed the newest entry.
    [[nodiscard]] std::int64_t signedBy() { return shop.book().entry(entries())->person; }

    records::testing::Shop shop;
    drivers::ManualClock clock;
    shop::ProvingState floor;
    wording::Speech speech;
    PlaceNeeds needs;
    std::vector<std::string> told;
    std::vector<std::string> went;
    std::vector<std::string> scanned;
    std::vector<PrintWish> printed;
    std::vector<std::pair<std::string, bool>> checks; ///< PlaceNeeds::inCheck
    std::vector<shop::Right> asked;
    int shown = 0; ///< how often a place asked to be shown again
    std::int64_t signer = 1;
    std::int64_t second = 0; ///< who signs beside; 0: nobody
    bool signs = true;
    bool diskFull = false;
    /// Answers of commits stay here while `slow`; the entries stand in the book at once.
    std::vector<std::function<void()>> answers;
    bool slow = false;

private:
    void keep(const Keeping& keeping, const KeepDone& then) {
        if (diskFull) {
            then(ledger::Failure{ledger::FailureCode::diskFull, "full"});
            return;
        }
        ledger::CommitRequest request;
        if (keeping.name) {
            request.persons.push_back(*keeping.name);
        }
        request.blobs = keeping.blobs;
        for (const auto& record : keeping.list) {
            ledger::EntryDraft draft;
            const auto at = request.entries.size();
            const bool named = at < keeping.ids.size() && !keeping.ids[at].empty();
            draft.id = named ? keeping.ids[at] : shop.freshId();
            draft.wallMilliseconds = shop.now();
            draft.person = keeping.person;
            draft.kind = records::rowOf(record).kind;
            draft.version = records::rowOf(record).version;
            draft.body = records::bodyOf(record);
            request.entries.push_back(draft);
        }
        const auto receipt = shop.book().commit(request);
        INFO((receipt ? std::string{} : receipt.error().what));
        REQUIRE(receipt);
        if (then && slow) {
            answers.emplace_back([then] { then(std::nullopt); });
        } else if (then) {
            then(std::nullopt);
        }
    }
};

/// Everything that a person could read on the sheet, one text a line.
[[nodiscard]] inline std::string allText(const SheetPageState& page) {
    QStringList all{page.head, page.headHow, page.heading, page.title};
    for (const auto& row : page.list) {
        all << row.title << row.detail << row.value;
    }
    for (const auto& block : page.blocks) {
        all << block.text << block.note;
        for (const auto& row : block.rows) {
            all << row.title << row.value << row.detail;
        }
        for (const auto& field : block.fields) {
            all << field.label << field.value << field.hint << field.fault;
        }
        for (const auto& action : block.actions) {
            all << action.label;
        }
    }
    for (const auto& action : page.actions) {
        all << action.label;
    }
    return all.join(u'\n').toStdString();
}

/// Whether the words stand on the sheet; and that no sentence on it lacks its table or a filling.
[[nodiscard]] inline bool says(const SheetPlace& place, const std::string& words) {
    const auto text = allText(place.sheet());
    INFO(text);
    CHECK(text.find('[') == std::string::npos); // a sentence that no table has
    CHECK(text.find('{') == std::string::npos); // a brace that nobody filled
    return text.find(words) != std::string::npos;
}

/// Whether anything told holds the words.
[[nodiscard]] inline bool wasTold(const PlaceRig& rig, const std::string& words) {
    return std::any_of(rig.told.begin(), rig.told.end(),
                       [&](const auto& line) { return line.find(words) != std::string::npos; });
}

} // namespace holdfast::kiosk::screens::testing
