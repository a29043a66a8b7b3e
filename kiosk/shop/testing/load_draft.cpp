#include "kiosk/shop/testing/load_draft.hpp"

#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/rest.hpp"
#include "kiosk/shop/testing/test_reader.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using Cause = TestFaultCause;

constexpr double kColdestWash = 5.0;   ///< °C: no machine washes colder; from memory
constexpr double kHottestWash = 100.0; ///< °C: water

void checkPrint(const records::PrintRow& print, const records::MethodDescribed& programme, std::int64_t now,
                TestReader& read) {
    const auto signs = printSigns(print.named.number);
    const auto rested = restedAt(print, programme);
    if (print.ended || print.lotState == records::LotState::scrapped) {
        read.fault({Cause::printGone, "prints", signs});
    } else if (validityOf(print, programme) != Validity::valid) {
        read.fault({Cause::printWrongKind, "prints", signs});
    } else if (now < rested) {
        read.fault({Cause::printNotRested, "prints", signs, {}, rested});
    }
}

void readTemperature(const LoadDraft& draft, TestReader& read, records::LoadWashed& load) {
    const auto value = read.number(draft.temperature, "temperature");
    if (!value) {
        return;
    }
    const analytics::AuthoredTemperature typed{*value, draft.unit};
    const auto celsius = typed.temperature().celsius();
    if (celsius < kColdestWash || celsius > kHottestWash) {
        read.fault({Cause::temperatureUnlikely, "temperature", firstSigns(trimmed(draft.temperature))});
        return;
    }
    load.temperature = typed;
}

std::optional<double> witnessGrade(const std::string& typed, const char* field, bool byInstrument, TestReader& read) {
    if (!byInstrument) {
        const auto grade = read.grade(typed, field);
        return grade ? std::optional{grade->number()} : std::nullopt;
    }
    const auto value = read.number(typed, field);
    if (value && (*value < 1.0 || *value > 5.0)) {
        read.fault({Cause::witnessGradeOffScale, field, firstSigns(trimmed(typed))});
        return std::nullopt;
    }
    return value;
}

records::LoadWord wordOf(const analytics::LoadVerdict& verdict) {
    using analytics::LoadReason;
    if (verdict.state == analytics::LoadState::valid) {
        return records::LoadWord::valid;
    }
    const auto has = [&](LoadReason reason) {
        return std::find(verdict.reasons.begin(), verdict.reasons.end(), reason) != verdict.reasons.end();
    };
    if (has(LoadReason::witnessesSwapped)) {
        return records::LoadWord::noWitness; // nobody knows which swatch is which
    }
    return has(LoadReason::goodBelowLimit)   ? records::LoadWord::tooHarsh
           : has(LoadReason::weakAboveLimit) ? records::LoadWord::tooGentle
                                             : records::LoadWord::noWitness;
}

} // namespace

tl::expected<records::LoadWashed, TestFaults> loadFrom(const LoadDraft& draft, const std::string& load,
                                                       std::int64_t number, std::int64_t now) {
    TestReader read;
    records::LoadWashed washed;
    washed.load = load;
    washed.number = number;
    washed.machine = read.name(draft.machine, "machine", Cause::machineMissing);
    if (draft.programme) {
        washed.programme = draft.programme->key;
    } else {
        read.fault({Cause::programmeMissing, "programme"});
    }
    readTemperature(draft, read, washed);
    washed.detergent = read.text(draft.detergent, "detergent");
    washed.tumbled = draft.tumbled;
    washed.besides = read.text(draft.besides, "besides");
    washed.goodWitness = read.text(draft.goodWitness, "good-witness");
    washed.weakWitness = read.text(draft.weakWitness, "weak-witness");
    for (const auto& print : draft.prints) {
        if (draft.programme) {
            checkPrint(print, *draft.programme, now, read);
        }
        washed.prints.push_back(print.named.print);
    }
    if (draft.prints.empty()) {
        read.fault({Cause::drumEmpty, "prints"});
    }
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return washed;
}

analytics::WitnessLimits limitsFor(const std::vector<records::LoadRow>& earlier, const std::string& but,
                                   const analytics::WitnessSettings& shop) {
    std::vector<analytics::WitnessReading> valid;
    for (const auto& one : earlier) {
        if (one.washed.load == but || !one.judged || one.judged->word != records::LoadWord::valid) {
            continue;
        }
        valid.push_back({one.judged->goodGrade, one.judged->weakGrade, one.judged->byInstrument});
    }
    const auto limits = analytics::witnessLimits(valid, shop);
    if (limits) {
        return *limits;
    }
    analytics::WitnessLimits given; // a chart whose limits contradict each other says nothing
    given.goodAtLeast = {shop.goodAtLeast, analytics::LimitOrigin::shop, valid.size()};
    given.weakAtMost = {shop.weakAtMost, analytics::LimitOrigin::shop, valid.size()};
    return given;
}

tl::expected<LoadFinding, TestFaults> judgedFrom(const WitnessDraft& draft, const std::string& load,
                                                 const analytics::WitnessLimits& limits) {
    TestReader read;
    LoadFinding finding;
    finding.judged.load = load;
    finding.judged.byInstrument = draft.byInstrument;
    finding.judged.goodGrade = witnessGrade(draft.good, "good-grade", draft.byInstrument, read);
    finding.judged.weakGrade = witnessGrade(draft.weak, "weak-grade", draft.byInstrument, read);
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    const auto verdict =
        analytics::judgeLoad({finding.judged.goodGrade, finding.judged.weakGrade, draft.byInstrument}, limits);
    if (!verdict) {
        return tl::unexpected(
            TestFaults{{verdict.error() == analytics::WitnessFault::limitsContradict ? Cause::limitsContradict
                                                                                     : Cause::witnessGradeOffScale,
                        "good-grade"}});
    }
    finding.verdict = *verdict;
    finding.judged.goodLow = limits.goodAtLeast.value;
    finding.judged.weakHigh = limits.weakAtMost.value;
    finding.judged.word = wordOf(*verdict);
    return finding;
}

} // namespace holdfast::kiosk::shop
