#include "tests/kiosk/records/support/samples.hpp"

#include <catch2/catch.hpp>
#include <functional>
#include <nlohmann/json.hpp>

using namespace holdfast::kiosk::records;
namespace samples = holdfast::kiosk::records::testing;
namespace a = holdfast::analytics;

namespace {

using PlainJson = nlohmann::json;

/// The first fault of a body after it was spoilt, as "path: code"; empty if it is read all the same.
std::string faultAfter(const Record& record, const std::function<void(PlainJson&)>& spoil) {
    auto json = PlainJson::parse(bodyOf(record));
    spoil(json);
    const auto& row = rowOf(record);
    const auto read = readRecord(row.kind, row.version, json.dump());
    return read ? std::string{} : read.error().front().path;
}

Record sampleOf(const char* kind) {
    for (const auto& sample : samples::sampleOfEveryKind()) {
        if (rowOf(sample).kind == kind) {
            return sample;
        }
    }
    FAIL("no sample of " << kind);
    return BookOpened{};
}

} // namespace

TEST_CASE("grades off the scale or off the half steps are refused by name", "[records][strict]") {
    const Record test = samples::sampleTest();
    // ISO 105-A02 and A03: 1 to 5 in half steps
    for (const double grade : {0.0, 0.5, 5.5, 4.25, -1.0}) {
        INFO(grade);
        CHECK(faultAfter(test, [&](auto& json) { json["results"][0]["grade"] = grade; }) == "results[0].grade");
    }
    CHECK(faultAfter(test, [](auto& json) { json["results"][0]["grade"] = 1.0; }).empty());
    CHECK(faultAfter(test, [](auto& json) { json["results"][0]["grade"] = 5; }).empty());
    CHECK(faultAfter(test, [](auto& json) { json["results"][0]["grade"] = "4"; }) == "results[0].grade");
    const auto load = sampleOf("load.judged");
    CHECK(faultAfter(load, [](auto& json) { json["good_grade"] = 5.5; }) == "good_grade");
    CHECK(faultAfter(load, [](auto& json) { json.erase("by_instrument"); }) == "good_grade"); // 4.25 by eye
    CHECK(faultAfter(load, [](auto& json) { json.erase("weak_grade"); }) == "word");          // valid without a witness
    CHECK(faultAfter(load, [](auto& json) { json["weak_low"] = 3.5; }) == "weak_low");
}

TEST_CASE("a result has the value that its quantity has, and no other", "[records][strict]") {
    const Record test = samples::sampleTest();
    CHECK(faultAfter(test, [](auto& json) { json["results"][0]["yes"] = true; }) == "results[0].yes");
    CHECK(faultAfter(test, [](auto& json) { json["results"][1]["crack"] = "some"; }) == "results[1].crack");
    CHECK(faultAfter(test, [](auto& json) { json["results"][0]["quantity"] = "bled"; }) == "results[0].yes");
    CHECK(faultAfter(test, [](auto& json) { json["results"][3].erase("name"); }) == "results[3].name");
    CHECK(faultAfter(test, [](auto& json) { json["results"][1]["elongation_fraction"] = 0; }) ==
          "results[1].elongation_fraction");
    CHECK(faultAfter(test, [](auto& json) { json["results"][0]["cycle"] = -1; }) == "results[0].cycle");
    const auto again = readRecord("test.done", 1, bodyOf(test));
    REQUIRE(again);
    const auto& done = std::get<TestDone>(*again);
    CHECK(std::get<a::RelativeLength>(done.results.at(2).value).fraction() == 1.0 / 3.0); // to the last bit
    CHECK(std::get<a::Grade>(done.results.at(0).value) == a::Grade::fromStep(7));
    CHECK(std::get<bool>(done.results.at(4).value) == false);
}

TEST_CASE("impossible colours, gauge lengths and pictures are refused", "[records][strict]") {
    const Record test = samples::sampleTest();
    CHECK(faultAfter(test, [](auto& json) { json["before"]["l"] = 100.5; }) == "before"); // ISO/CIE 11664-4: L* to 100
    CHECK(faultAfter(test, [](auto& json) { json["after"]["a"] = -129; }) == "after");
    CHECK(faultAfter(test, [](auto& json) { json["after"].erase("b"); }) == "after.b");
    CHECK(faultAfter(test, [](auto& json) { json["lengthwise"]["original_mm"] = 0; }) == "lengthwise.original_mm");
    CHECK(faultAfter(test, [](auto& json) { json["widthwise"]["relaxed_mm"] = -3; }) == "widthwise.relaxed_mm");
    CHECK(faultAfter(test, [](auto& json) { json["pictures"][0]["sha256"] = "b"; }) == "pictures[0].sha256");
    CHECK(faultAfter(test, [](auto& json) {
              json["outcome"] = "in-a-void-load";
              json.erase("load");
          }) == "load");
}

TEST_CASE("a method's rule is one that can be judged by", "[records][strict]") {
    const Record method = samples::sampleMethod();
    CHECK(faultAfter(method, [](auto& json) { json["rule"]["criteria"] = PlainJson::array(); }) == "rule.criteria[0]");
    CHECK(faultAfter(method, [](auto& json) { json["rule"]["criteria"][0]["bound"] = "is"; }) == "rule.criteria[0]");
    CHECK(faultAfter(method, [](auto& json) { json["rule"]["criteria"][3].erase("name"); }) == "rule.criteria[3]");
    CHECK(faultAfter(method, [](auto& json) { json["rest_hours"] = -1; }) == "rest_hours");
    CHECK(faultAfter(method, [](auto& json) { json["due_hours"] = {72, 24}; }) == "due_hours");
    CHECK(faultAfter(method, [](auto& json) { json["pull_percent"] = {0, 25}; }) == "pull_percent");
    CHECK(faultAfter(method, [](auto& json) { json.erase("programme"); }) == "programme");
    CHECK(faultAfter(method, [](auto& json) { json["programme"]["cycles"] = 0; }) == "programme.cycles");
    CHECK(faultAfter(method, [](auto& json) { json["chemistries"] = {"plastisol", "plastisol"}; }) == "chemistries");
    CHECK(faultAfter(method, [](auto& json) { json["key"] = " "; }) == "key");
    CHECK(faultAfter(method, [](auto& json) {
              json["kind"] = "own";
              json.erase("name");
          }) == "name");
}

