#include "kiosk/shop/instruments/instrument_draft.hpp"

#include "analytics/metrology/instrument_faults.hpp"
#include "drivers/link/address.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace holdfast::kiosk::shop::instruments {
namespace {

using analytics::InstrumentKind;

bool isSensor(InstrumentKind kind) {
    return kind == InstrumentKind::probe || kind == InstrumentKind::spot;
}

bool sameName(const std::string& one, const std::string& other) {
    return one.size() == other.size() && std::equal(one.begin(), one.end(), other.begin(), [](char a, char b) {
               return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
           });
}

std::vector<std::string> words(const std::string& text) {
    std::vector<std::string> all;
    std::size_t begin = 0;
    while ((begin = text.find_first_not_of(" \t\r\n;/", begin)) != std::string::npos) {
        const auto end = std::min(text.find_first_of(" \t\r\n;/", begin), text.size());
        all.push_back(text.substr(begin, end - begin));
        begin = end;
    }
    return all;
}

std::string stepsText(const std::vector<analytics::AuthoredTemperature>& steps, analytics::TemperatureUnit unit) {
    std::string text;
    for (const auto& step : steps) {
        text += (text.empty() ? "" : " ") + authoredTyped(step, unit);
    }
    return text;
}

class Reading final {
public:
    Reading(const InstrumentDraft& draft, const Surroundings& around)
        : m_draft{draft}, m_around{around}, m_form{draft.unit} {
        if (draft.before) {
            m_made = *draft.before;
        }
        m_made.spec = {};
        m_made.spec.kind = draft.kind;
    }

    tl::expected<records::InstrumentDescribed, std::vector<FormFault>> take() {
        readName();
        if (m_draft.kind == InstrumentKind::strip) {
            readStrip();
        } else {
            readSensor();
        }
        readPlacement();
        readAttachment();
        readPack();
        addFaults();
        if (!m_form.faults().empty()) {
            return tl::unexpected(std::move(m_form.faults()));
        }
        return m_made;
    }

private:
    [[nodiscard]] const records::InstrumentSpec* before() const {
        return m_draft.before ? &m_draft.before->spec : nullptr;
    }
    template <class T>
    std::optional<T> authoredBefore(std::optional<T> records::InstrumentSpec::*member) const {
        return before() != nullptr ? before()->*member : std::nullopt;
    }

    void readName() {
        m_made.spec.name = m_form.text(m_draft.name, "name");
        if (m_made.spec.name.empty()) {
            m_form.fault(FormCause::nameMissing, "name");
        }
        for (const auto& other : m_around.others) {
            if (other.instrument != m_made.instrument && sameName(other.name, m_made.spec.name)) {
                m_form.fault(FormCause::nameTaken, "name", other.name);
            }
        }
    }

    void readSensor() {
        auto& spec = m_made.spec;
        if (isSensor(m_draft.kind)) {
            spec.type = m_draft.type;
            spec.toleranceClass = m_draft.toleranceClass;
        }
        using Spec = records::InstrumentSpec;
        spec.statedTolerance =
            m_form.difference(m_draft.statedTolerance, "tolerance", authoredBefore(&Spec::statedTolerance));
        spec.resolution = m_form.difference(m_draft.resolution, "resolution", authoredBefore(&Spec::resolution));
        const bool had = before() != nullptr && before()->range;
        const auto low =
            m_form.temperature(m_draft.rangeLow, "range.low", had ? std::optional{before()->range->low} : std::nullopt);
        const auto high = m_form.temperature(m_draft.rangeHigh, "range.high",
                                             had ? std::optional{before()->range->high} : std::nullopt);
        if (low && high) {
            spec.range = records::AuthoredRange{*low, *high};
        } else if (trimmed(m_draft.rangeLow).empty() != trimmed(m_draft.rangeHigh).empty()) {
            m_form.fault(FormCause::rangeIncomplete, low ? "range.high" : "range.low");
        }
    }

    void readStrip() {
        records::AuthoredStrip strip;
        const auto* old = before() != nullptr && before()->strip ? &*before()->strip : nullptr;
        const auto typed = words(m_draft.steps);
        if (typed.empty()) {
            m_form.fault(FormCause::stepsMissing, "steps");
        } else if (typed.size() > kMostSteps) {
            m_form.fault(FormCause::tooManySteps, "steps", std::to_string(typed.size()));
        }
        if (old != nullptr && trimmed(m_draft.steps) == stepsText(old->steps, m_draft.unit)) {
            strip.steps = old->steps;
        } else {
            readSteps(typed, strip);
        }
        const auto tolerance = m_form.difference(m_draft.stripTolerance, "strip-tolerance",
                                                 old != nullptr ? std::optional{old->tolerance} : std::nullopt);
        if (trimmed(m_draft.stripTolerance).empty()) {
            m_form.fault(FormCause::valueMissing, "strip-tolerance");
        }
        strip.tolerance = tolerance.value_or(analytics::AuthoredDifference{0.0, m_draft.unit});
        strip.expiry = m_form.date(m_draft.expiry, "expiry", false);
        m_made.spec.strip = strip;
    }

    void readSteps(const std::vector<std::string>& typed, records::AuthoredStrip& strip) {
        int item = 0;
        for (const auto& word : typed) {
            ++item;
            const auto value = numberFrom(word);
            if (!value) {
                m_form.fault(FormCause::stepNotANumber, "steps", word, item);
                continue;
            }
            strip.steps.push_back({*value, m_draft.unit});
        }
    }

