#include "kiosk/command/command_line.hpp"

#include "kiosk/command/book_commands.hpp"
#include "kiosk/command/facts_command.hpp"
#include "kiosk/command/judge.hpp"
#include "kiosk/command/typed_values.hpp"
#include "kiosk/wording/language.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace holdfast::kiosk::command {

namespace {

/// All that can be typed; CLI11 writes into it.
struct Typed final {
    KioskOptions kiosk;
    JudgeOptions judge;
    FactsTyped facts;
    std::string data;
    std::string file;
    std::string folder;
    std::string unit = "F";
    bool json = false;
    double panelInch = 0.0;
};

std::string help(const char* key) {
    return wording::Language::english().text(std::string{"help."} + key);
}

/// As CLI::Range, which lets "nan" pass: that is neither below nor above anything.
CLI::Validator within(double low, double high) {
    const auto range = CLI::Range(low, high);
    return CLI::Validator{[low, high, range](std::string& text) {
                              double value = 0.0;
                              const bool inside =
                                  CLI::detail::lexical_cast(text, value) && value >= low && value <= high;
                              return inside ? std::string{} : "Value " + text + " is not " + range.get_description();
                          },
                          range.get_description()};
}

void addKiosk(CLI::App& app, Typed& typed) {
    app.add_option("--data", typed.data, help("data"));
    app.add_flag("--demo", typed.kiosk.demo, help("demo"));
    app.add_option("--probe-port", typed.kiosk.probePorts, help("probe-port"));
    app.add_option("--scanner-port", typed.kiosk.scannerPort, help("scanner-port"));
    app.add_option("--speed", typed.kiosk.speed, help("speed"))->check(within(0.1, 1000.0));
    app.add_option("--panel-inch", typed.panelInch, help("panel-inch"))->check(within(7.0, 65.0));
    app.add_flag("--full-screen", typed.kiosk.fullScreen, help("full-screen"));
}

/// An option that was typed empty is typed all the same: an empty variable of a script must not turn the question for a
/// reading into one for the window.
void addText(CLI::App& command, const char* name, std::optional<std::string>& into, const char* key) {
    command.add_option_function<std::string>(
        name, [&into](const std::string& text) { into = text; }, help(key));
}

CLI::App* addJudge(CLI::App& app, Typed& typed) {
    auto* judge = app.add_subcommand("judge", help("judge"));
    auto& options = typed.judge;
    addText(*judge, "TRACE", options.trace, "judge.trace");
    judge->add_option("--ink", options.inks, help("judge.ink"))->required()->expected(1)->take_all();
    judge->add_option("--fabric", options.fabric, help("judge.fabric"))->required();
    addText(*judge, "--instrument", options.instrument, "judge.instrument");
    addText(*judge, "--placement", options.placement, "judge.placement");
    addText(*judge, "--strip", options.strip, "judge.strip");
    addText(*judge, "--spot", options.spot, "judge.spot");
    addText(*judge, "--surface", options.surface, "judge.surface");
    addText(*judge, "--shop", options.shopFile, "judge.shop");
    addText(*judge, "--today", options.today, "judge.today");
    judge->add_option("--unit", typed.unit, help("judge.unit"))->check(CLI::IsMember({"C", "F"}));
    judge->add_flag("--json", options.json, help("json"));
    return judge;
}

CLI::App* addFacts(CLI::App& app, Typed& typed) {
    auto* facts = app.add_subcommand("facts", help("facts"));
    auto& options = typed.facts;
    facts->add_option("TRACE", options.trace, help("judge.trace"))->required();
    facts->add_option("--time", options.time, help("facts.time"));
    facts->add_option("--temperature", options.temperature, help("facts.temperature"));
    facts->add_option("--flag", options.flag, help("facts.flag"));
    facts->add_option("--unit", options.unit, help("facts.unit"));
    facts->add_option("--range", options.range, help("facts.range"));
    facts->add_option("--missing", options.missing, help("facts.missing"))->expected(1)->take_all();
    facts->add_option("--separator", options.separator, help("facts.separator"));
    facts->add_option("--join", options.join, help("facts.join"));
    facts->add_option("--at-least", options.atLeast, help("facts.at-least"))->expected(1)->take_all();
    facts->add_flag("--json", options.json, help("json"));
    return facts;
}

/// CLI11 ends with codes of its own: help is 0, everything else is unusable input.
int refuseOptions(const CLI::App& app, const CLI::ParseError& error, std::ostream& out, std::ostream& err) {
    const int code = app.exit(error, out, err);
    return code == 0 ? 0 : 2;
}

} // namespace

int runCommandLine(int argc, const char* const* argv, const Seams& seams, std::ostream& out, std::ostream& err) {
    Typed typed;
    CLI::App app{help("program"), "holdfast"};
    app.require_subcommand(0, 1);
    addKiosk(app, typed);
    const auto* judge = addJudge(app, typed);
    const auto* facts = addFacts(app, typed);
    auto* check = app.add_subcommand("check-book", help("check-book"));
    check->add_flag("--json", typed.json, help("json"));
    auto* backup = app.add_subcommand("backup", help("backup"));
    backup->add_option("FILE", typed.file, help("backup.file"))->required();
    auto* restore = app.add_subcommand("restore", help("restore"));
    restore->add_option("FILE", typed.file, help("restore.file"))->required();
    auto* pictures = app.add_subcommand("pictures", help("pictures"));
    pictures->add_option("FOLDER", typed.folder, help("pictures.folder"))->required();
    for (auto* command : {check, backup, restore}) {
        command->add_option("--data", typed.data, help("data"));
    }
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return refuseOptions(app, error, out, err);
    }
    const std::filesystem::path data = !typed.data.empty() ? std::filesystem::path{typed.data}
                                       : typed.kiosk.demo  ? seams.defaultDemoData
                                                           : seams.defaultData;
    if (judge->parsed()) {
        typed.judge.fahrenheit = typed.unit == "F";
        typed.judge.todayByClock = dateFrom(seams.today).value_or(analytics::Date{});
        return runJudge(typed.judge, out, err);
    }
    if (facts->parsed()) {
        return runFacts(typed.facts, out, err);
    }
    if (check->parsed()) {
        return runCheckBook(data, typed.json, out, err);
    }
    if (backup->parsed()) {
        return runBackup(data, typed.file, out, err);
    }
    if (restore->parsed()) {
        return runRestore(typed.file, data, out, err);
    }
    if (pictures->parsed()) {
        return seams.writePictures(typed.folder);
    }
    typed.kiosk.data = data;
    if (typed.panelInch > 0.0) {
        typed.kiosk.panelInch = typed.panelInch;
    }
    return seams.openKiosk(typed.kiosk);
}

} // namespace holdfast::kiosk::command
