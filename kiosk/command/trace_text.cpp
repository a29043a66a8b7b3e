#include "kiosk/command/trace_text.hpp"

#include "kiosk/command/trace_stamp.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace holdfast::kiosk::command::tracefile {

namespace {

constexpr bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f' || c == '\v';
}
constexpr char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
constexpr unsigned byteOf(char c) {
    return static_cast<unsigned char>(c);
}

/// Length of the UTF-8 sequence at the front, 0 if it is none. Overlong forms and surrogates do not matter here.
std::size_t sequenceLength(std::string_view text) {
    const unsigned first = byteOf(text.front());
    const std::size_t length = first < 0x80   ? 1
                               : first < 0xC2 ? 0
                               : first < 0xE0 ? 2
                               : first < 0xF0 ? 3
                               : first < 0xF5 ? 4
                                              : 0;
    if (length > text.size()) {
        return 0;
    }
    for (std::size_t i = 1; i < length; ++i) {
        if ((byteOf(text[i]) & 0xC0U) != 0x80U) {
            return 0;
        }
    }
    return length;
}

std::string cleaned(std::string_view line) {
    std::string text;
    text.reserve(line.size());
    while (!line.empty()) {
        const std::size_t length = sequenceLength(line);
        const unsigned first = byteOf(line.front());
        if (length == 0) {
            text += static_cast<char>(0xC0U | (first >> 6U));
            text += static_cast<char>(0x80U | (first & 0x3FU));
        } else if (length > 1 || first == '\t' || (first >= 0x20 && first != 0x7F)) {
            text += line.substr(0, length);
        }
        line.remove_prefix(std::max<std::size_t>(length, 1));
    }
    return text;
}

std::vector<std::string> splitAtSpace(std::string_view line) {
    std::vector<std::string> fields;
    std::size_t i = 0;
    while (i < line.size()) {
        if (isSpace(line[i])) {
            ++i;
            continue;
        }
        const std::size_t from = i;
        while (i < line.size() && !isSpace(line[i])) {
            ++i;
        }
        fields.emplace_back(line.substr(from, i - from));
    }
    return fields;
}

/// Takes one field off the front; false when it was the last.
bool takeField(std::string_view& line, char separator, std::string& field) {
    line = line.substr(std::min(line.find_first_not_of(' '), line.size()));
    field.clear();
    if (!line.empty() && line.front() == '"') {
        std::size_t i = 1;
        for (; i < line.size(); ++i) {
            if (line[i] == '"' && (i + 1 >= line.size() || line[i + 1] != '"')) {
                break;
            }
            field += line[i];
            i += line[i] == '"' ? 1 : 0;
        }
        line.remove_prefix(std::min(i + 1, line.size()));
    }
    const std::size_t end = line.find(separator);
    field += line.substr(0, end);
    field = std::string{trimmed(field)};
    line.remove_prefix(end == std::string_view::npos ? line.size() : end + 1);
    return end != std::string_view::npos;
}

/// Takes "C", "°C", "degC" and the like off the end.
std::optional<char> takeUnit(std::string_view& text) {
    if (text.empty()) {
        return std::nullopt;
    }
    const char last = lower(text.back());
    if (last != 'c' && last != 'f') {
        return std::nullopt;
    }
    text.remove_suffix(1);
    text = trimmed(text);
    for (const std::string_view degree : {std::string_view{"\xC2\xB0"}, std::string_view{"\xC2\xBA"},
                                          std::string_view{"deg"}, std::string_view{"Deg"}}) {
        if (text.ends_with(degree)) {
            text.remove_suffix(degree.size());
        }
    }
    text = trimmed(text);
    return last == 'c' ? 'C' : 'F';
}

} // namespace

std::string_view trimmed(std::string_view text) noexcept {
    while (!text.empty() && isSpace(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isSpace(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

std::string lowered(std::string_view text) {
    std::string result{text};
    std::transform(result.begin(), result.end(), result.begin(), lower);
    return result;
}

bool sameWord(std::string_view a, std::string_view b) noexcept {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) { return lower(x) == lower(y); });
}

bool isUtf16(std::string_view bytes) noexcept {
    if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF")) {
        return true;
    }
    const std::size_t looked = std::min<std::size_t>(bytes.size(), 64);
    std::array<std::size_t, 2> zeros{};
    for (std::size_t i = 0; i < looked; ++i) {
        zeros[i % 2] += bytes[i] == '\0' ? 1U : 0U;
    }
    return looked >= 8 && std::max(zeros[0], zeros[1]) * 10 >= looked * 4 && std::min(zeros[0], zeros[1]) == 0;
}

std::vector<Line> linesOf(std::string_view bytes) {
    if (bytes.starts_with("\xEF\xBB\xBF")) {
        bytes.remove_prefix(3);
    }
    const char end = bytes.find('\n') == std::string_view::npos ? '\r' : '\n';
    std::vector<Line> lines;
    for (std::size_t number = 1; !bytes.empty(); ++number) {
        const std::size_t length = bytes.find(end);
        Line line{cleaned(bytes.substr(0, length)), number, length != std::string_view::npos};
        bytes.remove_prefix(line.ended ? length + 1 : bytes.size());
        if (!trimmed(line.text).empty()) {
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

std::vector<std::string> fieldsOf(std::string_view line, char separator) {
    if (separator == ' ') {
        return splitAtSpace(line);
    }
    std::vector<std::string> fields;
    std::string field;
    for (bool more = true; more;) {
        more = takeField(line, separator, field);
        fields.push_back(field);
    }
    return fields;
}

bool isMissingWord(std::string_view text) noexcept {
    constexpr std::array<std::string_view, 11> kWords{"",     "nan", "-nan", "inf", "-inf", "null",
                                                      "none", "n/a", "na",   "---", "--"};
    return std::any_of(kWords.begin(), kWords.end(), [text](std::string_view word) { return sameWord(text, word); });
}

std::optional<Number> parseNumber(std::string_view text) {
    text = trimmed(text);
    Number number;
    number.unit = takeUnit(text);
    std::string digits{text};
    if (digits.starts_with('+')) {
        digits.erase(0, 1);
    }
    const std::size_t mark = digits.find_first_of(".,");
    if (mark != std::string::npos) {
        digits[mark] = '.';
        const std::size_t end = digits.find_first_not_of("0123456789", mark + 1);
        number.decimals = static_cast<int>(std::min(end, digits.size()) - mark - 1);
    }
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number.value);
    if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(number.value)) {
        return std::nullopt;
    }
    return number;
}

bool isValue(std::string_view field) {
    return parseNumber(field) || looksLikeDateOrClock(field) || parseStamp(field, TimeUnit::second).has_value();
}

std::optional<char> separatorOf(const std::vector<Line>& lines) {
    constexpr std::size_t kLooked = 400;
    std::optional<char> best;
    double bestScore = 0.0;
    for (const char separator : {';', '\t', ',', ' '}) {
        double score = 0.0;
        for (std::size_t i = 0; i < std::min(lines.size(), kLooked); ++i) {
            int values = 0;
            int others = 0;
            for (const std::string& field : fieldsOf(lines[i].text, separator)) {
                const bool value = isValue(field);
                values += value ? 1 : 0;
                others += !value && !isMissingWord(field) ? 1 : 0;
            }
            score += values >= 2 ? std::max(0.1, values - 1.5 * others) : 0.0;
        }
        if (score > bestScore) {
            bestScore = score;
            best = separator;
        }
    }
    return best;
}

} // namespace holdfast::kiosk::command::tracefile
