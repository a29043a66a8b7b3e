#include "kiosk/command/facts_command.hpp"

#include "analytics/cure/names.hpp"
#include "kiosk/command/facts.hpp"
#include "kiosk/command/trace_faults.hpp"
#include "kiosk/command/typed_values.hpp"
#include "kiosk/wording/sentences.hpp"

#include <nlohmann/json.hpp>

#include <charconv>
#include <ostream>

namespace holdfast::kiosk::command {

namespace {

using ReadTyped = tl::expected<void, CommandFault>;

tl::unexpected<CommandFault> unreadable(const char* key, const std::string& text) {
    return tl::unexpected(CommandFault{key, {{"text", text}}});
}

bool readNumber(std::string_view text, double& out) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), out);
    return error == std::errc{} && end == text.data() + text.size();
}

void setIfTyped(std::optional<std::string>& option, const std::string& text) {
    if (!text.empty()) {
        option = text;
    }
}

ReadTyped readSeparator(const std::string& text, TraceFileOptions& file) {
    if (text == "tab" || text == "\\t") {
        file.separator = '\t';
    } else if (text == "space") {
        file.separator = ' ';
    } else if (text.size() == 1) {
        file.separator = text.front();
    } else if (!text.empty()) {
        return unreadable("separator-unreadable", text);
    }
    return {};
}

ReadTyped readRange(const std::string& text, TraceFileOptions& file) {
    if (text.empty()) {
        return {};
    }
    const auto dots = text.find("..");
    std::pair<double, double> range;
    if (dots == std::string::npos || !readNumber(std::string_view{text}.substr(0, dots), range.first) ||
        !readNumber(std::string_view{text}.substr(dots + 2), range.second)) {
        return unreadable("range-unreadable", text);
    }
    file.range = range;
    return {};
}

ReadTyped readFileOptions(const FactsTyped& typed, TraceFileOptions& file) {
    setIfTyped(file.time, typed.time);
    setIfTyped(file.temperature, typed.temperature);
    setIfTyped(file.flag, typed.flag);
    file.missing = typed.missing;
    if (typed.unit == "C") {
        file.unit = analytics::TemperatureUnit::celsius;
    } else if (typed.unit == "F") {
        file.unit = analytics::TemperatureUnit::fahrenheit;
    } else if (!typed.unit.empty()) {
        return unreadable("unit-unreadable", typed.unit);
    }
    if (auto separator = readSeparator(typed.separator, file); !separator) {
        return separator;
    }
    return readRange(typed.range, file);
}

ReadTyped readFactsOptions(const FactsTyped& typed, FactsOptions& facts) {
    if (typed.join == "bridge") {
        facts.join = FactsJoin::bridge;
    } else if (typed.join == "split") {
        facts.join = FactsJoin::split;
    } else if (!typed.join.empty()) {
        return unreadable("join-unreadable", typed.join);
    }
    for (const auto& text : typed.atLeast) {
        const auto level = temperatureFrom(text);
        if (!level) {
            return unreadable("at-least-unreadable", text);
        }
        facts.atLeast.push_back(*level);
    }
    return {};
}

void printFacts(const Facts& facts, std::ostream& out) {
    const wording::Speech speech{&wording::Language::english(), {analytics::TemperatureUnit::celsius, 2}, {}};
    const auto seconds = [](analytics::Duration time) { return wording::numberText(time.count(), 3) + " s"; };
    out << speech.text("facts.samples",
                       {{"samples", std::to_string(facts.samples)}, {"valid", std::to_string(facts.valid)}})
        << '\n';
    if (facts.peak) {
        out << speech.text("facts.peak",
                           {{"value", speech.figures.temperature(facts.peak->t)}, {"at", seconds(facts.peak->at)}})
            << '\n';
    }
    if (facts.sustainedPeak) {
        out << speech.text("facts.sustained", {{"value", speech.figures.temperature(*facts.sustainedPeak)}}) << '\n';
    }
    for (const auto& spell : facts.spells) {
        out << speech.text("facts.spell", {{"value", speech.figures.temperature(spell.atLeast)},
                                           {"total", seconds(spell.total)},
                                           {"longest", seconds(spell.longest)}})
            << '\n';
    }
    if (facts.greatestRise) {
        out << speech.text("facts.rise",
                           {{"value", wording::numberText(facts.greatestRise->celsiusPerSecond(), 3) + " °C/s"}})
            << '\n';
    }
    for (const auto& item : facts.breaks) {
        out << speech.text("facts.break", {{"kind", std::string{analytics::nameOf(item.kind)}},
                                           {"from", seconds(item.from)},
                                           {"to", seconds(item.to)}})
            << '\n';
    }
    for (const auto& item : facts.dropped) {
        out << speech.text("facts.dropped",
                           {{"count", std::to_string(item.count)}, {"kind", std::string{nameOf(item.why)}}})
            << '\n';
    }
}

} // namespace

int runFacts(const FactsTyped& typed, std::ostream& out, std::ostream& err) {
    constexpr int kUnusable = 2;
    const auto refuse = [&err](const CommandFault& fault) {
        err << fault.sentence(wording::Language::english()) << '\n';
        return kUnusable;
    };
    TraceFileOptions fileOptions;
    FactsOptions factsOptions;
    if (const auto read = readFileOptions(typed, fileOptions); !read) {
        return refuse(read.error());
    }
    if (const auto read = readFactsOptions(typed, factsOptions); !read) {
        return refuse(read.error());
    }
    const auto file = readTraceFile(typed.trace, fileOptions);
    if (!file) {
        return refuse(commandFaultOf(file.error(), typed.trace));
    }
    const auto facts = factsOf(*file, factsOptions);
    if (typed.json) {
        out << toJson(facts).dump(2) << '\n';
    } else {
        printFacts(facts, out);
    }
    return 0;
}

} // namespace holdfast::kiosk::command