TEST_CASE("holds, moves and counts that cannot be are refused", "[records][strict]") {
    const Record hold = samples::sampleHold();
    CHECK(faultAfter(hold, [](auto& json) { json["pieces"]["last"] = 36; }) == "pieces.last");
    CHECK(faultAfter(hold, [](auto& json) { json["pieces"]["first"] = 0; }) == "pieces.first");
    CHECK(faultAfter(hold, [](auto& json) { json["count"] = -1; }) == "count");
    CHECK(faultAfter(hold, [](auto& json) { json["bin"] = -1; }) == "bin");
    CHECK(faultAfter(hold, [](auto& json) { json["hold"] = ""; }) == "hold");
    const auto move = sampleOf("pieces.moved");
    CHECK(faultAfter(move, [](auto& json) { json["count"] = 0; }).empty()); // a correction takes it back
    CHECK(faultAfter(move, [](auto& json) {
              json["count"] = 0;
              json.erase("corrects");
          }) == "count");
    CHECK(faultAfter(move, [](auto& json) { json["cartons"] = {"C1", "C1"}; }) == "cartons");
    CHECK(faultAfter(move, [](auto& json) { json["day"] = "2026-02-30"; }) == "day");
    CHECK(faultAfter(sampleOf("pieces.counted"), [](auto& json) {
              json.erase("made");
              json.erase("here");
          }) == "made");
    CHECK(faultAfter(sampleOf("shelf.counted"), [](auto& json) { json["bins"].push_back(json["bins"][0]); }) ==
          "bins[1].hold");
    CHECK(faultAfter(sampleOf("shelf.counted"), [](auto& json) { json["bins"][0]["pieces"] = -2; }) ==
          "bins[0].pieces");
    CHECK(faultAfter(sampleOf("reading.missed"), [](auto& json) { json["piece"] = 0; }) == "piece");
    CHECK(faultAfter(sampleOf("load.washed"), [](auto& json) { json["prints"].push_back(json["prints"][0]); }) ==
          "prints");
}

TEST_CASE("nobody decides without a reason and a name, nor signs twice", "[records][strict]") {
    const Record decision = samples::sampleDecision();
    CHECK(faultAfter(decision, [](auto& json) { json["reason"] = "  "; }) == "reason");
    CHECK(faultAfter(decision, [](auto& json) { json["signers"] = PlainJson::array(); }) == "signers");
    CHECK(faultAfter(decision, [](auto& json) { json["signers"] = {12, 12}; }) == "signers");
    CHECK(faultAfter(decision, [](auto& json) { json["signers"] = {12, 14, 15}; }) == "signers");
    CHECK(faultAfter(decision, [](auto& json) { json["signers"] = {0}; }) == "signers[0]");
    CHECK(faultAfter(decision, [](auto& json) { json["below_limit"] = true; }) == "below_limit"); // no release
    CHECK(faultAfter(decision, [](auto& json) { json["re_run_lot"] = json["lot"]; }) == "re_run_lot");
    CHECK(faultAfter(decision, [](auto& json) { json["holds"].push_back(json["holds"][0]); }) == "holds");
    CHECK(faultAfter(decision, [](auto& json) { json["corrects"] = json["decision"]; }) == "corrects");
    const auto finding = sampleOf("finding.signed");
    CHECK(faultAfter(finding, [](auto& json) { json["cause"] = ""; }) == "cause");
    CHECK(faultAfter(finding, [](auto& json) { json["signers"] = PlainJson::array(); }) == "signers");
    CHECK(faultAfter(finding, [](auto& json) {
              json.erase("lot");
              json.erase("complaint");
          }) == "complaint");
}

TEST_CASE("a print has its number and its place, a complaint its run", "[records][strict]") {
    const Record print = samples::samplePrint();
    // house.md, Ids: four signs of 31 before the check sign
    CHECK(faultAfter(print, [](auto& json) { json["number"] = 923521; }) == "number");
    CHECK(faultAfter(print, [](auto& json) { json["number"] = 923520; }).empty());
    CHECK(faultAfter(print, [](auto& json) { json["half_of"] = json["print"]; }) == "half_of");
    CHECK(faultAfter(print, [](auto& json) { json["retained"]["shelf"] = ""; }) == "retained.shelf");
    CHECK(faultAfter(print, [](auto& json) { json["retained"]["x"] = 1; }) == "retained.x");
    CHECK(faultAfter(sampleOf("print.changed"), [](auto& json) { json["ended"] = "eaten"; }) == "ended");
    const Record complaint = samples::sampleComplaint();
    CHECK(faultAfter(complaint, [](auto& json) { json.erase("run"); }) == "lot");
    CHECK(faultAfter(complaint, [](auto& json) { json["pictures"] = {"d"}; }) == "pictures");
    CHECK(faultAfter(complaint, [](auto& json) { json["pieces"] = 0; }) == "pieces");
    CHECK(faultAfter(complaint, [](auto& json) { json["what"] = "ugly"; }) == "what");
}
