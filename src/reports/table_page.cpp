#include "cropful/reports/table_page.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
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

Page drug_part(rations::Drug const& drug, quantities::Measures measures) {
    Page page = Blank() + wrap(drug.name + (drug.also.empty() ? "" : " (" + join(drug.also) + ")"), "", "  ");
    if (!drug.birds.empty()) page += wrap("for " + join(drug.birds), "  ", "    ");
    if (!drug.per_short_ton.empty()) page += wrap(drug_levels(drug, measures), "  ", "    ");
    if (drug.growing_only) page += wrap("growing birds only", "  ", "    ");
    if (drug.max_age) page += wrap("to " + quantities::print_age(*drug.max_age) + " at most", "  ", "    ");
    if (drug.not_for_layers) page += wrap("not for layers", "  ", "    ");
    for (std::string const& danger : drug.danger) page += warning("danger: " + danger);
    if (drug.banned) page += wrap("banned off label", "  ", "    ");
    for (std::string const& limit : drug.limits) page += wrap(limit, "  - ", "    ");
    if (!drug.in_water.empty()) page += wrap("in water for " + join(drug.in_water), "  ", "    ");
    for (std::string const& limit : drug.water_limits) page += wrap("water: " + limit, "  - ", "    ");
    return page + wrap(sourced(drug.source), "  ", "   ");
}

}  // namespace

Page index_page() {
    Table table({Align::left, Align::left});
    table.add({"kinds", "kinds of bird; `cropful table KIND` shows one"});
    table.add({"needs", "nutrient needs; `cropful table NAME` shows one"});
    table.add({"units", "units that may be written, and what they are exactly"});
    table.add({"drugs", "drugs in feed and water, and whom they can hurt"});
    table.add({"limits", "levels in feed that harm"});
    table.add({"water", "levels in drinking water, from the best practice to what kills"});
    table.add({"forms", "weight per volume of mash, crumble and pellets"});
    table.add({"ingredients", "what may go into a mix, and what it holds"});
    table.add({"spoons", "what a level teaspoon of common powders weighs"});
    return table;
}

Page needs_list_page(std::vector<rations::NeedsTable> const& tables) {
    Table table({Align::left, Align::left});
    table.head({"table", "title"});
    for (rations::NeedsTable const& needs : tables) table.add({needs.key, needs.title + "; " + needs.basis});
    return table + spaced(wrap("`cropful table NAME` shows one."));
}

Page units_page(std::span<quantities::Unit const> units) {
    std::vector<std::string> sources;
    Page page;
    std::string dimension;
    Table table({Align::left, Align::left, Align::right, Align::left}, 2);
    auto const finish = [&] {
        if (!table.empty()) page += (page.empty() ? Page() : Blank()) + heading(dimension + ":") + table;
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
    return page + sources_part(sources);
}

Page drugs_page(std::vector<rations::Drug> const& drugs, quantities::Measures measures) {
    Page page = wrap("Drugs in feed and water. The label, your veterinarian and the law go before anything here.");
    for (rations::Drug const& drug : drugs) page += drug_part(drug, measures);
    return page;
}

Page limits_page(std::vector<rations::Limit> const& limits) {
    Page page;
    for (rations::Limit const& limit : limits) {
        page += wrap(limit.key + ", " + limit.applies + ": " + limit.words, "", "  ") +
                wrap(limit.meaning + (limit.stop ? "; nothing of it may be given from here on" : ""), "  ", "  ") +
                wrap(sourced(limit.source), "  ", "   ") + Blank();
    }
    return page;
}

Page water_page(rations::WaterTable const& water) {
    Page page;
    for (rations::WaterRow const& row : water.rows) {
        std::string const side = row.below ? " below " : " above ";
        page += wrap(row.item + side + plain(row.level) + (row.unit == "pH" ? "" : ' ' + row.unit) + ", " +
                         row.applies + ": " + name(row.grade),
                     "", "  ") +
                wrap(row.meaning, "  ", "  ") + wrap(sourced(row.source), "  ", "   ") + Blank();
    }
    auto const factor = [&](std::string const& what, rations::WaterFactor const& one) {
        page += wrap(what + ": " + plain(one.factor) + " " + sourced(one.source), "", "  ");
    };
    factor("mg of nitrate in a mg of its nitrogen", water.nitrate);
    factor("mg/L of dissolved solids for 1 dS/m (1000 uS/cm), to 5 dS/m", water.tds);
    factor("the same above 5 dS/m", water.strong_tds);
    factor("mg of sodium a softener puts in for a mg of hardness", water.softener);
    auto const milligrams = [](quantities::MassPerVolume content) {
        return plain(quantities::in_milligrams_per_litre(content));
    };
    return page + wrap("free chlorine at the farthest drinker: " + milligrams(water.chlorine.least) + " to " +
                           milligrams(water.chlorine.most) + " mg/L " + sourced(water.chlorine.source),
                       "", "  ");
}

Page forms_page(std::map<std::string, rations::FormDensity> const& forms) {
    Table table({Align::left, Align::right, Align::right, Align::right, Align::left});
    table.head({"form", "low", "usual", "high", "kg per L"});
    for (auto const& [name, form] : forms) {
        std::vector<Styled> cells{name};
        for (auto const& density : form.density)
            cells.emplace_back(number(quantities::in_kilograms_per_litre(density), 3));
        cells.emplace_back(sourced(form.source));
        table.add(cells);
    }
    return table;
}

Page powders_page(std::vector<rations::Powder> const& powders) {
    Page page = wrap("What a level US teaspoon weighs, for `spoon` of a supplement.");
    for (rations::Powder const& powder : powders) {
        page += Blank() + wrap(powder.name + ": " + number(in_grams(powder.teaspoonful()), 1) + " g", "", "  ");
        if (!powder.note.empty()) page += wrap(powder.note, "  ", "  ");
        page += wrap(sourced(powder.source), "  ", "   ");
    }
    return page;
}

}  // namespace cropful::reports
