#include <algorithm>

#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr Duration a_week = days(7);
constexpr std::size_t most_listed = 3;

Fill<Mass> const* first_stale(Vessels<Mass> const& hoppers) {
    for (Fill<Mass> const& fill : hoppers.fills) {
        if (fill.until - fill.at > usually_wholesome(fill.age) + instant) return &fill;
    }
    return nullptr;
}

/// What the usual flock eats in the week after a fill, by the days there are, out of each hopper.
Mass week_in_each(HatchPlan const& part, Fill<Mass> const& fill, int hoppers) {
    Mass eaten = kilograms(0);
    Duration counted = days(0);
    for (Day const& day : part.days) {
        bool const whole = fill.at <= day.at;  // the day of the fill is not
        if (!whole || counted >= a_week) continue;
        for (Eaten const& feed : day.feeds) eaten += feed.amount;
        counted += days(1);
    }
    return counted > days(0) ? eaten * ratio(a_week / counted) / static_cast<double>(hoppers) : kilograms(0);
}

/// What to put in for a week: each hatch's amount or, of many, the least and the most.
void add_weekly(domain::Arguments& with, std::vector<domain::Portion> const& weekly) {
    with["form"] = weekly.size() <= most_listed ? "each" : "many";
    if (weekly.size() <= most_listed) {
        with["weekly"] = weekly;
        return;
    }
    auto const [least, most] = std::minmax_element(weekly.begin(), weekly.end(),
                                                   [](auto const& a, auto const& b) { return a.amount < b.amount; });
    with["count"] = static_cast<double>(weekly.size());
    with["least"] = least->amount;
    with["most"] = most->amount;
}

}  // namespace

void stale_feed_cautions(CautionList& list, std::vector<HatchPlan> const& parts) {
    std::vector<std::pair<std::string, std::vector<domain::Portion>>> by_hopper;
    for (HatchPlan const& part : parts) {
        for (StagePlan const& stage : part.stages) {
            Fill<Mass> const* stale = stage.hoppers ? first_stale(*stage.hoppers) : nullptr;
            if (stale == nullptr) continue;
            auto const& [key, count, fills] = *stage.hoppers;
            auto const same = [&key = key](auto const& one) { return one.first == key; };
            auto found = std::find_if(by_hopper.begin(), by_hopper.end(), same);
            if (found == by_hopper.end()) found = by_hopper.insert(found, {key, {}});
            found->second.push_back({part.hatch.name, week_in_each(part, *stale, count)});
        }
    }
    for (auto const& [hopper, weekly] : by_hopper) {
        Caution caution{.id = "stale-feed",
                        .with = {{"hopper", hopper}},
                        .source =
                            "7 and 14 d: common practice; feed within three weeks of its making, sooner in heat: "
                            "NC State, ces.ncsu.edu/depts/poulsci/tech_manuals/feeding_quail.html"};
        for (domain::Portion const& one : weekly) caution.hatches.push_back(one.to);
        add_weekly(caution.with, weekly);
        list.add(std::move(caution));
    }
}

}  // namespace cropful::engine
