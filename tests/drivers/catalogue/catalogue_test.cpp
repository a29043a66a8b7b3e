#include "drivers/catalogue/catalogue.hpp"

#include "drivers/catalogue/built_in.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <string>

using namespace holdfast::drivers;
using Kind = CatalogueFault::Kind;

namespace {

const std::string kShopsOwn = R"({
  "format": "holdfast-instrument", "version": 1, "id": "shop-own", "name": "Our old thermometer", "protocol": "line",
  "serial": {"baud": 1200, "data_bits": 8, "parity": "none", "stop_bits": 2, "flow": "none"},
  "interval_ms": 500, "terminator": "\r\n", "longest_line": 14, "unit": "C", "step": 0.01, "range": [-10, 700],
  "fields": {"separator": " ", "count": 3, "value": 0, "unit": 1, "status": 2},
  "unit_words": {"G": "C"}, "status_words": {"S": "none", "U": "none", "E": "instrument_fault"},
  "identity": {"serial_number": "00"}
})";

std::string with(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

CatalogueFault refusal(const std::string& text) {
    const auto description = parseDescription(text);
    REQUIRE_FALSE(description);
    return description.error();
}

} // namespace

TEST_CASE("every instrument that comes with the program reads, with an id of its own", "[drivers][catalogue]") {
    CHECK(builtInDescriptions().size() >= 4);
    std::set<std::string> ids;
    for (const std::string_view text : builtInDescriptions()) {
        const auto description = parseDescription(text);
        INFO(text);
        REQUIRE(description);
        CHECK(ids.insert(description->id).second);
        CHECK_FALSE(description->name.empty());
    }
    CHECK(catalogue().size() == builtInDescriptions().size());
    CHECK(std::is_sorted(catalogue().begin(), catalogue().end(),
                         [](const auto& a, const auto& b) { return a.id < b.id; }));
}

TEST_CASE("an instrument is found by its id", "[drivers][catalogue]") {
    const auto* probe = findInstrument("line-type-k-fahrenheit");
    REQUIRE(probe != nullptr);
    CHECK(probe->scale() == CountScale{0.1, ReadingUnit::fahrenheit});
    CHECK(probe->range() == ReadingRange{-58.0, 1832.0}); // -50 and 1000 °C × 9/5 + 32, by hand
    CHECK_FALSE(probe->isScpi());
    CHECK(findInstrument("scpi-thermometer")->isScpi());
    CHECK(findInstrument("scpi-thermometer")->terminator() == "\n");
    CHECK(findInstrument("no-such-thing") == nullptr);
}

TEST_CASE("a shop's own description reads with all it says", "[drivers][catalogue]") {
    const auto description = parseDescription(kShopsOwn);
    REQUIRE(description);
    CHECK(description->serial == SerialSettings{1200, 8, Parity::none, 2, FlowControl::none});
    CHECK(description->interval == std::chrono::milliseconds{500});
    CHECK(description->longestLine() == 14);
    CHECK(description->identity.serialNumber == "00");
    const auto& rules = std::get<LineRules>(description->protocol);
    CHECK(rules.fields.status == std::size_t{2});
    CHECK_FALSE(rules.fields.serial);
    CHECK(rules.statusWords.at("E") == SampleFlag::instrumentFault);
}

TEST_CASE("unknown keys are refused by name, at any depth", "[drivers][catalogue]") {
    CHECK(refusal(with(kShopsOwn, "\"step\"", "\"stepp\": 1, \"step\"")) == CatalogueFault{Kind::unknownKey, "stepp"});
    CHECK(refusal(with(kShopsOwn, "\"baud\"", "\"bauds\": 1, \"baud\"")) ==
          CatalogueFault{Kind::unknownKey, "serial.bauds"});
    CHECK(refusal(with(kShopsOwn, "\"value\"", "\"valeu\": 0, \"value\"")) ==
          CatalogueFault{Kind::unknownKey, "fields.valeu"});
    CHECK(refusal(with(kShopsOwn, "\"line\"", "\"scpi\"")).kind == Kind::missingKey);
}

TEST_CASE("missing and impossible values are refused by name", "[drivers][catalogue]") {
    CHECK(refusal(with(kShopsOwn, "\"step\": 0.01,", "")) == CatalogueFault{Kind::missingKey, "step"});
    CHECK(refusal(with(kShopsOwn, "0.01", "0")) == CatalogueFault{Kind::wrongValue, "step"});
    CHECK(refusal(with(kShopsOwn, "0.01", "\"0.01\"")) == CatalogueFault{Kind::wrongValue, "step"});
    CHECK(refusal(with(kShopsOwn, "[-10, 700]", "[700, -10]")) == CatalogueFault{Kind::wrongValue, "range"});
    CHECK(refusal(with(kShopsOwn, "[-10, 700]", "[1, 2, 3]")) == CatalogueFault{Kind::wrongValue, "range"});
    CHECK(refusal(with(kShopsOwn, "1200", "0")) == CatalogueFault{Kind::wrongValue, "serial.baud"});
    CHECK(refusal(with(kShopsOwn, "1200", "1200.5")) == CatalogueFault{Kind::wrongValue, "serial.baud"});
    CHECK(refusal(with(kShopsOwn, "1200", "99999999999999999999")) == CatalogueFault{Kind::wrongValue, "serial.baud"});
    CHECK(refusal(with(kShopsOwn, "\"none\"", "\"some\"")) == CatalogueFault{Kind::wrongValue, "serial.parity"});
    CHECK(refusal(with(kShopsOwn, "\"status\": 2", "\"status\": 3")) ==
          CatalogueFault{Kind::wrongValue, "fields.status"});
    CHECK(refusal(with(kShopsOwn, "\"G\": \"C\"", "\"G\": \"K\"")) == CatalogueFault{Kind::wrongValue, "unit_words.G"});
    CHECK(refusal(with(kShopsOwn, "instrument_fault", "broken")) == CatalogueFault{Kind::wrongValue, "status_words.E"});
    CHECK(refusal(with(kShopsOwn, "shop-own", "Shop Own")) == CatalogueFault{Kind::wrongValue, "id"});
    CHECK(refusal(with(kShopsOwn, "\\r\\n", "--")) == CatalogueFault{Kind::wrongValue, "terminator"});
}

TEST_CASE("what is no description at all is refused", "[drivers][catalogue]") {
    for (const std::string text : {"", "{", "[]", "null", "\xFF", "{\"format\": \xFF}"}) {
        CHECK(refusal(text).kind == Kind::notJson);
    }
    CHECK(refusal("{}") == CatalogueFault{Kind::otherFormat, "format"});
    CHECK(refusal(with(kShopsOwn, "holdfast-instrument", "holdfast-shop")).kind == Kind::otherFormat);
    CHECK(refusal(with(kShopsOwn, "\"version\": 1", "\"version\": 2")) ==
          CatalogueFault{Kind::newerVersion, "version"});
    CHECK(refusal(std::string(100'000, '[')).kind == Kind::notJson);
}

TEST_CASE("a description cut anywhere is refused", "[drivers][catalogue]") {
    const std::string whole = kShopsOwn.substr(0, kShopsOwn.rfind('}') + 1);
    for (std::size_t length = 0; length < whole.size(); ++length) {
        REQUIRE_FALSE(parseDescription(whole.substr(0, length)));
    }
}
