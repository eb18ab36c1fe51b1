#include "cropful/reports/table_text.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using domain::Source;
using engine::Kind;
using quantities::Measures;
using quantities::number;
using quantities::plain;
using quantities::print;

std::string source_text(Source const& source) { return wrap(sourced(source), "  ", "   "); }

std::string energy(quantities::EnergyPerMass amount) {
    return number(quantities::in_kilocalories_per_kilogram(amount), 0) + " kcal/kg";
}

std::string section(std::string const& head, std::string const& body, Source const& source) {
    return "\n" + wrap(head) + body + source_text(source);
}

/// Rows by age: low, central and high.
std::string curve_text(curves::Curve const& curve, std::string const& unit) {
    Table table({Align::left, Align::right, Align::right, Align::right, Align::left}, 2);
    table.add({"age", "low 5 %", "central", "high 95 %", ""});
    for (curves::Row const& row : curve.rows()) {
        table.add({"day " + plain(row.age_d), plain(row.low), plain(row.central), plain(row.high), unit});
    }
    return table.text();
}

std::string three(std::array<double, 3> const& values, std::string const& unit) {
    return wrap(plain(values[1]) + " " + unit + " (" + plain(values[0]) + " to " + plain(values[2]) + ")", "  ", "  ");
}

std::string heat_text(std::string const& what, engine::HeatResponse const& response, Measures measures) {
    double const per_degree = quantities::ratio(response.per_degree * quantities::kelvins(1));
    return section(
        what,
        wrap(quantities::percent(per_degree) + " per degree C above " + print(response.above, measures), "  ", "  "),
        response.source);
}

std::string brooding_text(engine::Brooding const& brooding, Measures measures) {
    Table table({Align::left, Align::left}, 2);
    for (engine::BroodingRow const& row : brooding.rows) {
        table.add({"days " + std::to_string(row.first_day) + " to " + std::to_string(row.last_day),
                   print(row.low, measures) + " to " + print(row.high, measures)});
    }
    return section("Warmth under the brooder", table.text(), brooding.source);
}

std::string space_text(engine::Space const& space) {
    Table table({Align::left, Align::right, Align::right}, 2);
    table.add({"from", "birds per ft2", "inches of feeder a bird"});
    for (engine::SpaceRow const& row : space.rows) {
        table.add(
            {quantities::print_age(row.from), plain(row.birds_per_square_foot), plain(row.feeder_inches_per_bird)});
    }
    std::string const water = "water: 1 ft of trough for " + plain(space.birds_per_foot_of_water_trough) +
                              " birds, or three 1 gal founts for " + plain(space.day_olds_per_three_founts) +
                              " day-olds";
    return section("Room",
                   table.text() + wrap(water, "  ", "  ") + (space.note.empty() ? "" : wrap(space.note, "  ", "  ")),
                   space.source);
}

std::string head_text(Kind const& kind) {
    std::string text = kind.title + " (" + kind.latin + "), written \"" + kind.key + "\"\n";
    if (!kind.also.empty()) text += wrap("also known as " + join(kind.also), "  ", "  ");
    return text;
}

std::string eating_text(Kind const& kind) {
    std::string text = section("Feed a growing bird eats, at " + energy(kind.growing.energy),
                               curve_text(kind.growing.curve, "g a day"), kind.growing.source);
    if (!kind.growing.caution.empty()) text += wrap(kind.growing.caution, "  ! ", "    ");
    if (kind.laying) {
        text += section("Feed a laying bird eats, at " + energy(kind.laying->energy),
                        three(kind.laying->rate, "g a day"), kind.laying->source);
    }
    text += section(
        "Answer to a richer feed",
        wrap("eats by (reference energy / energy of the feed) to the power " + plain(kind.feed_energy.elasticity), "  ",
             "  "),
        kind.feed_energy.source);
    return text;
}

}  // namespace

std::string kinds_text(std::vector<Kind> const& kinds) {
    Table table({Align::left, Align::left, Align::left});
    table.add({"kind", "title", "also known as"});
    for (Kind const& kind : kinds) table.add({kind.key, kind.title, join(kind.also)});
    return table.text() + "\n`cropful table KIND` shows all that is known about one.\n";
}

std::string kind_text(Kind const& kind, engine::NeedsTable const& needs, Measures measures) {
    std::string text = head_text(kind) + eating_text(kind);
    text += section("Deaths, per cent of the chicks by that age", curve_text(kind.mortality.curve, "%"),
                    kind.mortality.source);
    text += section(
        "Eggs that hatch",
        wrap(quantities::percent(kind.hatch_rate.value) + " of those set (" + quantities::percent(kind.hatch_rate.low) +
                 " to " + quantities::percent(kind.hatch_rate.high) + ")",
             "  ", "  "),
        kind.hatch_rate.source);
    text += section("Water drunk", three(kind.water.ratio, "mL per g of feed"), kind.water.source);
    text += heat_text("Heat: water per g of feed rises", kind.water_heat, measures);
    text += heat_text("Heat: feed eaten falls", kind.feed_heat, measures);
    text += brooding_text(kind.brooding, measures) + space_text(kind.space);
    return text + section("Needs, from the table \"" + kind.needs_table + "\"", "", kind.needs_source) + "\n" +
           needs_text(needs);
}

}  // namespace cropful::reports
