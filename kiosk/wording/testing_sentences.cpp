#include "kiosk/wording/testing_sentences.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/wording/key_under.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::wording {
namespace {

const char* nameOf(shop::TestFaultCause cause) {
    using Cause = shop::TestFaultCause;
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
    case Cause::notWhole:
        return "not-whole";
    case Cause::notADate:
        return "not-a-date";
    case Cause::notATime:
        return "not-a-time";
    case Cause::printUnknown:
        return "print-unknown";
    case Cause::runMissing:
        return "run-missing";
    case Cause::runUnknown:
        return "run-unknown";
    case Cause::lotMissing:
        return "lot-missing";
    case Cause::pieceNotPositive:
        return "piece-not-positive";
    case Cause::printedInFuture:
        return "printed-in-future";
    case Cause::printedBeforeLot:
        return "printed-before-lot";
    case Cause::noNumberLeft:
        return "no-number-left";
    case Cause::shelfMissing:
        return "shelf-missing";
    case Cause::lotScrapped:
        return "lot-scrapped";
    case Cause::printEnded:
        return "print-ended";
    case Cause::methodWithdrawn:
        return "method-withdrawn";
    case Cause::beforeRest:
        return "before-rest";
    case Cause::notForChemistry:
        return "not-for-chemistry";
    case Cause::chemistryUnknown:
        return "chemistry-unknown";
    case Cause::nothingEntered:
        return "nothing-entered";
    case Cause::answerMissing:
        return "answer-missing";
    case Cause::cycleMissing:
        return "cycle-missing";
    case Cause::cycleUnlikely:
        return "cycle-unlikely";
    case Cause::cycleTwice:
        return "cycle-twice";
    case Cause::cycleOrder:
        return "cycle-order";
    case Cause::beforeItsHour:
        return "before-its-hour";
    case Cause::hourNotAsked:
        return "hour-not-asked";
    case Cause::loadMissing:
        return "load-missing";
    case Cause::loadNotJudged:
        return "load-not-judged";
    case Cause::notInLoad:
        return "not-in-load";
    case Cause::loadOfAnotherMethod:
        return "load-of-another-method";
    case Cause::loadBeforeRest:
        return "load-before-rest";
    case Cause::gradeUnreadable:
        return "grade-unreadable";
    case Cause::gradeOffScale:
        return "grade-off-scale";
    case Cause::gradeOffHalfSteps:
        return "grade-off-half-steps";
    case Cause::wordUnknown:
        return "word-unknown";
    case Cause::labIncomplete:
        return "lab-incomplete";
    case Cause::lightnessImpossible:
        return "lightness-impossible";
    case Cause::colourImpossible:
        return "colour-impossible";
    case Cause::gaugeMissing:
        return "gauge-missing";
    case Cause::gaugeNotPositive:
        return "gauge-not-positive";
    case Cause::lengthNotPositive:
        return "length-not-positive";
    case Cause::stretchedBelowOriginal:
        return "stretched-below-original";
    case Cause::relaxedAboveStretched:
        return "relaxed-above-stretched";
    case Cause::nothingStretched:
        return "nothing-stretched";
    case Cause::pullNotPositive:
        return "pull-not-positive";
    case Cause::pullNotLast:
        return "pull-not-last";
    case Cause::machineMissing:
        return "machine-missing";
    case Cause::programmeMissing:
        return "programme-missing";
    case Cause::drumEmpty:
        return "drum-empty";
    case Cause::printNotRested:
        return "print-not-rested";
    case Cause::printGone:
        return "print-gone";
    case Cause::printWrongKind:
        return "print-wrong-kind";
    case Cause::temperatureUnlikely:
        return "temperature-unlikely";
    case Cause::witnessGradeOffScale:
        return "witness-grade-off-scale";
    case Cause::limitsContradict:
        return "limits-contradict";
    case Cause::methodInUse:
        return "method-in-use";
    case Cause::methodOfProgram:
        return "method-of-program";
    case Cause::cyclesNotPositive:
        return "cycles-not-positive";
    case Cause::hoursNotAscending:
        return "hours-not-ascending";
    case Cause::pullsNotAscending:
        return "pulls-not-ascending";
    case Cause::stepsMissing:
        return "steps-missing";
    case Cause::quantityNameMissing:
        return "quantity-name-missing";
    case Cause::limitUnreadable:
        return "limit-unreadable";
    case Cause::boundUnfit:
        return "bound-unfit";
    case Cause::placeUnfit:
        return "place-unfit";
    }
    return "";
}

const char* nameOf(shop::PictureFaultCause cause) {
    using Cause = shop::PictureFaultCause;
    switch (cause) {
    case Cause::tooLarge:
        return "too-large";
    case Cause::notAPicture:
        return "not-a-picture";
    case Cause::tooManyPixels:
        return "too-many-pixels";
    case Cause::damaged:
        return "damaged";
    case Cause::unreadable:
        return "unreadable";
    }
    return "";
}

