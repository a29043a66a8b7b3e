#include "kiosk/demo/demo_steps.hpp"

#include <array>

/// What QA did with prints: retained, washed, pulled, rubbed, watched. A row is a piece of work on a working day.
namespace holdfast::kiosk::demo {
namespace {

using records::PrintEnd;
using Answers = std::vector<std::string>;

NamesPrint named(const char* print, std::int64_t run, int piece, int lot = 1) {
    NamesPrint name;
    name.print = print;
    name.run = run;
    name.piece = piece;
    name.lot = lot;
    return name;
}

TestsPrint tested(const char* print, const char* method, Answers answers, const char* cycle = "") {
    TestsPrint test;
    test.print = print;
    test.method = method;
    test.answers = std::move(answers);
    test.cycle = cycle;
    return test;
}

/// Graded after a cycle: change, staining, cracked, lifted, fibres standing.
TestsPrint graded(const char* print, const char* cycle, Answers answers, int wear) {
    auto test = tested(print, "wash-house", std::move(answers), cycle);
    test.wear = wear;
    return test;
}

/// On the shelf for so many days from then; those of the first week are past their time today.
void addShelf(std::vector<DemoStep>& steps) {
    struct Kept final {
        std::int64_t run;
        int day;
        const char* shelf;
        int days;
    };
    constexpr std::array<Kept, 18> kKept{{
        {20374, 0, "A 1", 10},
        {20375, 0, "A 1", 180},
        {20376, 0, "A 1", 180},
        {20377, 1, "A 2", 9},
        {20378, 1, "A 2", 180},
        {20381, 2, "A 2", 180},
        {20383, 2, "A 3", 7},
        {20385, 3, "A 3", 180},
        {20387, 3, "A 3", 180},
        {20389, 4, "A 4", 180},
        {20391, 5, "A 4", 180},
        {20393, 5, "A 4", 180},
        {20396, 6, "B 1", 180},
        {20399, 7, "B 1", 180},
        {20401, 7, "B 2", 365},
        {20403, 8, "B 2", 180},
        {20408, 10, "B 3", 180},
        {20409, 10, "B 3", 180},
    }};
    for (const auto& kept : kKept) {
        NamesPrint name = named("", kept.run, 5);
        name.print = "kept " + std::to_string(kept.run);
        name.shelf = kept.shelf;
        name.keptForDays = kept.days;
        name.reprintAllowed = kept.days < 30;
        addStep(steps, on(kept.day, 16, 0), name);
    }
}

void addPrints(std::vector<DemoStep>& steps) {
    addStep(steps, on(0, 9, 35), named("jersey", 20375, 40));
    addStep(steps, on(0, 9, 40), named("apron", 20374, 71));
    addStep(steps, on(1, 12, 0), named("hoodie", 20378, 60));
    addStep(steps, on(1, 15, 30), named("vest", 20379, 180, 2));
    addStep(steps, on(2, 10, 30), named("concert", 20381, 50));
    addStep(steps, on(2, 10, 35), named("two layers", 20381, 51));
    addStep(steps, on(4, 9, 50), named("workshop", 20389, 70));
    addStep(steps, on(5, 8, 50), named("usher", 20391, 12));
    addStep(steps, on(5, 10, 20), named("red jersey", 20393, 44));
    addStep(steps, on(6, 13, 0), named("harvest", 20395, 82));
    addStep(steps, on(6, 15, 30), named("vintage", 20397, 30));
    addStep(steps, on(7, 11, 30), named("training", 20399, 33));
    addStep(steps, on(8, 9, 40), named("leggings", 20402, 20));
    addStep(steps, on(9, 10, 0), named("delivery", 20405, 60, 2));
    addStep(steps, on(10, 10, 50), named("sprint", 20409, 77));
}

void load(std::vector<DemoStep>& steps, int day, std::vector<std::string> prints, const char* good = "4.5",
          const char* weak = "2.5") {
    Washes wash;
    wash.prints = std::move(prints);
    addStep(steps, on(day, 11, 40), wash);
    addStep(steps, on(day, 15, 0), JudgesLoad{good, weak});
}

/// Of one load even the weak swatch came out nearly as it went in: that day's cycles had to be washed again.
void addLoads(std::vector<DemoStep>& steps) {
    load(steps, 1, {"jersey", "apron"});
    load(steps, 2, {"jersey", "apron"});
    load(steps, 3, {"jersey", "apron"}, "4.5", "2");
    load(steps, 4, {"jersey", "apron", "concert"}, "5", "4");
    load(steps, 5, {"jersey", "apron", "concert"});
    load(steps, 6, {"jersey", "apron", "concert", "workshop"}, "4");
    load(steps, 7, {"concert", "workshop", "usher"});
    load(steps, 8, {"concert", "workshop", "usher"}, "4.5", "2");
    load(steps, 9, {"concert", "usher", "training"});
    load(steps, 10, {"usher", "training", "delivery"});
}

void addGrades(std::vector<DemoStep>& steps) {
    const Answers kFive{"5", "5", "no", "no", "no"};
    const Answers kFourHalf{"4.5", "4.5", "no", "no", "no"};
    const Answers kFour{"4", "4", "no", "no", "no"};
    addStep(steps, on(1, 15, 10), graded("jersey", "1", kFive, -1));
    addStep(steps, on(1, 15, 14), graded("apron", "1", kFive, -1));
    addStep(steps, on(2, 15, 10), graded("jersey", "2", kFive, -1));
    addStep(steps, on(2, 15, 14), graded("apron", "2", kFourHalf, -1));
    addStep(steps, on(3, 15, 10), graded("jersey", "3", kFourHalf, -1));
    addStep(steps, on(3, 15, 14), graded("apron", "3", kFourHalf, -1));
    addStep(steps, on(4, 15, 10), graded("jersey", "4", kFourHalf, -1)); // in the void load
    addStep(steps, on(5, 15, 10), graded("jersey", "4", kFourHalf, -1));
    addStep(steps, on(5, 15, 14), graded("apron", "4", kFourHalf, -1));
    addStep(steps, on(5, 15, 18), graded("concert", "1", kFive, -1));
    addStep(steps, on(6, 15, 10), graded("jersey", "5", kFour, 3));
    addStep(steps, on(6, 15, 14), graded("apron", "5", kFourHalf, -1));
    addStep(steps, on(6, 15, 18), graded("concert", "2", kFourHalf, -1));
    addStep(steps, on(6, 15, 22), graded("workshop", "1", kFourHalf, 2));
    addStep(steps, on(7, 15, 10), graded("concert", "3", {"3", "4", "no", "no", "yes"}, -1)); // fibres, not the film
    addStep(steps, on(7, 15, 11), graded("workshop", "2", kFour, 5));
    addStep(steps, on(7, 15, 14), graded("usher", "1", {"5", "4.5", "no", "no", "no"}, 1));
    addStep(steps, on(8, 15, 10), graded("concert", "4", kFourHalf, -1));
    addStep(steps, on(8, 15, 14), graded("workshop", "3", {"2.5", "4", "yes", "yes", "no"}, 9));
    addStep(steps, on(8, 15, 18), graded("usher", "2", {"4.5", "4", "no", "no", "no"}, 2));
    addStep(steps, on(9, 15, 10), graded("concert", "5", kFour, -1));
    addStep(steps, on(9, 15, 14), graded("usher", "3", {"4.5", "4", "no", "no", "no"}, 3));
    addStep(steps, on(9, 15, 18), graded("training", "1", kFive, -1));
    addStep(steps, on(10, 15, 10), graded("usher", "4", {"4", "3.5", "no", "no", "no"}, 5));
    addStep(steps, on(10, 15, 14), graded("training", "2", kFourHalf, -1));
    addStep(steps, on(10, 15, 16), graded("delivery", "1", kFive, -1));
}

void stretch(std::vector<DemoStep>& steps, DemoTime at, const char* print, const char* first, const char* second) {
    addStep(steps, at, tested(print, "stretch-jersey", {first, second}));
}

void addPulls(std::vector<DemoStep>& steps) {
    stretch(steps, on(1, 14, 0), "jersey", "no-crack", "no-crack");
    stretch(steps, on(1, 14, 5), "apron", "no-crack", "hairline");
    stretch(steps, on(2, 14, 10), "hoodie", "no-crack", "no-crack");
    stretch(steps, on(2, 15, 35), "vest", "breaks", "powders");
    auto measured = tested("concert", "stretch-jersey", {"no-crack", "hairline"});
    measured.lengths = {"100", "150", "104"};
    addStep(steps, on(3, 14, 0), measured);
    stretch(steps, on(3, 14, 10), "two layers", "no-crack", "no-crack");
    stretch(steps, on(5, 14, 0), "workshop", "no-crack", "hairline");
    auto usher = tested("usher", "stretch-jersey", {"no-crack", "hairline"});
    usher.wear = 0;
    addStep(steps, on(6, 14, 0), usher);
    stretch(steps, on(6, 14, 10), "red jersey", "no-crack", "no-crack");
    stretch(steps, on(8, 14, 0), "training", "no-crack", "no-crack");
    addStep(steps, on(9, 15, 30), tested("leggings", "stretch-sports", {"no-crack", "hairline"}));
    // those of the delivery tees and the sprint vests are left for today
}

/// White on dyed polyester; the one on red turns between the first and the third day.
void addWatches(std::vector<DemoStep>& steps) {
    const std::vector<double> kWhite{94.1, -0.6, 1.8};
    const auto watched = [&](DemoTime at, const char* print, const char* hours, bool bled, const char* grade,
                             std::vector<double> after) {
        auto test = tested(print, "bleed-watch", {bled ? "yes" : "no", grade}, hours);
        test.before = kWhite;
        test.after = std::move(after);
        test.wear = bled || hours[0] == '0' ? 0 : -1;
        addStep(steps, at, test);
    };
    watched(on(0, 13, 0), "jersey", "0", false, "5", kWhite);
    watched(on(1, 15, 20), "jersey", "24", false, "5", {94.0, -0.5, 1.9});
    watched(on(3, 15, 20), "jersey", "72", false, "4.5", {93.8, -0.4, 1.5});
    watched(on(5, 13, 0), "red jersey", "0", false, "5", kWhite);
    watched(on(6, 15, 26), "red jersey", "24", false, "4", {92.6, 2.1, 1.6});
    watched(on(8, 15, 30), "red jersey", "72", true, "2.5", {87.9, 9.8, 1.2});
    watched(on(7, 13, 0), "training", "0", false, "5", kWhite);
    watched(on(8, 15, 34), "training", "24", false, "5", {94.0, -0.6, 1.7});
    watched(on(10, 15, 20), "training", "72", false, "4.5", {93.7, -0.7, 1.1});
    watched(on(10, 13, 0), "sprint", "0", false, "5", kWhite);
}

void addOthers(std::vector<DemoStep>& steps) {
    addStep(steps, on(1, 15, 30), tested("apron", "solvent-rub", {"no", "no"}));
    auto shrink = tested("hoodie", "shrink-iso", {});
    shrink.lengths = {"350", "338", "350", "344"};
    addStep(steps, on(2, 14, 20), shrink);
    addStep(steps, on(2, 14, 24), EndsPrint{"hoodie", PrintEnd::usedUp});
    addStep(steps, on(3, 15, 30), tested("two layers", "tape", {"no", "no"}));
    addStep(steps, on(3, 15, 34), EndsPrint{"two layers", PrintEnd::usedUp});
    addStep(steps, on(2, 15, 50), EndsPrint{"vest", PrintEnd::thrownAway});
    addStep(steps, on(3, 9, 0), DescribesMethod{});
    addStep(steps, on(6, 16, 10), tested("usher", "fold", {"no", "4.5"}));
    addStep(steps, on(6, 16, 20), tested("vintage", "water-drop", {"no"}));
    addStep(steps, on(6, 16, 24), EndsPrint{"vintage", PrintEnd::usedUp});
    addStep(steps, on(7, 13, 5), tested("harvest", "solvent-rub", {"yes", "yes"}));
    addStep(steps, on(7, 13, 10), CutsPrint{"harvest", "harvest, other half"});
    addStep(steps, on(7, 14, 20), tested("harvest, other half", "split", {"no", "yes"}));
    addStep(steps, on(7, 14, 24), EndsPrint{"harvest, other half", PrintEnd::usedUp});
    addStep(steps, on(7, 14, 25), EndsPrint{"harvest", PrintEnd::usedUp});
    addStep(steps, on(8, 15, 40), EndsPrint{"red jersey", PrintEnd::usedUp});
    addStep(steps, on(9, 15, 40), EndsPrint{"leggings", PrintEnd::usedUp});
    addStep(steps, on(10, 15, 34), tested("delivery", "rub-iso", {"4.5", "3.5"}));
    addStep(steps, on(10, 15, 30), tested("training", "bleed-press", {"no", "4.5"}));
    addStep(steps, on(10, 15, 34), EndsPrint{"training", PrintEnd::usedUp});
    addStep(steps, on(10, 15, 40), EndsPrint{"apron", PrintEnd::usedUp});
}

} // namespace

std::vector<DemoStep> demoBenchWork() {
    std::vector<DemoStep> steps;
    addPrints(steps);
    addShelf(steps);
    addLoads(steps);
    addGrades(steps);
    addPulls(steps);
    addWatches(steps);
    addOthers(steps);
    return steps;
}

} // namespace holdfast::kiosk::demo
