#include "kiosk/reports/report.hpp"

#include <QString>
#include <cassert>

namespace holdfast::kiosk::reports {

std::string codeTextOf(drivers::TicketKind kind, std::int64_t number) {
    assert(number >= 0);
    const bool four = kind == drivers::TicketKind::run || kind == drivers::TicketKind::print;
    return drivers::encode(kind, static_cast<std::uint64_t>(number), four ? 4 : 3);
}

std::string speakingName(std::string_view text) {
    constexpr qsizetype kMost = 60;
    QString out;
    const auto bytes = std::min(text.size(), std::size_t{512});
    for (const QChar sign : QString::fromUtf8(text.data(), static_cast<qsizetype>(bytes)).toLower()) {
        if (out.size() >= kMost) {
            break;
        }
        if (sign.isLetterOrNumber()) {
            out += sign;
        } else if (!out.isEmpty() && out.back() != u'-') {
            out += u'-';
        }
    }
    while (out.endsWith(u'-')) {
        out.chop(1);
    }
    return out.isEmpty() ? std::string{"sheet"} : out.toStdString();
}

} // namespace holdfast::kiosk::reports
