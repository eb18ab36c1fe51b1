#include <algorithm>

#include "cropful/domain/nutrient.hpp"
#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Guarantee;
using domain::Nutrient;

domain::Form a_form(Value const& value) {
    std::string const word = a_text(value);
    for (auto const form : {domain::Form::mash, domain::Form::crumble, domain::Form::pellet}) {
        if (name(form) == word) return form;
    }
    throw value.refuse("\"mash\", \"crumble\" or \"pellet\"");
}

domain::Medication a_medication(Value const& value) {
    Table table = value.table("a table such as { drug = \"...\", per_short_ton = \"50 g\", withdrawal = \"0 d\" }");
    domain::Medication medication{.drug = table.need("drug", a_text),
                                  .per_short_ton = table.maybe("per_short_ton", more_than_none(a_mass)),
                                  .withdrawal = table.need("withdrawal", a_time)};
    table.done();
    return medication;
}

double a_level(Nutrient const& nutrient, Value const& value) {
    auto const* text = value.get<std::string>();
    if (!text) throw value.refuse("a level in quotes, such as " + in_quotes(print_level(nutrient, 1)));
    return parse_level(nutrient, *text);
}

/// One level is a minimum; a list of two is a minimum and a maximum.
Guarantee a_guarantee(Nutrient const& nutrient, Value const& value) {
    if (!value.get<List>()) return {.minimum = a_level(nutrient, value), .maximum = {}};
    auto const level = [&](Value const& item) { return a_level(nutrient, item); };
    std::vector<double> const levels = list_of(level)(value);
    bool const ordered = levels.size() == 2 && levels[0] <= levels[1];
    if (!ordered) throw value.refuse("a minimum and a maximum in this order, or one minimum");
    return {.minimum = levels[0], .maximum = levels[1]};
}

void read_label(Table& table, std::map<std::string, Guarantee>& label) {
    for (Nutrient const& nutrient : domain::nutrients()) {
        if (nutrient.key == "protein" || nutrient.key == "energy") continue;
        auto const form = [&](Value const& value) { return a_guarantee(nutrient, value); };
        if (auto const guarantee = table.maybe(nutrient.key, form)) label.emplace(nutrient.key, *guarantee);
    }
}

void read_bag(Table& table, domain::Feed& feed) {
    feed.bag = table.maybe("bag", more_than_none(a_mass));
    if (auto const price = table.maybe("price", a_price)) feed.price = quantities::money(*price);
    feed.bags = read_bags(table);
    if (!feed.bags.empty()) {
        for (auto const* key : {"bag", "price"}) {
            if (table.has(key)) throw table.refuse(key, "either bag and price, or bags, not both");
        }
        auto const single = [](domain::Bag const& bag) { return bag.from == 1; };
        auto const first = std::find_if(feed.bags.begin(), feed.bags.end(), single);
        feed.bag = first->size;
        feed.price = first->price;
    }
    if (feed.price && !feed.bag) throw table.refuse("price", "a bag beside it, whose price it is: bag = \"50 lb\"");
}

}  // namespace

domain::Feed read_feed(std::string const& key, Table& table) {
    domain::Feed feed;
    feed.key = key;
    feed.title = table.maybe("title", a_text, key);
    feed.protein = table.need("protein", more_than_none(a_percentage));
    feed.energy = table.maybe("energy", more_than_none(an_energy));
    feed.form = table.maybe("form", a_form);
    feed.density = table.maybe("density", more_than_none(a_density));
    read_bag(table, feed);
    feed.on_hand = table.maybe("on_hand", a_mass, feed.on_hand);
    feed.spare = table.maybe("spare", a_mass, feed.spare);
    feed.keeps = table.maybe("keeps", more_than_none(a_time));
    feed.medicated = table.maybe("medicated", a_medication);
    read_label(table, feed.label);
    return feed;
}

}  // namespace cropful::readers
