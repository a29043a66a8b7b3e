#include "kiosk/shop/keeping/dryer_draft.hpp"

#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

constexpr double kSecondsPerMinute = 60.0;

/// Turns texts into values and notes what is wrong with them.
class Reader final {
public:
    explicit Reader(std::vector<DryerFault>& faults) : m_faults{faults} {}

    std::optional<double> number(const std::string& typed, const char* field) {
        const auto text = trimmed(typed);
        if (text.empty()) {
            return std::nullopt;
        }
        const auto value = numberFrom(text);
        if (!value) {
            m_faults.push_back({DryerFaultCause::notANumber, field, firstSigns(text)});
        }
        return value;
    }
    std::optional<double> positive(const std::string& typed, const char* field) {
        const auto value = number(typed, field);
        if (value && *value <= 0.0) {
            m_faults.push_back({DryerFaultCause::notPositive, field, firstSigns(trimmed(typed))});
            return std::nullopt;
        }
        return value;
    }
    std::optional<analytics::AuthoredTemperature>
    temperature(const std::string& typed, const char* field, analytics::TemperatureUnit unit,
                const std::optional<analytics::AuthoredTemperature>& before) {
        if (before && trimmed(typed) == authoredTyped(before, unit)) {
            return before;
        }
        const auto value = positive(typed, field); // no dryer is set below freezing
        return value ? std::optional{analytics::AuthoredTemperature{*value, unit}} : std::nullopt;
    }

private:
    std::vector<DryerFault>& m_faults;
};

void checkName(const std::string& name, const std::string& dryer, const std::vector<records::DryerDescribed>& others,
               std::vector<DryerFault>& faults) {
    if (const auto fault = textFault(name)) {
        faults.push_back({*fault == TextFault::missing   ? DryerFaultCause::nameMissing
                          : *fault == TextFault::tooLong ? DryerFaultCause::textTooLong
                                                         : DryerFaultCause::controlSign,
                          "name", *fault == TextFault::tooLong ? firstSigns(name) : std::string{}});
    } else if (std::any_of(others.begin(), others.end(),
                           [&](const auto& one) { return one.dryer != dryer && one.name == name; })) {
        faults.push_back({DryerFaultCause::nameTaken, "name", name});
    }
}

void checkTogether(const records::DryerDescribed& dryer, std::vector<DryerFault>& faults) {
    const auto slowest = dryer.slowestMetresPerMinute;
    const auto fastest = dryer.fastestMetresPerMinute;
    if (slowest && fastest && *slowest > *fastest) {
        faults.push_back({DryerFaultCause::slowestAboveFastest, "slowest", {}});
    } else if (const auto belt = dryer.beltMetresPerMinute;
               belt && ((slowest && *belt < *slowest) || (fastest && *belt > *fastest))) {
        faults.push_back({DryerFaultCause::beltOutside, "belt", {}});
    }
    if (dryer.setPoint && dryer.highestSetPoint &&
        !analytics::atMost(dryer.setPoint->temperature(), dryer.highestSetPoint->temperature())) {
        faults.push_back({DryerFaultCause::setPointAboveHighest, "set-point", {}});
    }
}

std::string typedOrEmpty(const std::optional<double>& value) {
    return value ? numberTyped(*value) : std::string{};
}

} // namespace

DryerDraft draftOf(const records::DryerDescribed& dryer, analytics::TemperatureUnit unit) {
    DryerDraft draft;
    draft.unit = unit;
    draft.name = dryer.name;
    draft.heatedLength = typedOrEmpty(dryer.heatedLengthMetres);
    draft.belt = typedOrEmpty(dryer.beltMetresPerMinute);
    draft.slowest = typedOrEmpty(dryer.slowestMetresPerMinute);
    draft.fastest = typedOrEmpty(dryer.fastestMetresPerMinute);
    draft.setPoint = authoredTyped(dryer.setPoint, unit);
    draft.highestSetPoint = authoredTyped(dryer.highestSetPoint, unit);
    draft.piecesPerMetre = typedOrEmpty(dryer.piecesPerMetre);
    draft.before = dryer;
    return draft;
}

tl::expected<records::DryerDescribed, std::vector<DryerFault>>
dryerFrom(const DryerDraft& draft, const std::vector<records::DryerDescribed>& others) {
    std::vector<DryerFault> faults;
    Reader read{faults};
    auto dryer = draft.before.value_or(records::DryerDescribed{});
    const auto before = draft.before.value_or(records::DryerDescribed{});
    dryer.name = trimmed(draft.name);
    checkName(dryer.name, dryer.dryer, others, faults);
    dryer.heatedLengthMetres = read.positive(draft.heatedLength, "length");
    dryer.beltMetresPerMinute = read.positive(draft.belt, "belt");
    dryer.slowestMetresPerMinute = read.positive(draft.slowest, "slowest");
    dryer.fastestMetresPerMinute = read.positive(draft.fastest, "fastest");
    dryer.setPoint = read.temperature(draft.setPoint, "set-point", draft.unit, before.setPoint);
    dryer.highestSetPoint = read.temperature(draft.highestSetPoint, "highest", draft.unit, before.highestSetPoint);
    dryer.piecesPerMetre = read.positive(draft.piecesPerMetre, "pieces");
    checkTogether(dryer, faults);
    if (!faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    return dryer;
}

std::optional<analytics::Duration> dwellOf(const records::DryerDescribed& dryer) {
    if (!dryer.heatedLengthMetres || !dryer.beltMetresPerMinute || *dryer.heatedLengthMetres <= 0.0 ||
        *dryer.beltMetresPerMinute <= 0.0) {
        return std::nullopt;
    }
    return analytics::Duration{*dryer.heatedLengthMetres / *dryer.beltMetresPerMinute * kSecondsPerMinute};
}

} // namespace holdfast::kiosk::shop
