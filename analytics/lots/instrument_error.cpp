#include "analytics/lots/instrument_error.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

constexpr double kMostOfReference = 0.1;

/// Worst first: the order in which readings of one piece are joined (decisions 4).
int rankOf(Word word) noexcept {
    switch (word) {
    case Word::underCured:
        return 0;
    case Word::overheated:
        return 1;
    case Word::notProven:
    case Word::refused:
        return 2;
    case Word::cured:
        break;
    }
    return 3;
}

/// Judges one reading with the error taken off in one shape.
class Anew final {
public:
    Anew(const ReadingInDoubt& reading, const ErrorFound& found, ErrorShape shape, const Calibration& calibration,
         const GuardSetting& guard)
        : m_reading{reading}, m_found{found}, m_shape{shape}, m_calibration{calibration}, m_guard{guard} {}

    tl::expected<Verdict, ErrorFault> operator()(RawTrace trace) const {
        for (auto& sample : trace.samples) {
            sample.indicated = moved(sample.indicated);
        }
        if (trace.range) {
            trace.range = MeasuringRange{moved(trace.range->low), moved(trace.range->high)};
        }
        auto verdicts = judgeRecording(m_reading.plan, trace, m_calibration, m_guard, m_reading.context);
        if (m_reading.pass < 1 || static_cast<std::size_t>(m_reading.pass) > verdicts.size()) {
            return tl::unexpected(ErrorFault::noSuchPass);
        }
        return std::move(verdicts[static_cast<std::size_t>(m_reading.pass) - 1]);
    }

    tl::expected<Verdict, ErrorFault> operator()(const StripReading& strip) const {
        auto instrument = m_calibration.instrument();
        if (instrument.strip) {
            for (auto& step : instrument.strip->steps) {
                step = moved(step);
            }
        }
        const Calibration shifted{std::move(instrument), m_calibration.today()};
        return judgeStrip(m_reading.plan, strip, shifted, m_guard, m_reading.dwell);
    }

    tl::expected<Verdict, ErrorFault> operator()(SpotReading spot) const {
        spot.held = moved(spot.held);
        if (spot.beforeUse) {
            spot.beforeUse = moved(*spot.beforeUse);
        }
        return judgeSpot(m_reading.plan, spot, m_calibration, m_guard, m_reading.dwell);
    }

    tl::expected<Verdict, ErrorFault> operator()(SurfaceReading shot) const {
        shot.surface = moved(shot.surface);
        return judgeSurface(m_reading.plan, shot, m_calibration, m_guard, m_reading.dwell);
    }

private:
    [[nodiscard]] Temperature moved(Temperature t) const noexcept { return asItWas(t, m_found, m_shape); }

    const ReadingInDoubt& m_reading;
    const ErrorFound& m_found;
    ErrorShape m_shape;
    const Calibration& m_calibration;
    const GuardSetting& m_guard;
};

/// The shape that lowers a reading at this temperature most comes first.
bool lowersMore(ErrorShape one, ErrorShape other, const ErrorFound& found, Temperature at) noexcept {
    return asItWas(at, found, one) < asItWas(at, found, other);
}

std::optional<ErrorFault> faultOf(const ErrorFound& found) {
    if (!found.at.isFinite() || !found.error.isFinite()) {
        return ErrorFault::notFinite;
    }
    const auto most = TemperatureDifference::fromCelsius(kMostOfReference * found.at.kelvin());
    return atMost(found.error.magnitude(), most) ? std::nullopt : std::optional{ErrorFault::tooLarge};
}

/// Where the film is judged: the highest temperature that any layer asks.
Temperature judgedAt(const RunPlan& plan) {
    auto highest = Temperature::fromCelsius(100.0);
    for (const auto& layer : plan.layers) {
        highest = std::max(highest, layer.ink.requirement.cure);
    }
    return highest;
}

} // namespace

std::vector<ErrorShape> shapesOf(const ErrorFound& found) {
    std::vector<ErrorShape> shapes{ErrorShape::flat};
    if (found.at > kProportionalAbove) {
        shapes.push_back(ErrorShape::proportional);
    }
    return shapes;
}

Temperature asItWas(Temperature indicated, const ErrorFound& found, ErrorShape shape) noexcept {
    if (!indicated.isFinite()) {
        return indicated;
    }
    if (shape == ErrorShape::flat) {
        return indicated - found.error;
    }
    return Temperature::fromCelsius(indicated.celsius() / (1.0 + found.error.celsius() / found.at.celsius()));
}

tl::expected<Recomputed, ErrorFault> recompute(const ReadingInDoubt& reading, const ErrorFound& found,
                                               const Calibration& calibration, const GuardSetting& guard) {
    if (const auto fault = faultOf(found)) {
        return tl::unexpected(*fault);
    }
    auto shapes = shapesOf(found);
    const auto at = judgedAt(reading.plan);
    std::stable_sort(shapes.begin(), shapes.end(),
                     [&](ErrorShape one, ErrorShape other) { return lowersMore(one, other, found, at); });
    std::optional<Recomputed> worst;
    for (const auto shape : shapes) {
        auto verdict = std::visit(Anew{reading, found, shape, calibration, guard}, reading.evidence);
        if (!verdict) {
            return tl::unexpected(verdict.error());
        }
        if (!worst || rankOf(verdict->word) < rankOf(worst->verdict.word)) {
            worst = Recomputed{std::move(*verdict), shape};
        }
    }
    return std::move(*worst);
}

DoubtfulTime doubtfulTime(const std::vector<InstrumentLook>& looks, std::int64_t failedAt) noexcept {
    DoubtfulTime doubtful{std::nullopt, failedAt};
    for (const auto& look : looks) {
        if (look.good && look.at < failedAt && (!doubtful.from || look.at > *doubtful.from)) {
            doubtful.from = look.at;
        }
    }
    return doubtful;
}

} // namespace holdfast::analytics
