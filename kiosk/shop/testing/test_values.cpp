#include "kiosk/shop/testing/test_values.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using analytics::Quantity;
using analytics::RelativeLength;
using analytics::TestResult;
using Cause = TestFaultCause;

std::optional<analytics::TestValue> valueFrom(const AnswerDraft& answer, const std::string& field, TestReader& read) {
    const auto typed = trimmed(answer.typed);
    switch (analytics::valueKindOf(answer.asked.quantity)) {
    case analytics::ValueKind::grade:
        if (const auto grade = read.grade(typed, field)) {
            return *grade;
        }
        return std::nullopt;
    case analytics::ValueKind::crackClass:
        if (const auto seen = records::fromWord<analytics::CrackClass>(typed)) {
            return *seen;
        }
        read.fault({Cause::wordUnknown, field, firstSigns(typed)});
        return std::nullopt;
    case analytics::ValueKind::relativeLength:
        if (const auto percent = read.number(typed, field)) {
            return RelativeLength::fromPercent(*percent);
        }
        return std::nullopt;
    case analytics::ValueKind::number:
        if (const auto number = read.number(typed, field)) {
            return *number;
        }
        return std::nullopt;
    case analytics::ValueKind::yesNo:
        if (typed == "yes" || typed == "no") {
            return typed == "yes";
        }
        read.fault({Cause::wordUnknown, field, firstSigns(typed)});
        return std::nullopt;
    }
    return std::nullopt;
}

Cause causeOf(analytics::ExtensionFault fault) {
    using Fault = analytics::ExtensionFault;
    switch (fault) {
    case Fault::notFinite:
        return Cause::notANumber;
    case Fault::gaugeNotPositive:
        return Cause::gaugeNotPositive;
    case Fault::lengthNotPositive:
        return Cause::lengthNotPositive;
    case Fault::stretchedBelowOriginal:
        return Cause::stretchedBelowOriginal;
    case Fault::relaxedAboveStretched:
        return Cause::relaxedAboveStretched;
    case Fault::nothingStretched:
        return Cause::nothingStretched;
    case Fault::noMarks:
        break;
    }
    return Cause::gaugeMissing;
}

/// Where a fault of lengths stands.
const char* fieldOf(analytics::ExtensionFault fault, const char* later) {
    return fault == analytics::ExtensionFault::gaugeNotPositive ? "original" : later;
}

std::optional<records::GaugeLengths> lengthsFrom(const LengthsDraft& draft, const std::string& field,
                                                 TestReader& read) {
    const auto before = read.faults().size();
    const auto original = read.number(draft.original, field + ".original");
    const auto stretched = read.number(draft.stretched, field + ".stretched");
    const auto relaxed = read.number(draft.relaxed, field + ".relaxed");
    if (read.faults().size() != before || (!original && !stretched && !relaxed)) {
        return std::nullopt;
    }
    if (!original) {
        read.fault({Cause::gaugeMissing, field + ".original"});
        return std::nullopt;
    }
    return records::GaugeLengths{*original, stretched, relaxed};
}

/// A figure of lengths, or its fault at the field it lies in.
std::optional<RelativeLength> figureOf(const tl::expected<RelativeLength, analytics::ExtensionFault>& figure,
                                       const std::string& field, const char* later, TestReader& read) {
    if (figure) {
        return *figure;
    }
    read.fault({causeOf(figure.error()), field + "." + fieldOf(figure.error(), later)});
    return std::nullopt;
}

void add(records::TestDone& done, Quantity quantity, RelativeLength value) {
    done.results.push_back({quantity, {}, value, {}});
}

/// Elongation of the furthest pull by its lengths; recovery and growth.
std::optional<RelativeLength> stretchByLengths(const records::GaugeLengths& lengths, TestReader& read,
                                               records::TestDone& done) {
    using analytics::millimetres;
    const std::string field{"lengthwise"};
    const auto original = millimetres(lengths.originalMm);
    if (!lengths.stretchedMm) {
        if (lengths.originalMm <= 0.0) {
            read.fault({Cause::gaugeNotPositive, field + ".original"});
        }
        return std::nullopt;
    }
    const auto pulled =
        figureOf(analytics::elongation(original, millimetres(*lengths.stretchedMm)), field, "stretched", read);
    if (pulled && lengths.relaxedMm) {
        const auto relaxed = millimetres(*lengths.relaxedMm);
        const auto back =
            figureOf(analytics::recovery(original, millimetres(*lengths.stretchedMm), relaxed), field, "relaxed", read);
        const auto grown = analytics::growth(original, relaxed);
        if (back && grown) {
            add(done, Quantity::recovery, *back);
            add(done, Quantity::growth, *grown);
        }
    }
    return pulled;
}

std::vector<analytics::Pull> pullsFrom(const TestDraft& draft, TestReader& read) {
    std::vector<analytics::Pull> pulls;
    for (std::size_t i = 0; i < draft.pulls.size(); ++i) {
        const auto& one = draft.pulls[i];
        const auto field = "pull." + std::to_string(i);
        const auto percent = read.number(one.percent, field + ".percent");
        if (percent && *percent <= 0.0) {
            read.fault({Cause::pullNotPositive, field + ".percent"});
        } else if (one.seen.empty()) {
            continue;
        } else if (const auto seen = records::fromWord<analytics::CrackClass>(one.seen); !seen) {
            read.fault({Cause::wordUnknown, field, firstSigns(one.seen)});
        } else if (percent) {
            pulls.push_back({RelativeLength::fromPercent(*percent), *seen});
        } else if (trimmed(one.percent).empty()) {
            read.fault({Cause::pullNotPositive, field + ".percent"});
        }
    }
    return pulls;
}

