#include "kiosk/wording/plan_sentences.hpp"

namespace holdfast::kiosk::wording {
namespace {

const char* nameOf(shop::PlanFaultCause cause) {
    using Cause = shop::PlanFaultCause;
    switch (cause) {
    case Cause::titleMissing:
        return "title-missing";
    case Cause::fabricMissing:
        return "fabric-missing";
    case Cause::fabricUnknown:
        return "fabric-unknown";
    case Cause::noLayer:
        return "no-layer";
    case Cause::tooManyLayers:
        return "too-many-layers";
    case Cause::inkMissing:
        return "ink-missing";
    case Cause::inkUnknown:
        return "ink-unknown";
    case Cause::bucketUnknown:
        return "bucket-unknown";
    case Cause::bucketClosed:
        return "bucket-closed";
    case Cause::bucketInkUnknown:
        return "bucket-ink-unknown";
    case Cause::piecesNotANumber:
        return "pieces-not-a-number";
    case Cause::textTooLong:
        return "text-too-long";
    case Cause::controlSign:
        return "control-sign";
    }
    return "";
}

const char* nameOf(shop::OrderFaultCause cause) {
    using Cause = shop::OrderFaultCause;
    switch (cause) {
    case Cause::empty:
        return "empty";
    case Cause::notText:
        return "not-text";
    case Cause::tooManyRows:
        return "too-many-rows";
    case Cause::columnMissing:
        return "column-missing";
    case Cause::columnTwice:
        return "column-twice";
    case Cause::rowOfOtherLength:
        return "row-of-other-length";
    case Cause::unclosedQuote:
        return "unclosed-quote";
    case Cause::formula:
        return "formula";
    case Cause::referenceTwice:
        return "reference-twice";
    case Cause::layersUnreadable:
        return "layers-unreadable";
    case Cause::plan:
        return "plan";
    }
    return "";
}

} // namespace

std::string sentence(const shop::PlanFault& fault, const Speech& speech) {
    return speech.text(std::string{"runs.fault."} + nameOf(fault.cause),
                       {{"text", fault.text},
                        {"layer", fault.layer ? std::to_string(*fault.layer) : std::string{}},
                        {"most", std::to_string(shop::kMostLayers)}});
}

std::string sentence(const shop::OrderFault& fault, const Speech& speech) {
    const auto what = fault.fault ? sentence(*fault.fault, speech)
                                  : speech.text(std::string{"runs.order."} + nameOf(fault.cause),
                                                {{"text", fault.text}, {"most", std::to_string(shop::kMostOrders)}});
    return fault.line > 0 ? speech.text("runs.order.at-line", {{"line", std::to_string(fault.line)}, {"what", what}})
                          : what;
}

} // namespace holdfast::kiosk::wording
