#include "blends/blend_cautions.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/rations/limits.hpp"
#include "engine/caution_list.hpp"

namespace cropful::blends {

namespace {

using engine::CautionList;

constexpr char practice[] = "common practice, no source";
constexpr Duration chick_until = days(42);
constexpr double noticeable = 0.05;  // of an amount that rounding to the scale changes

bool is_like(Ingredient const& one, std::string_view word) {
    return one.like.starts_with(word) || domain::lower(one.title).find(word) != std::string::npos;
}

std::string titles(std::vector<Ingredient> const& used, std::initializer_list<char const*> words) {
    std::vector<std::string> found;
    for (Ingredient const& one : used) {
        bool const any = std::any_of(words.begin(), words.end(), [&](char const* word) { return is_like(one, word); });
        bool const meal = is_like(one, "meal") || is_like(one, "middlings") || is_like(one, "oil");
        if (any && !meal) found.push_back(one.title);
    }
    return domain::join(found);
}

void medicine(CautionList& list, std::vector<Ingredient> const& used) {
    for (Ingredient const& one : used) {
        if (!one.medicated) continue;
        list.add(
            "medicated-in-mix",
            one.title +
                " is medicated. Never dilute a medicated feed or mix it with another: the dose is then not the one on "
                "the label, and its withdrawal time no longer holds. Feed it alone, as the label says.",
            "the feed's label; veterinarian and local law decide");
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
    std::string const lead =
        gap.empty() ? "No needs of birds were looked at" : "Nothing in this mix states " + domain::join(gap);
    list.add(
        "no-premix",
        lead +
            ". Grain and meal alone are no complete feed: add a vitamin and trace-mineral premix made for gamebirds "
            "or turkeys at its label's rate, and give it here as an ingredient with what it states.",
        practice);
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
    list.add(
        "silent-table",
        "The needs of " + needs->table.title + " (" + needs->phase.name + ") give no figure for " +
            domain::join(missing) +
            ". The birds need them all the same, and nothing here keeps a mix from being short of them: set your own "
            "under need, such as zinc = \"50 mg/kg\", or take them from the premix.",
        needs->table.source.text);
}

void grain_size(CautionList& list, std::vector<Ingredient> const& used, std::optional<BlendNeeds> const& needs) {
    std::string const grain = titles(used, {"corn", "wheat", "sorghum", "oats", "barley", "maize", "millet"});
    if (grain.empty()) return;
    bool const chicks = needs && needs->of_a_kind() && !needs->phase.laying && needs->phase.from < chick_until;
    list.add("grain-size",
             chicks
                 ? "Grind " + grain +
                       " finely and evenly: small chicks cannot take whole or cracked grain, and pick the large bits "
                       "out of an uneven mash. No bit should be larger than a chick takes whole, about 1 mm in the "
                       "first week and 2 mm later."
                 : "Grind " + grain +
                       " evenly, or the birds pick out the large bits and leave the rest. Birds that get whole or "
                       "cracked grain need insoluble grit to grind it.",
             practice);
}

void small_amounts(CautionList& list, BlendAnswer const& answer) {
    std::vector<std::string> rough;
    for (BlendPart const& part : answer.parts) {
        double const exact = part.share * in_kilograms(answer.batch);
        if (part.share > 0 && std::abs(in_kilograms(part.amount) - exact) > noticeable * exact)
            rough.push_back(part.title);
    }
    if (rough.empty()) return;
    list.add("coarse-scale",
             "The scale's step is coarse for " + domain::join(rough) +
                 ": rounding, and moving steps so that the rest keeps its limits, changed the amount by more than 5 %. "
                 "Weigh "
                 "on a finer scale (--scale), or mix a larger batch.",
             "");
}

void soybeans_and_salt(CautionList& list, std::vector<Ingredient> const& used) {
    for (Ingredient const& one : used) {
        if (!is_like(one, "soy") && !is_like(one, "sbm")) continue;
        if (one.liquid) continue;
        list.add(
            "raw-soybeans",
            "Use soybean meal that was heated by its maker. Raw soybeans stop chicks from digesting protein: roast "
            "them properly, or do not use them.",
            practice);
        break;
    }
    bool const salted = std::any_of(used.begin(), used.end(), [](Ingredient const& one) {
        return is_like(one, "salt") || is_like(one, "methionine") || is_like(one, "lysine");
    });
    if (!salted) return;
    list.add(
        "weigh-salt",
        "Weigh salt and other small amounts twice and mix them in evenly: a pocket of salt kills chicks. Count the "
        "salt that is already in fish meal, bought feed or a premix.",
        practice);
}

/// Sodium that is as much salt as birds die of.
void deadly_salt(CautionList& list, BlendAnswer const& answer, std::optional<BlendNeeds> const& needs) {
    for (BlendFinding const& one : answer.findings) {
        if (!needs || one.nutrient != "sodium") continue;
        double const salt = one.most / rations::sodium_in_salt;
        Limit const* stop = deadly(passed(needs->tables.limits, "salt_feed", salt));
        if (stop == nullptr) continue;
        list.add("salt-lethal",
                 "This mix holds " + number(one.most, 2) + " % sodium, as " + number(salt, 1) + " % of salt has. " +
                     rations::do_not_give + " At " + words_of(*stop) + ".",
                 stop->source.text);
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
    list.add(
        "mix-goes-stale",
        "Ground feed goes stale and mouldy: mix what is eaten in about 4 weeks, keep it dry and cool, and throw away "
        "what is mouldy, caked or musty. Never feed it off.",
        practice);
    list.add(
        "lots-differ",
        "Ingredients differ from lot to lot, and the figures here are averages: have the mix analysed before you rely "
        "on it for many birds. Labels, your veterinarian and local feed law come before this page.",
        practice);
    return list.all();
}

}  // namespace cropful::blends