/// The worst class the rule allows; hairlines where it says nothing.
analytics::CrackClass allowedBy(const records::MethodDescribed& method) {
    for (const auto& one : method.rule ? method.rule->criteria : std::vector<analytics::Criterion>{}) {
        const auto* worst = std::get_if<analytics::CrackClass>(&one.limit);
        if (one.quantity == Quantity::crackClass && worst != nullptr) {
            return *worst;
        }
    }
    return analytics::CrackClass::hairline;
}

} // namespace

void readAnswers(const TestDraft& draft, const analytics::TestPlace& place, bool firstLook, TestReader& read,
                 records::TestDone& done) {
    for (std::size_t i = 0; i < draft.answers.size(); ++i) {
        const auto& answer = draft.answers[i];
        const auto field = "answer." + std::to_string(i);
        if (trimmed(answer.typed).empty()) {
            if (!firstLook && isNeeded(answer.asked, draft.method)) {
                read.fault({Cause::answerMissing, field});
            }
        } else if (const auto value = valueFrom(answer, field, read)) {
            done.results.push_back({answer.asked.quantity, answer.asked.ownName, *value, place});
        }
    }
}

void readPulls(const TestDraft& draft, TestReader& read, records::TestDone& done) {
    done.lengthwise = lengthsFrom(draft.lengthwise, "lengthwise", read);
    auto pulls = pullsFrom(draft, read);
    const auto measured = done.lengthwise ? stretchByLengths(*done.lengthwise, read, done) : std::nullopt;
    if (measured) {
        const auto last = std::max_element(pulls.begin(), pulls.end(), [](const auto& one, const auto& other) {
            return one.elongation < other.elongation;
        });
        if (last == pulls.end()) {
            read.fault({Cause::pullNotLast, "pull.0"});
            return;
        }
        last->elongation = *measured;
        if (last->elongation.fraction() <= 0.0) {
            read.fault({Cause::nothingStretched, "lengthwise.stretched"});
            return;
        }
    }
    if (pulls.empty()) {
        if (read.faults().empty()) {
            read.fault({Cause::answerMissing, "pull.0"});
        }
        return;
    }
    for (const auto& pull : pulls) {
        analytics::TestPlace place;
        place.elongation = pull.elongation;
        done.results.push_back({Quantity::crackClass, {}, pull.seen, place});
    }
    if (const auto finding = analytics::readPulls(pulls, allowedBy(draft.method)); finding && finding->held) {
        add(done, Quantity::elongationHeld, *finding->held);
    }
}

void readShrink(const TestDraft& draft, TestReader& read, records::TestDone& done) {
    struct Direction {
        const LengthsDraft& typed;
        const char* field;
        std::optional<records::GaugeLengths>& kept;
        Quantity quantity;
    };
    const std::array<Direction, 2> both{{{draft.lengthwise, "lengthwise", done.lengthwise, Quantity::changeLengthwise},
                                         {draft.widthwise, "widthwise", done.widthwise, Quantity::changeWidthwise}}};
    for (const auto& one : both) {
        one.kept = lengthsFrom(one.typed, one.field, read);
        if (!one.kept) {
            if (trimmed(one.typed.original).empty() && isNeeded({one.quantity, {}}, draft.method)) {
                read.fault({Cause::answerMissing, std::string{one.field} + ".original"});
            }
            continue;
        }
        if (!one.kept->relaxedMm) {
            read.fault({Cause::answerMissing, std::string{one.field} + ".relaxed"});
            continue;
        }
        const auto change = figureOf(analytics::dimensionalChange(analytics::millimetres(one.kept->originalMm),
                                                                  analytics::millimetres(*one.kept->relaxedMm)),
                                     one.field, "relaxed", read);
        if (change) {
            add(done, one.quantity, *change);
        }
    }
}

std::optional<analytics::Lab> labFrom(const LabDraft& draft, const std::string& field, TestReader& read) {
    const auto before = read.faults().size();
    const auto l = read.number(draft.l, field + ".l");
    const auto a = read.number(draft.a, field + ".a");
    const auto b = read.number(draft.b, field + ".b");
    if (read.faults().size() != before || (!l && !a && !b)) {
        return std::nullopt;
    }
    if (!l || !a || !b) {
        read.fault({Cause::labIncomplete, field + (!l ? ".l" : !a ? ".a" : ".b")});
        return std::nullopt;
    }
    const analytics::Lab colour{*l, *a, *b};
    if (const auto fault = analytics::faultOf(colour)) {
        const bool light = *fault == analytics::ColourFault::lightnessOutOfRange;
        const bool isA = !light && analytics::faultOf({*l, *a, 0.0}).has_value();
        read.fault({light ? Cause::lightnessImpossible : Cause::colourImpossible,
                    field + (light ? ".l"
                             : isA ? ".a"
                                   : ".b"),
                    firstSigns(trimmed(light ? draft.l
                                       : isA ? draft.a
                                             : draft.b))});
        return std::nullopt;
    }
    return colour;
}

void readColours(const TestDraft& draft, const analytics::TestPlace& place, TestReader& read, records::TestDone& done) {
    done.before = labFrom(draft.before, "before", read);
    done.after = labFrom(draft.after, "after", read);
    if (done.before && done.after) {
        if (const auto difference = analytics::ciede2000(*done.before, *done.after)) {
            done.results.push_back({Quantity::colourDifference, {}, *difference, place});
        }
    }
}

} // namespace holdfast::kiosk::shop
