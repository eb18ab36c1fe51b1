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

/// Some grams of a drug in a ton of some sort; a fault gives an example of such.
template <char const* expected>
quantities::Mass a_drug_weight(Value const& value) {
    quantities::Mass const weight = Quoted<quantities::Mass>{quantities::parse_small_mass, expected}(value);
    if (!(weight > quantities::kilograms(0))) throw value.refuse("more than none");
    return weight;
}
constexpr char in_a_short_ton[] = "the weight of the drug in a short ton of feed, such as \"50 g\"";
constexpr char in_a_tonne[] = "the weight of the drug in a tonne of feed, such as \"175 g\"";

constexpr Nutrient drug_level{"level", "the drug", domain::NutrientUnit::percent, true, true};

/// The drug in a short ton of feed, from "0.0175 %", or from mg/kg, ppm or g/kg.
quantities::Mass in_short_ton(Value const& value) {
    constexpr char expected[] = "a level in quotes, more than none, such as \"0.0175 %\" or \"175 mg/kg\"";
    auto const* text = value.get<std::string>();
    if (!text) throw value.refuse(expected);
    try {
        double const level = domain::parse_level(drug_level, *text);
        if (level > 0) return quantities::parse_mass("1 short ton") * (level / 100);
    } catch (BadInput const&) {
        throw value.refuse(expected);
    }
    throw value.refuse(expected);
}

/// "50 g" of a short ton, "55 g" of a tonne, or a share of the feed: "0.0175 %".
std::optional<quantities::Mass> drug_in_short_ton(Table& table) {
    auto const weight = table.maybe("per_short_ton", a_drug_weight<in_a_short_ton>);
    auto const in_tonne = table.maybe("per_tonne", a_drug_weight<in_a_tonne>);
    auto const level = table.maybe("level", in_short_ton);
    int const stated = weight.has_value() + in_tonne.has_value() + level.has_value();
    if (stated > 1) {
        throw table.refuse(level ? "level" : "per_tonne", "one of per_short_ton, per_tonne and level alone");
    }
    if (!in_tonne) return weight ? weight : level;
    return *in_tonne * ratio(quantities::parse_mass("1 short ton") / quantities::parse_mass("1 tonne"));
}

domain::Medication a_medication(Value const& value) {
    Table table = value.table("a table such as { drug = \"...\", level = \"0.0175 %\", withdrawal = \"0 d\" }");
    domain::Medication medication{.drug = table.need("drug", a_text),
                                  .per_short_ton = drug_in_short_ton(table),
                                  .withdrawal = table.need("withdrawal", a_time),
                                  .eggs_withdrawal = table.maybe("eggs_withdrawal", a_time)};
    table.done();
    return medication;
}

double a_level(Nutrient const& nutrient, Value const& value) {
    auto const* text = value.get<std::string>();
    if (!text) throw value.refuse("a level in quotes, such as " + in_quotes(print_level(nutrient, 1)));
    return parse_level(nutrient, *text);
}

/// One level is a minimum, or a maximum where that is what labels state; a list of two is a minimum and a maximum.
Guarantee a_guarantee(Nutrient const& nutrient, Value const& value) {
    if (!value.get<List>()) return guarantee_of(nutrient, a_level(nutrient, value));
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
        if (auto const guarantee = table.maybe_either(nutrient.key, nutrient.also, form))
            label.emplace(nutrient.key, *guarantee);
    }
}

/// What a bag costs, or a weight.
struct Price {
    std::optional<quantities::Money> of_bag{};
    std::optional<quantities::MoneyPerMass> by_weight{};
};
Price a_feed_price(Value const& value) {
    auto const* text = value.get<std::string>();
    if (!text) return {.of_bag = quantities::money(a_price(value))};
    bool const by_weight = text->find('/') != std::string::npos || text->find("per ") != std::string::npos;
    if (!by_weight) {
        throw value.refuse("a number without quotes, such as 27.50, or a price by weight such as \"420 per tonne\"");
    }
    return {.by_weight = quantities::parse_price(*text, value.measures())};
}

void read_price(Table& table, domain::Feed& feed) {
    auto const lot = table.maybe("lot", more_than_none(a_mass));
    auto const price = table.maybe("price", a_feed_price).value_or(Price{});
    if (lot && feed.bag) throw table.refuse("lot", "either a bag or a lot, not both");
    if (lot && price.of_bag) throw table.refuse("price", "a price by weight beside lot, such as \"420 per tonne\"");
    if (price.of_bag && !feed.bag) {
        throw table.refuse(
            "price",
            "a bag beside it, whose price it is: bag = \"50 lb\"; or a price by weight such as \"420 per tonne\"");
    }
    feed.in_lots = lot.has_value();
    if (lot) feed.bag = lot;
    feed.price = price.of_bag;
    if (price.by_weight && feed.bag) feed.price = *price.by_weight * *feed.bag;
    if (price.by_weight && !feed.bag) feed.by_weight = price.by_weight;
}

void read_bag(Table& table, domain::Feed& feed) {
    feed.bag = table.maybe("bag", more_than_none(a_mass));
    feed.bags = read_bags(table);
    if (feed.bags.empty()) return read_price(table, feed);
    for (auto const* key : {"bag", "price", "lot"}) {
        if (table.has(key)) throw table.refuse(key, "either bag and price, or bags, not both");
    }
    auto const single = [](domain::Bag const& bag) { return bag.from == 1; };
    auto const first = std::find_if(feed.bags.begin(), feed.bags.end(), single);
    feed.bag = first->size;
    feed.price = first->price;
}

}  // namespace

domain::Feed read_feed(std::string const& key, Table& table, domain::Farm const& farm) {
    domain::Feed feed;
    feed.key = key;
    feed.title = table.maybe("title", a_text, key);
    feed.label["protein"].minimum = 100 * table.need("protein", more_than_none(a_percentage));
    feed.energy = table.maybe("energy", more_than_none(an_energy));
    feed.form = table.maybe("form", a_form);
    feed.density = table.maybe("density", more_than_none(a_density));
    read_bag(table, feed);
    feed.on_hand = table.maybe("on_hand", a_mass, feed.on_hand);
    feed.counted = table.maybe("counted", a_day_of(farm));
    if (feed.counted && !table.has("on_hand")) throw table.refuse("counted", "counted only beside the key on_hand");
    feed.spare = table.maybe("spare", a_mass, feed.spare);
    feed.keeps = table.maybe("keeps", more_than_none(a_time));
    feed.medicated = table.maybe("medicated", a_medication);
    read_label(table, feed.label);
    return feed;
}

}  // namespace cropful::readers
