#include "cropful/readers/farm.hpp"

#include <algorithm>
#include <cctype>
#include <set>

#include "cropful/rations/pantry.hpp"
#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Farm;
using domain::Hatch;

quantities::Measures some_measures(Value const& value) { return quantities::parse_measures(a_text(value)); }

std::string a_currency(Value const& value) {
    std::string word = a_text(value);
    bool const letters = std::all_of(word.begin(), word.end(), [](unsigned char c) { return std::isalpha(c); });
    if (!letters || word.size() > 8) throw value.refuse("up to 8 letters, such as \"USD\"");
    return word;
}

void read_head(Table table, Farm& farm) {
    farm.measures = table.maybe("units", some_measures, quantities::Measures::us);
    table.think_in(farm.measures);
    farm.name = table.need("name", a_text);
    farm.currency = table.maybe("currency", a_currency, farm.currency);
    farm.warmth = table.maybe("warmth", a_temperature);
    farm.chores = read_chores(table);
    farm.scale_step = table.maybe("scale", more_than_none(a_mass), farm.scale_step);
    table.done();
}

/// A key users may write: shown in reports, so it must be plain words.
void check_key(NamedTable const& named) {
    bool const blank = named.name.find_first_not_of(" \t") == std::string::npos;
    bool const control = std::any_of(named.name.begin(), named.name.end(), [](unsigned char c) { return c < 0x20; });
    if (blank || control || named.name.size() > 60) {
        throw BadInput("the name " + in_quotes(named.name), "a name of up to 60 letters", named.table.origin());
    }
}

template <class Part, class Read>
void read_tables(std::vector<NamedTable> tables, std::map<std::string, Part>& parts, Read const& read) {
    for (NamedTable& named : tables) {
        check_key(named);
        parts.emplace(named.name, read(named.name, named.table));
        named.table.done();
    }
}

std::vector<Hatch> all_hatches(std::vector<Table> tables, Farm const& farm, RationsReader const& rations) {
    std::vector<Hatch> hatches;
    std::set<std::string> names;
    for (Table& table : tables) {
        if (hatches.size() == domain::most_hatches) {
            throw BadInput("one hatch more", hatches_allowed(), table.origin());
        }
        for (Hatch& hatch : read_hatches(table, static_cast<int>(hatches.size()) + 1, farm, rations)) {
            if (!names.insert(hatch.name).second) {
                throw table.refuse("name", "a name no other hatch of this file has");
            }
            hatches.push_back(std::move(hatch));
        }
    }
    std::stable_sort(hatches.begin(), hatches.end(), [](Hatch const& a, Hatch const& b) { return a.date < b.date; });
    return hatches;
}

/// What a file must have. Blends and ingredients are read where they are asked for, and nowhere else.
enum class Expect { a_farm, blends };

/// Feeds may be mixed too, so they are read before. Of blends beside the one asked for only the name is read.
void read_mixing(std::vector<NamedTable> ingredients, std::vector<NamedTable> blends, Farm& farm,
                 RationsReader const& rations, std::optional<std::string> const& blend) {
    auto const built_in = rations.ingredients();
    for (NamedTable& named : ingredients) {
        check_key(named);
        farm.ingredients.push_back(read_ingredient(named.name, named.table, built_in));
        named.table.done();
    }
    auto const pantry = rations::pantry(farm, built_in);
    bool const is_there =
        std::any_of(blends.begin(), blends.end(), [&](NamedTable const& named) { return named.name == blend; });
    for (NamedTable& named : blends) {
        check_key(named);
        if (is_there && named.name != *blend) {
            farm.blends.emplace_back().name = named.name;
            continue;
        }
        farm.blends.push_back(read_blend(named.name, named.table, pantry, rations));
        named.table.done();
        check_choice(named.table, farm, farm.blends.back(), pantry);
    }
}

domain::Farm parse_file(Document document, RationsReader const& rations, Expect expect,
                        std::optional<std::string> const& blend = {}) {
    Table root = Table::root(std::move(document));
    std::optional<Table> const head = root.maybe_table("farm");
    std::optional<Table> const store = root.maybe_table("store");
    std::optional<Table> const water = root.maybe_table("water");
    auto const feeds = root.tables("feed");
    auto const hoppers = root.tables("hopper");
    auto const drinkers = root.tables("drinker");
    auto const supplements = root.tables("supplement");
    auto const brooders = root.tables("brooder");
    auto const houses = root.tables("house");
    auto const disinfectants = root.tables("disinfectant");
    auto const ingredients = root.tables("ingredient");
    auto const blends = root.tables("blend");
    auto const hatches = root.array("hatch");
    root.done();
    if (expect == Expect::a_farm) {
        if (hatches.empty()) throw root.missing("hatch", "at least one table [[hatch]]");
        if (!head) throw root.missing("farm", "a table [farm] with the farm's name");
    } else if (blends.empty()) {
        throw root.missing("blend", "at least one table [blend.NAME]");
    }

    Farm farm;
    if (head) read_head(*head, farm);
    if (store) farm.store = read_store(*store);
    if (water) farm.water = read_water_report(*water);
    read_tables(feeds, farm.feeds, [&](std::string const& key, Table& table) { return read_feed(key, table, farm); });
    read_tables(hoppers, farm.hoppers, read_hopper);
    read_tables(drinkers, farm.drinkers, read_drinker);
    read_tables(supplements, farm.supplements, read_supplement);
    read_tables(disinfectants, farm.disinfectants, read_disinfectant);
    read_tables(brooders, farm.brooders,
                [&](std::string const& key, Table& table) { return read_brooder(key, table, farm, rations); });
    for (NamedTable const& house : houses) {
        if (farm.brooders.contains(house.name))
            throw root.refuse("house", "names that no [brooder] has: " + house.name);
    }
    read_tables(houses, farm.brooders,
                [&](std::string const& key, Table& table) { return read_house(key, table, farm, rations); });
    if (expect == Expect::blends) read_mixing(ingredients, blends, farm, rations, blend);
    farm.hatches = all_hatches(hatches, farm, rations);
    return farm;
}

}  // namespace

domain::Farm parse_farm(std::string const& text, std::string const& name, RationsReader const& rations) {
    return parse_file(parse_document(text, name), rations, Expect::a_farm);
}

domain::Farm parse_blend_file(std::string const& text, std::string const& name, RationsReader const& rations,
                              std::optional<std::string> const& blend) {
    return parse_file(parse_document(text, name), rations, Expect::blends, blend);
}

}  // namespace cropful::readers
