#include <algorithm>

#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Brooder;
using domain::Room;

constexpr int most_brooders = 1000;

/// One number of birds for all ages, or a list by age.
std::vector<Room> what_it_holds(Value const& value) {
    if (!value.get<List>()) {
        WholeNumber const count{1, domain::most_birds, "a whole number of birds, or a list by age"};
        return {{quantities::days(0), quantities::birds(count(value))}};
    }
    auto const room = [](Table& item) {
        return Room{.from = item.need("from", a_time),
                    .birds = quantities::birds(item.need("birds", WholeNumber{1, domain::most_birds}))};
    };
    auto rooms = tables_of(room, "{ from = \"0 d\", birds = 150 }")(value);
    auto const by_age = [](Room const& a, Room const& b) { return a.from < b.from; };
    std::stable_sort(rooms.begin(), rooms.end(), by_age);
    if (rooms.empty() || rooms.front().from > quantities::days(0)) throw value.refuse("birds from \"0 d\" on");
    auto const same = [](Room const& a, Room const& b) { return !(a.from < b.from); };
    if (std::adjacent_find(rooms.begin(), rooms.end(), same) != rooms.end()) {
        throw value.refuse("one number of birds from each age, not two from the same");
    }
    return rooms;
}

domain::Floor a_floor(Value const& value) {
    Table table = value.table("a table such as { length = \"6 ft\", width = \"4 ft\" }");
    domain::Floor floor{.length = table.need("length", more_than_none(a_length)),
                        .width = table.need("width", more_than_none(a_length))};
    table.done();
    return floor;
}

domain::Bedding a_bedding(Value const& value) {
    Table table = value.table("a table such as { depth = \"3 in\", bag = \"8 ft3\", price = 7.50 }");
    domain::Bedding bedding{.depth = table.need("depth", more_than_none(a_length)),
                            .bag = table.need("bag", more_than_none(a_volume)),
                            .price = {}};
    if (auto const price = table.maybe("price", a_price)) bedding.price = quantities::money(*price);
    table.done();
    return bedding;
}

std::optional<domain::Cleaning> read_cleaning(Table& table, domain::Farm const& farm) {
    auto const disinfectant = table.maybe("disinfectant", one_in(farm.disinfectants, "disinfectant"));
    auto const solution = table.maybe("solution", more_than_none(a_volume));
    if (!disinfectant && !solution) return std::nullopt;
    if (!disinfectant) throw table.refuse("solution", "solution only beside the key disinfectant");
    if (!solution) throw table.missing("solution", "how much ready solution cleans one brooder, such as \"2 gal\"");
    return domain::Cleaning{*disinfectant, *solution};
}

}  // namespace

domain::Disinfectant read_disinfectant(std::string const& key, Table& table) {
    domain::Disinfectant one{.key = key,
                             .title = table.maybe("title", a_text, key),
                             .strength = table.need("strength", more_than_none(a_percentage)),
                             .use_at = table.need("use_at", more_than_none(a_percentage)),
                             .pack = table.maybe("pack", more_than_none(a_volume)),
                             .price = {}};
    if (one.use_at > one.strength) throw table.refuse("use_at", "no more than the product's strength");
    if (auto const price = table.maybe("price", a_price)) one.price = quantities::money(*price);
    if (one.price && !one.pack) throw table.refuse("price", "a pack beside it, whose price it is: pack = \"1 gal\"");
    return one;
}

namespace {

domain::Brooder read_place(std::string const& key, Table& table, domain::Farm const& farm, quantities::Duration until) {
    auto const holds = described(what_it_holds, "a whole number of birds, or a list by age");
    Brooder brooder{.key = key,
                    .count = table.maybe("count", WholeNumber{1, most_brooders}, 1),
                    .holds = table.need("holds", holds),
                    .until = until,
                    .rest = table.maybe("rest", a_time),
                    .floor = table.maybe("floor", a_floor),
                    .bedding = table.maybe("bedding", a_bedding),
                    .cleaning = read_cleaning(table, farm)};
    if (brooder.bedding && !brooder.floor) {
        throw table.missing("floor", "the brooder's floor, such as { length = \"6 ft\", width = \"4 ft\" }");
    }
    return brooder;
}

}  // namespace

domain::Brooder read_brooder(std::string const& key, Table& table, domain::Farm const& farm) {
    return read_place(key, table, farm, table.need("until", more_than_none(a_time)));
}

domain::Brooder read_house(std::string const& key, Table& table, domain::Farm const& farm) {
    return read_place(key, table, farm, table.maybe("until", more_than_none(a_time), domain::longest_life));
}

}  // namespace cropful::readers
