#include "kiosk/records/json_object.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>

namespace holdfast::kiosk::records {
namespace {

using analytics::Date;
using analytics::TemperatureUnit;

/// Value and unit of an authored quantity; the unit's word is C or F.
template <class Authored>
std::optional<Authored> authoredFrom(const Json& value, const std::string& path, Faults& faults) {
    const auto before = faults.size();
    ObjectReader reader{value, path, faults};
    Authored read;
    read.value = reader.number("value");
    read.unit = reader.word<TemperatureUnit>("unit");
    reader.finish();
    return faults.size() == before ? std::optional{read} : std::nullopt;
}

template <class Authored>
Json authoredJson(const Authored& value) {
    return Json{{"value", value.value}, {"unit", std::string{toWord(value.unit)}}};
}

/// Builds values as the library's own reading does, and notes a key that stands twice in one object. The library's
/// moves what an object has each time it grows, keys and all, and looks every key up.
class StrictDom final {
public:
    explicit StrictDom(Json& into) : m_slot{&into} {}

    bool null() { return put(nullptr); }
    bool boolean(bool value) { return put(value); }
    bool number_integer(Json::number_integer_t value) { return put(value); }
    bool number_unsigned(Json::number_unsigned_t value) { return put(value); }
    bool number_float(Json::number_float_t value, const std::string&) { return put(value); }
    bool string(std::string& value) { return put(std::move(value)); }
    bool binary(Json::binary_t&) { return false; }

    bool start_object(std::size_t) {
        open(Json::value_t::object);
        m_open.back()->get_ref<Json::object_t&>().reserve(kUsualKeys);
        return true;
    }
    bool key(std::string& name) {
        auto& object = m_open.back()->get_ref<Json::object_t&>();
        const auto known =
            std::find_if(object.begin(), object.end(), [&](const auto& one) { return one.first == name; });
        if (known != object.end()) {
            m_twice = name;
            m_slot = &known->second;
            return true;
        }
        m_slot = &object.emplace_back(std::move(name), nullptr).second;
        return true;
    }
    bool end_object() { return close(); }
    bool start_array(std::size_t) {
        open(Json::value_t::array);
        return true;
    }
    bool end_array() { return close(); }
    bool parse_error(std::size_t, const std::string&, const nlohmann::detail::exception&) { return false; }
    [[nodiscard]] const std::string& twice() const noexcept { return m_twice; }

private:
    static constexpr std::size_t kUsualKeys = 8;

    /// Where the next value goes: after a key its place, in a list its end.
    Json& next() {
        if (!m_open.empty() && m_open.back()->is_array()) {
            auto& list = m_open.back()->get_ref<Json::array_t&>();
            return list.emplace_back();
        }
        return *m_slot;
    }
    template <class T>
    bool put(T&& value) {
        next() = Json(std::forward<T>(value));
        return true;
    }
    void open(Json::value_t kind) {
        auto& value = next();
        value = Json(kind);
        m_open.push_back(&value); // nothing beside it grows before it is closed
    }
    bool close() {
        m_open.pop_back();
        return true;
    }

    Json* m_slot;
    std::vector<Json*> m_open; ///< objects and lists, the innermost last
    std::string m_twice;
};

} // namespace

std::optional<Json> parseJson(std::string_view text, Faults& faults) {
    Json parsed;
    StrictDom dom{parsed};
    if (!Json::sax_parse(text.begin(), text.end(), &dom)) {
        faults.push_back({FaultCode::notJson, "", "not JSON"});
        return std::nullopt;
    }
    if (!dom.twice().empty()) {
        faults.push_back({FaultCode::notJson, dom.twice(), "a key stands twice in one object"});
        return std::nullopt;
    }
    return parsed;
}

std::optional<Date> dateFrom(std::string_view text) noexcept {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const auto digits = [&](std::size_t at, std::size_t length) -> std::optional<unsigned> {
        unsigned value = 0;
        const char* end = text.data() + at + length;
        const auto [stop, error] = std::from_chars(text.data() + at, end, value);
        return error == std::errc{} && stop == end ? std::optional{value} : std::nullopt;
    };
    const auto year = digits(0, 4);
    const auto month = digits(5, 2);
    const auto day = digits(8, 2);
    if (!year || !month || !day) {
        return std::nullopt;
    }
    const std::chrono::year_month_day date{std::chrono::year{static_cast<int>(*year)}, std::chrono::month{*month},
                                           std::chrono::day{*day}};
    return date.ok() ? std::optional{Date{date}} : std::nullopt;
}

std::string toText(Date date) {
    const std::chrono::year_month_day parts{date};
    char text[32];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(parts.year()),
                  static_cast<unsigned>(parts.month()), static_cast<unsigned>(parts.day()));
    return text;
}

