#include "kiosk/command/trace_file.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace holdfast::kiosk::command;
using holdfast::analytics::TemperatureUnit;

// The forms are those that ../shared/data/README.md describes in words, written anew; expected times are the decimals
// of the text.

namespace {

TraceFile parsed(const std::string& text, const TraceFileOptions& options = {}) {
    auto file = parseTraceFile(text, options);
    INFO((file ? std::string{} : file.error().what) << " in\n" << text.substr(0, 300));
    REQUIRE(file);
    return *file;
}

TraceFileFailure failed(const std::string& text, const TraceFileOptions& options = {}) {
    auto file = parseTraceFile(text, options);
    INFO(text.substr(0, 300));
    REQUIRE_FALSE(file);
    return file.error();
}

/// Times since the first row, in µs.
std::vector<std::int64_t> times(const TraceFile& file) {
    std::vector<std::int64_t> result;
    for (const TraceFileRow& row : file.rows) {
        result.push_back((row.at - file.rows.front().at).count());
    }
    return result;
}

/// In °C; -999 where a row has none.
std::vector<double> heats(const TraceFile& file) {
    std::vector<double> result;
    for (const TraceFileRow& row : file.rows) {
        result.push_back(row.temperature ? row.temperature->celsius() : -999.0);
    }
    return result;
}

using Times = std::vector<std::int64_t>;
using Heats = std::vector<double>;

} // namespace

TEST_CASE("separators, decimal marks and line ends of all kinds are read alike", "[kiosk][command][file]") {
    for (const std::string text : {
             "time,temperature\n0.0,25.5\n0.25,25.75\n0.5,26.0\n",
             "time,temperature\r\n0.0,25.5\r\n0.25,25.75\r\n0.5,26.0\r\n",
             "time,temperature\r0.0,25.5\r0.25,25.75\r0.5,26.0\r",
             "time;temperature\n0,0;25,5\n0,25;25,75\n0,5;26,0\n",
             "time\ttemperature\n0,0\t25,5\n0,25\t25,75\n0,5\t26,0\n",
             "time temperature\n0.0 25.5\n0.25   25.75\n 0.5 26.0\n",
             "time temperature\n0,0 25,5\n0,25 25,75\n0,5 26,0\n",
             "\"time\",\"temperature\"\n\"0,0\",\"25,5\"\n\"0,25\",\"25,75\"\n\"0,5\",\"26,0\"\n",
             "0.0,25.5\n0.25,25.75\n0.5,26.0\n",
             "# time, temperature\n0.0, 25.5\n0.25, 25.75\n0.5, 26.0\n",
             "\xEF\xBB\xBFtime,temperature\n0.0,25.5\n0.25,25.75\n0.5,26.0\n",
             "time,temperature\n0.0,25.5\n\n0.25,\x01"
             "25.75\n0.5,26\x7F.0\n",
             "Time (ms),Temperature\n0,25.5\n250,25.75\n500,26.0\n",
             "millis,temperature\n7,25.5\n257,25.75\n507,26.0\n",
             "time,temperature\n0.0s,25.5C\n0.25s,25.75C\n0.5s,26.0C\n",
             "time,temperature\n0.0,25.5 \xC2\xB0"
             "C\n0.25,25.75 \xC2\xB0"
             "C\n0.5,26.0 \xC2\xB0"
             "C\n",
         }) {
        const TraceFile file = parsed(text);
        CAPTURE(text);
        CHECK(times(file) == Times{0, 250'000, 500'000});
        CHECK(heats(file) == Heats{25.5, 25.75, 26.0});
    }
}

