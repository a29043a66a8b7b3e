#include "drivers/catalogue/json_object.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::drivers {

namespace {

const nlohmann::json kNothing;

template <class T>
std::optional<T> as(const nlohmann::json& json) = delete;

template <>
std::optional<std::string> as(const nlohmann::json& json) {
    return json.is_string() ? std::optional{json.get<std::string>()} : std::nullopt;
}

template <>
std::optional<bool> as(const nlohmann::json& json) {
    return json.is_boolean() ? std::optional{json.get<bool>()} : std::nullopt;
}

template <>
std::optional<int> as(const nlohmann::json& json) {
    if (!json.is_number_integer()) {
        return std::nullopt;
    }
    constexpr std::int64_t most = 1'000'000'000;
    const auto number = json.get<std::int64_t>();
    return number >= -most && number <= most ? std::optional{static_cast<int>(number)} : std::nullopt;
}

template <>
std::optional<double> as(const nlohmann::json& json) {
    const bool isNumber = json.is_number() && std::isfinite(json.get<double>());
    return isNumber ? std::optional{json.get<double>()} : std::nullopt;
}

template <class T>
std::optional<std::vector<T>> asListOf(const nlohmann::json& json) {
    if (!json.is_array()) {
        return std::nullopt;
    }
    std::vector<T> list;
    for (const auto& entry : json) {
        const auto value = as<T>(entry);
        if (!value) {
            return std::nullopt;
        }
        list.push_back(*value);
    }
    return list;
}

template <>
std::optional<std::vector<double>> as(const nlohmann::json& json) {
    return asListOf<double>(json);
}

template <>
std::optional<std::vector<std::string>> as(const nlohmann::json& json) {
    return asListOf<std::string>(json);
}

} // namespace

JsonObject::JsonObject(const nlohmann::json& json, std::string path, std::optional<CatalogueFault>& fault)
    : m_json{json}, m_path{std::move(path)}, m_fault{fault} {
    if (!m_json.is_object() && !m_fault) {
        m_fault = CatalogueFault{CatalogueFault::Kind::wrongValue, m_path};
    }
}

void JsonObject::refuse(const std::string& key, CatalogueFault::Kind kind) {
    if (!m_fault) {
        m_fault = CatalogueFault{kind, m_path.empty() ? key : m_path + "." + key};
    }
}

template <class T>
T JsonObject::get(const std::string& key, T fallback) {
    m_asked.insert(key);
    if (!has(key)) {
        return fallback;
    }
    if (auto value = as<T>(m_json[key])) {
        return std::move(*value);
    }
    refuse(key);
    return fallback;
}

template <class T>
T JsonObject::need(const std::string& key) {
    if (!has(key)) {
        refuse(key, CatalogueFault::Kind::missingKey);
    }
    return get<T>(key, T{});
}

template std::string JsonObject::get(const std::string&, std::string);
template bool JsonObject::get(const std::string&, bool);
template int JsonObject::get(const std::string&, int);
template double JsonObject::get(const std::string&, double);
template std::vector<std::string> JsonObject::get(const std::string&, std::vector<std::string>);
template std::string JsonObject::need(const std::string&);
template int JsonObject::need(const std::string&);
template double JsonObject::need(const std::string&);
template std::vector<double> JsonObject::need(const std::string&);

JsonObject JsonObject::child(const std::string& key) {
    m_asked.insert(key);
    if (!has(key)) {
        refuse(key, CatalogueFault::Kind::missingKey);
    }
    return JsonObject{has(key) ? m_json[key] : kNothing, m_path.empty() ? key : m_path + "." + key, m_fault};
}

std::vector<std::pair<std::string, std::string>> JsonObject::table(const std::string& key) {
    m_asked.insert(key);
    std::vector<std::pair<std::string, std::string>> rows;
    if (!has(key)) {
        return rows;
    }
    if (!m_json[key].is_object()) {
        refuse(key);
        return rows;
    }
    for (const auto& [word, value] : m_json[key].items()) {
        if (!value.is_string() || word.empty()) {
            refuse(key + "." + word);
            return rows;
        }
        rows.emplace_back(word, value.template get<std::string>());
    }
    return rows;
}

std::size_t JsonObject::choice(const std::string& key, const std::vector<std::string>& words) {
    const auto word = need<std::string>(key);
    const auto found = std::find(words.begin(), words.end(), word);
    if (found == words.end()) {
        refuse(key);
        return 0;
    }
    return static_cast<std::size_t>(found - words.begin());
}

void JsonObject::finish() {
    if (!m_json.is_object()) {
        return;
    }
    for (const auto& [key, value] : m_json.items()) {
        if (m_asked.count(key) == 0) {
            refuse(key, CatalogueFault::Kind::unknownKey);
        }
    }
}

} // namespace holdfast::drivers
