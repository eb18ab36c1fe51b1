#include <algorithm>
#include <utility>

#include "cropful/domain/nutrient.hpp"
#include "readers/blend_parts.hpp"
#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using domain::Ingredient;
using rations::BlendGuide;
using rations::BlendRule;

Ingredient read_built_in(Table& table) {
    Ingredient one{.key = table.need("key", a_text),
                   .title = table.need("name", a_text),
                   .like = "",
                   .price = {},
                   .holds = {},
                   .at_most = {},
                   .source = read_source(table)};
    one.like = one.key;
    table.maybe("dm", a_percentage);
    table.maybe("note", a_passage);
    one.liquid = table.maybe("liquid", a_yes_or_no, false);
    one.mineral = table.maybe("mineral", a_yes_or_no, false);
    auto const less_sure = table.maybe("less_sure", list_of(a_text), std::vector<std::string>{});
    one.holds = read_holds(table, one.source.standing);
    for (auto& [nutrient, level] : one.holds) {
        level.less_sure = std::find(less_sure.begin(), less_sure.end(), nutrient) != less_sure.end();
    }
    return one;
}

/// The nutrient a key names, by the key the program calls it.
std::string a_nutrient(Table& table, std::string_view key) {
    auto const* nutrient = domain::find_nutrient(table.need(key, a_text));
    if (!nutrient) throw table.refuse(key, "a nutrient's key, such as \"calcium\"");
    return std::string(nutrient->key);
}

double a_multiple(Value const& value) {
    std::optional<double> const number = value.number();
    if (!number || !(*number > 0) || *number > 100) throw value.refuse("a number above nought, such as 2.5");
    return *number;
}

/// A level in the nutrient's unit, a share of the mix, or how many times something else.
double read_most(Table& table, BlendRule const& rule) {
    if (!rule.per.empty() || rule.of_table) return table.need("at_most", a_multiple);
    return table.need("at_most", [&](Value const& value) {
        bool const share = rule.of == BlendRule::Of::ingredient;
        return share ? a_percentage(value) : parse_level(*domain::find_nutrient(rule.key), a_text(value));
    });
}

BlendRule read_rule(Table& table) {
    BlendRule rule;
    auto const like = table.maybe("like", a_text);
    rule.of = like ? BlendRule::Of::ingredient : BlendRule::Of::nutrient;
    rule.key = like ? *like : a_nutrient(table, "nutrient");
    rule.laying = table.need("laying", a_yes_or_no);
    if (table.has("per")) rule.per = a_nutrient(table, "per");
    rule.of_table = table.maybe("of_table", a_yes_or_no, false);
    if (rule.of_table && rule.key != "energy") throw table.refuse("of_table", "of_table only beside the energy");
    rule.at_most = read_most(table, rule);
    rule.why = table.need("why", a_passage);
    rule.source = read_source(table);
    return rule;
}

BlendGuide read_guide(Table& table) {
    BlendGuide guide;
    guide.nutrient = a_nutrient(table, "nutrient");
    guide.laying = table.need("laying", a_yes_or_no);
    guide.from = table.maybe("from", a_time, quantities::days(0));
    guide.to = table.maybe("to", a_time);
    guide.at_least = table.need("at_least", [&](Value const& value) {
        return parse_level(*domain::find_nutrient(guide.nutrient), a_text(value));
    });
    guide.source = read_source(table);
    return guide;
}

}  // namespace

std::map<std::string, domain::Level> read_holds(Table& table, domain::Standing standing) {
    std::map<std::string, domain::Level> holds;
    for (domain::Nutrient const& nutrient : domain::nutrients()) {
        auto const levels = table.maybe_either(nutrient.key, nutrient.also, level_or_two(nutrient));
        if (levels) holds[std::string(nutrient.key)] = {levels->front(), levels->back(), standing};
    }
    return holds;
}

std::vector<Ingredient> read_ingredients(Document document) {
    return read_items(std::move(document), "ingredient", read_built_in);
}

rations::BlendTables read_blend_tables(Document document) {
    Table root = Table::root(std::move(document));
    rations::BlendTables tables{
        .rules = read_items(root, "rule", read_rule), .guides = read_items(root, "guide", read_guide), .limits = {}};
    root.done();
    return tables;
}

}  // namespace cropful::readers
