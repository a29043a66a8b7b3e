#include "analytics/fastness/lab_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {
namespace {

bool isDigit(char c) noexcept {
    return c >= '0' && c <= '9';
}
/// Signs of other alphabets count as letters of a word.
bool isLetter(char c) noexcept {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80U;
}

/// The minus sign of typesetting as the one of keyboards.
std::string plain(std::string_view line) {
    constexpr std::string_view kMinus = "−";
    std::string text{line};
    for (auto at = text.find(kMinus); at != std::string::npos; at = text.find(kMinus, at))
        text.replace(at, kMinus.size(), "-");
    return text;
}

struct Token {
    std::optional<double> number;
    char label = 0; ///< 'l', 'a', 'b'; 0 of another word
};

struct Line {
    std::vector<Token> tokens;
    bool tightComma = false; ///< a comma that parts stands close before a number
    bool unreadable = false; ///< a number beyond any double
    bool hasLabels() const noexcept {
        return std::any_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.label != 0; });
    }
};

class Scanner final {
public:
    Scanner(std::string_view text, bool decimalComma) : m_text{text}, m_decimalComma{decimalComma} {}

    Line scan() {
        while (m_at < m_text.size()) {
            const char c = m_text[m_at];
            if (isLetter(c))
                takeWord();
            else if (startsNumber(m_at))
                takeNumber();
            else
                takeGap(c);
        }
        return std::move(m_line);
    }

private:
    char at(std::size_t i) const noexcept { return i < m_text.size() ? m_text[i] : '\0'; }
    bool isMark(std::size_t i) const noexcept {
        return (at(i) == '.' || (m_decimalComma && at(i) == ',')) && isDigit(at(i + 1));
    }
    bool startsNumber(std::size_t i) const noexcept {
        if (at(i) == '-' || at(i) == '+')
            ++i;
        return isDigit(at(i)) || (at(i) == '.' && isDigit(at(i + 1)));
    }

    void takeGap(char c) {
        ++m_at;
        m_line.tightComma = m_line.tightComma || (c == ',' && startsNumber(m_at));
    }

    void takeWord() {
        const char first = m_text[m_at];
        const char small = first == 'L' ? 'l' : static_cast<char>(first | 0x20);
        const bool single = !isLetter(at(m_at + 1));
        ++m_at;
        if (single && (small == 'l' || small == 'a' || small == 'b')) {
            m_line.tokens.push_back({std::nullopt, small});
            return;
        }
        while (isLetter(at(m_at)) || isDigit(at(m_at)))
            ++m_at;
        m_line.tokens.push_back({});
    }

    void takeNumber() {
        std::string digits;
        if (at(m_at) == '-' || at(m_at) == '+') {
            if (at(m_at) == '-')
                digits = "-";
            ++m_at;
        }
        for (; isDigit(at(m_at)); ++m_at)
            digits += at(m_at);
        if (isMark(m_at)) {
            digits += '.';
            for (++m_at; isDigit(at(m_at)); ++m_at)
                digits += at(m_at);
        }
        double number = 0.0;
        const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), number);
        m_line.unreadable = m_line.unreadable || read.ec != std::errc{};
        m_line.tokens.push_back({number, 0});
    }

    std::string_view m_text;
    bool m_decimalComma;
    std::size_t m_at = 0;
    Line m_line;
};

bool hasBetweenDigits(std::string_view text, char mark) noexcept {
    for (std::size_t i = 1; i + 1 < text.size(); ++i)
        if (text[i] == mark && isDigit(text[i - 1]) && isDigit(text[i + 1]))
            return true;
    return false;
}

std::vector<double> numbersOf(const Line& line) {
    std::vector<double> numbers;
    for (const auto& token : line.tokens)
        if (token.number)
            numbers.push_back(*token.number);
    return numbers;
}

tl::expected<Line, LabTextFault> read(std::string_view text) {
    const bool commaMayBeDecimal = hasBetweenDigits(text, ',') && text.find('.') == std::string_view::npos;
    auto parted = Scanner{text, false}.scan();
    if (!commaMayBeDecimal)
        return parted;
    auto decimal = Scanner{text, true}.scan();
    if (decimal.hasLabels() || !decimal.tightComma)
        return decimal;
    if (numbersOf(parted).size() == 3)
        return parted;
    return tl::unexpected(LabTextFault::commasUnclear);
}

tl::expected<Lab, LabTextFault> byLetters(const Line& line) {
    std::array<std::optional<double>, 3> found;
    for (std::size_t i = 0; i + 1 < line.tokens.size(); ++i) {
        const auto letter = std::string_view{"lab"}.find(line.tokens[i].label);
        if (line.tokens[i].label == 0 || !line.tokens[i + 1].number)
            continue;
        if (found.at(letter))
            return tl::unexpected(LabTextFault::letterTwice);
        found.at(letter) = line.tokens[i + 1].number;
    }
    if (!found[0] || !found[1] || !found[2])
        return tl::unexpected(LabTextFault::letterMissing);
    return Lab{*found[0], *found[1], *found[2]};
}

tl::expected<Lab, LabTextFault> byOrder(const Line& line) {
    const auto numbers = numbersOf(line);
    if (numbers.size() != 3)
        return tl::unexpected(LabTextFault::notThreeNumbers);
    return Lab{numbers[0], numbers[1], numbers[2]};
}

tl::expected<Lab, LabTextFault> colourIn(std::string_view text) {
    const auto line = read(text);
    if (!line)
        return tl::unexpected(line.error());
    if (line->tokens.empty())
        return tl::unexpected(LabTextFault::empty);
    if (line->unreadable)
        return tl::unexpected(LabTextFault::notANumber);
    return line->hasLabels() ? byLetters(*line) : byOrder(*line);
}

} // namespace

tl::expected<Lab, LabLineFault> labFromText(std::string_view line) {
    const auto colour = colourIn(plain(line));
    if (!colour)
        return tl::unexpected(LabLineFault{colour.error()});
    if (const auto fault = faultOf(*colour))
        return tl::unexpected(LabLineFault{*fault});
    return *colour;
}

} // namespace holdfast::analytics
