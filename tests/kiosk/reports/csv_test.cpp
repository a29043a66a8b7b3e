#include "kiosk/reports/csv.hpp"

#include <catch2/catch.hpp>

using holdfast::kiosk::reports::csvRow;

TEST_CASE("rows follow RFC 4180", "[reports]") {
    // RFC 4180, section 2: rules 1, 4 and 5 (a line end is CR LF), 6 and 7, with its own examples.
    CHECK(csvRow({{"aaa"}, {"bbb"}, {"ccc"}}) == "aaa,bbb,ccc\r\n");
    CHECK(csvRow({{"aaa"}, {"b\r\nbb"}, {"ccc"}}) == "aaa,\"b\r\nbb\",ccc\r\n");
    CHECK(csvRow({{"aaa"}, {"b\"bb"}, {"ccc"}}) == "aaa,\"b\"\"bb\",ccc\r\n");
    CHECK(csvRow({{"a,b"}, {""}}) == "\"a,b\",\r\n");
    CHECK(csvRow({}) == "\r\n");
    CHECK(csvRow({{" a "}}) == "\" a \"\r\n"); // rule 4: spaces belong to the field; some readers trim them unquoted
}

TEST_CASE("what people typed is never a formula", "[reports]") {
    // OWASP, "CSV Injection": = + - @, tab and carriage return at the beginning of a cell.
    for (const auto* text : {"=1+1", "+49 40 1", "-12", "@here", "  =cmd"}) {
        INFO(text);
        const auto row = csvRow({{text}});
        CHECK(row == "'" + std::string{text} + "\r\n");
    }
    CHECK(csvRow({{"=A1,\"x\""}}) == "\"'=A1,\"\"x\"\"\"\r\n");
    CHECK(csvRow({{"\t=1"}}) == "'\t=1\r\n");
    CHECK(csvRow({{"\r=1"}}) == "\"'\r=1\"\r\n");
    CHECK(csvRow({{"a=1"}, {"C-7"}}) == "a=1,C-7\r\n");
    CHECK(csvRow({{"-8", false}}) == "-8\r\n"); // the program's own figure
}

TEST_CASE("hostile signs stay inside their cell", "[reports]") {
    CHECK(csvRow({{std::string("a\0b", 3)}, {"c"}}) == "ab,c\r\n");
    std::string quotes(1000, '"');
    const auto row = csvRow({{quotes}, {"end"}});
    CHECK(row.size() == 2 + 2000 + 4 + 2);
    CHECK(row.substr(row.size() - 6) == ",end\r\n");
}
