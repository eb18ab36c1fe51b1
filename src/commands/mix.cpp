#include "cropful/commands/mix.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "commands/farm_flags.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_json.hpp"
#include "cropful/reports/water_part.hpp"

namespace cropful::commands {

namespace {

/// A rate by the weight of birds, such as "0.05 mL per kg", in the water that they drink.
quantities::Rate rate_for_flock(std::string_view rate, quantities::Mass flock, quantities::Volume water,
                                quantities::Measures measures) {
    constexpr std::string_view per = " per ";
    auto const at = rate.find(per);
    if (at == std::string_view::npos) {
        throw BadInput(in_quotes(rate), "product to a weight of birds, such as \"0.05 mL per kg\"");
    }
    std::string_view const product = rate.substr(0, at);
    std::string birds(rate.substr(at + per.size()));
    if (birds.find_first_of("0123456789") == std::string::npos) birds.insert(0, "1 ");
    double const times = quantities::ratio(flock / quantities::parse_mass(birds, measures));
    quantities::Rate in_water{.words = std::string(rate) + " of birds, " + quantities::print(flock, measures)};
    try {
        in_water.product = quantities::parse_mass(product, measures) * times / water;
    } catch (BadInput const&) {
        in_water.product = quantities::ratio(quantities::parse_volume(product, measures) * times / water);
    }
    double const share =
        in_water.by_weight() ? quantities::in_kilograms_per_litre(*in_water.by_weight()) : *in_water.by_measure();
    if (!(share > 0) || share > 1) {
        throw BadInput(in_quotes(rate), "more than 0, and at most 1 kg or 1 L of product to 1 L of water");
    }
    return in_water;
}

std::string rate_words(domain::Supplement const& supplement, Flags const& flags) {
    if (supplement.rate) return supplement.rate->words;
    return flags.all().at("--stock") + " in the stock";
}

/// How long past --age the birds must be kept for the whole course, where --until is silent.
quantities::Duration course_of(FarmOptions const& farm) {
    auto const measures = measures_of(farm.units, quantities::Measures::us);
    auto const from = farm.flags.read("--from-age", in(quantities::parse_duration, measures));
    auto const length = farm.flags.read("--days", [](std::string_view text) { return parse_count(text, 1000); });
    return from.value_or(quantities::days(0)) + quantities::days(length.value_or(1) + 1);
}

void check_plain(FarmOptions const& farm) {
    if (farm.file) throw WrongUse("--water asks about plain water; leave out the farm file \"" + *farm.file + "\"");
    for (auto const& [flag, text] : farm.flags.all()) {
        auto const about_product = {"--rate", "--spoon", "--sodium", "--stock", "--proportioner", "--tank"};
        if (std::find(about_product.begin(), about_product.end(), flag) == about_product.end()) {
            throw WrongUse("--water asks about plain water; leave out " + flag + ", or leave out --water");
        }
    }
}

void check_bleach(MixOptions const& options) {
    FarmOptions const& farm = options.farm;
    if (farm.file) throw WrongUse("--chlorine asks about plain water; leave out the farm file \"" + *farm.file + "\"");
    for (auto const& [flag, text] : farm.flags.all()) {
        if (flag != "--proportioner") throw WrongUse("--chlorine is about bleach alone; leave out " + flag);
    }
    if (!options.bleach) throw WrongUse("how strong is the bleach? Say what its label says: --bleach \"8.25 %\"");
    if (!options.water) throw WrongUse("into how much water? Say --water \"50 gal\"");
}

engine::ChlorineDose chlorine_dose(MixOptions const& options, quantities::Measures measures) {
    Flags asked;
    asked.set("--chlorine", *options.chlorine);
    asked.set("--bleach", *options.bleach);
    asked.set("--water", *options.water);
    auto const wanted = [&](std::string_view text) {
        auto const content = quantities::parse_dissolved(text, measures);
        double const milligrams = quantities::in_milligrams_per_litre(content);
        if (milligrams < 0.1 || milligrams > 1000) throw BadInput(in_quotes(text), "from 0.1 to 1000 mg/L");
        return content;
    };
    auto const strength = [&](std::string_view text) {
        double const share = quantities::parse_percent(text, measures);
        if (share < 0.005 || share > 0.2) throw BadInput(in_quotes(text), "the strength of a bleach, 0.5 % to 20 %");
        return share;
    };
    engine::ChlorineDose dose{*asked.read("--chlorine", wanted), *asked.read("--bleach", strength),
                              *asked.read("--water", some_in(quantities::parse_volume, measures))};
    dose.proportioner = options.farm.flags.read("--proportioner", quantities::parse_proportioner);
    if (dose.product() > dose.water) {
        throw WrongUse("the bleach is too weak for such a proportioner: it would take more of it than there is stock");
    }
    return dose;
}

Said chlorine(MixOptions const& options) {
    check_bleach(options);
    auto const measures = measures_of(options.farm.units, quantities::Measures::us);
    auto const dose = chlorine_dose(options, measures);
    auto const cautions = engine::chlorine_cautions(dose, rations_reader(options.farm.rations).load({}).water);
    if (options.farm.json) return reports::chlorine_json(dose, cautions, measures);
    return reports::chlorine_page(dose, cautions, measures, options.farm.sources);
}

Said plain_water(MixOptions const& options) {
    check_plain(options.farm);
    Flags const& flags = options.farm.flags;
    check_together(flags);
    auto const measures = measures_of(options.farm.units, quantities::Measures::us);
    Flags one;
    one.set("--water", *options.water);
    auto const water = *one.read("--water", some_in(quantities::parse_volume, measures));
    std::optional<quantities::Rate> by_flock;
    if (options.flock) {
        one.set("--flock", *options.flock);
        auto const flock = *one.read("--flock", some_in(quantities::parse_mass, measures));
        by_flock =
            flags.read("--rate", [&](std::string_view text) { return rate_for_flock(text, flock, water, measures); });
    }
    auto const supplement = supplement_from(flags, measures, quantities::days(0), by_flock);
    if (!supplement) throw WrongUse("at what rate? Say what the label says: --rate \"1 tsp per gal\"");
    auto const dose = engine::dose(*supplement, water);
    auto const rations = rations_reader(options.farm.rations).load({});
    auto const sum = engine::sodium_for_all({}, *supplement, rations.water);
    engine::Mix const mix{.supplement = supplement->key,
                          .from = {},
                          .to = {},
                          .words = rate_words(*supplement, flags),
                          .batches = {},
                          .total = dose,
                          .strength = engine::strength(*supplement),
                          .sodium = engine::sodium(*supplement),
                          .sum = sum.is_known() ? std::optional(sum) : std::nullopt};
    auto cautions = engine::sodium_cautions(*supplement, sum);
    for (auto const& caution : engine::mix_cautions(*supplement, quantities::days(supplement->days_long)))
        cautions.push_back(caution);
    if (options.flock) cautions.push_back(engine::by_weight_caution(*supplement));
    if (options.farm.json) return reports::plain_mix_json(mix, cautions, measures);
    return reports::plain_mix_page(mix, *supplement, cautions, measures, options.farm.sources);
}

}  // namespace

CLI::App* add_to(CLI::App& program, MixOptions& options) {
    CLI::App* app = program.add_subcommand("mix", "what to stir into the drinking water");
    add_to(*app, options.farm);
    add_hatches(*app, options.farm);
    add_to(*app, options.days, "what to stir in");
    app->add_option("--water", options.water, "for this much water, whoever drinks it")->type_name("VOLUME");
    app->add_option("--flock", options.flock,
                    "all birds that drink it, where --rate is by their weight, \"2 mL per kg\"")
        ->type_name("WEIGHT");
    app->add_option("--chlorine", options.chlorine, "bleach for --water to hold so much, such as \"3 mg/L\"")
        ->type_name("CONTENT");
    app->add_option("--bleach", options.bleach, "chlorine of the bleach, such as \"8.25 %\"")->type_name("PERCENT");
    app->footer("Example: cropful mix --rate \"4 oz per 128 gal\" --water \"3 gal\"");
    return app;
}

Said run(MixOptions const& options) {
    if (options.chlorine) return chlorine(options);
    if (options.bleach) throw WrongUse("--bleach says nothing without --chlorine");
    if (options.water) return plain_water(options);
    if (options.flock) throw WrongUse("--flock says nothing without --water: how much do they drink in a day?");
    FarmOptions const& asked = options.farm;
    if (!asked.file && !asked.flags.has("--kind")) {
        throw WrongUse(
            "for whom, or for how much water? Name a farm file, or say --water \"3 gal\", or --kind and --birds");
    }
    if (!asked.file && !asked.flags.has("--rate") && !asked.flags.has("--stock")) {
        throw WrongUse("at what rate? Say what the label says: --rate \"1 tsp per gal\"");
    }
    auto const [question, window] =
        question_between(asked, options.days, {.birds_matter = true, .kept = course_of(asked), .counted = {}});
    domain::Farm const& farm = question.farm;
    bool const any = std::any_of(farm.hatches.begin(), farm.hatches.end(),
                                 [](domain::Hatch const& hatch) { return domain::has_course(hatch); });
    if (!any)
        throw NoAnswer("no hatch is given a supplement: add [supplement.NAME] and supplement = \"NAME\" to a hatch");
    auto const plan =
        engine::make_plan(farm, question.rations, window, question.diary, engine::NeedScale::as_printed,
                          {.hoppers = false, .drinkers = false, .shopping = false, .amounts = false, .course = false});
    return asked.json ? Said(reports::mix_json_text(plan)) : reports::mix_page(plan, asked.sources);
}

}  // namespace cropful::commands
