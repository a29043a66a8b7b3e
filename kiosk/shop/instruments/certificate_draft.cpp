#include "kiosk/shop/instruments/certificate_draft.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include "analytics/metrology/instrument_faults.hpp"

#include <cmath>
#include <limits>

namespace holdfast::kiosk::shop::instruments {
namespace {

constexpr double kNotTyped = std::numeric_limits<double>::quiet_NaN();

std::string pointField(std::size_t index, const char* what) {
    return "point." + std::to_string(index + 1) + "." + what;
}

records::AuthoredPoint pointFrom(const PointDraft& draft, std::size_t index, FormReader& reader) {
    const int item = static_cast<int>(index) + 1;
    const auto value = [&](const std::string& typed, const char* what) {
        return reader.neededNumber(typed, pointField(index, what), item).value_or(kNotTyped);
    };
    records::AuthoredPoint point;
    point.at = {value(draft.at, "at"), reader.unit()};
    point.correction = {value(draft.correction, "correction"), reader.unit()};
    point.expandedUncertainty = {value(draft.uncertainty, "u"), reader.unit()};
    return point;
}

/// What the analytics find wrong with the values that could be read; NaN stands for those that could not.
void addFaults(const records::CertificateSpec& spec, FormReader& reader) {
    using Kind = analytics::InstrumentFaultKind;
    for (const auto& fault : analytics::faultsOf(records::toCertificate(spec))) {
        if (fault.kind == Kind::certificateDueBeforeDate) {
            reader.fault(FormCause::dueBeforeDate, "due");
        } else if (fault.kind == Kind::coverageFactorInvalid && !std::isnan(spec.coverageFactor)) {
            reader.fault(FormCause::coverageFactorInvalid, "k");
        } else if (fault.kind == Kind::certificateWithoutPoints) {
            reader.fault(FormCause::noPoint, "points");
        } else if (fault.kind == Kind::pointsOutOfOrder && fault.item) {
            const auto& points = spec.points;
            const auto index = *fault.item;
            const bool same = points[index].at.temperature() == points[index - 1].at.temperature();
            reader.fault(same ? FormCause::pointTwice : FormCause::pointOutOfOrder, pointField(index, "at"), {},
                         static_cast<int>(index) + 1);
        }
    }
    for (std::size_t i = 0; i < spec.points.size(); ++i) {
        if (spec.points[i].expandedUncertainty.value <= 0.0) { // 0 would claim a perfect calibration
            reader.fault(FormCause::uncertaintyInvalid, pointField(i, "u"), {}, static_cast<int>(i) + 1);
        }
    }
}

} // namespace

tl::expected<records::CertificateAdded, std::vector<FormFault>> certificateFrom(const CertificateDraft& draft,
                                                                                analytics::Date today) {
    FormReader reader{draft.unit};
    records::CertificateAdded added;
    added.instrument = draft.instrument;
    auto& spec = added.certificate;
    const auto date = reader.date(draft.date, "date", true);
    const auto due = reader.date(draft.due, "due", true);
    if (date && *date > today) {
        reader.fault(FormCause::dateAhead, "date", trimmed(draft.date));
    }
    spec.date = date.value_or(due.value_or(today));
    spec.due = due.value_or(spec.date);
    const bool missing = trimmed(draft.coverageFactor).empty();
    spec.coverageFactor = missing ? 0.0 : reader.number(draft.coverageFactor, "k").value_or(kNotTyped);
    for (std::size_t i = 0; i < draft.points.size(); ++i) {
        spec.points.push_back(pointFrom(draft.points[i], i, reader));
    }
    addFaults(spec, reader);
    if (!reader.faults().empty()) {
        return tl::unexpected(std::move(reader.faults()));
    }
    return added;
}

} // namespace holdfast::kiosk::shop::instruments
