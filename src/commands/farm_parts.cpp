#include <algorithm>

#include "commands/farm_flags.hpp"
#include "cropful/domain/nearest.hpp"
#include "cropful/domain/nutrient.hpp"

namespace cropful::commands {

namespace {

using domain::Drinker;
using domain::Feed;
using domain::Hopper;
using domain::Supplement;
using quantities::Measures;

constexpr int most_days = 1000;

domain::Form parse_form(std::string_view text) {
    for (auto const form : {domain::Form::mash, domain::Form::crumble, domain::Form::pellet}) {
        if (domain::name(form) == text) return form;
    }
    throw BadInput(in_quotes(text), "mash, crumble or pellet");
}

int parse_days(std::string_view text) { return parse_count(text, most_days); }

double parse_fill(std::string_view text) {
    double const fill = quantities::parse_percent(text);
    if (fill <= 0) throw BadInput(in_quotes(text), "more than none");
    return fill;
}

domain::Nutrient const& label_nutrient(std::string_view key) {
    std::vector<std::string> known;
    for (domain::Nutrient const& nutrient : domain::nutrients()) {
        if (nutrient.key == "protein" || nutrient.key == "energy") continue;
        if (nutrient.key == key || (!key.empty() && nutrient.also == key)) return nutrient;
        known.emplace_back(nutrient.key);
    }
    if (key == "protein" || key == "energy") {
        throw BadInput(in_quotes(key), "--" + std::string(key) + " for that, and another nutrient here");
    }
    std::string const near = domain::nearest(key, known);
    throw BadInput("the nutrient " + in_quotes(key),
                   near.empty() ? "one that `cropful table needs --json` names" : "a known one; nearest: " + near);
}

}  // namespace

std::pair<std::string, domain::Guarantee> parse_label(std::string_view text) {
    constexpr std::string_view between = " to ";
    std::size_t const equals = text.find('=');
    if (equals == std::string_view::npos) {
        throw BadInput(in_quotes(text),
                       "a nutrient and its level, such as \"calcium=0.9 %\" or \"calcium=0.7 % to 1.2 %\"");
    }
    std::string_view const levels = text.substr(equals + 1);
    domain::Nutrient const& nutrient = label_nutrient(text.substr(0, equals));
    std::size_t const to = levels.find(between);
    domain::Guarantee guarantee = guarantee_of(nutrient, parse_level(nutrient, levels.substr(0, to)));
    if (to != std::string_view::npos) {
        double const least = guarantee.minimum.value_or(guarantee.maximum.value_or(0));
        guarantee = {least, parse_level(nutrient, levels.substr(to + between.size()))};
        if (*guarantee.maximum < *guarantee.minimum) throw BadInput(in_quotes(text), "the minimum before the maximum");
    }
    return {std::string(nutrient.key), guarantee};
}

Feed feed_from(Flags const& flags, std::vector<std::string> const& labels, Measures measures) {
    Feed feed;
    feed.key = feed.title = "feed";
    if (auto const protein = flags.read("--protein", some_in(quantities::parse_percent, measures))) {
        feed.label["protein"].minimum = 100 * *protein;
    }
    feed.energy = flags.read("--energy", in(quantities::parse_energy, measures));
    feed.form = flags.read("--form", parse_form);
    feed.density = flags.read("--density", some_in(quantities::parse_density, measures));
    feed.bag = flags.read("--bag", some_in(quantities::parse_mass, measures));
    feed.price = flags.read("--price", parse_price);
    feed.on_hand = flags.read("--on-hand", in(quantities::parse_mass, measures)).value_or(feed.on_hand);
    for (std::string const& label : labels) {
        Flags one;
        one.set("--label", label);
        auto const read = *one.read("--label", parse_label);
        if (!feed.label.insert(read).second) throw WrongUse("--label states " + read.first + " twice");
    }
    return feed;
}

std::optional<Hopper> hopper_from(Flags const& flags, Measures measures) {
    auto const volume = flags.read("--hopper", some_in(quantities::parse_volume, measures));
    if (!volume) return std::nullopt;
    return Hopper{.key = "hopper",
                  .volume = *volume,
                  .stays_behind = flags.read("--stays-behind", parse_share).value_or(0),
                  .fill = flags.read("--fill", parse_fill).value_or(1),
                  .extra_waste = flags.read("--extra-waste", parse_share).value_or(0)};
}

std::optional<Drinker> drinker_from(Flags const& flags, Measures measures) {
    auto const volume = flags.read("--drinker", some_in(quantities::parse_volume, measures));
    if (!volume) return std::nullopt;
    auto const displaced = [&](std::string_view text) {
        auto const taken = quantities::parse_volume(text, measures);
        if (taken >= *volume) throw BadInput(in_quotes(text), "less than the drinker's volume");
        return taken;
    };
    Drinker drinker;
    drinker.key = "drinker";
    drinker.volume = *volume;
    drinker.displaced = flags.read("--displaced", displaced).value_or(quantities::litres(0));
    drinker.change_every = flags.read("--change-every", some_in(quantities::parse_duration, measures));
    drinker.spill = flags.read("--spill", parse_share).value_or(0);
    return drinker;
}

std::optional<Supplement> supplement_from(Flags const& flags, Measures measures, quantities::Duration age,
                                          std::optional<quantities::Rate> const& rate) {
    Supplement supplement;
    supplement.key = supplement.title = "supplement";
    supplement.rate = rate ? rate : flags.read("--rate", in(quantities::parse_rate, measures));
    auto const strength = flags.read("--stock", in(quantities::parse_rate, measures));
    if (auto const through = flags.read("--proportioner", quantities::parse_proportioner)) {
        supplement.stock = domain::Stock{.strength = strength,
                                         .proportioner = *through,
                                         .tank = flags.read("--tank", some_in(quantities::parse_volume, measures)),
                                         .keeps = {}};
    }
    if (!supplement.rate && !strength) return std::nullopt;
    if (!domain::can_be_stock(supplement)) {
        throw WrongUse(
            "the rate is too strong for such a proportioner: the stock would hold more than 1 kg or 1 L of product to "
            "the litre");
    }
    supplement.spoon = flags.read("--spoon", some_in(quantities::parse_density, measures));
    supplement.keeps = flags.read("--keeps", some_in(quantities::parse_duration, measures));
    supplement.from = flags.read("--from-age", in(quantities::parse_duration, measures)).value_or(age);
    supplement.days_long = flags.read("--days", parse_days).value_or(1);
    supplement.sodium = flags.read("--sodium", in(quantities::parse_percent, measures));
    return supplement;
}

}  // namespace cropful::commands
