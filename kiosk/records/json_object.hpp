#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"
#include "kiosk/records/record_fault.hpp"
#include "kiosk/records/words.hpp"

#include <cstdint>
#include <functional>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Strict reading of JSON objects: every fault is noted with its path and reading goes on, so that all are told at
/// once.
namespace holdfast::kiosk::records {

using Json = nlohmann::ordered_json;
using Faults = std::vector<RecordFault>;

/// Nothing (and a fault noted) for text that is no JSON or has a key twice in one object.
[[nodiscard]] std::optional<Json> parseJson(std::string_view text, Faults& faults);

/// ISO 8601 calendar date, "2026-03-01"; nothing for anything else, days that do not exist included.
[[nodiscard]] std::optional<analytics::Date> dateFrom(std::string_view text) noexcept;
[[nodiscard]] std::string toText(analytics::Date date);

[[nodiscard]] Json toJson(const analytics::AuthoredTemperature& t);
[[nodiscard]] Json toJson(const analytics::AuthoredDifference& d);

/// One object. A key that was asked for is known; finish() refuses the others by name. Values given after a fault are
/// defaults and must not be used: look at the list of faults.
class ObjectReader final {
public:
    ObjectReader(const Json& value, std::string path, Faults& faults);

    [[nodiscard]] bool has(const char* key);
    [[nodiscard]] std::string text(const char* key);
    [[nodiscard]] std::string textOr(const char* key, std::string otherwise = {});
    [[nodiscard]] std::optional<std::string> optionalText(const char* key);
    [[nodiscard]] bool flag(const char* key);
    [[nodiscard]] bool flagOr(const char* key, bool otherwise = false);
    [[nodiscard]] double number(const char* key);
    [[nodiscard]] std::optional<double> optionalNumber(const char* key);
    [[nodiscard]] std::int64_t integer(const char* key, std::int64_t least, std::int64_t most = kMostInteger);
    [[nodiscard]] std::optional<std::int64_t> optionalInteger(const char* key, std::int64_t least,
                                                              std::int64_t most = kMostInteger);
    [[nodiscard]] int count(const char* key, int least = 0);
    [[nodiscard]] int countOr(const char* key, int otherwise, int least = 0);
    [[nodiscard]] std::optional<int> optionalCount(const char* key, int least = 0);
    [[nodiscard]] analytics::Date date(const char* key);
    [[nodiscard]] std::optional<analytics::Date> optionalDate(const char* key);
    [[nodiscard]] analytics::Duration seconds(const char* key);
    [[nodiscard]] std::optional<analytics::Duration> optionalSeconds(const char* key);
    [[nodiscard]] analytics::Temperature celsius(const char* key);
    [[nodiscard]] std::optional<analytics::Temperature> optionalCelsius(const char* key);
    [[nodiscard]] analytics::TemperatureDifference kelvins(const char* key);
    [[nodiscard]] std::optional<analytics::TemperatureDifference> optionalKelvins(const char* key);
    [[nodiscard]] analytics::AuthoredTemperature temperature(const char* key);
    [[nodiscard]] std::optional<analytics::AuthoredTemperature> optionalTemperature(const char* key);
    [[nodiscard]] analytics::AuthoredDifference difference(const char* key);
    [[nodiscard]] std::optional<analytics::AuthoredDifference> optionalDifference(const char* key);

    template <class E>
    [[nodiscard]] E word(const char* key) {
        const std::string read = text(key);
        return wordFrom<E>(key, read).value_or(E{});
    }
    template <class E>
    [[nodiscard]] E wordOr(const char* key, E otherwise) {
        return optionalWord<E>(key).value_or(otherwise);
    }
    template <class E>
    [[nodiscard]] std::optional<E> optionalWord(const char* key) {
        const auto read = optionalText(key);
        return read ? wordFrom<E>(key, *read) : std::nullopt;
    }

    /// Calls `read` with a reader of the object under the key and finishes it; a missing key is a fault.
    void object(const char* key, const std::function<void(ObjectReader&)>& read);
    /// The same, but nothing happens without the key. True if it was there.
    bool optionalObject(const char* key, const std::function<void(ObjectReader&)>& read);
    /// For each object of the list under the key; a missing key is a fault unless `optional`.
    void list(const char* key, const std::function<void(ObjectReader&)>& read, bool optional = false);
    /// A list of plain values; `read` gets each with its path.
    void values(const char* key, const std::function<void(const Json&, const std::string&)>& read,
                bool optional = false);
    [[nodiscard]] std::vector<std::string> texts(const char* key, bool optional = false);
    /// The value under the key as it stands, or null.
    [[nodiscard]] const Json* raw(const char* key);

    void fault(FaultCode code, const char* key, std::string what);
    void finish();
    [[nodiscard]] const std::string& path() const noexcept { return m_path; }
    [[nodiscard]] Faults& faults() noexcept { return m_faults; }

private:
    static constexpr std::int64_t kMostInteger = 9'007'199'254'740'991; // 2^53 - 1, exact in every JSON reader

    template <class E>
    std::optional<E> wordFrom(const char* key, const std::string& read) {
        const auto value = fromWord<E>(read);
        if (!value && m_object != nullptr && m_object->contains(key)) {
            fault(FaultCode::badValue, key, "no such word: " + read);
        }
        return value;
    }
    const Json* required(const char* key);
    [[nodiscard]] std::string pathOf(const char* key) const;

    const Json* m_object; ///< null: it was no object
    std::string m_path;
    Faults& m_faults;
    std::vector<bool> m_known; ///< which of the object's keys were asked for
    std::size_t m_last = 0;    ///< of the key that was found last: keys are mostly asked for as they stand
};

} // namespace holdfast::kiosk::records
