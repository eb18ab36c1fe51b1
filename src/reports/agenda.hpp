#pragma once

#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"
#include "reports/ical.hpp"

/// The events of a plan.
namespace cropful::reports {

/// All of them in order of time, with their UIDs: a fingerprint of the farm's name, the hatch's name, the category,
/// what it is about and its number among those alike. Neither moment nor price is part of it, so that an event keeps
/// its UID when a plan made again moves it.
std::vector<Event> agenda(engine::Plan const& plan, rations::Rations const& rations);

// Parts of it, without UIDs.
void add_hoppers(std::vector<Event>& events, engine::HatchPlan const& hatch, domain::Farm const& farm);
void add_drinkers(std::vector<Event>& events, engine::HatchPlan const& hatch, domain::Farm const& farm);
void add_mixing(std::vector<Event>& events, engine::HatchPlan const& hatch, domain::Farm const& farm);
/// The end of each withdrawal, of birds and of eggs, counted from the planned end of the feed or course whether or not
/// that lies in the plan.
void add_withdrawals(std::vector<Event>& events, engine::HatchPlan const& hatch, domain::Farm const& farm);
void add_shopping(std::vector<Event>& events, engine::Plan const& plan);

/// That of an age; null where there is none.
engine::Fill<quantities::Mass> const* fill_at(engine::Vessels<quantities::Mass> const& hoppers,
                                              quantities::Duration age);
/// "Empty 3 x tube and fill with it: 12 lb in all, to 20 %."; no amount without a fill.
std::string refill_words(engine::Vessels<quantities::Mass> const& hoppers, engine::Fill<quantities::Mass> const* fill,
                         quantities::Measures measures);

/// "3 x tube".
template <class Amount>
std::string vessels_words(engine::Vessels<Amount> const& vessels) {
    return std::to_string(vessels.count) + " x " + vessels.key;
}

}  // namespace cropful::reports
