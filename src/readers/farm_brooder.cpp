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
        WholeNumber const count{1, domain::most_birds, "a whole number of birds, or a list by age, or a table by kind"};
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

/// The same for each kind that lives there, by any of its names.
std::map<std::string, std::vector<Room>> held_by_kind(Value const& value, RationsReader const& rations) {
    char const* const expected = "a number of birds for each kind, such as { bobwhite = 100, chukar = 60 }";
    Table table = value.table(expected);
    std::map<std::string, std::vector<Room>> all;
    for (std::string const& name : table.keys()) {
        auto const rooms = [&](Value const& its) {
            auto const [at, is_new] = all.emplace(rations.kind_key(name), what_it_holds(its));
            if (!is_new) throw its.refuse("one number for each kind; " + at->first + " has two");
            return true;
        };
        table.need(name, rooms);
    }
    if (all.empty()) throw value.refuse(expected);
    return all;
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

/// What one holds: `holds`, or of each kind `of_kind`.
struct Held {
    std::vector<Room> holds{};
    std::map<std::string, std::vector<Room>> of_kind{};
};

domain::Brooder read_place(std::string const& key, Table& table, domain::Farm const& farm, RationsReader const& rations,
                           quantities::Duration until) {
    auto const form = [&](Value const& value) {
        return value.get<Entries>() ? Held{.of_kind = held_by_kind(value, rations)}
                                    : Held{.holds = what_it_holds(value)};
    };
    auto held = table.need("holds", described(form, "a whole number of birds, or a list by age, or a table by kind"));
    Brooder brooder{.key = key,
                    .count = table.maybe("count", WholeNumber{1, most_brooders}, 1),
                    .holds = std::move(held.holds),
                    .of_kind = std::move(held.of_kind),
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

domain::Brooder read_brooder(std::string const& key, Table& table, domain::Farm const& farm,
                             RationsReader const& rations) {
    return read_place(key, table, farm, rations, table.need("until", more_than_none(a_time)));
}

domain::Brooder read_house(std::string const& key, Table& table, domain::Farm const& farm,
                           RationsReader const& rations) {
    auto const until = table.maybe("until", more_than_none(a_time), domain::longest_life);
    Brooder house = read_place(key, table, farm, rations, until);
    house.shared = table.maybe("shared", a_yes_or_no, false);
    return house;
}

}  // namespace cropful::readers
