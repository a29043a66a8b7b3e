#include "kiosk/records/verdict_json.hpp"

#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {
namespace {

using analytics::MarginRange;
using analytics::Temperature;
using analytics::TemperatureDifference;

Json nullable(const std::optional<Temperature>& t) {
    return t ? Json(t->celsius()) : Json(nullptr);
}
Json nullable(const std::optional<TemperatureDifference>& d) {
    return d ? Json(d->celsius()) : Json(nullptr);
}
Json nullable(const std::optional<analytics::GuardedLimit>& limit) {
    return limit ? Json(limit->limit.celsius()) : Json(nullptr);
}

/// A number when both ends are one, [low, high] with null at an open end, null without any.
Json marginJson(const std::optional<MarginRange>& margin) {
    if (!margin || (!margin->low && !margin->high)) {
        return nullptr;
    }
    if (margin->low && margin->high && *margin->low == *margin->high) {
        return margin->low->celsius();
    }
    return Json::array({nullable(margin->low), nullable(margin->high)});
}

Json culpritsJson(const std::vector<analytics::Culprit>& culprits) {
    Json all = Json::array();
    for (const auto& culprit : culprits) {
        Json one{{"kind", wordJson(culprit.kind)}};
        one["position"] = culprit.position ? Json(*culprit.position) : Json(nullptr);
        one["name"] = culprit.name;
        one["limit_c"] = culprit.limit.celsius();
        all.push_back(one);
    }
    return all;
}

Json waysOutJson(const std::vector<analytics::WayOut>& ways) {
    Json all = Json::array();
    for (const auto& way : ways) {
        Json changes = Json::array();
        for (const auto& change : way.changes) {
            changes.push_back(Json{{"position", change.position}, {"from", change.from}, {"to", change.to}});
        }
        Json one{{"changes", changes}};
        one["instrument"] = way.instrument ? Json(*way.instrument) : Json(nullptr);
        one["lower_c"] = way.lower.celsius();
        one["upper_c"] = nullable(way.upper);
        all.push_back(one);
    }
    return all;
}

Json layersJson(const std::vector<analytics::LayerVerdict>& layers) {
    Json all = Json::array();
    for (const auto& layer : layers) {
        all.push_back(Json{{"position", layer.position},
                           {"colour", layer.colour},
                           {"family", layer.family},
                           {"verdict", wordJson(layer.word)},
                           {"margin_c", marginJson(layer.margin)},
                           {"limit_c", layer.limit.limit.celsius()}});
    }
    return all;
}

void set(Json& json, const char* key, const std::optional<Temperature>& t) {
    if (t) {
        json[key] = t->celsius();
    }
}
void set(Json& json, const char* key, const std::optional<TemperatureDifference>& d) {
    if (d) {
        json[key] = d->celsius();
    }
}

} // namespace

Json reasonJson(const analytics::Reason& reason, const TextOf& textOf) {
    Json json{{"code", wordJson(reason.code)}};
    if (textOf) {
        json["text"] = textOf(reason);
    }
    setIf(json, "layer", reason.layer);
    setIf(json, "subject", reason.subject);
    set(json, "value_c", reason.value);
    set(json, "limit_c", reason.limit);
    set(json, "other_c", reason.other);
    set(json, "guard_c", reason.guard);
    set(json, "difference_c", reason.difference);
    setSecondsIf(json, "duration_s", reason.duration);
    setSecondsIf(json, "needed_s", reason.needed);
    setSecondsIf(json, "at_s", reason.at);
    setIf(json, "count", reason.count);
    return json;
}

void read(ObjectReader& from, analytics::Reason& reason) {
    reason.code = from.word<analytics::ReasonCode>("code");
    (void)from.optionalText("text");
    reason.layer = from.optionalCount("layer", 1);
    reason.subject = from.textOr("subject");
    reason.value = from.optionalCelsius("value_c");
    reason.limit = from.optionalCelsius("limit_c");
    reason.other = from.optionalCelsius("other_c");
    reason.guard = from.optionalKelvins("guard_c");
    reason.difference = from.optionalKelvins("difference_c");
    reason.duration = from.optionalSeconds("duration_s");
    reason.needed = from.optionalSeconds("needed_s");
    reason.at = from.optionalSeconds("at_s");
    reason.count = from.optionalCount("count");
}

Json windowJson(const analytics::RunWindow& window) {
    return Json{{"state", wordJson(window.state)},
                {"narrow", window.narrow},
                {"bleed_not_provable", window.bleedNotProvable},
                {"lower_c", window.lower.celsius()},
                {"hold_s", window.hold.count()},
                {"upper_hard_c", nullable(window.upperHard)},
                {"upper_bleed_c", nullable(window.upperBleed)},
                {"upper_c", nullable(window.upper)},
                {"aim_c", nullable(window.aim)},
                {"bleeds", window.bleeds},
                {"culprits", culpritsJson(window.culprits)},
                {"ways_out", waysOutJson(window.waysOut)},
                {"ways_out_left_out", window.waysOutLeftOut}};
}

Json verdictJson(const analytics::Verdict& verdict, const analytics::RunWindow* window, const TextOf& textOf) {
    Json reasons = Json::array();
    for (const auto& reason : verdict.reasons) {
        reasons.push_back(reasonJson(reason, textOf));
    }
    return Json{
        {"verdict", wordJson(verdict.word)},      {"bleed_not_ruled_out", verdict.bleedNotRuledOut},
        {"margin_c", marginJson(verdict.margin)}, {"upper_margin_c", nullable(verdict.upperMargin)},
        {"guard_c", verdict.guard.celsius()},     {"reasons", reasons},
        {"layers", layersJson(verdict.layers)},   {"window", window != nullptr ? windowJson(*window) : Json(nullptr)}};
}

std::string_view wordOf(analytics::Word word) noexcept {
    return toWord(word);
}
std::string_view wordOf(analytics::WindowState state) noexcept {
    return toWord(state);
}
std::string_view wordOf(analytics::ReasonCode code) noexcept {
    return toWord(code);
}
std::string_view wordOf(analytics::Remedy remedy) noexcept {
    return toWord(remedy);
}
std::optional<analytics::Word> verdictWordFrom(std::string_view text) noexcept {
    return fromWord<analytics::Word>(text);
}
std::optional<analytics::WindowState> windowStateFrom(std::string_view text) noexcept {
    return fromWord<analytics::WindowState>(text);
}
std::optional<analytics::ReasonCode> reasonCodeFrom(std::string_view text) noexcept {
    return fromWord<analytics::ReasonCode>(text);
}
std::optional<analytics::Remedy> remedyFrom(std::string_view text) noexcept {
    return fromWord<analytics::Remedy>(text);
}

} // namespace holdfast::kiosk::records
