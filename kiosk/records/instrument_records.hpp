#pragma once

#include "analytics/metrology/instrument.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::records {

struct AuthoredStrip final {
    std::vector<analytics::AuthoredTemperature> steps; ///< ascending
    analytics::AuthoredDifference tolerance;
    std::optional<analytics::Date> expiry;
};

/// The single strips of a pack, each with a label N… of its own.
struct StripPack final {
    std::int64_t firstNumber = 0;
    int count = 0;       ///< ≥ 1
    std::string batch{}; ///< may be empty
};

struct AuthoredRange final {
    analytics::AuthoredTemperature low;
    analytics::AuthoredTemperature high;
};

/// What an instrument is, as authored; shared by the book and the shop file.
struct InstrumentSpec final {
    std::string name;
    analytics::InstrumentKind kind = analytics::InstrumentKind::probe;
    std::optional<analytics::ThermocoupleType> type;
    std::optional<analytics::ToleranceClass> toleranceClass;
    std::optional<analytics::AuthoredDifference> statedTolerance;
    std::optional<analytics::AuthoredDifference> resolution;
    std::optional<AuthoredRange> range;
    analytics::Placement placement = analytics::Placement::wetInk;
    std::optional<analytics::AuthoredDifference> ownPlacement;
    std::optional<AuthoredStrip> strip;
};

struct AuthoredPoint final {
    analytics::AuthoredTemperature at;
    analytics::AuthoredDifference correction;
    analytics::AuthoredDifference expandedUncertainty;
};

struct CertificateSpec final {
    analytics::Date date;
    analytics::Date due;
    double coverageFactor = 2.0;
    std::vector<AuthoredPoint> points;
};

struct CheckSpec final {
    analytics::CheckKind kind = analytics::CheckKind::ice;
    bool passed = false;
    analytics::Date date;
    analytics::Date due;
};

/// instrument.described: the newest one of an instrument counts.
struct InstrumentDescribed final {
    std::string instrument;             ///< id
    std::optional<std::int64_t> number; ///< of the label on it: its code N… says the same number
    InstrumentSpec spec;
    std::string catalogue{};         ///< id of the driver's catalogue entry; empty for strips and hand instruments
    std::string address{};           ///< drivers::toText(Address); empty: not attached
    bool withdrawn = false;          ///< no longer used; stays in the book
    std::optional<StripPack> pack{}; ///< of strips bought as numbered singles
};

/// certificate.added
struct CertificateAdded final {
    std::string instrument; ///< id
    CertificateSpec certificate;
};

/// check.done
struct CheckDone final {
    std::string instrument; ///< id
    CheckSpec check;
    std::optional<analytics::AuthoredTemperature> indicated{};  ///< what it read
    std::optional<analytics::AuthoredTemperature> reference{};  ///< what the bath was
    std::optional<analytics::AuthoredDifference> uncertainty{}; ///< standard uncertainty of the error found
    std::optional<analytics::AuthoredDifference> limit{};       ///< that the error was held against
    std::optional<double> stationPressureKilopascal{};          ///< of the boiling bath
};

[[nodiscard]] analytics::Certificate toCertificate(const CertificateSpec& spec);
[[nodiscard]] analytics::Check toCheck(const CheckSpec& spec);
[[nodiscard]] analytics::Instrument toInstrument(const InstrumentSpec& spec,
                                                 const std::vector<CertificateSpec>& certificates = {},
                                                 const std::vector<CheckSpec>& checks = {});

} // namespace holdfast::kiosk::records
