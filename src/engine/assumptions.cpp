#include "engine/assumptions.hpp"

#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "engine/refills.hpp"
#include "engine/spread.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Standing;

void about_birds(AssumptionList& list, domain::Hatch const& hatch, Kind const& kind) {
    if (!hatch.laying_from || *hatch.laying_from > hatch.first_age) {
        list.add({.id = "intake-growing", .with = {{"kind", kind.title}}, .source = kind.growing.source});
    }
    if (kind.laying && hatch.laying_from && *hatch.laying_from < hatch.until) {
        list.add({.id = "intake-laying",
                  .with = {{"kind", kind.title}, {"rate", grams_per_bird_day(kind.laying->rate[1])}},
                  .source = kind.laying->source});
    }
    list.add({.id = "deaths", .with = {{"kind", kind.title}}, .source = kind.mortality.source});
    if (hatch.set) {
        list.add({.id = "incubation",
                  .with = {{"hatch", hatch.name},
                           {"kind", kind.title},
                           {"set", *hatch.set},
                           {"date", hatch.date},
                           {"low", static_cast<double>(kind.incubation.low)},
                           {"high", static_cast<double>(kind.incubation.high)}},
                  .source = kind.incubation.source});
    }
    if (hatch.eggs && !hatch.hatch_rate) {
        list.add({.id = "hatch-rate",
                  .with = {{"kind", kind.title},
                           {"rate", Share{kind.hatch_rate.value}},
                           {"low", Share{kind.hatch_rate.low}},
                           {"high", Share{kind.hatch_rate.high}}},
                  .source = kind.hatch_rate.source});
    }
    if (hatch.eggs && hatch.hatch_rate && !hatch.chicks) {
        list.add({.id = "hatch-rate-stated",
                  .with = {{"hatch", hatch.name}, {"rate", Share{*hatch.hatch_rate}}},
                  .source = {"the farm file's hatch_rate", Standing::yours}});
    }
    if (domain::has_drinker(hatch) || domain::has_course(hatch)) about_water(list, kind);
}

void about_vessels(AssumptionList& list, domain::Farm const& farm, domain::Hatch const& hatch) {
    for (domain::Stage const& stage : domain::stages_of(hatch)) {
        if (stage.hopper) {
            domain::Hopper const& hopper = farm.hoppers.at(*stage.hopper);
            if (!hopper.at_most && !hopper.fill_for) {
                list.add({.id = "wholesome",
                          .with = {{"hopper", hopper.key}},
                          .source = {"common practice, no source", Standing::common_practice}});
            }
        }
        if (!stage.drinker) continue;
        domain::Drinker const& drinker = farm.drinkers.at(*stage.drinker);
        if (drinker.displaced > litres(0) && !(drinker.least > litres(0)) && domain::has_course(hatch)) {
            list.add({.id = "least-unstated",
                      .with = {{"drinker", drinker.key}},
                      .source = {"what is taken where nothing is stated", Standing::common_practice}});
        }
    }
}

void about_chores(AssumptionList& list, domain::Farm const& farm) {
    if (!farm.chores.empty()) return;
    std::vector<std::string> hours;
    for (Duration const& hour : domain::usual_chores) {
        hours.push_back((Moment(std::chrono::sys_days()) + hour).iso().substr(11));
    }
    list.add({.id = "chores-unstated",
              .with = {{"hours", hours}},
              .source = {"what is taken where nothing is stated", Standing::common_practice}});
}

void about_warmth(AssumptionList& list, domain::Farm const& farm, domain::Hatch const& hatch, Kind const& kind) {
    if (hatch.until <= kind.brooding_ends()) return;
    if (!farm.warmth) {
        list.add(
            {.id = "warmth-unstated", .source = {"what is taken where nothing is stated", Standing::common_practice}});
        return;
    }
    Age const from{kind.brooding_ends()};
    if (*farm.warmth > kind.feed_heat.above) {
        list.add({.id = "heat-appetite",
                  .with = {{"kind", kind.title},
                           {"fall", kind.feed_heat.per_degree},
                           {"above", kind.feed_heat.above},
                           {"from", from}},
                  .source = kind.feed_heat.source});
    }
    if (*farm.warmth > kind.water_heat.above) {
        list.add({.id = "heat-thirst",
                  .with = {{"kind", kind.title},
                           {"rise", kind.water_heat.per_degree},
                           {"above", kind.water_heat.above},
                           {"from", from}},
                  .source = kind.water_heat.source});
    }
}

void about_energy(AssumptionList& list, domain::Feed const& feed, Fed const& need, domain::Hatch const& hatch,
                  Kind const& kind) {
    if (feed.energy) {
        list.add({.id = "energy-appetite",
                  .with = {{"feed", feed.title}, {"power", kind.feed_energy.elasticity}},
                  .source = kind.feed_energy.source});
        return;
    }
    auto const same_as = [&](std::string const& birds, EnergyPerMass energy, Source const& source) {
        list.add({.id = "energy-unstated",
                  .with = {{"form", birds}, {"feed", feed.title}, {"kind", kind.title}, {"energy", energy}},
                  .source = source});
    };
    Duration const lay = hatch.laying_from.value_or(need.to);
    if (need.from < lay) same_as("growing", kind.growing.energy, kind.growing.source);
    if (kind.laying && lay < need.to) same_as("laying", kind.laying->energy, kind.laying->source);
}

