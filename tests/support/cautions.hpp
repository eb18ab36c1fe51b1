#pragma once

#include <algorithm>
#include <string>

#include "cropful/domain/words.hpp"
#include "sample_farms.hpp"

/// Which cautions a farm's plan has. They are asked for by id, so that no new wording makes a test empty.
namespace cropful::sample {

inline std::size_t times_said(engine::Plan const& plan, std::string const& id) {
    return static_cast<std::size_t>(std::count_if(plan.cautions.begin(), plan.cautions.end(),
                                                  [&](domain::Caution const& one) { return one.id == id; }));
}

inline bool due(domain::Farm const& farm, std::string const& id) { return times_said(plan_of(farm), id) > 0; }

/// Whether a caution with this id has these arguments, among others.
inline bool states(domain::Farm const& farm, std::string const& id, domain::Arguments const& some) {
    auto const plan = plan_of(farm);
    return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](domain::Caution const& one) {
        return one.id == id && std::all_of(some.begin(), some.end(), [&](auto const& wanted) {
                   auto const found = one.with.find(wanted.first);
                   return found != one.with.end() && found->second == wanted.second;
               });
    });
}

/// Whether an argument of a caution with this id, words or a list of them, quotes these.
inline bool quotes(domain::Farm const& farm, std::string const& id, std::string const& name, std::string const& words) {
    auto const plan = plan_of(farm);
    return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](domain::Caution const& one) {
        if (one.id != id || !one.with.contains(name)) return false;
        auto const* list = std::get_if<std::vector<std::string>>(&one.with.at(name));
        std::string const all = list ? domain::join(*list) : std::get<std::string>(one.with.at(name));
        return all.find(words) != std::string::npos;
    });
}

/// The bobwhites with a supplement in their water, from day 0 for a day.
inline domain::Farm with_supplement(std::string const& title, std::string const& rate = "1 g per L") {
    auto farm = farm_from(bobwhites());
    domain::Supplement one;
    one.key = "tonic";
    one.title = title;
    one.rate = quantities::parse_rate(rate);
    one.keeps = quantities::days(1);
    farm.supplements.emplace("tonic", one);
    farm.hatches[0].supplement = "tonic";
    return farm;
}

/// The bobwhites with a drug in their grower feed, from 6 to 16 wk.
inline domain::Farm medicated(std::string const& drug, double grams) {
    auto farm = farm_from(bobwhites());
    farm.feeds.at("grower").medicated =
        domain::Medication{drug, quantities::kilograms(grams / 1000), quantities::days(0)};
    return farm;
}

}  // namespace cropful::sample
