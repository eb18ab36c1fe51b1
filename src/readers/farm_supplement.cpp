#include <variant>

#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using quantities::Mass;
using quantities::Volume;

using Pack = std::variant<Mass, Volume>;

std::optional<Mass> weight_of(Value const& value) {
    try {
        return more_than_none(a_mass)(value);
    } catch (BadInput const&) {
        return std::nullopt;
    }
}

std::optional<Volume> measure_of(Value const& value) {
    try {
        return more_than_none(a_volume)(value);
    } catch (BadInput const&) {
        return std::nullopt;
    }
}

Pack a_pack(Value const& value) {
    if (auto const weight = weight_of(value)) return *weight;
    if (auto const measure = measure_of(value)) return *measure;
    throw value.refuse("more than none, as a weight such as \"8 oz\" or a volume such as \"16 fl oz\"");
}

domain::Stock a_stock(Value const& value) {
    Table table = value.table("a table such as { strength = \"4 oz per gal\", proportioner = \"1:128\" }");
    domain::Stock stock{.strength = table.maybe("strength", a_strength),
                        .proportioner = table.need("proportioner", a_proportion),
                        .tank = table.maybe("tank", more_than_none(a_volume)),
                        .keeps = table.maybe("keeps", more_than_none(a_time))};
    table.done();
    return stock;
}

/// Whether a batch fills the drinkers.
bool a_mix(Value const& value) {
    std::string const word = a_text(value);
    if (word != "full" && word != "need") throw value.refuse(one_of(word, {"full", "need"}));
    return word == "full";
}

void read_pack(Table& table, domain::Supplement& supplement) {
    auto const pack = table.maybe("pack", a_pack);
    if (!pack) return;
    if (auto const* weight = std::get_if<Mass>(&*pack)) supplement.pack = *weight;
    if (auto const* measure = std::get_if<Volume>(&*pack)) supplement.pack_volume = *measure;
}

}  // namespace

domain::Supplement read_supplement(std::string const& key, Table& table) {
    domain::Supplement supplement;
    supplement.key = key;
    supplement.title = table.maybe("title", a_text, key);
    supplement.drug = table.maybe("drug", a_text, std::string());
    supplement.withdrawal = table.maybe("withdrawal", a_time);
    supplement.eggs_withdrawal = table.maybe("eggs_withdrawal", a_time);
    supplement.rate = table.maybe("rate", a_rate);
    supplement.stock = table.maybe("stock", a_stock);
    supplement.spoon = table.maybe("spoon", more_than_none(a_density));
    supplement.keeps = table.maybe("keeps", more_than_none(a_time));
    supplement.from = table.maybe("from", a_time, supplement.from);
    supplement.days_long = table.maybe("days", WholeNumber{1, 1000}, 0);
    supplement.fills_drinkers = table.maybe("mix", a_mix, false);
    supplement.sodium = table.maybe("sodium", a_percentage);
    read_pack(table, supplement);
    if (auto const price = table.maybe("price", a_price)) supplement.price = quantities::money(*price);
    bool const dosed = supplement.rate || (supplement.stock && supplement.stock->strength);
    if (!dosed) throw table.missing("rate", "the label's rate, such as \"1 tsp per gal\", or stock = {...}");
    if (!domain::can_be_stock(supplement)) {
        throw table.refuse("stock", "a ratio at which a litre of stock holds at most 1 kg or 1 L of product");
    }
    return supplement;
}

}  // namespace cropful::readers
