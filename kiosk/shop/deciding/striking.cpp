#include "kiosk/shop/deciding/striking.hpp"

namespace holdfast::kiosk::shop::deciding {

tl::expected<records::ReadingStruck, Faults> strikeFrom(const StrikeDraft& draft, const StrikeFacts& facts) {
    Fields fields;
    if (facts.struck) {
        fields.fault(Cause::alreadyStruck);
    }
    if (facts.refused) {
        fields.fault(Cause::refusedReading);
    }
    if (!facts.hasTrace || !draft.seen) {
        fields.fault(Cause::nothingSeen);
    }
    if (!draft.cause) {
        fields.fault(Cause::causeMissing, "cause");
    }
    if (!fields.faults().empty()) {
        return tl::unexpected(fields.faults());
    }
    return records::ReadingStruck{draft.reading, *draft.cause};
}

} // namespace holdfast::kiosk::shop::deciding
