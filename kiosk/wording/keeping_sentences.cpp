#include "kiosk/wording/keeping_sentences.hpp"

namespace holdfast::kiosk::wording {
namespace {

const char* nameOf(records::Role role) {
    switch (role) {
    case records::Role::operatorAtDryer:
        return "operator";
    case records::Role::qualityAssurance:
        return "qa";
    case records::Role::owner:
        return "owner";
    }
    return "";
}

const char* nameOf(shop::Right right) {
    using Right = shop::Right;
    switch (right) {
    case Right::logTests:
        return "log-tests";
    case Right::decideHolds:
        return "decide-holds";
    case Right::takeComplaints:
        return "take-complaints";
    case Right::describeMethods:
        return "describe-methods";
    case Right::reviseInks:
        return "revise-inks";
    case Right::keepInstruments:
        return "keep-instruments";
    case Right::describeDryers:
        return "describe-dryers";
    case Right::changeSettings:
        return "change-settings";
    case Right::exchangeShopFile:
        return "exchange-shop-file";
    case Right::changePeople:
        return "change-people";
    }
    return "";
}

const char* nameOf(shop::PinFault fault) {
    using Fault = shop::PinFault;
    switch (fault) {
    case Fault::tooShort:
        return "too-short";
    case Fault::tooLong:
        return "too-long";
    case Fault::notDigits:
        return "not-digits";
    case Fault::allEqual:
        return "all-equal";
    case Fault::sequence:
        return "sequence";
    }
    return "";
}

const char* nameOf(shop::PersonFaultCause cause) {
    using Cause = shop::PersonFaultCause;
    switch (cause) {
    case Cause::nameMissing:
        return "name-missing";
    case Cause::nameTooLong:
        return "text-too-long";
    case Cause::controlSign:
        return "control-sign";
    case Cause::nameTaken:
        return "name-taken";
    case Cause::noRole:
        return "no-role";
    case Cause::lastOwner:
        return "last-owner";
    case Cause::pin:
        return "pin";
    case Cause::pinsDiffer:
        return "pins-differ";
    case Cause::pinNotMade:
        return "pin-not-made";
    }
    return "";
}

const char* nameOf(shop::DryerFaultCause cause) {
    using Cause = shop::DryerFaultCause;
    switch (cause) {
    case Cause::nameMissing:
        return "name-missing";
    case Cause::textTooLong:
        return "text-too-long";
    case Cause::controlSign:
        return "control-sign";
    case Cause::nameTaken:
        return "dryer-taken";
    case Cause::notANumber:
        return "not-a-number";
    case Cause::notPositive:
        return "not-positive";
    case Cause::slowestAboveFastest:
        return "slowest-above-fastest";
    case Cause::beltOutside:
        return "belt-outside";
    case Cause::setPointAboveHighest:
        return "set-point-above-highest";
    }
    return "";
}

const char* nameOf(shop::SettingFaultCause cause) {
    using Cause = shop::SettingFaultCause;
    switch (cause) {
    case Cause::unknownKey:
        return "unknown-key";
    case Cause::notAChoice:
        return "not-a-choice";
    case Cause::notANumber:
        return "not-a-number";
    case Cause::notWhole:
        return "not-whole";
    case Cause::outOfRange:
        return "out-of-range";
    case Cause::namesTooLong:
        return "names-too-long";
    case Cause::controlSign:
        return "control-sign";
    case Cause::notAPrinter:
        return "not-a-printer";
    }
    return "";
}

const char* nameOf(records::FaultCode code) {
    using Code = records::FaultCode;
    switch (code) {
    case Code::notJson:
        return "not-json";
    case Code::unknownKey:
        return "unknown-key";
    case Code::missingKey:
        return "missing-key";
    case Code::wrongType:
        return "wrong-type";
    case Code::badValue:
        return "bad-value";
    case Code::unknownKind:
        return "unknown-kind";
    case Code::newerVersion:
        return "newer-version";
    case Code::inconsistent:
        return "inconsistent";
    }
    return "";
}

const char* nameOf(shop::SignInCause cause) {
    using Cause = shop::SignInCause;
    switch (cause) {
    case Cause::personUnknown:
        return "person-unknown";
    case Cause::badgeReplaced:
        return "badge-replaced";
    case Cause::personLeft:
        return "person-left";
    case Cause::notEntitled:
        return "not-entitled";
    case Cause::samePerson:
        return "same-person";
    case Cause::noPin:
        return "no-pin";
    case Cause::pinWrong:
        return "pin-wrong";
    case Cause::tooSoon:
        return "too-soon";
    }
    return "";
}

std::string joined(const std::vector<std::string>& parts) {
    std::string all;
    for (const auto& part : parts) {
        all += (all.empty() ? "" : ", ") + part;
    }
    return all;
}

} // namespace

std::string word(records::Role role, const Speech& speech) {
    return speech.text(std::string{"shop.role."} + nameOf(role));
}

std::string words(const std::vector<records::Role>& roles, const Speech& speech) {
    std::string all;
    for (const auto role : roles) {
        all = all.empty() ? word(role, speech)
                          : speech.text("shop.role-or", {{"first", all}, {"second", word(role, speech)}});
    }
    return all;
}

std::string word(shop::Right right, const Speech& speech) {
    return speech.text(std::string{"shop.right."} + nameOf(right));
}

std::string sentence(shop::PinFault fault, const Speech& speech) {
    return speech.text(std::string{"shop.pin."} + nameOf(fault),
                       {{"fewest", std::to_string(shop::kFewestDigits)}, {"most", std::to_string(shop::kMostDigits)}});
}

std::string sentence(const shop::PersonFault& fault, const Speech& speech) {
    return fault.pin ? sentence(*fault.pin, speech)
                     : speech.text(std::string{"shop.fault."} + nameOf(fault.cause), {{"text", fault.text}});
}

std::string sentence(const shop::DryerFault& fault, const Speech& speech) {
    return speech.text(std::string{"shop.fault."} + nameOf(fault.cause), {{"text", fault.text}});
}

std::string sentence(const shop::SettingFault& fault, const Speech& speech) {
    return speech.text(std::string{"shop.fault."} + nameOf(fault.cause),
                       {{"text", fault.text},
                        {"low", numberText(fault.low, fault.low < 1.0 ? 1 : 0)},
                        {"high", numberText(fault.high, 0)}});
}

std::string sentence(const records::RecordFault& fault, const Speech& speech) {
    return speech.text(std::string{"shop.file-fault."} + nameOf(fault.code), {{"path", fault.path}});
}

std::string sentence(const shop::SignInRefusal& refusal, shop::Right right, const std::string& name,
                     const Speech& speech) {
    std::string key = std::string{"shop.sign."} + nameOf(refusal.cause);
    if (refusal.cause == shop::SignInCause::pinWrong && refusal.wait.count() > 0) {
        key += "-wait";
    }
    return speech.text(key, {{"name", name},
                             {"right", word(right, speech)},
                             {"roles", words(refusal.may, speech)},
                             {"seconds", std::to_string(refusal.wait.count())}});
}

std::vector<std::string> sentences(const ledger::IntegrityReport& report, const Speech& speech) {
    std::vector<std::string> all;
    const auto add = [&](const char* key, const Arguments& arguments = {}) {
        all.push_back(speech.text(std::string{"shop.check."} + key, arguments));
    };
    add(report.sound() ? "sound" : "not-sound");
    add("entries", {{"entries", std::to_string(report.entries)}, {"blobs", std::to_string(report.blobs)}});
    if (report.droppedBlobs > 0) {
        add("dropped", {{"blobs", std::to_string(report.droppedBlobs)}});
    }
    if (report.firstBadSequence) {
        add("bad-entry", {{"entry", std::to_string(*report.firstBadSequence)}});
    }
    if (!report.badBlobs.empty()) {
        add("bad-blobs", {{"blobs", std::to_string(report.badBlobs.size())}});
    }
    if (!report.differingTables.empty()) {
        add("tables", {{"tables", joined(report.differingTables)}});
    } else if (!report.readTablesCompared) {
        add("tables-not-compared");
    }
    if (!report.alteredGuards.empty()) {
        add("guards", {{"guards", joined(report.alteredGuards)}});
    }
    if (!report.structureFaults.empty()) {
        add("structure", {{"fault", report.structureFaults.front()}});
    }
    if (!report.sound()) {
        add("what-to-do");
    }
    return all;
}

} // namespace holdfast::kiosk::wording