const char* nameOf(analytics::LabTextFault fault) {
    using Fault = analytics::LabTextFault;
    switch (fault) {
    case Fault::empty:
        return "empty";
    case Fault::notThreeNumbers:
        return "not-three-numbers";
    case Fault::letterMissing:
        return "letter-missing";
    case Fault::letterTwice:
        return "letter-twice";
    case Fault::notANumber:
        return "not-a-number";
    case Fault::commasUnclear:
        return "commas-unclear";
    }
    return "";
}

const char* nameOf(analytics::ColourMove move) {
    using Move = analytics::ColourMove;
    switch (move) {
    case Move::noChangeShown:
        return "none";
    case Move::towardGarment:
        return "garment";
    case Move::towardYellow:
        return "yellow";
    case Move::towardGrey:
        return "grey";
    case Move::undecided:
        return "undecided";
    }
    return "";
}

std::string shortNumber(double value) {
    const double tenths = std::round(value * 10.0);
    return numberText(value, std::abs(tenths - 10.0 * std::round(value)) < 0.5 ? 0 : 1);
}

std::string percentText(double percent, const Speech& speech) {
    return speech.text("tests.percent", {{"percent", shortNumber(percent)}});
}

/// The sentences "KEY.1", "KEY.2" … as many as the table has.
std::vector<std::string> numbered(const std::string& key, const Speech& speech) {
    std::vector<std::string> all;
    for (int i = 1; speech.language->has(key + std::to_string(i)) || Language::english().has(key + std::to_string(i));
         ++i) {
        all.push_back(speech.text(key + std::to_string(i)));
    }
    return all;
}

std::string chemistriesText(const std::vector<analytics::Chemistry>& all, const Speech& speech) {
    std::string text;
    for (const auto one : all) {
        text += (text.empty() ? "" : ", ") + speech.text(under("inks.chemistry.", records::toWord(one)));
    }
    return text;
}

} // namespace

std::string word(analytics::Quantity quantity, const std::string& ownName, const Speech& speech) {
    const auto known = under("tests.own.", ownName);
    if (!ownName.empty() && Language::english().has(known)) {
        return speech.text(known);
    }
    return ownName.empty() ? speech.text(under("tests.quantity.", records::toWord(quantity))) : ownName;
}

std::string word(analytics::CrackClass seen, const Speech& speech) {
    return speech.text(under("tests.crack.", records::toWord(seen)));
}
std::string word(records::TestOutcome outcome, const Speech& speech) {
    return speech.text(under("tests.outcome.", records::toWord(outcome)));
}
std::string word(records::TestKind kind, const Speech& speech) {
    return speech.text(under("tests.kind.", records::toWord(kind)));
}
std::string word(records::LoadWord load, const Speech& speech) {
    return speech.text(under("tests.load.word.", records::toWord(load)));
}
std::string word(records::PrintEnd end, const Speech& speech) {
    return speech.text(under("tests.end.", records::toWord(end)));
}
std::string word(analytics::Bound bound, const Speech& speech) {
    return speech.text(under("tests.bound.", records::toWord(bound)));
}

std::string methodName(const records::MethodDescribed& method, const Speech& speech) {
    return method.name.empty() ? speech.text("tests.method." + method.key + ".name") : method.name;
}

std::vector<std::string> methodSteps(const records::MethodDescribed& method, const Speech& speech) {
    return method.steps.empty() ? numbered("tests.method." + method.key + ".step.", speech) : method.steps;
}

std::vector<std::string> methodCautions(const records::MethodDescribed& method, const Speech& speech) {
    return method.cautions.empty() ? numbered("tests.method." + method.key + ".caution.", speech) : method.cautions;
}

std::string valueText(const analytics::TestValue& value, const Speech& speech) {
    struct Visitor {
        const Speech& speech;
        std::string operator()(analytics::Grade grade) const { return shortNumber(grade.number()); }
        std::string operator()(analytics::CrackClass seen) const { return word(seen, speech); }
        std::string operator()(analytics::RelativeLength length) const { return percentText(length.percent(), speech); }
        std::string operator()(double number) const { return numberText(number, 2); }
        std::string operator()(bool yes) const { return speech.text(yes ? "tests.yes" : "tests.no"); }
    };
    return std::visit(Visitor{speech}, value);
}

std::string resultText(const analytics::TestResult& result, const Speech& speech) {
    const auto value = valueText(result.value, speech);
    if (result.quantity == analytics::Quantity::crackClass && result.place.elongation) {
        return speech.text("tests.result.pull",
                           {{"seen", value}, {"percent", percentText(result.place.elongation->percent(), speech)}});
    }
    return speech.text("tests.result.line",
                       {{"what", word(result.quantity, result.ownName, speech)}, {"value", value}});
}

