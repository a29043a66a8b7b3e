#include "kiosk/command/answer.hpp"

#include "kiosk/wording/figures.hpp"
#include "kiosk/wording/notices.hpp"

#include <algorithm>
#include <cmath>
#include <ostream>

namespace holdfast::kiosk::command {

void Answer::say(std::string_view key, const wording::Arguments& arguments) {
    lines.push_back(said(key, arguments));
}

int tell(const Answered& answer, bool json, std::ostream& out, std::ostream& err) {
    constexpr int kUnusable = 2;
    if (!answer) {
        err << answer.error().sentence(wording::Language::english()) << '\n';
        return kUnusable;
    }
    if (json) {
        Json all = answer->json;
        all["sentences"] = answer->lines;
        out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
    } else {
        for (const auto& line : answer->lines) {
            out << line << '\n';
        }
    }
    return 0;
}

int tell(const ledger::Failure& failure, std::ostream& err) {
    constexpr int kUnusable = 2;
    err << wording::noticeOf(failure, wording::Kept::book, {}).line() << '\n' << failure.what << '\n';
    return kUnusable;
}

Json figure(double value) {
    return std::isfinite(value) ? Json(value) : Json();
}

Json figure(const std::optional<double>& value) {
    return value ? figure(*value) : Json();
}

std::string shown(double value) {
    constexpr int kDigits = 5;
    constexpr double kLarge = 1e9;
    constexpr double kSmall = 1e-4;
    const double size = std::fabs(value);
    if (!std::isfinite(value)) {
        return said("no-figure");
    }
    if (size != 0.0 && (size >= kLarge || size < kSmall)) {
        char text[32];
        std::snprintf(text, sizeof text, "%.4g", size);
        return (value < 0.0 ? "\u2212" : "") + std::string{text};
    }
    const int before = size < 1.0 ? 1 : static_cast<int>(std::floor(std::log10(size))) + 1;
    int decimals = std::clamp(kDigits - before, 0, kDigits);
    auto text = wording::numberText(value, decimals);
    while (decimals > 0 && (text.back() == '0' || text.back() == '.')) {
        decimals = text.back() == '.' ? 0 : decimals;
        text.pop_back();
    }
    return text;
}

std::string chanceShown(double p) {
    constexpr double kLeast = 1e-4;
    constexpr double kFine = 0.01;
    return p < kLeast ? said("chance-below", {{"least", "0.0001"}}) : wording::numberText(p, p < kFine ? 4 : 3);
}

std::string count(std::size_t number) {
    return std::to_string(number);
}

std::string count(std::int64_t number) {
    return std::to_string(number);
}

std::string said(std::string_view key, const wording::Arguments& arguments) {
    return wording::Language::english().text("commands." + std::string{key}, arguments);
}

std::string_view nameOf(analytics::statistics::StatisticsFault fault) noexcept {
    using Fault = analytics::statistics::StatisticsFault;
    switch (fault) {
    case Fault::NoValues:
        return "no-values";
    case Fault::TooFewValues:
        return "too-few-values";
    case Fault::NotFinite:
        return "not-finite";
    case Fault::NoSpread:
        return "no-spread";
    case Fault::OutOfDomain:
        return "out-of-domain";
    case Fault::UnequalLengths:
        return "unequal-lengths";
    case Fault::NoConvergence:
        return "no-convergence";
    case Fault::TooManyOpen:
        return "too-many-open";
    case Fault::TooFewEvents:
        return "too-few-events";
    case Fault::Collinear:
        return "collinear";
    case Fault::Separated:
        return "separated";
    case Fault::OutOfOrder:
        break;
    }
    return "out-of-order";
}

CommandFault faultOf(analytics::statistics::StatisticsFault fault) {
    return {"statistics." + std::string{nameOf(fault)}, {}};
}

CommandFault faultOf(analytics::statistics::StatisticsFault fault, const DataFile& file) {
    return {"statistics.of-file",
            {{"path", file.path()}, {"why", faultOf(fault).sentence(wording::Language::english())}}};
}

void addLeftOut(Answer& answer, const LeftOut& leftOut) {
    answer.json["rows_left_out"] = {{"missing", leftOut.missing}, {"unreadable", leftOut.unreadable}};
    if (leftOut.missing > 0) {
        answer.say("left-out-missing", {{"count", count(leftOut.missing)}});
    }
    if (leftOut.unreadable > 0) {
        answer.say("left-out-unreadable",
                   {{"count", count(leftOut.unreadable)}, {"line", count(leftOut.firstUnreadable)}});
    }
}

} // namespace holdfast::kiosk::command