Json toJson(const analytics::AuthoredTemperature& t) {
    return authoredJson(t);
}
Json toJson(const analytics::AuthoredDifference& d) {
    return authoredJson(d);
}

ObjectReader::ObjectReader(const Json& value, std::string path, Faults& faults)
    : m_object{value.is_object() ? &value : nullptr}, m_path{std::move(path)}, m_faults{faults} {
    if (m_object == nullptr) {
        m_faults.push_back({FaultCode::wrongType, m_path, "an object is asked for"});
    } else {
        m_known.resize(m_object->size());
    }
}

std::string ObjectReader::pathOf(const char* key) const {
    return m_path.empty() ? key : m_path + "." + key;
}

void ObjectReader::fault(FaultCode code, const char* key, std::string what) {
    m_faults.push_back({code, pathOf(key), std::move(what)});
}

const Json* ObjectReader::raw(const char* key) {
    if (m_object == nullptr) {
        return nullptr;
    }
    const auto& object = m_object->get_ref<const Json::object_t&>();
    const std::string_view wanted{key};
    for (std::size_t i = 0; i < object.size(); ++i) {
        const auto at = (m_last + i) % object.size();
        const auto& [name, value] = object.data()[at];
        if (name == wanted) {
            m_last = at;
            m_known[at] = true;
            return &value;
        }
    }
    return nullptr;
}

const Json* ObjectReader::required(const char* key) {
    const Json* value = raw(key);
    if (value == nullptr && m_object != nullptr) {
        fault(FaultCode::missingKey, key, "is missing");
    }
    return value;
}

bool ObjectReader::has(const char* key) {
    return raw(key) != nullptr;
}

std::optional<std::string> ObjectReader::optionalText(const char* key) {
    const Json* value = raw(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!value->is_string()) {
        fault(FaultCode::wrongType, key, "text is asked for");
        return std::nullopt;
    }
    return value->get<std::string>();
}

std::string ObjectReader::text(const char* key) {
    required(key);
    return optionalText(key).value_or("");
}

std::string ObjectReader::textOr(const char* key, std::string otherwise) {
    return optionalText(key).value_or(std::move(otherwise));
}

bool ObjectReader::flagOr(const char* key, bool otherwise) {
    const Json* value = raw(key);
    if (value == nullptr) {
        return otherwise;
    }
    if (!value->is_boolean()) {
        fault(FaultCode::wrongType, key, "true or false is asked for");
        return otherwise;
    }
    return value->get<bool>();
}

bool ObjectReader::flag(const char* key) {
    required(key);
    return flagOr(key);
}

std::optional<double> ObjectReader::optionalNumber(const char* key) {
    const Json* value = raw(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!value->is_number() || !std::isfinite(value->get<double>())) {
        fault(FaultCode::wrongType, key, "a number is asked for");
        return std::nullopt;
    }
    return value->get<double>();
}

double ObjectReader::number(const char* key) {
    required(key);
    return optionalNumber(key).value_or(0.0);
}

std::optional<std::int64_t> ObjectReader::optionalInteger(const char* key, std::int64_t least, std::int64_t most) {
    const Json* value = raw(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!value->is_number_integer()) {
        fault(FaultCode::wrongType, key, "a whole number is asked for");
        return std::nullopt;
    }
    const bool tooLarge = value->is_number_unsigned() && value->get<std::uint64_t>() > static_cast<std::uint64_t>(most);
    if (tooLarge || value->get<std::int64_t>() < least || value->get<std::int64_t>() > most) {
        fault(FaultCode::badValue, key, "is outside " + std::to_string(least) + " to " + std::to_string(most));
        return std::nullopt;
    }
    return value->get<std::int64_t>();
}

std::int64_t ObjectReader::integer(const char* key, std::int64_t least, std::int64_t most) {
    required(key);
    return optionalInteger(key, least, most).value_or(least);
}

std::optional<int> ObjectReader::optionalCount(const char* key, int least) {
    const auto value = optionalInteger(key, least, std::numeric_limits<int>::max());
    return value ? std::optional{static_cast<int>(*value)} : std::nullopt;
}

int ObjectReader::count(const char* key, int least) {
    required(key);
    return optionalCount(key, least).value_or(least);
}

int ObjectReader::countOr(const char* key, int otherwise, int least) {
    return optionalCount(key, least).value_or(otherwise);
}

