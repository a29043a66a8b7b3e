#include "kiosk/demo/history/history_parts.hpp"

#include <algorithm>
#include <string>

/// Pails and mixes, opened and emptied.
namespace holdfast::kiosk::demo::making {
namespace {

struct Line final {
    Ink ink;
    const char* colour;
};
constexpr std::array<Line, 12> kLines{{
    {Ink::standard, "white"},
    {Ink::standard, "black"},
    {Ink::standard, "red"},
    {Ink::standard, "yellow"},
    {Ink::lowCure, "white"},
    {Ink::lowCure, "black"},
    {Ink::lowCure, "yellow"},
    {Ink::lowCure, "royal blue"},
    {Ink::blend, "white"},
    {Ink::blend, "gold"},
    {Ink::waterBased, "navy"},
    {Ink::waterBased, "green"},
}};

struct Recipe final {
    const char* name;
    const char* colour;
    Ink ink;
    const char* more;
    const char* less;
};
constexpr std::array<Recipe, 3> kRecipes{{
    {"standard mix", "orange", Ink::standard, "red", "yellow"},
    {"low-cure mix", "spring green", Ink::lowCure, "yellow", "royal blue"},
    {"water-based mix", "teal", Ink::waterBased, "navy", "green"},
}};

/// A maker's batch is two pails.
std::string batchOf(Ink ink, int pail) {
    constexpr std::array kPrefix{"L 19 ", "L 30 ", "L 24 ", "W 03 ", "D 10 ", "S 01 "};
    const auto text = std::to_string(100 + pail / 2);
    return std::string{kPrefix[static_cast<std::size_t>(ink)]} + text;
}

class Stock final {
public:
    explicit Stock(Making& making) : m_making{making}, m_chance{making.chance(2)} {
        m_lineEnds.assign(kLines.size(), 0);
        m_mixEnds.assign(kRecipes.size(), 0);
        m_openLine.assign(kLines.size(), std::nullopt);
        m_openMix.assign(kRecipes.size(), std::nullopt);
    }

    void make() {
        for (int day = 0; day < m_making.plan.days; ++day) {
            if (!m_making.worked[static_cast<std::size_t>(day)]) {
                continue;
            }
            openLines(day);
            openMixes(day);
            if (m_making.plan.planted.mislabelledBucket) {
                plant(day);
            }
        }
        for (auto& bucket : m_making.facts.buckets) {
            const int last = m_making.plan.days - 1;
            bucket.closed = bucket.closed == 0 ? at(lastWorked(last), 16, 50) : bucket.closed;
        }
    }

private:
    [[nodiscard]] int lastWorked(int day) const {
        while (!m_making.worked[static_cast<std::size_t>(day)]) {
            --day;
        }
        return day;
    }

    std::size_t open(int day, int minute, Ink ink, const std::string& colour) {
        BucketFact bucket;
        bucket.number = static_cast<std::int64_t>(m_making.facts.buckets.size()) + 1;
        bucket.label = ink;
        bucket.holds = ink;
        bucket.colour = colour;
        bucket.opened = at(day, 6, minute);
        m_making.facts.buckets.push_back(std::move(bucket));
        return m_making.facts.buckets.size() - 1;
    }

    void close(std::optional<std::size_t>& which, int day, Emptied why) {
        if (which) {
            auto& bucket = m_making.facts.buckets[*which];
            bucket.closed = at(day, 6, 20);
            bucket.why = why;
        }
        which.reset();
    }

    void openLines(int day) {
        for (std::size_t i = 0; i < kLines.size(); ++i) {
            if (day < m_lineEnds[i]) {
                continue;
            }
            close(m_openLine[i], day, Emptied::used);
            m_openLine[i] = open(day, 30, kLines[i].ink, kLines[i].colour);
            auto& bucket = m_making.facts.buckets[*m_openLine[i]];
            bucket.batch = batchOf(bucket.label, m_pails[static_cast<std::size_t>(bucket.label)]++);
            m_lineEnds[i] = day + (day == 0 ? m_chance.between(6, 34) : m_chance.between(24, 36));
        }
    }

    void openMixes(int day) {
        for (std::size_t i = 0; i < kRecipes.size(); ++i) {
            if (day < m_mixEnds[i]) {
                continue;
            }
            close(m_openMix[i], day, Emptied::thrownAway);
            const auto& recipe = kRecipes[i];
            const auto when = at(day, 6, 40);
            const auto more = bucketOn(m_making.facts, when, recipe.ink, recipe.more);
            const auto less = bucketOn(m_making.facts, when, recipe.ink, recipe.less);
            m_openMix[i] = open(day, 40, recipe.ink, recipe.colour);
            auto& mix = m_making.facts.buckets[*m_openMix[i]];
            mix.name = recipe.name;
            mix.parts = {{*more, m_chance.between(2, 6) / 2.0}, {*less, m_chance.between(1, 3) / 2.0}};
            m_mixEnds[i] = day + m_chance.between(34, 48);
        }
    }

    /// The pail, then the mix, and on the last day both go.
    void plant(int day) {
        const int back = m_making.daysBackOf(day);
        auto& planted = m_making.facts.planted;
        const auto& days = kMislabelledBucket.days;
        if (!m_pail && back <= days.from && back > days.until) {
            m_pail = open(day, 35, Ink::lowCure, "leaf green");
            auto& pail = m_making.facts.buckets[*m_pail];
            pail.holds = Ink::standard;
            pail.batch = "L 30 177";
            planted.pail = pail.number;
        } else if (m_pail && !m_mix && back <= days.from - kMislabelledBucket.mixedAfter && back > days.until) {
            const auto other = bucketOn(m_making.facts, at(day, 6, 45), Ink::lowCure, "yellow");
            m_mix = open(day, 45, Ink::lowCure, "school green");
            auto& mix = m_making.facts.buckets[*m_mix];
            mix.name = "school green";
            mix.holds = Ink::standard;
            mix.parts = {{*m_pail, 3.0}, {*other, 1.5}};
            planted.mix = mix.number;
        } else if (m_mix && back <= days.until && !m_gone) {
            m_gone = true;
            close(m_mix, day, Emptied::mislabelled);
            close(m_pail, day, Emptied::mislabelled);
        }
    }

    Making& m_making;
    Chance m_chance;
    std::vector<int> m_lineEnds; ///< days
    std::vector<int> m_mixEnds;
    std::vector<std::optional<std::size_t>> m_openLine;
    std::vector<std::optional<std::size_t>> m_openMix;
    std::array<int, 6> m_pails{};
    std::optional<std::size_t> m_pail;
    std::optional<std::size_t> m_mix;
    bool m_gone = false;
};

} // namespace

void makeBuckets(Making& making) {
    Stock{making}.make();
}

std::optional<std::size_t> bucketOn(const HistoryFacts& facts, HistoryMinute when, Ink ink, const std::string& colour) {
    for (std::size_t i = facts.buckets.size(); i-- > 0;) {
        const auto& bucket = facts.buckets[i];
        const bool open = bucket.opened <= when && (bucket.closed == 0 || bucket.closed > when);
        if (open && bucket.label == ink && bucket.colour == colour) {
            return i;
        }
    }
    return std::nullopt;
}

} // namespace holdfast::kiosk::demo::making