void about_weight(AssumptionList& list, domain::Feed const& feed, domain::Hatch const& hatch, Rations const& rations) {
    if (!domain::has_hopper(hatch) || feed.density) return;
    std::string const shape = domain::name(feed.form.value_or(domain::Form::crumble));
    FormDensity const& density = rations.forms.at(shape);
    list.add({.id = "weight-of-feed",
              .with = {{"form", feed.form ? "stated" : "unstated"},
                       {"feed", feed.title},
                       {"shape", shape},
                       {"density", density.density[1]}},
              .source = density.source});
}

}  // namespace

void AssumptionList::add(Assumption assumption) {
    if (std::find(all.begin(), all.end(), assumption) == all.end()) all.push_back(std::move(assumption));
}

void about_water(AssumptionList& list, Kind const& kind) {
    list.add({.id = "water-ratio",
              .with = {{"kind", kind.title}, {"ratio", litres_per_kilogram(kind.water.ratio[1])}},
              .source = kind.water.source});
}

void about_spread(AssumptionList& list, domain::Farm const& farm, bool hoppers, bool learned) {
    Source const chosen{"chosen here, no source", Standing::common_practice};
    list.add(
        {.id = "flocks-apart", .source = {"the tables' own ends, read as 5 % and 95 % points", Standing::derived}});
    if (hoppers) {
        list.add({.id = "hopper-weight", .with = {{"deviation", Share{Spread::density_cv}}}, .source = chosen});
    }
    if (farm.hatches.size() > 1) {
        list.add({.id = "shared-doubt",
                  .with = {{"by_kind", Share{Belief::shared_by_kind}},
                           {"by_model", Share{Belief::shared_by_model}},
                           {"by_farm", Share{Belief::shared_by_farm}}},
                  .source = chosen});
    }
    if (learned) list.add({.id = "top-up", .with = {{"deviation", Share{top_up_sd}}}, .source = chosen});
}

void about_hatch(AssumptionList& list, domain::Farm const& farm, domain::Hatch const& hatch,
                 std::vector<Fed> const& feeds, Rations const& rations) {
    Kind const& kind = rations.kinds.at(hatch.kind);
    about_birds(list, hatch, kind);
    about_vessels(list, farm, hatch);
    about_warmth(list, farm, hatch, kind);
    for (Fed const& one : feeds) {
        domain::Feed const& feed = farm.feeds.at(one.feed);
        about_energy(list, feed, one, hatch, kind);
        about_weight(list, feed, hatch, rations);
    }
}

std::vector<Assumption> assumptions(Plan const& plan, Rations const& rations) {
    AssumptionList list;
    for (HatchPlan const& part : plan.hatches) {
        Kind const& kind = rations.kinds.at(part.hatch.kind);
        std::vector<Fed> feeds;
        for (FeedNeed const& need : part.feeds) feeds.push_back({need.feed, need.from, need.to});
        about_hatch(list, plan.farm, part.hatch, feeds, rations);
        bool const judged = std::any_of(part.checks.begin(), part.checks.end(),
                                        [](Check const& check) { return check.verdict != Verdict::unstated; });
        if (judged) {
            NeedsTable const& needs = rations.needs.at(kind.needs_table);
            list.add({.id = "needs-table",
                      .with = {{"form", "feed"}, {"kind", kind.title}, {"table", needs.title}, {"basis", needs.basis}},
                      .source = needs.source});
            if (kind.needs_source.standing == Standing::common_practice) {
                list.add({.id = "needs-of-another",
                          .with = {{"kind", kind.title}, {"table", needs.title}},
                          .source = kind.needs_source});
            }
        }
    }
    bool const hoppers = std::any_of(plan.hatches.begin(), plan.hatches.end(),
                                     [](HatchPlan const& part) { return domain::has_hopper(part.hatch); });
    about_spread(list, plan.farm, hoppers, !plan.learned.empty());
    bool const tended = ranges::any_of(plan.hatches, [](HatchPlan const& part) { return !part.stages.empty(); });
    if (tended) about_chores(list, plan.farm);
    for (Purchase const& feed : plan.feeds) {
        domain::Feed const& its = plan.farm.feeds.at(feed.key);
        if (feed.on_hand > kilograms(0) && !its.counted && !plan.farm.name.empty()) {
            list.add({.id = "stock-as-of-now",
                      .with = {{"feed", feed.title}},
                      .source = {"what is taken where nothing is stated", Standing::common_practice}});
        }
    }
    about_readying(list, plan.farm, plan.readying);
    about_well(list, plan, rations);
    if (plan.need_scale == NeedScale::by_energy) {
        list.add({.id = "needs-scaled", .source = {"asked for", Standing::yours}});
    }
    return list.all;
}

}  // namespace cropful::engine
