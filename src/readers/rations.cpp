#include "cropful/readers/rations.hpp"

#include <algorithm>
#include <cctype>
#include <set>
#include <string_view>
#include <utility>

#include "readers/blend_parts.hpp"
#include "readers/built_in.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

constexpr std::string_view ending = ".toml";

/// Names that differ only in case, spaces, hyphens and underscores become the same.
std::string squash(std::string_view words) {
    std::string text;
    for (char const c : words) {
        if (c == ' ' || c == '-' || c == '_') continue;
        text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return text;
}

/// Keys of the files of one folder, built in or in front, sorted.
std::vector<std::string> keys_in(std::string const& folder, RationsFiles const& in_front) {
    std::set<std::string> keys;
    std::string const start = folder + "/";
    for (BuiltIn const& one : built_in()) {
        std::string_view const name = one.name;
        if (!name.starts_with(start) || !name.ends_with(ending)) continue;
        keys.emplace(name.substr(start.size(), name.size() - start.size() - ending.size()));
    }
    if (in_front.keys) {
        for (std::string const& key : in_front.keys(folder)) keys.insert(key);
    }
    return {keys.begin(), keys.end()};
}

void check_known(std::string const& key, std::vector<std::string> const& known) {
    if (std::find(known.begin(), known.end(), key) == known.end()) throw BadInput(in_quotes(key), one_of(key, known));
}

Document open_rations(RationsReader const& reader, std::string const& name) {
    auto const file = reader.file(name);
    return parse_document(file.text, file.name);
}

/// The needs a kind names; a name that is none is the kind's file's fault.
rations::NeedsTable needs_of(RationsReader const& reader, rations::Kind const& kind) {
    try {
        return reader.needs(kind.needs_table);
    } catch (BadInput const& bad) {
        throw bad.at({"birds/" + kind.key + ".toml", 0, "needs.table"});
    }
}

}  // namespace

RationsReader::RationsReader(RationsFiles in_front) : in_front_(std::move(in_front)) {}

std::vector<std::string> RationsReader::kinds() const { return keys_in("birds", in_front_); }

std::vector<std::string> RationsReader::needs_tables() const { return keys_in("needs", in_front_); }

std::string RationsReader::kind_key(std::string const& words) const {
    auto const known = kinds();
    std::string const wanted = squash(words);
    for (std::string const& key : known) {
        if (squash(key) == wanted) return key;
    }
    for (std::string const& key : known) {
        for (std::string const& name : read_kind_names(open_rations(*this, "birds/" + key + ".toml"))) {
            if (squash(name) == wanted) return key;
        }
    }
    throw BadInput(in_quotes(words), one_of(words, known));
}

rations::Kind RationsReader::kind(std::string const& key) const {
    check_known(key, kinds());
    return read_kind(key, open_rations(*this, "birds/" + key + ".toml"));
}

rations::NeedsTable RationsReader::needs(std::string const& key) const {
    check_known(key, needs_tables());
    return read_needs(key, open_rations(*this, "needs/" + key + ".toml"));
}

std::vector<domain::Ingredient> RationsReader::ingredients() const {
    return read_ingredients(open_rations(*this, "ingredients.toml"));
}

rations::BlendTables RationsReader::blend_tables() const {
    auto tables = read_blend_tables(open_rations(*this, "blend_limits.toml"));
    tables.limits = read_limits(open_rations(*this, "limits.toml"));
    return tables;
}

std::vector<rations::Powder> RationsReader::powders() const {
    return read_powders(open_rations(*this, "supplements/spoons.toml"));
}

rations::BrooderAdvice RationsReader::brooder_advice() const {
    return read_brooder_advice(open_rations(*this, "brooding.toml"));
}

namespace {

/// Asked for only where a laboratory's report stands beside a feed's sodium.
std::vector<rations::SodiumCeiling> sodium_ceilings(RationsReader const& reader) {
    std::vector<rations::SodiumCeiling> ceilings;
    for (rations::BlendRule const& rule : reader.blend_tables().rules) {
        bool const plain = rule.of == rations::BlendRule::Of::nutrient && rule.per.empty();
        if (plain && rule.key == "sodium") ceilings.push_back({rule.laying, rule.at_most, rule.source});
    }
    return ceilings;
}

}  // namespace

rations::Rations RationsReader::load(domain::Farm const& farm) const {
    rations::Rations rations;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (rations.kinds.contains(hatch.kind)) continue;
        auto const& kind = rations.kinds.emplace(hatch.kind, this->kind(hatch.kind)).first->second;
        if (!rations.needs.contains(kind.needs_table)) {
            rations.needs.emplace(kind.needs_table, needs_of(*this, kind));
        }
    }
    rations.forms = read_form_densities(open_rations(*this, "feeds/forms.toml"));
    rations.limits = read_limits(open_rations(*this, "limits.toml"));
    rations.drugs = read_drugs(open_rations(*this, "drugs.toml"));
    rations.water = read_water_table(open_rations(*this, "water.toml"));
    if (farm.water) rations.water.ceilings = sodium_ceilings(*this);
    return rations;
}

RationsFile RationsReader::file(std::string const& name) const {
    if (in_front_.file) {
        if (auto const found = in_front_.file(name)) return *found;
    }
    for (BuiltIn const& one : built_in()) {
        if (one.name == name) return {"rations/" + name, one.text};
    }
    throw WrongUse("rations/" + name + ": there is no such file");
}

}  // namespace cropful::readers
