#include "kiosk/wording/stock_sentences.hpp"

#include "analytics/cure/names.hpp"
#include "kiosk/records/words.hpp"
#include "kiosk/wording/key_under.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::wording {
namespace {

const char* nameOf(shop::StockFaultCause cause) {
    using Cause = shop::StockFaultCause;
    switch (cause) {
    case Cause::nameMissing:
        return "name-missing";
    case Cause::nameTaken:
        return "name-taken";
    case Cause::textTooLong:
        return "text-too-long";
    case Cause::controlSign:
        return "control-sign";
    case Cause::notANumber:
        return "not-a-number";
    case Cause::negative:
        return "negative";
    case Cause::overHundredPercent:
        return "over-hundred-percent";
    case Cause::notWhole:
        return "not-whole";
    case Cause::temperatureUnlikely:
        return "temperature-unlikely";
    case Cause::cureMissing:
        return "cure-missing";
    case Cause::halfGiven:
        return "half-given";
    case Cause::sourceMissing:
        return "source-missing";
    case Cause::family:
        return "family";
    case Cause::fabric:
        return "fabric";
    case Cause::familyMissing:
        return "family-missing";
    case Cause::familyUnknown:
        return "family-unknown";
    case Cause::notADate:
        return "not-a-date";
    case Cause::noPart:
        return "no-part";
    case Cause::massNotPositive:
        return "mass-not-positive";
    case Cause::bucketTwice:
        return "bucket-twice";
    case Cause::bucketUnknown:
        return "bucket-unknown";
    case Cause::bucketClosed:
        return "bucket-closed";
    case Cause::containsItself:
        return "contains-itself";
    case Cause::chemistriesDiffer:
        return "chemistries-differ";
    case Cause::familyGone:
        return "family-gone";
    case Cause::tooManyBuckets:
        return "too-many-buckets";
    }
    return "";
}

const char* nameOf(shop::PartWarningCause cause) {
    using Cause = shop::PartWarningCause;
    switch (cause) {
    case Cause::pastPotLife:
        return "past-pot-life";
    case Cause::expired:
        return "expired";
    case Cause::additiveOutsideBand:
        return "additive-outside-band";
    case Cause::emptied:
        return "emptied";
    }
    return "";
}

const char* nameOf(analytics::BucketFault fault) {
    using Fault = analytics::BucketFault;
    switch (fault) {
    case Fault::pastPotLife:
        return "past-pot-life";
    case Fault::expired:
        return "expired";
    case Fault::additiveOutsideBand:
        return "additive-outside-band";
    }
    return "";
}

} // namespace

std::string word(analytics::Chemistry chemistry, const Speech& speech) {
    return speech.text(under("inks.chemistry.", records::toWord(chemistry)));
}

std::string word(analytics::BleedResistance resistance, const Speech& speech) {
    return speech.text(under("inks.bleed.", records::toWord(resistance)));
}

std::string word(analytics::Mark mark, const Speech& speech) {
    return speech.text(under("inks.mark.", records::toWord(mark)));
}

std::string word(records::BucketEnd end, const Speech& speech) {
    return speech.text(under("inks.end.", records::toWord(end)));
}

std::string sentence(const shop::StockFault& fault, const Speech& speech) {
    if (fault.family) {
        return speech.text(under("inks.family-fault.", analytics::nameOf(*fault.family)));
    }
    if (fault.fabric) {
        return speech.text(under("inks.fabric-fault.", analytics::nameOf(*fault.fabric)));
    }
    return speech.text(under("inks.fault.", nameOf(fault.cause)),
                       {{"text", fault.text},
                        {"bucket", fault.bucket ? std::to_string(*fault.bucket) : std::string{}},
                        {"most", std::to_string(shop::kMostEase)},
                        {"low", speech.figures.temperature(analytics::Temperature::fromCelsius(0))},
                        {"high", speech.figures.temperature(shop::kHottestAuthored)}});
}

std::string sentence(const shop::PartWarning& warning, const Speech& speech) {
    return speech.text(under("inks.part-warning.", nameOf(warning.cause)),
                       {{"bucket", std::to_string(warning.bucket)}});
}

std::string sentence(analytics::BucketFault fault, const Speech& speech) {
    return speech.text(under("inks.trouble.", nameOf(fault)));
}

std::string cureText(const analytics::InkFamily& family, const Speech& speech) {
    const auto cure = speech.figures.temperature(family.cure);
    return family.hold.count() > 0.0 ? speech.text(family.unbroken ? "inks.cure-unbroken" : "inks.cure-hold",
                                                   {{"cure", cure}, {"hold", durationText(family.hold)}})
                                     : cure;
}

std::string hoursText(analytics::Duration duration, const Speech& speech) {
    constexpr double kSecondsPerMinute = 60.0;
    constexpr double kMinutesPerHour = 60.0;
    constexpr double kHoursShown = 48.0;
    constexpr double kHoursPerDay = 24.0;
    const double minutes = std::floor(std::max(0.0, duration.count()) / kSecondsPerMinute);
    const double hours = std::floor(minutes / kMinutesPerHour);
    const double rest = minutes - hours * kMinutesPerHour;
    if (hours >= kHoursShown) {
        return speech.text("inks.days", {{"count", numberText(hours / kHoursPerDay, 0)}});
    }
    if (hours < 1.0) {
        return speech.text("inks.minutes", {{"minutes", numberText(minutes, 0)}});
    }
    return speech.text(rest > 0.0 ? "inks.hours-minutes" : "inks.hours",
                       {{"hours", numberText(hours, 0)}, {"minutes", numberText(rest, 0)}});
}

} // namespace holdfast::kiosk::wording