std::string criterionText(const analytics::Criterion& criterion, records::TestKind kind, const Speech& speech) {
    auto text = speech.text("tests.rule.line", {{"what", word(criterion.quantity, criterion.ownName, speech)},
                                                {"bound", word(criterion.bound, speech)},
                                                {"limit", valueText(criterion.limit, speech)}});
    if (criterion.place.cycle) {
        text += speech.text(kind == records::TestKind::bleedWatch ? "tests.rule.hours" : "tests.rule.cycle",
                            {{"cycle", std::to_string(*criterion.place.cycle)}});
    }
    if (criterion.place.elongation) {
        text +=
            speech.text("tests.rule.pull", {{"percent", percentText(criterion.place.elongation->percent(), speech)}});
    }
    return text;
}

std::string testTitle(const records::MethodDescribed& method, const std::optional<int>& cycle, const Speech& speech) {
    if (method.kind == records::TestKind::own || !cycle) {
        return method.kind == records::TestKind::own ? methodName(method, speech)
                                                     : speech.text(under("tests.title.", records::toWord(method.kind)));
    }
    return speech.text(method.kind == records::TestKind::bleedWatch ? "tests.title.hours" : "tests.title.cycle",
                       {{"cycle", std::to_string(*cycle)}});
}

std::string dayText(analytics::Date day, analytics::Date today, const Speech& speech) {
    const std::chrono::year_month_day date{day};
    const std::chrono::year_month_day now{today};
    const auto month = speech.text("tests.month." + std::to_string(static_cast<unsigned>(date.month())));
    const auto number = std::to_string(static_cast<unsigned>(date.day()));
    return date.year() == now.year()
               ? speech.text("tests.day", {{"day", number}, {"month", month}})
               : speech.text(
                     "tests.day-year",
                     {{"day", number}, {"month", month}, {"year", std::to_string(static_cast<int>(date.year()))}});
}

std::string dayWord(analytics::Date day, analytics::Date today, const Speech& speech) {
    constexpr int kWeek = 7;
    const auto ago = (today - day).count();
    return ago > 0 && ago < kWeek
               ? speech.text("tests.weekday." + std::to_string(std::chrono::weekday{day}.iso_encoding()))
               : dayText(day, today, speech);
}

std::string momentText(std::int64_t wallMilliseconds, const drivers::WallTime& now, const Speech& speech) {
    const auto clock = clockText(wallMilliseconds, now.utcOffsetMinutes);
    const auto day = drivers::localDay({wallMilliseconds, now.utcOffsetMinutes});
    const auto today = drivers::localDay(now);
    return day == today ? clock : dayText(day, today, speech) + " " + clock;
}

std::string dueText(const shop::DueTest& due, const drivers::WallTime& now, const Speech& speech) {
    switch (due.state) {
    case shop::DueState::now:
        return speech.text("tests.due.now");
    case shop::DueState::by:
        return speech.text("tests.due.by", {{"time", momentText(due.at, now, speech)}});
    case shop::DueState::today:
        return speech.text("tests.due.today");
    case shop::DueState::late:
        break;
    }
    return speech.text("tests.due.late", {{"day", dayWord(due.day, drivers::localDay(now), speech)}});
}

std::string dueCountText(const std::vector<shop::DueTest>& due, const Speech& speech) {
    const auto late =
        std::count_if(due.begin(), due.end(), [](const auto& one) { return one.state == shop::DueState::late; });
    if (due.empty()) {
        return speech.text("tests.due.none");
    }
    const auto count = std::to_string(due.size());
    return late == 0 ? speech.text("tests.due.count", {{"count", count}})
                     : speech.text("tests.due.count-late", {{"count", count}, {"late", std::to_string(late)}});
}

std::string sentence(const shop::TestFault& fault, const drivers::WallTime& now, const Speech& speech) {
    return speech.text(under("tests.fault.", nameOf(fault.cause)),
                       {{"text", fault.text},
                        {"number", fault.number ? std::to_string(*fault.number) : std::string{}},
                        {"time", fault.at ? momentText(*fault.at, now, speech) : std::string{}},
                        {"chemistries", chemistriesText(fault.chemistries, speech)}});
}

std::string sentence(const analytics::LabLineFault& fault, const Speech& speech) {
    const auto* text = std::get_if<analytics::LabTextFault>(&fault);
    return speech.text(text != nullptr ? under("tests.lab-fault.", nameOf(*text)) : "tests.lab-fault.impossible");
}

std::string sentence(const shop::PictureFault& fault, const Speech& speech) {
    return speech.text(under("tests.picture-fault.", nameOf(fault.cause)), {{"file", fault.file}});
}

std::string sentence(const shop::ColourFinding& found, shop::ColourScale scale, const Speech& speech) {
    const auto figures =
        speech.text(scale == shop::ColourScale::change ? "tests.colour.change" : "tests.colour.staining",
                    {{"grade", shortNumber(found.grade.number())},
                     {"cielab", numberText(found.cielab, 1)},
                     {"ciede", numberText(found.ciede2000, 1)}});
    return scale == shop::ColourScale::change
               ? figures + " " + speech.text(under("tests.move.", nameOf(found.move.move)))
               : figures;
}

std::string sentence(records::LoadWord load, const Speech& speech) {
    return speech.text(under("tests.load.sentence.", records::toWord(load)));
}

} // namespace holdfast::kiosk::wording
