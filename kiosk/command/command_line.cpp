#include "kiosk/command/command_line.hpp"

#include "kiosk/command/book_commands.hpp"
#include "kiosk/command/chart.hpp"
#include "kiosk/command/facts_command.hpp"
#include "kiosk/command/judge.hpp"
#include "kiosk/command/report_command.hpp"
#include "kiosk/command/study.hpp"
#include "kiosk/command/suspects_command.hpp"
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
    ChartTyped chart;
    StudyTyped study;
    SuspectsTyped suspects;
    ReportTyped report;
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
    app.add_option("--counter-port", typed.kiosk.counterPort, help("counter-port"));
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

void addTable(CLI::App& command, DataFileOptions& file) {
    command.add_option("--separator", file.separator, help("separator"));
    command.add_option("--missing", file.missing, help("missing"))->expected(1)->take_all();
}

void addNumber(CLI::App& command, const char* name, std::optional<double>& into, const char* key) {
    command.add_option_function<double>(
        name, [&into](double value) { into = value; }, help(key));
}

CLI::App* addChart(CLI::App& app, Typed& typed) {
    auto* chart = app.add_subcommand("chart", help("chart"));
    auto& options = typed.chart;
    chart->add_option("INPUT", options.input, help("chart.input"));
    chart->add_option("--kind", options.kind, help("chart.kind"))
        ->required()
        ->check(CLI::IsMember({"individuals", "mean-range", "mean-s", "ewma", "cusum", "p", "np", "c", "u", "p-over",
                               "u-over", "margin", "failures"}));
    chart->add_option("--value", options.value, help("chart.value"));
    chart->add_option("--by", options.by, help("chart.by"));
    chart->add_option("--size", options.size, help("chart.size"))->check(within(1, 1'000'000));
    chart->add_option("--total", options.total, help("chart.total"));
    chart->add_option("--rules", options.rules, help("chart.rules"));
    chart->add_option("--baseline", options.baseline, help("chart.baseline"));
    addNumber(*chart, "--target", options.target, "chart.target");
    addNumber(*chart, "--sigma", options.sigma, "chart.sigma");
    chart->add_option("--lambda", options.lambda, help("chart.lambda"));
    chart->add_option("--width", options.width, help("chart.width"));
    chart->add_option("--k", options.k, help("chart.k"));
    chart->add_option("--h", options.h, help("chart.h"));
    chart->add_option("--shift", options.shift, help("chart.shift"))->check(within(0.0, 20.0));
    chart->add_flag("--points", options.points, help("chart.points"));
    chart->add_option("--picture", options.picture, help("chart.picture"));
    chart->add_option("--dryer", options.dryer, help("chart.dryer"));
    chart->add_option("--family", options.family, help("chart.family"));
    chart->add_option("--from", options.from, help("from"));
    chart->add_option("--to", options.to, help("to"));
    chart->add_option("--unit", typed.unit, help("unit"))->check(CLI::IsMember({"C", "F"}));
    chart->add_option("--data", typed.data, help("data"));
    addTable(*chart, options.file);
    chart->add_flag("--json", options.json, help("json"));
    return chart;
}

CLI::App* addStudy(CLI::App& app, Typed& typed) {
    auto* study = app.add_subcommand("study", help("study"));
    auto& options = typed.study;
    study->add_option("WHAT", options.what, help("study.what"))->required();
    study->add_option("INPUT", options.input, help("study.input"));
    study->add_option("--value", options.value, help("chart.value"));
    study->add_option("--time", options.time, help("study.time"));
    study->add_option("--total", options.total, help("study.total"));
    study->add_option("--by", options.by, help("study.by"));
    study->add_option("--failed", options.failed, help("study.failed"));
    study->add_option("--survived", options.survived, help("study.survived"));
    study->add_option("--lot", options.lot, help("study.lot"));
    study->add_option("--count", options.count, help("study.count"));
    study->add_option_function<std::int64_t>(
        "--missed", [&options](std::int64_t missed) { options.missed = missed; }, help("study.missed"));
    study->add_flag("--counts", options.counts, help("study.counts"));
    addNumber(*study, "--limit", options.limit, "study.limit");
    addNumber(*study, "--lower", options.lower, "study.lower");
    addNumber(*study, "--upper", options.upper, "study.upper");
    study->add_option("--side", options.side, help("study.side"))->check(CLI::IsMember({"lower", "upper"}));
    study->add_option("--confidence", options.confidence, help("study.confidence"));
    study->add_option("--content", options.content, help("study.content"));
    addNumber(*study, "--chance", options.chance, "study.chance");
    study->add_option("--penalty", options.penalty, help("study.penalty"))->check(CLI::IsMember({"firth", "none"}));
    addTable(*study, options.file);
    study->add_flag("--json", options.json, help("json"));
    return study;
}

CLI::App* addSuspects(CLI::App& app, Typed& typed) {
    auto* suspects = app.add_subcommand("suspects", help("suspects"));
    auto& options = typed.suspects;
    suspects->add_option("INPUT", options.input, help("suspects.input"));
    suspects->add_option("--failed", options.failed, help("study.failed"));
    suspects->add_option("--episode", options.episode, help("suspects.episode"));
    suspects->add_option("--stratum", options.stratum, help("suspects.stratum"));
    suspects->add_option("--factor", options.factors, help("suspects.factor"))->expected(1)->take_all();
    suspects->add_option("--most", options.most, help("suspects.most"))->check(within(1, 10'000));
    suspects->add_option("--from", options.from, help("from"));
    suspects->add_option("--to", options.to, help("to"));
    suspects->add_flag("--shift", options.shift, help("suspects.shift"));
    suspects->add_option("--data", typed.data, help("data"));
    addTable(*suspects, options.file);
    suspects->add_flag("--json", options.json, help("json"));
    return suspects;
}

CLI::App* addReport(CLI::App& app, Typed& typed) {
    auto* report = app.add_subcommand("report", help("report"));
    auto& options = typed.report;
    report->add_option("--data", typed.data, help("data"));
    report->add_option("--pdf", options.pdf, help("report.pdf"));
    report->add_option("--day", options.day, help("report.day"));
    report->add_option("--unit", typed.unit, help("unit"))->check(CLI::IsMember({"C", "F"}));
    report->add_option("--language", options.language, help("report.language"))->check(CLI::IsMember({"en", "es"}));
    report->add_flag("--json", options.json, help("json"));
    return report;
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
    const auto* chart = addChart(app, typed);
    const auto* study = addStudy(app, typed);
    const auto* suspects = addSuspects(app, typed);
    const auto* report = addReport(app, typed);
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
    typed.chart.fahrenheit = typed.report.fahrenheit = typed.unit == "F";
    if (chart->parsed()) {
        return runChart(typed.chart, data, seams.readyToDraw, out, err);
    }
    if (study->parsed()) {
        return runStudy(typed.study, out, err);
    }
    if (suspects->parsed()) {
        return runSuspects(typed.suspects, data, out, err);
    }
    if (report->parsed()) {
        return runReport(typed.report, data, seams.now, seams.readyToDraw, out, err);
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
