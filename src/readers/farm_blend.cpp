#include <algorithm>
#include <array>

#include "cropful/rations/pantry.hpp"
#include "readers/blend_parts.hpp"
#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Blend;
using domain::Bounds;
using domain::Ingredient;

constexpr Quoted<quantities::MoneyPerMass> a_price_by_weight{quantities::parse_price,
                                                             "a price by weight in quotes, such as \"310 per tonne\""};

std::vector<std::string> ingredient_keys(std::vector<Ingredient> const& all) {
    std::vector<std::string> keys;
    for (Ingredient const& one : all) keys.push_back(one.key);
    return keys;
}

/// The name of one of them.
auto a_name_in(std::vector<Ingredient> const& all) {
    return [&all](Value const& value) {
        std::string const name = a_text(value);
        auto const keys = ingredient_keys(all);
        if (std::find(keys.begin(), keys.end(), name) == keys.end()) throw value.refuse(one_of(name, keys));
        return name;
    };
}

/// `"24 %"` is a floor; `["0.8 %", "1.2 %"]` is a floor and a ceiling.
std::map<std::string, Bounds> read_bounds(Table& table) {
    std::map<std::string, Bounds> need;
    for (domain::Nutrient const& nutrient : domain::nutrients()) {
        auto const levels = table.maybe_either(nutrient.key, nutrient.also, level_or_two(nutrient));
        if (!levels) continue;
        Bounds bounds{.floor = levels->front(), .ceiling = {}};
        if (levels->size() == 2) bounds.ceiling = levels->back();
        need.emplace(nutrient.key, bounds);
    }
    table.done();
    return need;
}

std::vector<domain::Weighed> read_amounts(Table& table, std::vector<Ingredient> const& pantry) {
    std::vector<domain::Weighed> amounts;
    auto const keys = ingredient_keys(pantry);
    for (std::string const& key : table.keys()) {
        auto const amount = table.need(key, more_than_none(a_mass));
        if (std::find(keys.begin(), keys.end(), key) == keys.end()) throw table.refuse(key, one_of(key, keys));
        amounts.push_back({key, amount});
    }
    return amounts;
}

/// Which of the kind's needs count: the kind's own must have such a phase. A fault is placed at the key that names it.
void check_phase(Table& table, Blend const& blend, RationsReader const& rations) {
    constexpr std::array keys{"phase", "age", "laying"};
    auto const* const key = std::find_if(keys.begin(), keys.end(), [&](char const* one) { return table.has(one); });
    if (blend.phase.has_value() + blend.age.has_value() + blend.laying > 1) {
        throw table.refuse(*key, "only one of phase, age and laying");
    }
    if (!blend.kind) {
        bool const says_nothing = key != keys.end() && !blend.laying;  // layers of any kind have their own ceilings
        if (says_nothing) throw table.refuse(*key, std::string(*key) + " only beside the key kind");
        return;
    }
    auto const look = [&] { return rations::phase_for(rations.needs(rations.kind(*blend.kind).needs_table), blend); };
    if (key != keys.end()) {
        table.maybe(*key, [&](Value const&) { return look(); });
        return;
    }
    try {
        look();
    } catch (BadInput const& fault) {
        throw fault.at(table.origin());
    }
}

}  // namespace

Ingredient read_ingredient(std::string const& key, Table& table, std::vector<Ingredient> const& built_in) {
    Ingredient one{.key = key, .title = "", .like = "", .price = {}, .holds = {}, .at_most = {}, .source = {}};
    if (auto const like = table.maybe("like", a_name_in(built_in))) {
        one = *std::find_if(built_in.begin(), built_in.end(), [&](Ingredient const& i) { return i.key == *like; });
        one.key = key;
    }
    one.title = table.maybe("title", a_text, one.title.empty() ? key : one.title);
    one.price = table.maybe("price", a_price_by_weight);
    one.at_least = table.maybe("at_least", a_percentage, 0.0);
    one.at_most = table.maybe("at_most", a_percentage);
    one.medicated = table.maybe("medicated", a_yes_or_no, false);
    one.liquid = table.maybe("liquid", a_yes_or_no, one.liquid);
    one.mineral = table.maybe("mineral", a_yes_or_no, one.mineral);
    for (auto const& [nutrient, level] : read_holds(table, domain::Standing::yours)) one.holds[nutrient] = level;
    if (one.at_most && *one.at_most < one.at_least) throw table.refuse("at_most", "at_most no less than at_least");
    return one;
}

Blend read_blend(std::string const& name, Table& table, std::vector<Ingredient> const& pantry,
                 RationsReader const& rations) {
    auto const a_kind = [&](Value const& value) { return rations.kind_key(a_text(value)); };
    Blend blend{.name = name,
                .kind = table.maybe("kind", a_kind),
                .phase = table.maybe("phase", a_text),
                .age = table.maybe("age", a_time),
                .laying = table.maybe("laying", a_yes_or_no, false),
                .batch = table.maybe("batch", more_than_none(a_mass)),
                .scale = table.maybe("scale", more_than_none(a_mass)),
                .use = table.maybe("use", list_of(a_name_in(pantry)), std::vector<std::string>{}),
                .need = {},
                .amounts = {}};
    if (auto need = table.maybe_table("need")) blend.need = read_bounds(*need);
    if (auto amounts = table.maybe_table("amounts")) {
        blend.amounts = read_amounts(*amounts, pantry);
        if (!blend.use.empty()) throw table.refuse("use", "either use or amounts, not both");
    }
    check_phase(table, blend, rations);
    return blend;
}

void check_choice(Table const& table, domain::Farm const& farm, Blend const& blend,
                  std::vector<Ingredient> const& pantry) {
    if (!blend.amounts.empty()) return;
    auto const all = rations::chosen(farm, blend, pantry);
    if (all.empty()) throw table.missing("use", "a list of ingredients, or tables [ingredient.NAME]");
    for (Ingredient const& one : all) {
        std::string const name = in_quotes(one.key);
        if (!one.price) throw table.refuse("use", "ingredients with a price; " + name + " has none");
        if (one.medicated) throw table.refuse("use", "no medicated feed; " + name + " must be fed undiluted");
    }
}

}  // namespace cropful::readers