    void readPlacement() {
        m_made.spec.placement = m_draft.placement;
        m_made.spec.ownPlacement = m_form.difference(m_draft.ownPlacement, "own-placement",
                                                     authoredBefore(&records::InstrumentSpec::ownPlacement));
    }

    void readAttachment() {
        m_made.catalogue.clear();
        m_made.address.clear();
        if (m_draft.kind != InstrumentKind::probe) {
            return;
        }
        m_made.catalogue = trimmed(m_draft.catalogue);
        m_made.address = m_form.text(m_draft.address, "address");
        const auto& known = m_around.catalogue;
        if (!m_made.catalogue.empty() && std::find(known.begin(), known.end(), m_made.catalogue) == known.end()) {
            m_form.fault(FormCause::catalogueUnknown, "catalogue", m_made.catalogue);
        }
        if (m_made.address.empty()) {
            return;
        }
        if (m_made.catalogue.empty()) {
            m_form.fault(FormCause::addressWithoutCatalogue, "address");
        }
        if (!drivers::addressFromText(m_made.address)) {
            m_form.fault(FormCause::addressUnreadable, "address", m_made.address);
        }
        for (const auto& other : m_around.others) {
            if (other.instrument != m_made.instrument && other.address == m_made.address) {
                m_form.fault(FormCause::addressTaken, "address", other.name);
            }
        }
    }

    /// The singles of a pack keep their numbers for ever: only a new packet is given any.
    void readPack() {
        if (m_draft.before || m_draft.kind != InstrumentKind::strip) {
            if (m_draft.kind != InstrumentKind::strip) {
                m_made.pack.reset();
            }
            return;
        }
        const auto text = trimmed(m_draft.packCount);
        if (text.empty()) {
            return;
        }
        const auto count = numberFrom(text);
        if (!count || *count != std::floor(*count) || *count < 1 || *count > kMostInPack) {
            m_form.fault(FormCause::countInvalid, "count", text);
            return;
        }
        m_made.pack = records::StripPack{0, static_cast<int>(*count), m_form.text(m_draft.batch, "batch")};
    }

    void addFaults() {
        using Kind = analytics::InstrumentFaultKind;
        for (const auto& fault : analytics::validate(records::toInstrument(m_made.spec))) {
            const auto item = fault.item ? std::optional{static_cast<int>(*fault.item) + 1} : std::nullopt;
            switch (fault.kind) {
            case Kind::classWithoutType:
                m_form.fault(FormCause::classWithoutType, "class");
                break;
            case Kind::classNotDefinedForType:
                m_form.fault(FormCause::classNotDefined, "class");
                break;
            case Kind::statedToleranceInvalid:
                m_form.fault(FormCause::toleranceInvalid, "tolerance");
                break;
            case Kind::stripToleranceInvalid:
                m_form.fault(FormCause::toleranceInvalid, "strip-tolerance");
                break;
            case Kind::resolutionInvalid:
                m_form.fault(FormCause::resolutionInvalid, "resolution");
                break;
            case Kind::placementInvalid:
                m_form.fault(FormCause::placementInvalid, "own-placement");
                break;
            case Kind::rangeReversed:
                m_form.fault(FormCause::rangeReversed, "range.high");
                break;
            case Kind::stripStepsOutOfOrder:
                m_form.fault(FormCause::stepsOutOfOrder, "steps", {}, item);
                break;
            default:
                break; // no steps: told while reading; what is not finite cannot be typed
            }
        }
    }

    const InstrumentDraft& m_draft;
    const Surroundings& m_around;
    FormReader m_form;
    records::InstrumentDescribed m_made;
};

} // namespace

InstrumentDraft draftOf(const records::InstrumentDescribed& described, analytics::TemperatureUnit unit) {
    const auto& spec = described.spec;
    InstrumentDraft draft;
    draft.unit = unit;
    draft.name = spec.name;
    draft.kind = spec.kind;
    draft.type = spec.type;
    draft.toleranceClass = spec.toleranceClass;
    draft.statedTolerance = authoredTyped(spec.statedTolerance, unit);
    draft.resolution = authoredTyped(spec.resolution, unit);
    if (spec.range) {
        draft.rangeLow = authoredTyped(std::optional{spec.range->low}, unit);
        draft.rangeHigh = authoredTyped(std::optional{spec.range->high}, unit);
    }
    draft.placement = spec.placement;
    draft.ownPlacement = authoredTyped(spec.ownPlacement, unit);
    if (spec.strip) {
        draft.steps = stepsText(spec.strip->steps, unit);
        draft.stripTolerance = authoredTyped(std::optional{spec.strip->tolerance}, unit);
        draft.expiry = spec.strip->expiry ? records::toText(*spec.strip->expiry) : std::string{};
    }
    draft.catalogue = described.catalogue;
    draft.address = described.address;
    draft.before = described;
    return draft;
}

tl::expected<records::InstrumentDescribed, std::vector<FormFault>> instrumentFrom(const InstrumentDraft& draft,
                                                                                  const Surroundings& around) {
    return Reading{draft, around}.take();
}

records::InstrumentDescribed numbered(records::InstrumentDescribed described, const std::string& freshId,
                                      std::int64_t nextNumber) {
    if (described.instrument.empty()) {
        described.instrument = freshId;
    }
    if (described.pack && described.pack->firstNumber == 0) {
        described.pack->firstNumber = nextNumber;
        nextNumber += described.pack->count;
    }
    if (!described.number) {
        described.number = nextNumber;
    }
    return described;
}

} // namespace holdfast::kiosk::shop::instruments
