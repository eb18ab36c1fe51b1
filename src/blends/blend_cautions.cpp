#include "blends/blend_cautions.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/rations/limits.hpp"
#include "engine/caution_list.hpp"

namespace cropful::blends {

using namespace quantities;

namespace {

using engine::CautionList;

constexpr char practice[] = "common practice, no source";
constexpr Duration chick_until = days(42);
constexpr double noticeable = 0.05;  // of an amount that rounding to the scale changes

bool is_like(Ingredient const& one, std::string_view word) {
    return one.like.starts_with(word) || domain::lower(one.title).find(word) != std::string::npos;
}

std::vector<std::string> titles(std::vector<Ingredient> const& used, std::initializer_list<char const*> words) {
    std::vector<std::string> found;
    for (Ingredient const& one : used) {
        bool const any = std::any_of(words.begin(), words.end(), [&](char const* word) { return is_like(one, word); });
        bool const meal = is_like(one, "meal") || is_like(one, "middlings") || is_like(one, "oil");
        if (any && !meal) found.push_back(one.title);
    }
    return found;
}

void medicine(CautionList& list, std::vector<Ingredient> const& used) {
    for (Ingredient const& one : used) {
        if (!one.medicated) continue;
        list.add({.id = "medicated-in-mix",
                  .with = {{"feed", one.title}},
                  .source = "the feed's label; veterinarian and local law decide"});
    }
}

/// Vitamins and trace minerals: what a premix brings.
bool from_premix(std::string const& nutrient) {
    auto const unit = domain::find_nutrient(nutrient)->unit;
    return unit == domain::NutrientUnit::milligrams_per_kilogram || unit == domain::NutrientUnit::units_per_kilogram;
}

void premix(CautionList& list, BlendAnswer const& answer) {
    std::vector<std::string> gap;
    for (BlendFinding const& one : answer.findings) {
        bool const unstated = one.verdict == Verdict::unstated && one.floor && from_premix(one.nutrient);
        if (unstated) gap.emplace_back(domain::find_nutrient(one.nutrient)->title);
    }
    if (gap.empty() && !answer.kind_title.empty()) return;
    Caution caution{.id = "no-premix", .with = {{"form", gap.empty() ? "no needs" : "unstated"}}, .source = practice};
    if (!gap.empty()) caution.with["nutrients"] = gap;
    list.add(std::move(caution));
}

/// What every bird needs, and the table of its kind may say nothing of.
void silent_table(CautionList& list, std::optional<BlendNeeds> const& needs, BlendAnswer const& answer) {
    if (!needs || !needs->of_a_kind()) return;
    std::vector<std::string> missing;
    for (char const* key :
         {"lysine", "methionine", "threonine", "tryptophan", "copper", "iron", "manganese", "selenium", "zinc", "vit_a",
          "vit_d3", "vit_e", "vit_k", "vit_b12", "biotin", "folacin", "pyridoxine", "thiamin"}) {
        auto const same = [&](auto const& one) { return one.nutrient == key; };
        bool const said = std::any_of(needs->phase.needs.begin(), needs->phase.needs.end(), same) ||
                          std::any_of(answer.findings.begin(), answer.findings.end(),
                                      [&](BlendFinding const& one) { return same(one) && one.floor_borrowed; });
        if (!said && !answer.blend.need.contains(key)) missing.emplace_back(domain::find_nutrient(key)->title);
    }
    if (missing.empty()) return;
    list.add({.id = "silent-table",
              .with = {{"table", needs->table.title}, {"phase", needs->phase.name}, {"nutrients", missing}},
              .source = needs->table.source.text});
}

void grain_size(CautionList& list, std::vector<Ingredient> const& used, std::optional<BlendNeeds> const& needs) {
    auto const grain = titles(used, {"corn", "wheat", "sorghum", "oats", "barley", "maize", "millet"});
    if (grain.empty()) return;
    bool const chicks = needs && needs->of_a_kind() && !needs->phase.laying && needs->phase.from < chick_until;
    list.add(
        {.id = "grain-size", .with = {{"form", chicks ? "chicks" : "birds"}, {"grain", grain}}, .source = practice});
}

void small_amounts(CautionList& list, BlendAnswer const& answer) {
    std::vector<std::string> rough;
    for (BlendPart const& part : answer.parts) {
        double const exact = part.share * in_kilograms(answer.batch);
        if (part.share > 0 && std::abs(in_kilograms(part.amount) - exact) > noticeable * exact)
            rough.push_back(part.title);
    }
    if (rough.empty()) return;
    list.add({.id = "coarse-scale", .with = {{"ingredients", rough}}});
}

void soybeans_and_salt(CautionList& list, std::vector<Ingredient> const& used) {
    for (Ingredient const& one : used) {
        if (!is_like(one, "soy") && !is_like(one, "sbm")) continue;
        if (one.liquid) continue;
        list.add({.id = "raw-soybeans", .source = practice});
        break;
    }
    bool const salted = std::any_of(used.begin(), used.end(), [](Ingredient const& one) {
        return is_like(one, "salt") || is_like(one, "methionine") || is_like(one, "lysine");
    });
    if (salted) list.add({.id = "weigh-salt", .source = practice});
}

/// Sodium that is as much salt as birds die of.
void deadly_salt(CautionList& list, BlendAnswer const& answer, std::optional<BlendNeeds> const& needs) {
    for (BlendFinding const& one : answer.findings) {
        if (!needs || one.nutrient != "sodium") continue;
        double const salt = one.most / rations::sodium_in_salt;
        Limit const* stop = deadly(passed(needs->tables.limits, "salt_feed", salt));
        if (stop == nullptr) continue;
        list.add({.id = "salt-lethal",
                  .with = {{"form", "mix"},
                           {"sodium", domain::Share{one.most / 100}},
                           {"as_salt", domain::Share{salt / 100}},
                           {"limit", words_of(*stop)}},
                  .source = stop->source.text});
    }
}

}  // namespace

std::vector<Caution> blend_cautions(BlendAnswer const& answer, std::vector<Ingredient> const& used,
                                    std::optional<BlendNeeds> const& needs) {
    CautionList list;
    deadly_salt(list, answer, needs);
    medicine(list, used);
    premix(list, answer);
    silent_table(list, needs, answer);
    grain_size(list, used, needs);
    soybeans_and_salt(list, used);
    small_amounts(list, answer);
    list.add({.id = "mix-goes-stale", .source = practice});
    list.add({.id = "lots-differ", .source = practice});
    return list.all();
}

}  // namespace cropful::blends
