#include "kiosk/records/shop_file.hpp"

#include "kiosk/records/mix_tree.hpp"
#include "kiosk/records/record_json.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace holdfast::kiosk::records {
namespace {

constexpr const char* kFormat = "holdfast-shop";
constexpr int kVersion = 1;

MixPartSpec readPart(ObjectReader& from) {
    MixPartSpec part;
    const auto family = from.optionalText("family");
    const auto mix = from.optionalText("mix");
    if (family.has_value() == mix.has_value()) {
        from.fault(FaultCode::inconsistent, "family", "a part is either a family or a mix");
    }
    part.isMix = mix.has_value();
    part.name = part.isMix ? *mix : family.value_or("");
    part.mass = from.number("mass");
    if (part.mass < 0) {
        from.fault(FaultCode::badValue, "mass", "is negative");
    }
    return part;
}

MixSpec readMix(ObjectReader& from) {
    MixSpec mix;
    mix.name = from.text("name");
    if (mix.name.empty() && from.has("name")) {
        from.fault(FaultCode::badValue, "name", "is empty");
    }
    from.list("parts", [&](ObjectReader& one) { mix.parts.push_back(readPart(one)); });
    return mix;
}

InstrumentInFile readInstrument(ObjectReader& from) {
    InstrumentInFile one;
    read(from, one.spec);
    from.list(
        "certificates", [&](ObjectReader& c) { read(c, one.certificates.emplace_back()); }, true);
    from.list(
        "checks", [&](ObjectReader& c) { read(c, one.checks.emplace_back()); }, true);
    return one;
}

void noteTwice(const std::vector<std::string>& names, const char* list, Faults& faults) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (!names[i].empty() && !seen.insert(names[i]).second) {
            faults.push_back({FaultCode::inconsistent, std::string{list} + "[" + std::to_string(i) + "].name",
                              "the name stands twice: " + names[i]});
        }
    }
}

template <class T, class Name>
std::vector<std::string> namesOf(const std::vector<T>& all, Name name) {
    std::vector<std::string> names;
    for (const auto& one : all) {
        names.push_back(name(one));
    }
    return names;
}

void noteNames(const ShopFile& file, Faults& faults) {
    const auto families = namesOf(file.families, [](const auto& one) { return one.name; });
    const auto mixes = namesOf(file.mixes, [](const auto& one) { return one.name; });
    noteTwice(families, "families", faults);
    noteTwice(namesOf(file.fabrics, [](const auto& one) { return one.name; }), "fabrics", faults);
    noteTwice(mixes, "mixes", faults);
    noteTwice(namesOf(file.instruments, [](const auto& one) { return one.spec.name; }), "instruments", faults);
    for (std::size_t i = 0; i < mixes.size(); ++i) {
        if (std::find(families.begin(), families.end(), mixes[i]) != families.end()) {
            faults.push_back({FaultCode::inconsistent, "mixes[" + std::to_string(i) + "].name",
                              "a family has this name: " + mixes[i]});
        }
    }
}

void readLists(ObjectReader& from, ShopFile& file) {
    if (from.text("format") != kFormat && from.has("format")) {
        from.fault(FaultCode::badValue, "format", "is not holdfast-shop");
    }
    const auto version = from.integer("version", 1);
    if (version > kVersion) {
        from.fault(FaultCode::newerVersion, "version", "written by a newer program");
        return;
    }
    from.list(
        "families", [&](ObjectReader& one) { read(one, file.families.emplace_back()); }, true);
    from.list(
        "fabrics", [&](ObjectReader& one) { read(one, file.fabrics.emplace_back()); }, true);
    from.list(
        "mixes", [&](ObjectReader& one) { file.mixes.push_back(readMix(one)); }, true);
    from.list(
        "instruments", [&](ObjectReader& one) { file.instruments.push_back(readInstrument(one)); }, true);
    from.finish();
}

Json mixJson(const MixSpec& mix) {
    Json parts = Json::array();
    for (const auto& part : mix.parts) {
        parts.push_back(Json{{part.isMix ? "mix" : "family", part.name}, {"mass", part.mass}});
    }
    return Json{{"name", mix.name}, {"parts", parts}};
}

Json instrumentJson(const InstrumentInFile& one) {
    Json json = toJson(one.spec);
    json["certificates"] = Json::array();
    for (const auto& certificate : one.certificates) {
        json["certificates"].push_back(toJson(certificate));
    }
    json["checks"] = Json::array();
    for (const auto& check : one.checks) {
        json["checks"].push_back(toJson(check));
    }
    return json;
}

template <class T, class Write>
Json listJson(const std::vector<T>& all, Write write) {
    Json json = Json::array();
    for (const auto& one : all) {
        json.push_back(write(one));
    }
    return json;
}

} // namespace

RecordResult<ShopFile> readShopFile(std::string_view text) {
    Faults faults;
    ShopFile file;
    if (const auto json = parseJson(text, faults)) {
        ObjectReader from{*json, "", faults};
        if (json->is_object()) {
            readLists(from, file);
        }
    }
    noteNames(file, faults);
    noteMixFaults(file, faults);
    if (!faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    return file;
}

std::string writeShopFile(const ShopFile& file) {
    const Json json{
        {"format", kFormat},
        {"version", kVersion},
        {"families", listJson(file.families, [](const auto& one) { return toJson(one); })},
        {"fabrics", listJson(file.fabrics, [](const auto& one) { return toJson(one); })},
        {"mixes", listJson(file.mixes, mixJson)},
        {"instruments", listJson(file.instruments, instrumentJson)},
    };
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

ShopStock stockOf(const ShopFile& file) {
    ShopStock stock;
    for (const auto& family : file.families) {
        stock.families.push_back(toFamily(family));
    }
    for (const auto& fabric : file.fabrics) {
        stock.fabrics.push_back(toFabric(fabric));
    }
    for (const auto& one : file.instruments) {
        stock.instruments.push_back(toInstrument(one.spec, one.certificates, one.checks));
    }
    Faults none;
    stock.mixes = mixesOf(file, none);
    return stock;
}

ShopStock starterStock() {
    ShopStock stock;
    stock.families = analytics::starterFamilies();
    stock.fabrics = analytics::starterFabrics();
    return stock;
}

std::optional<analytics::Ink> ShopStock::inkNamed(std::string_view name) const {
    for (const auto& family : families) {
        if (family.name == name) {
            return analytics::pureInk(family);
        }
    }
    for (const auto& mix : mixes) {
        if (mix.name == name) {
            return mix;
        }
    }
    return std::nullopt;
}

const analytics::Fabric* ShopStock::fabricNamed(std::string_view name) const {
    const auto found = std::find_if(fabrics.begin(), fabrics.end(), [&](const auto& one) { return one.name == name; });
    return found == fabrics.end() ? nullptr : &*found;
}

const analytics::Instrument* ShopStock::instrumentNamed(std::string_view name) const {
    const auto found =
        std::find_if(instruments.begin(), instruments.end(), [&](const auto& one) { return one.name == name; });
    return found == instruments.end() ? nullptr : &*found;
}

} // namespace holdfast::kiosk::records