std::optional<Date> ObjectReader::optionalDate(const char* key) {
    const auto read = optionalText(key);
    const auto date = read ? dateFrom(*read) : std::nullopt;
    if (read && !date) {
        fault(FaultCode::badValue, key, "a date like 2026-03-01 is asked for");
    }
    return date;
}

Date ObjectReader::date(const char* key) {
    required(key);
    return optionalDate(key).value_or(Date{});
}

std::optional<analytics::Duration> ObjectReader::optionalSeconds(const char* key) {
    const auto read = optionalNumber(key);
    return read ? std::optional{analytics::Duration{*read}} : std::nullopt;
}

analytics::Duration ObjectReader::seconds(const char* key) {
    return analytics::Duration{number(key)};
}

std::optional<analytics::Temperature> ObjectReader::optionalCelsius(const char* key) {
    const auto read = optionalNumber(key);
    return read ? std::optional{analytics::Temperature::fromCelsius(*read)} : std::nullopt;
}

analytics::Temperature ObjectReader::celsius(const char* key) {
    return analytics::Temperature::fromCelsius(number(key));
}

std::optional<analytics::TemperatureDifference> ObjectReader::optionalKelvins(const char* key) {
    const auto read = optionalNumber(key);
    return read ? std::optional{analytics::TemperatureDifference::fromCelsius(*read)} : std::nullopt;
}

analytics::TemperatureDifference ObjectReader::kelvins(const char* key) {
    return analytics::TemperatureDifference::fromCelsius(number(key));
}

std::optional<analytics::AuthoredTemperature> ObjectReader::optionalTemperature(const char* key) {
    const Json* value = raw(key);
    return value == nullptr ? std::nullopt
                            : authoredFrom<analytics::AuthoredTemperature>(*value, pathOf(key), m_faults);
}

analytics::AuthoredTemperature ObjectReader::temperature(const char* key) {
    required(key);
    return optionalTemperature(key).value_or(analytics::AuthoredTemperature{});
}

std::optional<analytics::AuthoredDifference> ObjectReader::optionalDifference(const char* key) {
    const Json* value = raw(key);
    return value == nullptr ? std::nullopt : authoredFrom<analytics::AuthoredDifference>(*value, pathOf(key), m_faults);
}

analytics::AuthoredDifference ObjectReader::difference(const char* key) {
    required(key);
    return optionalDifference(key).value_or(analytics::AuthoredDifference{});
}

bool ObjectReader::optionalObject(const char* key, const std::function<void(ObjectReader&)>& read) {
    const Json* value = raw(key);
    if (value == nullptr) {
        return false;
    }
    ObjectReader reader{*value, pathOf(key), m_faults};
    if (reader.m_object != nullptr) {
        read(reader);
        reader.finish();
    }
    return true;
}

void ObjectReader::object(const char* key, const std::function<void(ObjectReader&)>& read) {
    required(key);
    optionalObject(key, read);
}

void ObjectReader::values(const char* key, const std::function<void(const Json&, const std::string&)>& read,
                          bool optional) {
    const Json* value = optional ? raw(key) : required(key);
    if (value == nullptr) {
        return;
    }
    if (!value->is_array()) {
        fault(FaultCode::wrongType, key, "a list is asked for");
        return;
    }
    for (std::size_t i = 0; i < value->size(); ++i) {
        read((*value)[i], pathOf(key) + "[" + std::to_string(i) + "]");
    }
}

void ObjectReader::list(const char* key, const std::function<void(ObjectReader&)>& read, bool optional) {
    values(
        key,
        [&](const Json& value, const std::string& path) {
            ObjectReader reader{value, path, m_faults};
            if (reader.m_object != nullptr) {
                read(reader);
                reader.finish();
            }
        },
        optional);
}

std::vector<std::string> ObjectReader::texts(const char* key, bool optional) {
    std::vector<std::string> all;
    values(
        key,
        [&](const Json& value, const std::string& path) {
            if (value.is_string()) {
                all.push_back(value.get<std::string>());
            } else {
                m_faults.push_back({FaultCode::wrongType, path, "text is asked for"});
            }
        },
        optional);
    return all;
}

void ObjectReader::finish() {
    if (m_object == nullptr) {
        return;
    }
    const auto& object = m_object->get_ref<const Json::object_t&>();
    for (std::size_t i = 0; i < object.size(); ++i) {
        if (!m_known[i]) {
            fault(FaultCode::unknownKey, object.data()[i].first.c_str(), "is no key here");
        }
    }
}

} // namespace holdfast::kiosk::records
