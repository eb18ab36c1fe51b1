#include <utility>

#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using rations::WaterFactor;
using rations::WaterGrade;
using rations::WaterRow;

WaterGrade a_grade(Value const& value) {
    std::string const word = a_text(value);
    std::vector<std::string> known;
    for (auto const one : {WaterGrade::aim, WaterGrade::guide, WaterGrade::caution, WaterGrade::stop}) {
        known.push_back(name(one));
        if (known.back() == word) return one;
    }
    throw value.refuse(one_of(word, known));
}

double read_level(Table& table) {
    Number const a_level{0, 1e6, "a number, none below 0"};
    if (table.has("above") == table.has("below")) throw table.missing("above", "either `above` or `below`");
    return table.has("above") ? table.need("above", a_level) : table.need("below", a_level);
}

WaterRow read_water_row(Table& table) {
    WaterRow row{.item = table.need("item", a_text),
                 .unit = table.need("unit", a_text),
                 .applies = table.need("applies", a_text),
                 .level = read_level(table),
                 .below = table.has("below"),
                 .grade = table.need("grade", a_grade),
                 .kinds = table.maybe("kinds", list_of(a_text), std::vector<std::string>{}),
                 .from = table.maybe("from", a_time, quantities::days(0)),
                 .until = table.maybe("until", more_than_none(a_time)),
                 .layers = table.maybe("layers", a_yes_or_no),
                 .people = table.maybe("people", a_yes_or_no, false),
                 .meaning = table.need("meaning", a_passage),
                 .source = read_source(table)};
    auto const* known = domain::find_water_item(row.item);
    if (known != nullptr && row.unit != known->unit) {
        throw table.refuse("unit", "\"" + std::string(known->unit) + "\", the unit of " + row.item);
    }
    return row;
}

WaterFactor read_factor(Table& table) {
    return {.factor = table.need("factor", Number{1e-6, 1e6, "a number above 0"}), .source = read_source(table)};
}

rations::ChlorineRange read_chlorine(Table& table) {
    constexpr Quoted<quantities::MassPerVolume> a_strength_in_water{quantities::parse_dissolved,
                                                                    "an amount in water such as \"2 mg/L\""};
    return {.least = table.need("least", a_strength_in_water),
            .most = table.need("most", a_strength_in_water),
            .source = read_source(table)};
}

}  // namespace

rations::WaterTable read_water_table(Document document) {
    Table root = Table::root(std::move(document));
    rations::WaterTable water{.rows = read_items(root, "water", read_water_row)};
    section(root, "convert", [&](Table& table) {
        water.nitrate = section(table, "nitrate", read_factor);
        water.tds = section(table, "tds", read_factor);
        water.strong_tds = section(table, "strong_tds", read_factor);
        water.softener = section(table, "softener", read_factor);
        return 0;
    });
    water.chlorine = section(root, "chlorine", read_chlorine);
    root.done();
    return water;
}

}  // namespace cropful::readers
