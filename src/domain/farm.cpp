#include "cropful/domain/farm.hpp"

#include <algorithm>

#include "cropful/domain/ranges.hpp"

namespace cropful::domain {

using namespace quantities;

std::string name(Form form) {
    switch (form) {
        case Form::mash:
            return "mash";
        case Form::crumble:
            return "crumble";
        case Form::pellet:
            return "pellet";
    }
    return "";
}

std::vector<Bag> bags_of(Feed const& feed) {
    if (feed.bags.empty() && feed.bag) return {{*feed.bag, feed.price, 1}};
    return feed.bags;
}

std::optional<MoneyPerMass> price_by_weight(Feed const& feed) {
    if (feed.price && feed.bag) return *feed.price / *feed.bag;
    return feed.by_weight;
}

std::vector<Stage> stages_of(Hatch const& hatch) {
    if (!hatch.housing.empty()) return hatch.housing;
    return {{.from = hatch.first_age,
             .hopper = hatch.hopper,
             .hoppers = hatch.hoppers,
             .drinker = hatch.drinker,
             .drinkers = hatch.drinkers}};
}

Stage stage_at(Hatch const& hatch, Duration age) {
    constexpr Duration instant = days(1e-9);  // what arithmetic may take from an age
    auto const stages = stages_of(hatch);
    auto const begun = [&](Stage const& stage) { return stage.from <= age + instant; };
    auto const last = std::find_if(stages.rbegin(), stages.rend(), begun);
    return last == stages.rend() ? stages.front() : *last;
}

bool has_hopper(Hatch const& hatch) {
    return ranges::any_of(stages_of(hatch), [](Stage const& stage) { return stage.hopper.has_value(); });
}

bool has_drinker(Hatch const& hatch) {
    return ranges::any_of(stages_of(hatch), [](Stage const& stage) { return stage.drinker.has_value(); });
}

bool has_course(Hatch const& hatch) { return hatch.supplement || !hatch.courses.empty(); }

std::vector<Room> const& rooms_of(Brooder const& brooder, std::string const& kind) {
    auto const its = brooder.of_kind.find(kind);
    return its == brooder.of_kind.end() ? brooder.holds : its->second;
}

std::vector<Residence> residences_of(Hatch const& hatch, Farm const& farm) {
    std::vector<Residence> all;
    auto const add = [&](std::string const& house, Duration from, Duration to) {
        from = std::max(from, hatch.first_age);
        to = std::min(to, hatch.until);
        if (from < to) all.push_back({house, from, to});
    };
    if (hatch.brooder) add(*hatch.brooder, hatch.first_age, farm.brooders.at(*hatch.brooder).until);
    for (std::size_t i = 0; i < hatch.housing.size(); ++i) {
        Stage const& stage = hatch.housing[i];
        if (stage.house)
            add(*stage.house, stage.from, i + 1 < hatch.housing.size() ? hatch.housing[i + 1].from : hatch.until);
    }
    return all;
}

std::vector<Course> courses_of(Hatch const& hatch, Farm const& farm) {
    std::vector<Course> all = hatch.courses;
    if (hatch.supplement) {
        Supplement const& its = farm.supplements.at(*hatch.supplement);
        all.push_back({*hatch.supplement, its.from, its.days_long});
    }
    ranges::stable_sort(all, {}, &Course::from);
    return all;
}

std::vector<Duration> chores_of(Farm const& farm) {
    return farm.chores.empty() ? std::vector<Duration>(usual_chores.begin(), usual_chores.end()) : farm.chores;
}

Moment at_first_chore(Moment date, Farm const& farm) {
    bool const no_hour = date == Moment(date.date());
    return no_hour ? date + chores_of(farm).front() : date;
}

Moment first_moment(Hatch const& hatch) { return Moment(hatch.date.date()); }

Moment last_moment(Hatch const& hatch) { return Moment((hatch.date + hatch.until).date()) + days(1); }

Guarantee guarantee_of(Nutrient const& nutrient, double stated) {
    if (nutrient.label_maximum) return {.minimum = {}, .maximum = stated};
    return {.minimum = stated, .maximum = {}};
}

bool is_kept(Hatch const& hatch, Moment at) { return first_moment(hatch) <= at && at <= last_moment(hatch); }

}  // namespace cropful::domain
