#include "kiosk/command/book_commands.hpp"

#include "kiosk/ledger/book.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/wording/notices.hpp"

#include <nlohmann/json.hpp>

#include <ostream>

namespace holdfast::kiosk::command {

namespace {

constexpr int kDone = 0;
constexpr int kUnusable = 2;
constexpr int kNotSound = 3;

int sayFailure(const ledger::Failure& failure, std::ostream& err) {
    err << wording::noticeOf(failure, wording::Kept::book, {}).line() << '\n' << failure.what << '\n';
    return kUnusable;
}

template <class Items, class Text>
std::string listed(const Items& items, Text textOf) {
    std::string out;
    for (const auto& item : items) {
        out += (out.empty() ? "" : ", ") + textOf(item);
    }
    return out;
}

void printReport(const ledger::IntegrityReport& report, const wording::Speech& speech, std::ostream& out) {
    const auto same = [](const std::string& text) { return text; };
    out << speech.text("check.entries", {{"count", std::to_string(report.entries)}}) << '\n'
        << speech.text("check.blobs", {{"count", std::to_string(report.blobs)}}) << '\n'
        << speech.text("check.head", {{"hash", ledger::toHex(report.head)}}) << '\n';
    if (report.firstBadSequence) {
        out << speech.text("check.bad-sequence", {{"count", std::to_string(*report.firstBadSequence)}}) << '\n';
    }
    if (!report.badBlobs.empty()) {
        out << speech.text("check.bad-blobs",
                           {{"list", listed(report.badBlobs, [](const auto& hash) { return ledger::toHex(hash); })}})
            << '\n';
    }
    if (!report.differingTables.empty()) {
        out << speech.text("check.differing-tables", {{"list", listed(report.differingTables, same)}}) << '\n';
    }
    if (!report.alteredGuards.empty()) {
        out << speech.text("check.altered-guards", {{"list", listed(report.alteredGuards, same)}}) << '\n';
    }
    if (!report.structureFaults.empty()) {
        out << speech.text("check.structure", {{"list", listed(report.structureFaults, same)}}) << '\n';
    }
    out << speech.text(report.sound() ? "check.sound" : "check.not-sound") << '\n';
}

nlohmann::ordered_json jsonOf(const ledger::IntegrityReport& report) {
    nlohmann::ordered_json json;
    json["sound"] = report.sound();
    json["entries"] = report.entries;
    json["head"] = ledger::toHex(report.head);
    json["first_bad_sequence"] = report.firstBadSequence ? nlohmann::ordered_json(*report.firstBadSequence) : nullptr;
    json["blobs"] = report.blobs;
    json["dropped_blobs"] = report.droppedBlobs;
    json["bad_blobs"] = nlohmann::ordered_json::array();
    for (const auto& hash : report.badBlobs) {
        json["bad_blobs"].push_back(ledger::toHex(hash));
    }
    json["differing_tables"] = report.differingTables;
    json["altered_guards"] = report.alteredGuards;
    json["structure_faults"] = report.structureFaults;
    return json;
}

ledger::Result<std::unique_ptr<ledger::Book>> openToRead(const std::filesystem::path& data) {
    return ledger::Book::open(data, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
}

} // namespace

int runCheckBook(const std::filesystem::path& data, bool json, std::ostream& out, std::ostream& err) {
    const auto book = openToRead(data);
    if (!book) {
        return sayFailure(book.error(), err);
    }
    const auto report = (*book)->check();
    if (!report) {
        return sayFailure(report.error(), err);
    }
    if (json) {
        out << jsonOf(*report).dump(2) << '\n';
    } else {
        printReport(*report, {}, out);
    }
    return report->sound() ? kDone : kNotSound;
}

int runBackup(const std::filesystem::path& data, const std::filesystem::path& to, std::ostream& out,
              std::ostream& err) {
    const auto book = openToRead(data);
    if (!book) {
        return sayFailure(book.error(), err);
    }
    if (const auto done = (*book)->backupTo(to); !done) {
        return sayFailure(done.error(), err);
    }
    out << wording::Speech{}.text("backup.done", {{"path", to.string()}}) << '\n';
    return kDone;
}

int runRestore(const std::filesystem::path& from, const std::filesystem::path& data, std::ostream& out,
               std::ostream& err) {
    if (const auto done = ledger::Book::restore(from, data); !done) {
        return sayFailure(done.error(), err);
    }
    out << wording::Speech{}.text("restore.done", {{"path", data.string()}}) << '\n';
    return kDone;
}

} // namespace holdfast::kiosk::command
