#pragma once

#include "analytics/cure/ink_family.hpp"
#include "analytics/fastness/colour.hpp"
#include "analytics/fastness/pass_rule.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

/// Tests of prints: how they are done, and what came out.
namespace holdfast::kiosk::records {

enum class TestKind { stretch, rub, wash, bleedWatch, shrink, waterDrop, tape, solventRub, split, own };

/// What a wash method asks of the machine.
struct WashProgramme final {
    std::optional<analytics::AuthoredTemperature> temperature{};
    std::optional<int> minutes{};
    bool tumble = true;
    int cycles = 5; ///< asked in all
};

/// method.described: the newest revision of a key counts; a test keeps the revision that it was done by.
struct MethodDescribed final {
    std::string key{}; ///< a starter's word ("wash-house"), or the id of a method of the shop's own
    int revision = 1;
    std::string name{}; ///< empty for a starter: its name is a matter of the language
    TestKind kind = TestKind::own;
    analytics::Mark mark = analytics::Mark::fromMemory;
    std::string source{};
    std::vector<analytics::Chemistry> chemistries{}; ///< that it is valid for; empty: all
    double restHours = 0.0;         ///< after printing, besides the family's own rest; it must be cold all the same
    std::vector<double> dueHours{}; ///< after printing, when it is to be done; empty: when it is asked for
    std::optional<WashProgramme> programme{};  ///< of a wash
    std::vector<double> pullPercent{};         ///< of a stretch: elongations, ascending
    std::vector<std::string> steps{};          ///< of an own method, as typed
    std::vector<std::string> cautions{};       ///< of an own method, as typed
    std::optional<analytics::PassRule> rule{}; ///< absent: it is noted and nothing hangs on it
    bool eachLot = false;                      ///< every lot's print owes it; else only where it is asked for
    bool withdrawn = false;                    ///< no longer used
};

enum class PictureSide { whole, unwashed, washed };
struct TestPicture final {
    std::string sha256{}; ///< of the blob
    PictureSide side = PictureSide::whole;
    bool operator==(const TestPicture&) const = default;
};

/// Gauge lengths as read, millimetres; the relative figures stand in the results.
struct GaugeLengths final {
    double originalMm = 0.0;
    std::optional<double> stretchedMm{};
    std::optional<double> relaxedMm{}; ///< after it was let go, or after washing
};

enum class TestOutcome {
    passed,
    failed,
    noted,       ///< nothing hangs on it: no rule, or a part of it is still to come
    inAVoidLoad, ///< counts for nothing
};

/// test.done: what was seen of one print by one method, of a wash after one cycle.
struct TestDone final {
    std::string print{};               ///< id
    std::string method{};              ///< key
    int revision = 1;                  ///< of the method
    std::optional<int> cycle{};        ///< of a wash; of a bleed watch its hours
    std::optional<std::string> load{}; ///< id of the load it was washed in
    std::vector<analytics::TestResult> results{};
    std::optional<GaugeLengths> lengthwise{}; ///< stretch and shrink
    std::optional<GaugeLengths> widthwise{};
    std::optional<analytics::Lab> before{}; ///< colour of the untreated half
    std::optional<analytics::Lab> after{};
    std::optional<analytics::Lab> garment{}; ///< to which the print's colour may have moved
    std::optional<double> colourLimit{};     ///< ΔE00 of one colour read twice, from the repeats of this test
    std::string instrument{};                ///< id of what read the colour; empty: by eye or typed
    std::vector<TestPicture> pictures{};
    TestOutcome outcome = TestOutcome::noted;
    std::string note{};
    std::optional<std::string> corrects{}; ///< id of the first entry of the test it puts right
};

} // namespace holdfast::kiosk::records
