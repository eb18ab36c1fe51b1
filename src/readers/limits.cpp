#include <utility>

#include "cropful/domain/farm.hpp"
#include "cropful/domain/nutrient.hpp"
#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using namespace rations;

std::array<MassPerVolume, 3> three_densities(Value const& value) {
    auto const three = list_of(more_than_none(a_density))(value);
    bool const rising = three.size() == 3 && three[0] <= three[1] && three[1] <= three[2];
    if (!rising) throw value.refuse("low, central and high density in this order");
    return {three[0], three[1], three[2]};
}

FormDensity read_density(Table& table) {
    return {.density = table.need("density", three_densities), .source = read_source(table)};
}

/// A level in feed, in the nutrient's own unit.
double a_limit(std::string const& key, Value const& value) {
    constexpr std::string_view in_feed = "_feed";
    auto const* nutrient =
        key.ends_with(in_feed) ? domain::find_nutrient(key.substr(0, key.size() - in_feed.size())) : nullptr;
    if (nutrient == nullptr) {
        throw BadInput("a limit on " + in_quotes(key), "a nutrient's key that ends in _feed, such as \"calcium_feed\"",
                       value.origin());
    }
    return parse_level(*nutrient, a_text(value));
}

Limit read_limit(Table& table) {
    std::string const key = table.need("key", a_text);
    auto const level = [&](Value const& value) { return a_limit(key, value); };
    return {.key = key,
            .applies = table.need("applies", a_text),
            .level = table.need("value", level),
            .words = table.need("value", a_text),
            .meaning = table.need("meaning", a_passage),
            .stop = table.maybe("stop", a_yes_or_no, false),
            .source = read_source(table)};
}

/// One level, or a list of none or of two: a range.
std::vector<Mass> drug_levels(Value const& value) {
    if (!value.get<List>()) return {more_than_none(a_mass)(value)};
    auto levels = list_of(more_than_none(a_mass))(value);
    bool const sound = levels.empty() || (levels.size() == 2 && levels[0] < levels[1]);
    if (!sound) throw value.refuse("one weight, or a list of the lowest and the highest");
    return levels;
}

Drug read_drug(Table& table) {
    auto const words = list_of(a_text);
    return {.name = table.need("name", a_text),
            .also = table.maybe("also", words, std::vector<std::string>{}),
            .birds = table.need("birds", words),
            .growing_only = table.need("growing_only", a_yes_or_no),
            .max_age = table.maybe("max_age", more_than_none(a_time)),
            .per_short_ton = table.need("per_short_ton", drug_levels),
            .not_for_layers = table.need("not_for_layers", a_yes_or_no),
            .danger = table.need("danger", words),
            .limits = table.need("limits", list_of(a_passage)),
            .banned = table.maybe("banned", a_yes_or_no, false),
            .in_water = table.maybe("in_water", words, std::vector<std::string>{}),
            .water_limits = table.maybe("water_limits", list_of(a_passage), std::vector<std::string>{}),
            .source = read_source(table)};
}

}  // namespace

std::map<std::string, rations::FormDensity> read_form_densities(Document document) {
    Table root = Table::root(std::move(document));
    std::map<std::string, FormDensity> forms;
    for (auto const form : {domain::Form::mash, domain::Form::crumble, domain::Form::pellet}) {
        forms.emplace(name(form), section(root, name(form), read_density));
    }
    root.done();
    return forms;
}

std::vector<rations::Limit> read_limits(Document document) {
    return read_items(std::move(document), "limit", read_limit);
}

std::vector<rations::Drug> read_drugs(Document document) { return read_items(std::move(document), "drug", read_drug); }

}  // namespace cropful::readers
