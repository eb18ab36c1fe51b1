#pragma once

#include <map>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/readers/rations.hpp"
#include "readers/forms.hpp"
#include "readers/table.hpp"

/// The parts of a farm file, each from its own table. All throw BadInput with file, line and key.
namespace cropful::readers {

/// `farm` already has its chores.
domain::Feed read_feed(std::string const& key, Table& table, domain::Farm const& farm);
/// The feed's key `bags`: sizes and prices, in the order of the file; empty when it is absent.
std::vector<domain::Bag> read_bags(Table& feed);
domain::Store read_store(Table table);
domain::WaterReport read_water_report(Table table);
domain::Hopper read_hopper(std::string const& key, Table& table);
domain::Drinker read_drinker(std::string const& key, Table& table);
domain::Supplement read_supplement(std::string const& key, Table& table);
domain::Disinfectant read_disinfectant(std::string const& key, Table& table);
/// `farm` already has its disinfectants.
domain::Brooder read_brooder(std::string const& key, Table& table, domain::Farm const& farm,
                             RationsReader const& rations);
domain::Brooder read_house(std::string const& key, Table& table, domain::Farm const& farm,
                           RationsReader const& rations);
/// The key of a house of the same file that says how many birds of a kind it holds.
std::string a_place(Value const& value, domain::Farm const& farm, std::string const& kind, std::string const& sort);
/// The key `housing` of a hatch of some kind; empty when it is absent.
std::vector<domain::Stage> read_housing(Table& table, domain::Farm const& farm, std::string const& kind,
                                        quantities::Duration first_age, quantities::Duration until);
/// Its key `courses`; the rest of the hatch is there.
std::vector<domain::Course> read_courses(Table& table, domain::Farm const& farm, domain::Hatch const& hatch);
/// A date, at the first chore of its day where no hour is said.
inline auto a_day_of(domain::Farm const& farm) {
    auto const day = [&farm](Value const& value) {
        auto const at = a_date(value);
        return has_hour(value) ? at : domain::at_first_chore(at, farm);
    };
    return described(day, a_date.expected);
}
/// The farm's key `chores`: hours of the day, rising; empty when it is absent.
std::vector<quantities::Duration> read_chores(Table& table);
/// In words, for a fault.
std::string hatches_allowed();
/// One hatch, or as many as `times` says. `farm` already has everything else; `number` counts the hatches from 1, at
/// most domain::most_hatches.
std::vector<domain::Hatch> read_hatches(Table& table, int number, domain::Farm const& farm,
                                        RationsReader const& rations);

/// [ingredient.KEY]: the built-in one it is `like`, with the owner's figures in place of its own.
domain::Ingredient read_ingredient(std::string const& key, Table& table,
                                   std::vector<domain::Ingredient> const& built_in);
/// `pantry` holds everything that may be mixed.
domain::Blend read_blend(std::string const& name, Table& table, std::vector<domain::Ingredient> const& pantry,
                         RationsReader const& rations);
/// What the cheapest mix is chosen from has a price and is safe to dilute.
void check_choice(Table const& table, domain::Farm const& farm, domain::Blend const& blend,
                  std::vector<domain::Ingredient> const& pantry);

template <class Part>
std::vector<std::string> keys_of(std::map<std::string, Part> const& parts) {
    std::vector<std::string> keys;
    keys.reserve(parts.size());
    for (auto const& [key, part] : parts) keys.push_back(key);
    return keys;
}

/// The key of a part that stands in the same file, in a table [sort.key].
template <class Part>
auto one_in(std::map<std::string, Part> const& parts, std::string const& sort) {
    return [&parts, sort](Value const& value) {
        std::string key = a_text(value);
        if (parts.empty()) throw value.refuse("a table [" + sort + "." + key + "] in this file");
        if (!parts.contains(key)) throw value.refuse(one_of(key, keys_of(parts)));
        return key;
    };
}

}  // namespace cropful::readers