TEST_CASE("preamble, banner and repeated headers are no rows", "[kiosk][command][file]") {
    const TraceFile file = parsed("=~=~ terminal log 2019.02.21 22:19:20 =~=~\n"
                                  "Sample time (ms): 500\nMaximum runtime (s): 720\n"
                                  "Index,Time (ms),Oven temperature (C),Ambient temperature (C),Power,Fault\n"
                                  "Index,Time (ms),Oven temperature (C),Ambient temperature (C),Power,Fault\n"
                                  "00000,000000001,025.50,009.17,100.00,0\n"
                                  "00001,000000500,025.75,009.17,100.00,4\n"
                                  "Index,Time (ms),Oven temperature (C),Ambient temperature (C),Power,Fault\n"
                                  "00000,000000001,026.00,009.17,100.00,0\n");
    CHECK(file.rows.size() == 3);
    CHECK(file.otherLines == 6);
    CHECK(file.columns.names[file.columns.temperature] == "Oven temperature (C)");
    CHECK(times(file) == Times{0, 499'000, 0});
    CHECK(file.unitStated);
    CHECK(file.rows[1].line == 7);
    CHECK_FALSE(file.rows[1].flagged);
    CHECK(file.resolution.celsius() == Approx(0.01));
}

TEST_CASE("a header may stand behind the first rows", "[kiosk][command][file]") {
    const TraceFile file = parsed("0.0,25.5\n0.5,25.75\ntime_s,temp_c\n0.0,26\n");
    CHECK(file.rows.size() == 3);
    CHECK(file.columns.names == std::vector<std::string>{"time_s", "temp_c"});
}

TEST_CASE("clocks and dates become microseconds", "[kiosk][command][file]") {
    CHECK(times(parsed("time,temp\n2019.02.21T22:19:21.591,25\n2019.02.21T22:19:22.0,25\n")) == Times{0, 409'000});
    CHECK(times(parsed("time,temp\n2019-02-21 23:59:59,25\n2019-02-22 00:00:00.5,25\n")) == Times{0, 1'500'000});
    CHECK(times(parsed("time,temp\n13:8:2,25\n13:8:3,25\n13:10:0,25\n")) == Times{0, 1'000'000, 118'000'000});
    CHECK(times(parsed("time,temp\n23:59:59.5,25\n00:00:00.25,25\n")) == Times{0, 750'000});
    CHECK(times(parsed("2019-02-21 22:19:21 25.5\n2019-02-21 22:19:22 25.5\n")) == Times{0, 1'000'000});
    CHECK(times(parsed("Date;Time;Temp\n21.02.2019;22:19:21;25,5\n21.02.2019;22:19:23;25,5\n")) == Times{0, 2'000'000});
    CHECK(times(parsed("time,temp\n02/21/2019 11:59:59 AM,25\n02/21/2019 12:00:01 PM,25\n")) == Times{0, 2'000'000});
    CHECK(times(parsed("time,temp\n2024-01-01T00:00:00Z,25\n2024-01-01T01:00:01+01:00,25\n")) == Times{0, 1'000'000});
    CHECK(times(parsed("time,temp\n0:05.5,25\n1:05.75,25\n")) == Times{0, 60'250'000});
}

TEST_CASE("epoch seconds with nine decimals keep every microsecond", "[kiosk][command][file]") {
    // A double holds 1550787561.123456789 only to 2.4e-7 s; the seventh decimal rounds.
    const TraceFile file = parsed("1550787561.123456789 25.5\n1550787561.323456449 25.5\n1550787561.523456999 25.5\n");
    CHECK(file.rows.front().at.count() == 1'550'787'561'123'457);
    CHECK(times(file) == Times{0, 199'999, 400'000});
    CHECK(times(parsed("1550787561123,25.5\n1550787561323,25.5\n")) == Times{0, 200'000});
    CHECK(times(parsed("1550787561123456,25.5\n1550787561323457,25.5\n")) == Times{0, 200'001});
}

TEST_CASE("a trailing s from half-way on changes nothing", "[kiosk][command][file]") {
    CHECK(times(parsed("time,temp\n1.0,25\n1.5,25\n2.0s,25\n2.5s,25\n")) == Times{0, 500'000, 1'000'000, 1'500'000});
}

TEST_CASE("the unit of time may be named with the column", "[kiosk][command][file]") {
    TraceFileOptions options;
    options.time = "clock:ms";
    CHECK(times(parsed("clock,value\n0,25\n250,25\n", options)) == Times{0, 250'000});
    options.time = "1:min";
    CHECK(times(parsed("0,25\n0.25,25\n", options)) == Times{0, 15'000'000});
}

TEST_CASE("two columns that say the same in both units are one", "[kiosk][command][file]") {
    const std::string text = "time (s),Temp (\xB0"
                             "C),Temp (\xB0"
                             "F)\n0,100.0,212.0\n1,110.0,230.0\n";
    CHECK(heats(parsed(text)) == Heats{100, 110});
    TraceFileOptions options;
    options.unit = TemperatureUnit::fahrenheit;
    const TraceFile file = parsed(text, options);
    CHECK(file.columns.temperature == 2);
    CHECK(file.rows[1].temperature->celsius() == Approx(110));
    const auto differ = failed("time,a (C),b (F)\n0,100.0,300.0\n1,110.0,310.0\n");
    CHECK(differ.fault == TraceFileFault::temperatureAmbiguous);
}

TEST_CASE("no reading is recognised in every dress", "[kiosk][command][file]") {
    TraceFileOptions options;
    options.missing = {"-1", "-1000", "0", "512", "1023.75", "open"};
    const TraceFile file = parsed("time,temp\n0,25.0\n1,-1\n2,-1000.0\n3,0.00\n4,512\n5,1023.75\n6,NaN\n7,\n8,OPEN\n"
                                  "9,25.5026.00\n10\n11,26.0\n",
                                  options);
    const double no = -999;
    CHECK(heats(file) == Heats{25, no, no, no, no, no, no, no, no, no, no, 26});
    using Why = MissingWhy;
    const std::vector<Why> whys{Why::no,    Why::asked, Why::asked, Why::asked,     Why::asked,     Why::asked,
                                Why::empty, Why::empty, Why::asked, Why::notNumber, Why::fieldLost, Why::no};
    for (std::size_t i = 0; i < whys.size(); ++i) {
        CAPTURE(i);
        CHECK(file.rows[i].missing == whys[i]);
    }
    const auto raw = rawTraceOf(file);
    CHECK(raw.samples.size() == 12);
    CHECK_FALSE(raw.samples[1].indicated.isFinite());
}

TEST_CASE("values that mean nothing to the options are kept", "[kiosk][command][file]") {
    CHECK(heats(parsed("time,temp\n0,-1\n1,0.00\n2,1023.75\n")) == Heats{-1, 0, 1023.75});
}

TEST_CASE("a last line cut within its number is no reading", "[kiosk][command][file]") {
    const TraceFile file = parsed("time,temp\n0,225.50\n1,226.00\n2,226.50\n3,22");
    REQUIRE(file.rows.size() == 4);
    CHECK(file.rows[3].missing == MissingWhy::cutOff);
    CHECK(parsed("time,temp\n0,225.50\n1,226.00\n2,226.50\n3").rows.size() == 3);
    CHECK(heats(parsed("time,temp\n0,225.50\n1,226.00\n2,226.50")) == Heats{225.5, 226, 226.5});
    CHECK(parsed("temp,time\n225.50,10\n226.00,11\n226.50,1").rows.size() == 2);
}

TEST_CASE("a row that lost a field does not give its neighbour's number", "[kiosk][command][file]") {
    const TraceFile file = parsed("time,temp,power\n0,25.0,80\n1,25.5,80\n2,80\n3,26.0,80\n25.5,80\n4,26.5,80\n");
    CHECK(heats(file) == Heats{25, 25.5, -999, 26, 26.5});
    CHECK(file.rows[2].missing == MissingWhy::fieldLost);
}

TEST_CASE("a flag is anything but zero and a word of comfort", "[kiosk][command][file]") {
    TraceFileOptions options;
    options.flag = "thermocouple open";
    const TraceFile file = parsed("time,temp,Thermocouple open\n0,25,0\n1,25,4\n2,25,ok\n3,25,OPEN\n4,25,\n", options);
    const std::vector<bool> expected{false, true, false, true, false};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK(file.rows[i].flagged == expected[i]);
    }
    options.flag.reset();
    options.flagByName = true;
    CHECK(parsed("time,temp,Thermocouple open\n0,25,0\n1,25,4\n", options).rows[1].flagged);
}

TEST_CASE("a range speaks the file's unit", "[kiosk][command][file]") {
    TraceFileOptions options;
    options.range = {32.0, 212.0};
    const TraceFile file = parsed("time,temp (F)\n0,100\n1,110\n", options);
    REQUIRE(file.range);
    CHECK(file.range->low.celsius() == Approx(0));
    CHECK(file.range->high.celsius() == Approx(100));
    options.range = {5.0, 4.0};
    CHECK(failed("time,temp\n0,100\n", options).fault == TraceFileFault::badRange);
}

TEST_CASE("what could be several columns is a failure that names them", "[kiosk][command][file]") {
    const auto heat = failed("time,Temp 1,Temp 2,Temp 3\n0,25,26,27\n1,25,26,27\n");
    CHECK(heat.fault == TraceFileFault::temperatureAmbiguous);
    CHECK(heat.columns == std::vector<std::string>{"Temp 1", "Temp 2", "Temp 3"});
    const auto time = failed("0,500,25,80\n1,1000,25,70\n2,1500,25,80\n");
    CHECK(time.fault == TraceFileFault::timeAmbiguous);
    CHECK(time.columns == std::vector<std::string>{"column 1", "column 2"});
    TraceFileOptions options;
    options.temperature = "Temp 2";
    CHECK(heats(parsed("time,Temp 1,Temp 2,Temp 3\n0,25,26,27\n1,25,26,27\n", options)) == Heats{26, 26});
    options.temperature = "4";
    CHECK(heats(parsed("time,Temp 1,Temp 2,Temp 3\n0,25,26,27\n1,25,26,27\n", options)) == Heats{27, 27});
    options.temperature = "Temp";
    CHECK(failed("time,Temp 1,Temp 2\n0,25,26\n1,25,26\n", options).fault == TraceFileFault::columnNotUnique);
    options.temperature = "film";
    const auto none = failed("time,Temp 1,Temp 2\n0,25,26\n1,25,26\n", options);
    CHECK(none.fault == TraceFileFault::columnNotFound);
    CHECK(none.asked == "film");
    CHECK(none.columns.size() == 3);
}

TEST_CASE("what is no trace is refused by name", "[kiosk][command][file]") {
    CHECK(failed("").fault == TraceFileFault::empty);
    CHECK(failed("\n\n \r\n").fault == TraceFileFault::empty);
    CHECK(failed("hello\nworld\n").fault == TraceFileFault::noRows);
    CHECK(failed("25\n26\n27\n").fault == TraceFileFault::noRows);
    CHECK(failed("\xFF\xFEt\0i\0m\0e\0").fault == TraceFileFault::utf16);
    CHECK(failed(std::string{"t\0i\0m\0e\0,\0t\0e\0m\0p\0\n\0", 20}).fault == TraceFileFault::utf16);
    CHECK(failed("a,b\n25,25\n24,26\n23,25\n").fault == TraceFileFault::noTimeColumn);
    CHECK(readTraceFile("/nonexistent/trace.csv").error().fault == TraceFileFault::unreadable);
}

TEST_CASE("long lines, lone quotes and random bytes are survived", "[kiosk][command][file]") {
    const std::string longLine(10'000, 'x');
    CHECK(heats(parsed("time,temp\n0,25\n" + longLine + "\n1,26\n")) == Heats{25, 26});
    CHECK(parsed("time,temp\n0,25\n\"1,26\n2,27\n").rows.size() >= 2);
    std::uint64_t state = 88172645463325252U; // xorshift64, Marsaglia 2003
    const std::string alphabet = "0123456789.,;:-+eET \t\"\n\r\xC2\xB0\xFF CFsnaNif/";
    for (int round = 0; round < 3000; ++round) {
        std::string text = "time,temp\n0,25\n1,26\n";
        for (int i = 0; i < 60; ++i) {
            state ^= state << 13U;
            state ^= state >> 7U;
            state ^= state << 17U;
            text.insert(text.size() - static_cast<std::size_t>(i) % 3, 1, alphabet[state % alphabet.size()]);
        }
        const auto file = parseTraceFile(text);
        if (file) {
            CHECK(file->rows.size() + file->otherLines <= 64);
        }
    }
}

TEST_CASE("numbers too large for the clock are no times", "[kiosk][command][file]") {
    const TraceFile file = parsed("time,temp\n0,25\n1,26\n99999999999999999999999,27\n1e400,28\n2,29\n");
    CHECK(heats(file) == Heats{25, 26, 29});
}
