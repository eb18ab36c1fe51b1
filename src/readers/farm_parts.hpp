#pragma once

#include <map>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/readers/rations.hpp"
#include "readers/table.hpp"

/// The parts of a farm file, each from its own table. All throw BadInput with file, line and key.
namespace cropful::readers {

domain::Feed read_feed(std::string const& key, Table& table);
domain::Hopper read_hopper(std::string const& key, Table& table);
domain::Drinker read_drinker(std::string const& key, Table& table);
domain::Supplement read_supplement(std::string const& key, Table& table);
/// `farm` already has its feeds, hoppers, drinkers and supplements; `number` counts the hatches from 1.
domain::Hatch read_hatch(Table& table, int number, domain::Farm const& farm, RationsReader const& rations);

/// [ingredient.KEY]: the built-in one it is `like`, with the owner's figures in place of its own.
domain::Ingredient read_ingredient(std::string const& key, Table& table,
                                   std::vector<domain::Ingredient> const& built_in);
/// `pantry` holds everything that may be mixed.
domain::Blend read_blend(std::string const& name, Table& table, std::vector<domain::Ingredient> const& pantry,
                         RationsReader const& rations);
/// What the cheapest mix is chosen from has a price and is safe to dilute.
void check_choice(Table const& table, domain::Farm const& farm, domain::Blend const& blend,
                  std::vector<domain::Ingredient> const& pantry);

}  // namespace cropful::readers
