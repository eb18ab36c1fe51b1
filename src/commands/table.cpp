#include "cropful/commands/table.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/reports/ingredients.hpp"
#include "cropful/reports/table_json.hpp"
#include "cropful/reports/table_page.hpp"

namespace cropful::commands {

namespace {

using quantities::Measures;
using readers::RationsReader;

std::vector<std::string> const lists{"kinds", "needs", "units",       "drugs", "limits",
                                     "water", "forms", "ingredients", "spoons"};

std::vector<rations::Kind> all_kinds(RationsReader const& reader) {
    std::vector<rations::Kind> kinds;
    for (std::string const& key : reader.kinds()) kinds.push_back(reader.kind(key));
    return kinds;
}

std::vector<rations::NeedsTable> all_needs(RationsReader const& reader) {
    std::vector<rations::NeedsTable> tables;
    for (std::string const& key : reader.needs_tables()) tables.push_back(reader.needs(key));
    return tables;
}

Said list(std::string const& what, RationsReader const& reader, bool json, Measures measures) {
    using namespace reports;
    if (what == "kinds") return json ? Said(kinds_json(all_kinds(reader))) : kinds_page(all_kinds(reader));
    if (what == "needs") return json ? Said(needs_list_json(all_needs(reader))) : needs_list_page(all_needs(reader));
    if (what == "units") return json ? Said(units_json(quantities::units())) : units_page(quantities::units());
    if (what == "ingredients") {
        return json ? Said(ingredients_json(reader.ingredients())) : ingredients_page(reader.ingredients());
    }
    if (what == "spoons") return json ? Said(powders_json(reader.powders())) : powders_page(reader.powders());
    auto const rations = reader.load({});
    if (what == "drugs") return json ? Said(drugs_json(rations.drugs)) : drugs_page(rations.drugs, measures);
    if (what == "limits") return json ? Said(limits_json(rations.limits)) : limits_page(rations.limits);
    if (what == "water") return json ? Said(water_table_json(rations.water)) : water_page(rations.water);
    return json ? Said(forms_json(rations.forms)) : forms_page(rations.forms);
}

bool is_one_of(std::string const& word, std::vector<std::string> const& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

Said kind_table(std::string const& key, RationsReader const& reader, bool json, Measures measures) {
    auto const kind = reader.kind(key);
    auto const needs = reader.needs(kind.needs_table);
    return json ? Said(reports::kind_json(kind, needs)) : reports::kind_page(kind, needs, measures);
}

/// The kind that is also called so. Throws WrongUse for a word nothing is called by.
std::string kind_called(std::string const& word, RationsReader const& reader) {
    try {
        return reader.kind_key(word);
    } catch (BadInput const&) {
        auto known = lists;
        for (auto const& more : {reader.kinds(), reader.needs_tables()}) {
            known.insert(known.end(), more.begin(), more.end());
        }
        std::string const near = domain::nearest(word, known);
        throw WrongUse("no table \"" + word + "\"; " +
                       (near.empty() ? "`cropful table` lists what there is" : "nearest: " + near));
    }
}

/// A kind before a table of needs of the same name; other names of kinds come last.
Said one(std::string const& what, RationsReader const& reader, bool json, Measures measures) {
    if (!is_one_of(what, reader.kinds()) && is_one_of(what, reader.needs_tables())) {
        return json ? Said(reports::needs_json(reader.needs(what))) : reports::needs_page(reader.needs(what));
    }
    return kind_table(kind_called(what, reader), reader, json, measures);
}

}  // namespace

CLI::App* add_to(CLI::App& program, TableOptions& options) {
    CLI::App* app = program.add_subcommand("table", "what is built in, with its sources");
    app->add_option("WHAT", options.what, "a list, a kind or a table of needs; absent: lists")
        ->type_name(domain::join(lists, "|") + "|KIND");
    add_units(*app, options.units, "of what is printed");
    add_common(*app, options.json, options.rations);
    app->footer("Example: cropful table bobwhite");
    return app;
}

Said run(TableOptions const& options) {
    RationsReader const reader = rations_reader(options.rations);
    Measures const measures = measures_of(options.units, Measures::us);
    if (!options.what) return options.json ? Said(reports::index_json(lists)) : reports::index_page();
    return is_one_of(*options.what, lists) ? list(*options.what, reader, options.json, measures)
                                           : one(*options.what, reader, options.json, measures);
}

}  // namespace cropful::commands
