#include "engine/assumptions.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "engine/refills.hpp"
#include "engine/spread.hpp"

namespace cropful::engine {

namespace {

using domain::Standing;

void about_birds(AssumptionList& list, domain::Hatch const& hatch, Kind const& kind) {
    if (!hatch.laying_from || *hatch.laying_from > hatch.first_age) {
        list.add("intake-growing", "feed eaten by growing " + kind.title + ": the built-in table by age",
                 kind.growing.source);
    }
    if (kind.laying && hatch.laying_from && *hatch.laying_from < hatch.until) {
        list.add("intake-laying",
                 "feed eaten by laying " + kind.title + ": " + plain(kind.laying->rate[1]) + " g per bird and day",
                 kind.laying->source);
    }
    list.add("deaths", "deaths of " + kind.title + ": the built-in table by age", kind.mortality.source);
    if (hatch.eggs && !hatch.hatch_rate) {
        list.add("hatch-rate",
                 percent(kind.hatch_rate.value) + " of " + kind.title + " eggs set hatch (" +
                     percent(kind.hatch_rate.low) + " to " + percent(kind.hatch_rate.high) +
                     " is usual, and what is sure allows for it)",
                 kind.hatch_rate.source);
    }
    if (hatch.eggs && hatch.hatch_rate && !hatch.chicks) {
        list.add("hatch-rate-stated",
                 "of the eggs of " + hatch.name + " " + percent(*hatch.hatch_rate) +
                     " hatch, as stated: what is sure is so at that rate and not below or above it",
                 {"the farm file's hatch_rate", Standing::yours});
    }
    if (hatch.drinker || hatch.supplement) about_water(list, kind);
}

void about_warmth(AssumptionList& list, domain::Farm const& farm, domain::Hatch const& hatch, Kind const& kind) {
    if (hatch.until <= kind.brooding_ends()) return;
    if (!farm.warmth) {
        list.add("warmth-unstated",
                 "the barn is never hot enough to change what birds eat or drink (farm.warmth is not stated)",
                 {"what is taken where nothing is stated", Standing::common_practice});
        return;
    }
    std::string const from = " from " + print_age(kind.brooding_ends()) + " on, when brooding ends";
    if (*farm.warmth > kind.feed_heat.above) {
        list.add("heat-appetite",
                 kind.title + " eat " + percent(ratio(kind.feed_heat.per_degree * kelvins(1))) +
                     " less per degree C above " + plain(kind.feed_heat.above.in_celsius()) + " C" + from,
                 kind.feed_heat.source);
    }
    if (*farm.warmth > kind.water_heat.above) {
        list.add("heat-thirst",
                 kind.title + " drink " + percent(ratio(kind.water_heat.per_degree * kelvins(1))) +
                     " more per g of feed per degree C above " + plain(kind.water_heat.above.in_celsius()) + " C" +
                     from,
                 kind.water_heat.source);
    }
}

void about_energy(AssumptionList& list, domain::Feed const& feed, Fed const& need, domain::Hatch const& hatch,
                  Kind const& kind) {
    if (feed.energy) {
        list.add("energy-appetite",
                 feed.title + ": birds eat less of a richer feed, by its energy to the power " +
                     plain(kind.feed_energy.elasticity),
                 kind.feed_energy.source);
        return;
    }
    auto const same_as = [&](std::string const& birds, EnergyPerMass energy, Source const& source) {
        list.add("energy-unstated",
                 feed.title + ": energy as in the table of " + birds + kind.title + ", " +
                     number(in_kilocalories_per_kilogram(energy), 0) + " kcal/kg (the label states none)",
                 source);
    };
    Duration const lay = hatch.laying_from.value_or(need.to);
    if (need.from < lay) same_as("growing ", kind.growing.energy, kind.growing.source);
    if (kind.laying && lay < need.to) same_as("laying ", kind.laying->energy, kind.laying->source);
}

void about_weight(AssumptionList& list, domain::Feed const& feed, domain::Hatch const& hatch, Rations const& rations) {
    if (hatch.hopper && !feed.density) {
        std::string const form = domain::name(feed.form.value_or(domain::Form::crumble));
        FormDensity const& density = rations.forms.at(form);
        double const pounds_per_cubic_foot =
            in_kilograms_per_litre(density.density[1]) / kilograms_per_pound * litres_per_cubic_inch * 1728;
        list.add("weight-of-feed",
                 feed.title + ": " + form + (feed.form ? "" : " (no form stated)") + " weighs " +
                     plain(pounds_per_cubic_foot) + " lb/ft3 (" +
                     number(in_kilograms_per_litre(density.density[1]), 2) + " kg/L)",
                 density.source);
    }
}

}  // namespace

void AssumptionList::add(std::string id, std::string text, Source source) {
    Assumption const one{std::move(id), std::move(text), std::move(source)};
    if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

void about_water(AssumptionList& list, Kind const& kind) {
    list.add("water-ratio", kind.title + " drink " + plain(kind.water.ratio[1]) + " mL per g of feed",
             kind.water.source);
}

void about_spread(AssumptionList& list, domain::Farm const& farm, bool hoppers, bool learned) {
    list.add(
        "flocks-apart",
        "of flocks 1 in 20 eats, drinks or dies less than the low column of the tables says, and 1 in 20 more than "
        "the high one (`cropful table`)",
        {"the tables' own ends, read as 5 % and 95 % points", Standing::derived});
    if (hoppers) {
        list.add("hopper-weight",
                 "what a full hopper weighs varies from fill to fill (standard deviation " +
                     percent(Spread::density_cv) + ")",
                 {"chosen here, no source", Standing::common_practice});
    }
    if (farm.hatches.size() > 1) {
        list.add("shared-doubt",
                 "what a table does not know is the same for all flocks of its kind: " +
                     percent(Belief::shared_by_kind) + " of how far they lie from it, " +
                     percent(Belief::shared_by_model) + " where its weeks are a growth model's; " +
                     percent(Belief::shared_by_farm) + " between two kinds of one farm",
                 {"chosen here, no source", Standing::common_practice});
    }
    if (!learned) return;
    list.add("top-up", "a top-up measures what was used to within " + percent(top_up_sd) + " (standard deviation)",
             {"chosen here, no source", Standing::common_practice});
}

void about_hatch(AssumptionList& list, domain::Farm const& farm, domain::Hatch const& hatch,
                 std::vector<Fed> const& feeds, Rations const& rations) {
    Kind const& kind = rations.kinds.at(hatch.kind);
    about_birds(list, hatch, kind);
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
            list.add("needs-table", "needs of " + kind.title + ": the " + needs.title + " table, " + needs.basis,
                     needs.source);
            if (kind.needs_source.standing == Standing::common_practice) {
                list.add("needs-of-another", kind.title + " are judged by the " + needs.title + " table",
                         kind.needs_source);
            }
        }
    }
    bool const hoppers = std::any_of(plan.hatches.begin(), plan.hatches.end(),
                                     [](HatchPlan const& part) { return part.hatch.hopper.has_value(); });
    about_spread(list, plan.farm, hoppers, !plan.learned.empty());
    about_readying(list, plan.farm, plan.readying);
    if (plan.need_scale == NeedScale::by_energy) {
        list.add("needs-scaled", "needs are scaled to the energy each label states, as printed where it states none",
                 {"asked for", Standing::yours});
    }
    return list.all;
}

}  // namespace cropful::engine
