
#include "cropful/domain/ranges.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Standing;

void about_figures(AssumptionList& list, domain::WaterReport const& report, WaterTable const& table) {
    if (report.conductivity) {
        auto const& factor = rations::tds_factor(*report.conductivity, table);
        list.add({.id = "tds-of-conductivity",
                  .with = {{"stated", report.conductivity->in_microsiemens_per_centimetre()},
                           {"factor", factor.factor},
                           {"solids", rations::solids_of(*report.conductivity, table)}},
                  .source = factor.source});
    }
    if (report.nitrate_n) {
        list.add(
            {.id = "nitrate-of-nitrogen", .with = {{"factor", table.nitrate.factor}}, .source = table.nitrate.source});
    }
    if (!report.softened || report.sampled_after) return;
    auto const hardness = report.found.find("hardness");
    if (hardness == report.found.end()) {
        list.add({.id = "softener-sodium",
                  .with = {{"form", "unknown"}},
                  .source = {"what is taken where nothing is stated", Standing::common_practice}});
        return;
    }
    list.add({.id = "softener-sodium",
              .with = {{"form", "known"},
                       {"hardness", hardness->second},
                       {"sodium", hardness->second * table.softener.factor},
                       {"factor", table.softener.factor}},
              .source = table.softener.source});
}

/// Rows that were measured with other birds than those they are held against.
void about_others(AssumptionList& list, Plan const& plan) {
    std::vector<std::string> applies;
    auto const note = [&](std::optional<WaterRow> const& row, std::string const& kind) {
        if (!row || row->kinds.empty() || ranges::contains(row->kinds, kind)) return;
        if (!ranges::contains(applies, row->applies)) applies.push_back(row->applies);
    };
    for (WaterFinding const& finding : plan.water) note(finding.row, finding.kind);
    for (SodiumSum const& sum : plan.sodium) {
        for (HatchPlan const& part : plan.hatches) {
            if (part.hatch.name == sum.hatch) note(sum.row, part.hatch.kind);
        }
    }
    if (applies.empty()) return;
    list.add({.id = "water-of-others",
              .with = {{"applies", applies}},
              .source = {"what is taken where nothing better is known", Standing::common_practice}});
}

void about_products(AssumptionList& list, Plan const& plan) {
    for (SodiumSum const& sum : plan.sodium) {
        if (sum.supplement.empty() || sum.product) continue;
        list.add({.id = "sodium-unstated",
                  .with = {{"supplement", plan.farm.supplements.at(sum.supplement).title}},
                  .source = {"what is taken where nothing is stated", Standing::common_practice}});
    }
}

}  // namespace

void about_well(AssumptionList& list, Plan const& plan, Rations const& rations) {
    if (!plan.farm.water || plan.water.empty()) return;
    about_figures(list, *plan.farm.water, rations.water);
    about_others(list, plan);
    about_products(list, plan);
    for (HatchPlan const& part : plan.hatches) {
        bool const diet = ranges::any_of(part.checks, [](Check const& check) { return check.diet.has_value(); });
        if (diet) about_water(list, rations.kinds.at(part.hatch.kind));
    }
}

}  // namespace cropful::engine
