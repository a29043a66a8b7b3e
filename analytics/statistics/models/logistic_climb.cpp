#include "analytics/statistics/models/logistic_climb.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

namespace {

constexpr int kMostClimbSteps = 300;
constexpr int kStepsBeforeSeparation = 25; ///< by then what stays finite has settled to e^-25
constexpr double kLongestStep = 5.0;       ///< in log odds for one spread of a covariate
constexpr double kPivot = 1e-14;

/// Σ trials·log(larger chance), of single trials by products of many, so that a row costs no logarithm of its own.
class LogSum final {
public:
    void add(const LogisticPair& chance, const Lanes& trials) noexcept {
        if (trials[0] != 1.0 || trials[1] != 1.0) {
            m_sum.add(-trials * logOfOneAnd(chance.smaller / chance.larger));
            return;
        }
        m_product *= chance.larger;
        if (++m_factors == 512) { // each at least 1/2
            takeProduct();
        }
    }
    [[nodiscard]] double total() noexcept {
        takeProduct();
        return m_sum.total();
    }

private:
    void takeProduct() noexcept {
        m_sum.add(Lanes{std::log(m_product[0]), std::log(m_product[1])});
        m_product = Lanes{1.0, 1.0};
        m_factors = 0;
    }
    LaneSum m_sum;
    Lanes m_product{1.0, 1.0};
    int m_factors = 0;
};

/// The likelihood at one place, and what the next step is made of.
class Place final {
public:
    Place(const LogisticDesign& design, Penalty penalty) : m_design{design}, m_penalty{penalty} {
        m_chance.resize(design.pairs() * kLanes);
    }
    /// False where the information is singular.
    bool moveTo(const SmallVector& beta);
    [[nodiscard]] SmallVector score() const;
    [[nodiscard]] const SmallVector& beta() const noexcept { return m_beta; }
    [[nodiscard]] double objective() const noexcept { return m_objective; }
    [[nodiscard]] double logLikelihood() const noexcept { return m_logLikelihood; }
    [[nodiscard]] const SmallSymmetric& information() const noexcept { return m_information; }
    [[nodiscard]] SmallSymmetric covariance() const { return m_factor->inverse(); }

private:
    const LogisticDesign& m_design;
    Penalty m_penalty;
    SmallVector m_beta{};
    std::vector<double> m_chance;
    SmallSymmetric m_information{1};
    std::optional<Cholesky> m_factor;
    double m_logLikelihood = 0.0;
    double m_objective = 0.0;
};

bool Place::moveTo(const SmallVector& beta) {
    const std::size_t p = m_design.coefficients();
    m_beta = beta;
    LaneProducts information{p};
    LaneSum linear;
    LogSum logs;
    for (std::size_t i = 0; i < m_design.pairs(); ++i) {
        const double* x = m_design.pair(i);
        Lanes eta{};
        for (std::size_t j = 0; j < p; ++j) {
            eta += beta[j] * loadLanes(x + j * kLanes);
        }
        const auto likely = eta > Lanes{};
        const auto chance = logisticOfNegative(likely ? -eta : eta);
        storeLanes(&m_chance[i * kLanes], likely ? chance.larger : chance.smaller);
        const Lanes trials = m_design.pairTrials(i);
        linear.add(m_design.pairEvents(i) * eta - trials * (likely ? eta : Lanes{}));
        logs.add(chance, trials);
        information.add(trials * chance.smaller * chance.larger, x);
    }
    m_logLikelihood = linear.total() + logs.total();
    m_information = information.total();
    m_factor = Cholesky::of(m_information, kPivot);
    if (!m_factor) {
        return false;
    }
    m_objective = m_logLikelihood + (m_penalty == Penalty::Firth ? 0.5 * m_factor->logDeterminant() : 0.0);
    return std::isfinite(m_objective);
}

/// Firth 1993: events − trials·chance + leverage·(1/2 − chance), leverage = weight·xᵀ(information)⁻¹x.
SmallVector Place::score() const {
    const std::size_t p = m_design.coefficients();
    Lanes sums[kMostCoefficients]{};
    for (std::size_t i = 0; i < m_design.pairs(); ++i) {
        const double* x = m_design.pair(i);
        const Lanes chance = loadLanes(&m_chance[i * kLanes]);
        const Lanes trials = m_design.pairTrials(i);
        Lanes residual = m_design.pairEvents(i) - trials * chance;
        if (m_penalty == Penalty::Firth) {
            residual += trials * chance * (1.0 - chance) * m_factor->quadratic(x) * (0.5 - chance);
        }
        for (std::size_t j = 0; j < p; ++j) {
            sums[j] += residual * loadLanes(x + j * kLanes);
        }
    }
    SmallVector score{};
    for (std::size_t j = 0; j < p; ++j) {
        score[j] = sumOfLanes(sums[j]);
    }
    return score;
}

/// information⁻¹·score, the held coefficient left out.
std::optional<SmallVector> stepOf(const Place& place, const SmallVector& score,
                                  const std::optional<HeldCoefficient>& held) {
    const std::size_t p = place.information().size();
    if (held && p == 1) {
        return SmallVector{};
    }
    const auto factor = held ? Cholesky::of(place.information().without(held->index), kPivot)
                             : Cholesky::of(place.information(), kPivot);
    if (!factor) {
        return std::nullopt;
    }
    SmallVector free{};
    for (std::size_t j = 0, to = 0; j < p; ++j) {
        if (!held || j != held->index) {
            free[to++] = score[j];
        }
    }
    const SmallVector solved = factor->solve(free);
    SmallVector step{};
    for (std::size_t j = 0, from = 0; j < p; ++j) {
        if (!held || j != held->index) {
            step[j] = solved[from++];
        }
    }
    return step;
}

/// Moves by `step`, capped and halved until the objective does not fall; false, and where it was, if nothing helps.
bool advance(Place& place, const SmallVector& step) {
    const double before = place.objective();
    const double slack = 1e-13 * (1.0 + std::abs(before));
    const SmallVector from = place.beta();
    double longest = 0.0;
    for (const double part : step) {
        longest = std::max(longest, std::abs(part));
    }
    double share = std::min(1.0, kLongestStep / std::max(longest, kLongestStep));
    for (int halving = 0; halving < 30; ++halving, share *= 0.5) {
        SmallVector to = from;
        for (std::size_t j = 0; j < to.size(); ++j) {
            to[j] += share * step[j];
        }
        if (place.moveTo(to) && place.objective() >= before - slack) {
            return true;
        }
    }
    place.moveTo(from);
    return false;
}

/// Scoring under Firth's penalty may creep, or swing about the peak, each step the same share of the last, where few
/// rows carry the information; then the whole series is taken at once (Aitken's extrapolation), and the next step
/// plainly.
class Stride final {
public:
    SmallVector of(const SmallVector& step) {
        const double length = std::sqrt(dot(step, step));
        const double cosine = m_last ? dot(step, *m_last) / (length * m_length) : 0.0;
        const double share = std::copysign(m_last ? length / m_length : 0.0, cosine);
        const bool regular = std::abs(cosine) > 0.95 && share > -1.5 && share < 0.995 && std::abs(share) > 0.2;
        m_last = regular ? std::nullopt : std::optional{step};
        m_length = length;
        SmallVector stride = step;
        for (double& part : stride) {
            part *= regular ? 1.0 / (1.0 - share) : 1.0;
        }
        return stride;
    }

private:
    std::optional<SmallVector> m_last;
    double m_length = 0.0;
};

LogisticPeak peakOf(const Place& place, const SmallVector& direction, Separation separation) {
    return {place.beta(), place.logLikelihood(), place.objective(), place.covariance(), direction, separation};
}

/// A peak at infinity, if the last step or the place itself points there.
std::optional<LogisticPeak> runAway(const LogisticDesign& design, const Place& place, const SmallVector& direction) {
    for (const SmallVector& along : {direction, place.beta()}) {
        const Separation separation = separationAlong(design, along);
        if (separation != Separation::None) {
            return peakOf(place, along, separation);
        }
    }
    return std::nullopt;
}

} // namespace

