#include <algorithm>
#include <utility>

#include "cropful/domain/nutrient.hpp"
#include "readers/blend_parts.hpp"
#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using domain::Ingredient;
using engine::BlendLimit;
using engine::BlendRule;

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

BlendRule read_rule(Table& table) {
    BlendRule rule;
    auto const like = table.maybe("like", a_text);
    rule.of = like ? BlendLimit::Of::ingredient : BlendLimit::Of::nutrient;
    rule.key = like ? *like : table.need("nutrient", a_text);
    auto const* nutrient = domain::find_nutrient(rule.key);
    if (!like && !nutrient) throw table.refuse("nutrient", "a nutrient's key, such as \"calcium\"");
    if (!like) rule.key = nutrient->key;
    auto const level = [&](Value const& value) {
        return like ? a_percentage(value) : parse_level(*nutrient, a_text(value));
    };
    rule.laying = table.need("laying", a_yes_or_no);
    rule.at_most = table.need("at_most", level);
    rule.why = table.need("why", a_passage);
    rule.source = read_source(table);
    return rule;
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

std::vector<BlendRule> read_blend_rules(Document document) {
    return read_items(std::move(document), "rule", read_rule);
}

}  // namespace cropful::readers
