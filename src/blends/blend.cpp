#include "cropful/blends/blend.hpp"

#include <algorithm>

#include "blends/blend_analysis.hpp"
#include "blends/blend_cautions.hpp"
#include "blends/blend_conflict.hpp"
#include "blends/blend_prices.hpp"
#include "blends/blend_rounding.hpp"
#include "blends/weighing.hpp"
#include "cropful/domain/nutrient.hpp"

namespace cropful::blends {

using namespace quantities;

namespace {

constexpr double nothing = 1e-6;  // a share
constexpr double coarse = 0.05;   // of a limit on an ingredient that rounding may miss without a word
constexpr double no_miss = 1e-6;  // of a limit; least cost takes a hair of the shortfall it is allowed

/// Shares that arithmetic left a hair above none or below it are none.
std::vector<double> tidy(std::vector<double> shares) {
    for (double& share : shares) share = share < nothing ? 0 : share;
    return shares;
}

std::vector<double> given_shares(domain::Blend const& wish, std::vector<Ingredient> const& ingredients) {
    std::vector<double> shares;
    Mass total = kilograms(0);
    for (auto const& one : wish.amounts) total += one.amount;
    for (Ingredient const& ingredient : ingredients) {
        auto const same = [&](domain::Weighed const& one) { return one.ingredient == ingredient.key; };
        auto const found = std::find_if(wish.amounts.begin(), wish.amounts.end(), same);
        shares.push_back(found == wish.amounts.end() ? 0 : ratio(found->amount / total));
    }
    return shares;
}

std::vector<BlendPart> parts_of(std::vector<Ingredient> const& ingredients, std::vector<double> const& shares) {
    std::vector<BlendPart> parts;
    for (std::size_t j = 0; j < ingredients.size(); ++j) {
        parts.push_back({ingredients[j].key,
                         ingredients[j].title,
                         ingredients[j].liquid,
                         shares[j],
                         kilograms(0),
                         ingredients[j].price,
                         {}});
    }
    return parts;
}

/// Amounts on the scale; a given mix in its own batch is as it was given.
void weigh_parts(BlendAnswer& answer, BlendProblem const& problem, std::vector<double> const& shares, bool as_given) {
    std::vector<Mass> amounts;
    for (double const share : shares) amounts.push_back(answer.batch * share);
    if (!as_given) amounts = weigh(shares, answer.batch, answer.scale);
    if (answer.status == BlendStatus::least_cost) amounts = mended(problem, amounts, answer.scale);
    answer.batch = kilograms(0);
    for (std::size_t j = 0; j < amounts.size(); ++j) {
        answer.parts[j].amount = amounts[j];
        answer.batch += amounts[j];
    }
}

std::vector<double> weighed_shares(BlendAnswer const& answer) {
    std::vector<double> shares;
    for (BlendPart const& part : answer.parts) shares.push_back(ratio(part.amount / answer.batch));
    return shares;
}

/// Absent where anything in the mix has no price.
void add_blend_cost(BlendAnswer& answer) {
    MoneyPerMass cost = money_per_kilogram(0);
    Money batch = money(0);
    for (BlendPart const& part : answer.parts) {
        if (part.share <= 0) continue;
        if (!part.price) return;
        cost += *part.price * part.share;
        batch += *part.price * part.amount;
    }
    answer.cost = cost;
    answer.batch_cost = batch;
}

void add_entry_prices(BlendAnswer& answer, Optimum const& optimum) {
    for (std::size_t j = 0; j < answer.parts.size(); ++j) {
        BlendPart& part = answer.parts[j];
        if (part.share > 0 || optimum.reduced_costs[j] <= nothing || !part.price) continue;
        auto const below = *part.price - money_per_kilogram(optimum.reduced_costs[j]);
        if (below > money_per_kilogram(0)) part.enters_below = below;
    }
}

/// What the nearest mix misses, and why; levels as asked of that mix.
void add_clashes(BlendAnswer& answer, BlendProblem const& problem, Nearest const& nearest,
                 std::vector<double> const& shares) {
    auto const asked = [&](std::size_t i) {
        BlendLimit limit = problem.limits[i];
        limit.level = level_asked(limit, problem.ingredients, shares);
        return limit;
    };
    double const most = *std::max_element(nearest.missing.begin(), nearest.missing.end());
    std::vector<bool> missed;
    for (double const missing : nearest.missing) missed.push_back(missing > no_miss || missing == most);
    for (std::size_t i = 0; i < missed.size(); ++i) {
        if (!missed[i]) continue;
        BlendClash clash{asked(i), level_reached(problem, i, shares), within_reach(problem, i), {}};
        for (std::size_t const other : clashing_with(problem, i, missed)) clash.against.push_back(asked(other));
        answer.clashes.push_back(std::move(clash));
    }
}

std::vector<double> cheapest(BlendAnswer& answer, BlendProblem const& problem) {
    Optimum const optimum = minimise(problem.program);
    if (optimum.outcome == Outcome::optimal) {
        answer.duals_unique = optimum.duals_unique;
        answer.mix_unique = optimum.mix_unique;
        answer.parts = parts_of(problem.ingredients, tidy(optimum.x));
        add_entry_prices(answer, optimum);
        answer.prices = shadow_prices(problem, optimum);
        return tidy(optimum.x);
    }
    answer.status = BlendStatus::impossible;
    Nearest const nearest = nearest_mix(problem);
    auto const shares = tidy(nearest.optimum.x);
    answer.parts = parts_of(problem.ingredients, shares);
    answer.shortfall = nearest.shortfall;
    add_clashes(answer, problem, nearest, shares);
    return shares;
}

/// An ingredient, with what of it is less sure.
domain::Known known(Ingredient const& one) {
    domain::Known known{one.title, {}};
    for (auto const& [nutrient, level] : one.holds) {
        if (level.less_sure) known.less_sure.emplace_back(domain::find_nutrient(nutrient)->title);
    }
    return known;
}

/// Ingredients of one source together.
void add_ingredient_sources(BlendAnswer& answer, std::vector<Ingredient> const& used) {
    std::vector<std::pair<Source, std::vector<domain::Known>>> groups;
    for (Ingredient const& one : used) {
        if (one.source.text.empty()) continue;
        auto const same = [&](auto const& group) {
            return group.first.text == one.source.text && group.first.standing == one.source.standing;
        };
        auto group = std::find_if(groups.begin(), groups.end(), same);
        if (group == groups.end()) group = groups.insert(group, {one.source, {}});
        group->second.push_back(known(one));
    }
    for (auto const& [source, those] : groups) {
        answer.assumptions.push_back({.id = "ingredients", .with = {{"ingredients", those}}, .source = source});
    }
}

void add_minerals(BlendAnswer& answer, std::vector<Ingredient> const& used) {
    std::vector<std::string> titles;
    for (Ingredient const& one : used) {
        if (one.mineral) titles.push_back(one.title);
    }
    if (titles.empty()) return;
    answer.assumptions.push_back({.id = "minerals",
                                  .with = {{"ingredients", titles}},
                                  .source = {"their chemical formulas", domain::Standing::derived}});
}

void add_unstated_energy(BlendAnswer& answer, std::vector<Ingredient> const& used, Phase const& phase) {
    std::vector<std::string> silent;
    for (Ingredient const& one : used) {
        if (!one.mineral && !one.holds.contains("energy")) silent.push_back(one.title);
    }
    if (silent.empty()) return;
    domain::Content const energy{"energy", in_kilocalories_per_kilogram(phase.energy)};
    answer.assumptions.push_back({.id = "energy-unstated",
                                  .with = {{"form", "mix"}, {"energy", energy}, {"ingredients", silent}},
                                  .source = {"the safe side", domain::Standing::common_practice}});
}

/// Floors lent by other kinds' tables, those of one source together.
void add_borrowed(BlendAnswer& answer, BlendNeeds const& needs) {
    std::vector<domain::Content> floors;
    Source source;
    for (BlendFinding const& one : answer.findings) {
        if (!one.floor_borrowed) continue;
        floors.push_back({one.nutrient, *one.floor});
        source = one.floor_source;
    }
    if (floors.empty()) return;
    answer.assumptions.push_back(
        {.id = "borrowed-floors", .with = {{"table", needs.table.title}, {"floors", floors}}, .source = source});
}

void add_blend_assumptions(BlendAnswer& answer, std::vector<Ingredient> const& used,
                           std::optional<BlendNeeds> const& needs) {
    if (needs && needs->of_a_kind()) {
        bool const scaled = answer.need_scale == NeedScale::by_energy;
        answer.assumptions.push_back({.id = "needs-table",
                                      .with = {{"form", scaled ? "mix by energy" : "mix as printed"},
                                               {"table", needs->table.title},
                                               {"phase", needs->phase.name}},
                                      .source = needs->table.source});
    }
    if (needs) add_borrowed(answer, *needs);
    add_ingredient_sources(answer, used);
    add_minerals(answer, used);
    if (!needs) return;
    bool const by_energy = answer.need_scale == NeedScale::by_energy;
    if (by_energy && needs->of_a_kind()) add_unstated_energy(answer, used, needs->phase);
    for (BlendRule const& rule : needs->tables.rules) {
        if (rule.of_table && (by_energy || !needs->of_a_kind())) continue;
        bool const of_used = std::any_of(used.begin(), used.end(), [&](Ingredient const& one) {
            return rule.of == BlendLimit::Of::nutrient || (one.like == rule.key && !one.at_most);
        });
        if (rule.laying == answer.laying && of_used)
            answer.assumptions.push_back(
                {.id = "built-in-ceiling", .with = {{"why", rule.why}}, .source = rule.source});
    }
}

}  // namespace

BlendAnswer blend(domain::Blend const& wish, std::vector<Ingredient> const& ingredients,
                  std::optional<BlendNeeds> const& needs, NeedScale scale) {
    BlendAnswer answer;
    answer.blend = wish;
    answer.kind_title = needs ? needs->kind_title : "";
    answer.phase = needs ? needs->phase.name : "";
    answer.laying = for_layers(wish, needs);
    answer.need_scale = scale;
    answer.batch = wish.batch.value();
    answer.scale = wish.scale.value();
    auto const problem = blend_problem(wish, ingredients, needs, scale);
    bool const given = !wish.amounts.empty();
    if (given) answer.status = BlendStatus::given;
    auto const shares = given ? given_shares(wish, ingredients) : cheapest(answer, problem);
    if (given) answer.parts = parts_of(ingredients, shares);
    Mass total = kilograms(0);
    for (auto const& one : wish.amounts) total += one.amount;
    weigh_parts(answer, problem, shares, given && total == answer.batch);
    auto const weighed = weighed_shares(answer);
    answer.findings = findings(problem, shares, weighed);
    answer.shares_missed = shares_missed(problem, weighed, given ? 0 : coarse);
    answer.not_kept = not_kept(problem, weighed, given);
    add_blend_cost(answer);
    std::vector<Ingredient> used;
    for (std::size_t j = 0; j < ingredients.size(); ++j) {
        if (shares[j] > 0) used.push_back(ingredients[j]);
    }
    add_blend_assumptions(answer, used, needs);
    answer.cautions = blend_cautions(answer, used, needs);
    return answer;
}

}  // namespace cropful::blends
