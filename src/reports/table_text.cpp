#include "cropful/reports/table_text.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/sources.hpp"

namespace cropful::reports {

namespace {

using quantities::in_grams;
using quantities::number;
using quantities::plain;
using quantities::print;

std::string drug_levels(rations::Drug const& drug, quantities::Measures measures) {
    std::vector<std::string> levels;
    for (quantities::Mass const& mass : drug.per_short_ton) {
        levels.push_back(measures == quantities::Measures::us
                             ? plain(quantities::in_grams(mass)) + " g per short ton"
                             : plain(quantities::in_grams(mass) / (2 * quantities::kilograms_per_pound)) +
                                   " g per tonne");
    }
    return join(levels, " to ");
}

std::string drug_text(rations::Drug const& drug, quantities::Measures measures) {
    std::string text = "\n" + wrap(drug.name + (drug.also.empty() ? "" : " (" + join(drug.also) + ")"), "", "  ");
    if (!drug.birds.empty()) text += wrap("for " + join(drug.birds), "  ", "    ");
    if (!drug.per_short_ton.empty()) text += wrap(drug_levels(drug, measures), "  ", "    ");
    if (drug.growing_only) text += "  growing birds only\n";
    if (drug.max_age) text += "  to " + quantities::print_age(*drug.max_age) + " at most\n";
    if (drug.not_for_layers) text += "  not for layers\n";
    for (std::string const& danger : drug.danger) text += wrap("danger: " + danger, "  ! ", "    ");
    if (drug.banned) text += "  banned off label\n";
    for (std::string const& limit : drug.limits) text += wrap(limit, "  - ", "    ");
    if (!drug.in_water.empty()) text += wrap("in water for " + join(drug.in_water), "  ", "    ");
    for (std::string const& limit : drug.water_limits) text += wrap("water: " + limit, "  - ", "    ");
    return text + wrap(sourced(drug.source), "  ", "   ");
}

}  // namespace

std::string index_text() {
    Table table({Align::left, Align::left});
    table.add({"kinds", "kinds of bird; `cropful table KIND` shows one"});
    table.add({"needs", "nutrient needs; `cropful table NAME` shows one"});
    table.add({"units", "units that may be written, and what they are exactly"});
    table.add({"drugs", "drugs in feed and water, and whom they can hurt"});
    table.add({"limits", "guides for what is in water and feed"});
    table.add({"forms", "weight per volume of mash, crumble and pellets"});
    table.add({"ingredients", "what may go into a mix, and what it holds"});
    table.add({"spoons", "what a level teaspoon of common powders weighs"});
    return table.text();
}

std::string needs_list_text(std::vector<rations::NeedsTable> const& tables) {
    Table table({Align::left, Align::left});
    table.head({"table", "title"});
    for (rations::NeedsTable const& needs : tables) table.add({needs.key, needs.title + "; " + needs.basis});
    return table.text() + "\n`cropful table NAME` shows one.\n";
}

std::string units_text(std::span<quantities::Unit const> units) {
    std::vector<std::string> sources;
    std::string text, dimension;
    Table table({Align::left, Align::left, Align::right, Align::left}, 2);
    auto const finish = [&] {
        if (!table.empty()) text += (text.empty() ? "" : "\n") + dimension + ":\n" + table.text();
        table = Table({Align::left, Align::left, Align::right, Align::left}, 2);
        table.head({"unit", "is exactly", "source", "also written"});
    };
    for (quantities::Unit const& unit : units) {
        if (unit.dimension != dimension) finish();
        dimension = unit.dimension;
        std::string also;
        for (char const c : unit.also) also += c == ',' ? ", " : std::string(1, c);
        auto const known = std::find(sources.begin(), sources.end(), unit.source);
        std::string const number = std::to_string(known - sources.begin() + 1);
        if (known == sources.end()) sources.emplace_back(unit.source);
        table.add({std::string(unit.symbol), std::string(unit.exact), number, also});
    }
    finish();
    return text + sources_text(sources);
}

std::string drugs_text(std::vector<rations::Drug> const& drugs, quantities::Measures measures) {
    std::string text =
        wrap("Drugs in feed and water. The label, your veterinarian and the law go before anything here.");
    for (rations::Drug const& drug : drugs) text += drug_text(drug, measures);
    return text;
}

std::string limits_text(std::vector<rations::Limit> const& limits) {
    std::string text;
    for (rations::Limit const& limit : limits) {
        text += wrap(limit.key + ", " + limit.applies + ": " + limit.words, "", "  ") +
                wrap(limit.meaning + (limit.stop ? "; nothing of it may be given from here on" : ""), "  ", "  ") +
                wrap(sourced(limit.source), "  ", "   ") + "\n";
    }
    return text;
}

std::string forms_text(std::map<std::string, rations::FormDensity> const& forms) {
    Table table({Align::left, Align::right, Align::right, Align::right, Align::left});
    table.head({"form", "low", "usual", "high", "kg per L"});
    for (auto const& [name, form] : forms) {
        std::vector<std::string> cells{name};
        for (auto const& density : form.density)
            cells.push_back(number(quantities::in_kilograms_per_litre(density), 3));
        cells.push_back(sourced(form.source));
        table.add(cells);
    }
    return table.text();
}

std::string powders_text(std::vector<rations::Powder> const& powders) {
    std::string text = wrap("What a level US teaspoon weighs, for `spoon` of a supplement.");
    for (rations::Powder const& powder : powders) {
        text += "\n" + wrap(powder.name + ": " + number(in_grams(powder.teaspoonful()), 1) + " g", "", "  ");
        if (!powder.note.empty()) text += wrap(powder.note, "  ", "  ");
        text += wrap(sourced(powder.source), "  ", "   ");
    }
    return text;
}

}  // namespace cropful::reports