Separation separationAlong(const LogisticDesign& design, const SmallVector& direction) {
    std::vector<double> along(design.rows());
    double farthest = 0.0;
    for (std::size_t i = 0; i < design.rows(); ++i) {
        for (std::size_t j = 0; j < design.coefficients(); ++j) {
            along[i] += design.at(i, j) * direction[j];
        }
        farthest = std::max(farthest, std::abs(along[i]));
    }
    const double rounding = 1e-6 * farthest;
    bool complete = true;
    for (std::size_t i = 0; i < design.rows(); ++i) {
        const bool allEvents = design.events(i) == design.trials(i);
        const bool noEvents = design.events(i) == 0.0;
        const double gain = allEvents ? along[i] : noEvents ? -along[i] : -std::abs(along[i]);
        if (gain < -rounding) {
            return Separation::None;
        }
        complete = complete && gain > rounding;
    }
    if (!(farthest > 0.0)) {
        return Separation::None;
    }
    return complete ? Separation::Complete : Separation::Quasi;
}

std::optional<LogisticPeak> climbLogistic(const LogisticDesign& design, Penalty penalty, const SmallVector& start,
                                          const std::optional<HeldCoefficient>& held) {
    Place place{design, penalty};
    SmallVector first = start;
    if (held) {
        first[held->index] = held->value;
    }
    if (!place.moveTo(first)) {
        return std::nullopt;
    }
    SmallVector direction{};
    Stride stride;
    const bool mayRunAway = penalty == Penalty::None && !held;
    for (int i = 0; i < kMostClimbSteps; ++i) {
        if (mayRunAway && i >= kStepsBeforeSeparation) {
            if (auto away = runAway(design, place, direction)) {
                return away;
            }
        }
        const SmallVector score = place.score();
        const auto step = stepOf(place, score, held);
        if (!step) {
            return std::nullopt;
        }
        direction = *step;
        const double gain = dot(score, *step);
        if (gain < 1e-13 || !advance(place, penalty == Penalty::Firth ? stride.of(*step) : *step)) {
            if (auto away = mayRunAway ? runAway(design, place, direction) : std::nullopt) {
                return away;
            }
            return gain < 1e-7 ? std::optional{peakOf(place, direction, Separation::None)} : std::nullopt;
        }
    }
    return std::nullopt;
}

} // namespace holdfast::analytics::statistics
