#include "kiosk/shop/planning/table.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::shop {
namespace {

class Reader final {
public:
    Reader(std::string_view text, char separator) : m_text{text}, m_separator{separator} {}

    Table read() {
        while (m_at < m_text.size()) {
            readRow();
        }
        return std::move(m_table);
    }

private:
    void readRow() {
        TableRow row;
        row.line = m_line;
        bool more = true;
        while (more) {
            row.cells.push_back(readCell());
            more = m_at < m_text.size() && m_text[m_at] == m_separator;
            m_at += more ? 1U : 0U;
        }
        skipLineEnd();
        const bool blank = std::all_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) {
            return cell.find_first_not_of(" \t") == std::string::npos;
        });
        if (!blank) {
            m_table.rows.push_back(std::move(row));
        }
    }

    std::string readCell() {
        if (m_at < m_text.size() && m_text[m_at] == '"') {
            return readQuoted();
        }
        const auto begin = m_at;
        while (m_at < m_text.size() && m_text[m_at] != m_separator && m_text[m_at] != '\n' && m_text[m_at] != '\r') {
            ++m_at;
        }
        return std::string{m_text.substr(begin, m_at - begin)};
    }

    std::string readQuoted() {
        std::string cell;
        const int opened = m_line;
        for (++m_at; m_at < m_text.size(); ++m_at) {
            if (m_text[m_at] == '"') {
                if (m_at + 1 < m_text.size() && m_text[m_at + 1] == '"') {
                    ++m_at;
                } else {
                    ++m_at;
                    return cell + readCell(); // what stands between the quote and the separator, as typed
                }
            }
            m_line += m_text[m_at] == '\n' ? 1 : 0;
            cell.push_back(m_text[m_at]);
        }
        m_table.unclosedQuoteAt = m_table.unclosedQuoteAt == 0 ? opened : m_table.unclosedQuoteAt;
        return cell;
    }

    void skipLineEnd() {
        if (m_at < m_text.size() && m_text[m_at] == '\r') {
            ++m_at;
        }
        if (m_at < m_text.size() && m_text[m_at] == '\n') {
            ++m_at;
        }
        ++m_line;
    }

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    int m_line = 1;
    Table m_table;
};

/// Bytes of the sign at the front; 0 if it is none.
std::size_t signLength(std::string_view at) {
    const auto byte = [&](std::size_t i) { return i < at.size() ? static_cast<unsigned char>(at[i]) : 0U; };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned first = byte(0);
    if (first < 0x80U) {
        return first == 0 ? 0 : 1;
    }
    if (first >= 0xC2U && first <= 0xDFU) {
        return follows(1) ? 2 : 0;
    }
    if (first >= 0xE0U && first <= 0xEFU) {
        const bool overlong = first == 0xE0U && byte(1) < 0xA0U;
        const bool surrogate = first == 0xEDU && byte(1) >= 0xA0U;
        return follows(1) && follows(2) && !overlong && !surrogate ? 3 : 0;
    }
    if (first >= 0xF0U && first <= 0xF4U) {
        const bool overlong = first == 0xF0U && byte(1) < 0x90U;
        const bool beyond = first == 0xF4U && byte(1) >= 0x90U;
        return follows(1) && follows(2) && follows(3) && !overlong && !beyond ? 4 : 0;
    }
    return 0;
}

} // namespace

char separatorOf(std::string_view text) {
    constexpr std::array<char, 3> kSeparators{',', ';', '\t'};
    std::array<int, 3> counts{};
    bool quoted = false;
    for (const char sign : text.substr(0, text.find('\n'))) {
        quoted = sign == '"' ? !quoted : quoted;
        for (std::size_t i = 0; i < kSeparators.size(); ++i) {
            counts[i] += !quoted && sign == kSeparators[i] ? 1 : 0;
        }
    }
    const auto most = std::max_element(counts.begin(), counts.end());
    return kSeparators[static_cast<std::size_t>(most - counts.begin())];
}

Table readTable(std::string_view text, char separator) {
    return Reader{text, separator}.read();
}

int firstLineNotText(std::string_view bytes) {
    int line = 1;
    for (std::size_t i = 0; i < bytes.size();) {
        const auto length = signLength(bytes.substr(i));
        if (length == 0) {
            return line;
        }
        line += bytes[i] == '\n' ? 1 : 0;
        i += length;
    }
    return 0;
}

} // namespace holdfast::kiosk::shop
