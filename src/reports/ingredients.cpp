#include "cropful/reports/ingredients.hpp"

#include "cropful/domain/nutrient.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using domain::Ingredient;

std::string levels_words(Ingredient const& one) {
    std::vector<std::string> levels;
    for (domain::Nutrient const& nutrient : domain::nutrients()) {
        auto const found = one.holds.find(std::string(nutrient.key));
        if (found == one.holds.end()) continue;
        levels.push_back((found->second.less_sure ? "~" : "") + std::string(nutrient.title) + ' ' +
                         domain::print_level(nutrient, found->second.least));
    }
    return join(levels, ", ") + (one.mineral ? "; a mineral: nothing organic" : "");
}

Json levels_json(Ingredient const& one) {
    Json levels = Json::array();
    for (auto const& [nutrient, level] : one.holds) {
        levels.push_back({{"nutrient", nutrient},
                          {"level", level.least},
                          {"unit", unit_of(nutrient)},
                          {"less_sure", level.less_sure}});
    }
    return levels;
}

}  // namespace

Page ingredients_page(std::vector<Ingredient> const& ingredients) {
    Page page = wrap(
        "What ingredients hold, as fed, by the key that `like` and --amounts take. ~ marks a figure less sure than the "
        "rest; what is not listed is unknown. Lots differ: have yours analysed.");
    for (Ingredient const& one : ingredients) {
        page += Blank() + wrap(one.key + ": " + one.title, "", "  ") + wrap(levels_words(one), "  ", "  ") +
                wrap(sourced(one.source), "  ", "   ");
    }
    return page;
}

std::string ingredients_json(std::vector<Ingredient> const& ingredients) {
    Json all = Json::array();
    for (Ingredient const& one : ingredients) {
        Json json{
            {"ingredient", one.key}, {"title", one.title}, {"mineral", one.mineral}, {"levels", levels_json(one)}};
        json.update(to_json(one.source));
        all.push_back(json);
    }
    return printed({{"ingredients", all}});
}

}  // namespace cropful::reports
