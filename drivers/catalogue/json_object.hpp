#pragma once

#include "drivers/catalogue/catalogue.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace holdfast::drivers {

/// One object of a description, read strictly: each key is asked for once, what is left over is unknown. The first
/// fault of the whole file is kept and every later read gives its fallback, so that callers read straight through.
class JsonObject final {
public:
    JsonObject(const nlohmann::json& json, std::string path, std::optional<CatalogueFault>& fault);

    /// The value of a key that must (or may) be there and be of type T; `fallback` otherwise.
    template <class T>
    [[nodiscard]] T need(const std::string& key);
    template <class T>
    [[nodiscard]] T get(const std::string& key, T fallback);
    [[nodiscard]] bool has(const std::string& key) const { return m_json.is_object() && m_json.contains(key); }
    [[nodiscard]] JsonObject child(const std::string& key);
    /// The keys and string values of an object that is a table; empty if it is not there.
    [[nodiscard]] std::vector<std::pair<std::string, std::string>> table(const std::string& key);
    /// One of `words`, as its place in them.
    [[nodiscard]] std::size_t choice(const std::string& key, const std::vector<std::string>& words);

    void refuse(const std::string& key, CatalogueFault::Kind kind = CatalogueFault::Kind::wrongValue);
    /// Refuses what was not asked for. Call last.
    void finish();

private:
    const nlohmann::json& m_json;
    std::string m_path;
    std::optional<CatalogueFault>& m_fault;
    std::set<std::string> m_asked;
};

} // namespace holdfast::drivers
