#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/entry.hpp"
#include "kiosk/reports/report.hpp"
#include "kiosk/reports/run_ticket.hpp"
#include "kiosk/shop/tracing/trace_page.hpp"

#include <QImage>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// A run's certificate: what the book holds about it, failures included, and what nobody tested. It never says more
/// than the verdicts do.
namespace holdfast::kiosk::reports {

/// What of a reading stands only in its entry.
struct ReadingDetail final {
    std::optional<int> piece{};
    std::optional<analytics::Temperature> sustained{}; ///< corrected peak of a trace
    std::optional<analytics::PeakRange> range{};       ///< of a strip, spot or gun
};

/// What the book has, as its queries give it.
struct CertificateFacts final {
    std::string shop{};
    drivers::WallTime printed{};
    shop::tracing::TraceFacts trace{};
    RunTicket ticket{};
    std::map<std::string, ReadingDetail> details{};                            ///< by the reading's id
    std::map<std::pair<std::string, int>, records::MethodDescribed> methods{}; ///< by key and revision
    std::map<std::string, std::int64_t> loads{};                               ///< number by id
    std::map<std::string, QImage> pictures{}; ///< by SHA-256; what is dropped is not there
    std::vector<ledger::PersonName> names{};
};

/// Somebody whose name stands in the book; forgotten: the number alone.
struct Signer final {
    std::int64_t number = 0;
    std::string name{};
};

struct CertifiedReading final {
    records::ReadingRow row{};
    ReadingDetail detail{};
};
struct CertifiedTest final {
    records::TestRow row{}; ///< `counts` is what it counts for today
    std::int64_t print = 0; ///< number
    records::MethodDescribed method{};
    std::optional<std::int64_t> load{}; ///< number
    std::optional<Signer> by{};
};
struct CertifiedPicture final {
    std::int64_t print = 0;
    records::MethodDescribed method{};
    std::optional<int> cycle{};
    records::PictureSide side = records::PictureSide::whole;
    QImage image; ///< null: the book has its hash alone
};
struct CertifiedDecision final {
    int lot = 1;
    records::DecisionRow row{};
    std::vector<Signer> signers{};
};
struct CertifiedFinding final {
    records::FindingSigned finding{};
    std::vector<Signer> signers{};
};
struct CertifiedGap final {
    shop::tracing::NotTested gap{};
    std::optional<records::MethodDescribed> method{};
};

struct Certificate final {
    std::string shop{};
    drivers::WallTime printed{};
    RunTicket ticket{};
    /// Every lot is cleared or released, and there is one. Else it is a record, headed by the states that stand
    /// against it.
    bool isCertificate = false;
    bool finished = false;
    std::vector<shop::tracing::LotTraced> lots{};
    std::vector<shop::tracing::BatchLine> batches{};
    std::vector<CertifiedReading> readings{}; ///< oldest first; refused and struck ones too
    std::vector<CertifiedTest> tests{};       ///< oldest first
    std::vector<CertifiedPicture> pictures{};
    int picturesLeftOut = 0;
    std::vector<records::PrintRow> retained{};
    std::vector<CertifiedDecision> decisions{};
    std::vector<records::ComplaintRow> complaints{};
    std::vector<CertifiedFinding> findings{};
    std::vector<CertifiedGap> notTested{};
    std::vector<std::string> laboratoryReports{}; ///< numbers, each once
    shop::tracing::Counts counts{};
    std::int64_t entries = 0; ///< of the book when it was printed
    std::string head{};       ///< hash of the newest
};

/// Pictures shown at most; the others are counted.
inline constexpr std::size_t kMostPictures = 48;

[[nodiscard]] Certificate certificateOf(const CertificateFacts& facts);
[[nodiscard]] Reported runCertificate(const Certificate& certificate, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
