#include <cmath>
#include <utility>

#include "cropful/quantities/whole.hpp"
#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using namespace rations;

curves::Row a_row(Value const& value) {
    auto const row = Numbers{4}(value);
    bool const rising = row[1] <= row[2] && row[2] <= row[3];
    if (!rising) throw value.refuse("[age in days, low, central, high], low to high");
    return {row[0], row[1], row[2], row[3]};
}

curves::Curve a_curve(Value const& value) { return curves::Curve(list_of(a_row)(value)); }

curves::Curve a_loss_curve(Value const& value) {
    curves::Curve curve = a_curve(value);
    if (curve.rows().back().high >= 100) throw value.refuse("less than 100 % dead");
    return curve;
}

Growing read_growing(Table& table) {
    table.need("unit", Word{"g/bird/d"});
    return {.curve = table.need("rows", a_curve),
            .energy = table.need("energy", more_than_none(an_energy)),
            .source = read_source(table),
            .caution = table.maybe("caution", a_passage, std::string()),
            .model_only = table.maybe("model_only", a_yes_or_no, false)};
}

Laying read_laying(Table& table) {
    table.need("unit", Word{"g/bird/d"});
    return {.rate = table.need("rate", a_triple),
            .energy = table.need("energy", more_than_none(an_energy)),
            .source = read_source(table)};
}

Mortality read_mortality(Table& table) {
    table.need("unit", Word{"%"});
    return {.curve = table.need("rows", a_loss_curve), .source = read_source(table)};
}

Incubation read_incubation(Table& table) {
    constexpr int longest = 60;
    Incubation one{.low = table.need("low", WholeNumber{1, longest}),
                   .high = table.need("high", WholeNumber{1, longest}),
                   .source = read_source(table)};
    if (one.high < one.low) throw table.refuse("high", "days no fewer than low");
    return one;
}

HatchRate read_hatch_rate(Table& table) {
    HatchRate rate{.value = table.need("value", more_than_none(a_percentage)),
                   .low = table.need("low", a_percentage),
                   .high = table.need("high", a_percentage),
                   .source = read_source(table),
                   .note = table.maybe("note", a_passage, std::string())};
    bool const rising = rate.low <= rate.value && rate.value <= rate.high;
    if (!rising) throw table.refuse("value", "a value from low to high");
    return rate;
}

WaterRatio read_water(Table& table) {
    table.need("unit", Word{"mL/g"});
    return {.ratio = table.need("ratio", a_triple), .source = read_source(table)};
}

HeatResponse read_heat(Table& table) {
    return {.per_degree = quantities::per_kelvin(table.need("per_degree", a_part)),
            .above = table.need("above", a_temperature),
            .source = read_source(table)};
}

EnergyResponse read_feed_energy(Table& table) {
    return {.elasticity = table.need("elasticity", Number{0, 2, "a number from 0 to 2"}), .source = read_source(table)};
}

BroodingRow a_brooding_row(Value const& value) {
    auto const row = Numbers{4}(value);
    bool const whole = row[0] == std::floor(row[0]) && row[1] == std::floor(row[1]);
    bool const sound = whole && row[0] >= 1 && row[0] <= row[1] && row[1] < 1e6 && row[2] <= row[3];
    if (!sound) throw value.refuse("[first day, last day, low, high], in whole days, low to high");
    return {quantities::whole_number(row[0]), quantities::whole_number(row[1]), Temperature::fahrenheit(row[2]),
            Temperature::fahrenheit(row[3])};
}

std::vector<BroodingRow> brooding_rows(Value const& value) {
    auto rows = list_of(a_brooding_row)(value);
    int next = 1;
    for (BroodingRow const& row : rows) {
        if (row.first_day != next) throw value.refuse("rows that follow on, from day 1");
        next = row.last_day + 1;
    }
    if (rows.empty()) throw value.refuse("at least one row");
    return rows;
}

Brooding read_brooding(Table& table) {
    table.need("unit", Word{"degF"});
    return {.rows = table.need("rows", brooding_rows), .source = read_source(table)};
}

SpaceRow a_space_row(Value const& value) {
    auto const row = Numbers{3}(value);
    return {quantities::days(row[0]), row[1], row[2]};
}

std::vector<SpaceRow> space_rows(Value const& value) {
    auto rows = list_of(a_space_row)(value);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (!(rows[i - 1].from < rows[i].from)) throw value.refuse("rows in rising age");
    }
    if (rows.empty()) throw value.refuse("at least one row");
    return rows;
}

Space read_space(Table& table) {
    Number const some_birds{1, 1000, "a number of birds from 1 to 1000"};
    table.need("unit", Word{"birds/ft2, in/bird"});
    return {.rows = table.need("rows", space_rows),
            .birds_per_foot_of_water_trough = table.need("birds_per_foot_of_water_trough", some_birds),
            .day_olds_per_three_founts = table.need("day_olds_per_three_founts", some_birds),
            .source = read_source(table),
            .note = table.maybe("note", a_passage, std::string())};
}

std::optional<Laying> read_optional_laying(Table& root) {
    if (!root.has("laying")) return std::nullopt;
    return section(root, "laying", read_laying);
}

}  // namespace

rations::Kind read_kind(std::string const& key, Document document) {
    Table root = Table::root(std::move(document));
    Table needs = root.need_table("needs");
    Kind kind{.key = key,
              .title = root.need("title", a_text),
              .latin = root.need("latin", a_text),
              .also = root.maybe("also", list_of(a_text), std::vector<std::string>{}),
              .needs_table = needs.need("table", a_text),
              .needs_source = read_source(needs),
              .growing = section(root, "growing", read_growing),
              .laying = read_optional_laying(root),
              .mortality = section(root, "mortality", read_mortality),
              .hatch_rate = section(root, "hatch_rate", read_hatch_rate),
              .incubation = section(root, "incubation", read_incubation),
              .water = section(root, "water", read_water),
              .water_heat = section(root, "water_heat", read_heat),
              .feed_heat = section(root, "feed_heat", read_heat),
              .feed_energy = section(root, "feed_energy", read_feed_energy),
              .brooding = section(root, "brooding", read_brooding),
              .space = section(root, "space", read_space)};
    needs.done();
    root.done();
    return kind;
}

std::vector<std::string> read_kind_names(Document document) {
    Table root = Table::root(std::move(document));
    auto names = root.maybe("also", list_of(a_text), std::vector<std::string>{});
    names.push_back(root.need("title", a_text));
    names.push_back(root.need("latin", a_text));
    return names;
}

}  // namespace cropful::readers
