#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"
#include "reports/sheet_parts.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::HatchSheet;
using engine::RoomNeeded;
using quantities::days;
using quantities::Measures;
using quantities::number;
using quantities::plain;

constexpr double metres_per_foot = 12 * quantities::metres_per_inch;
constexpr double square_metres_per_square_foot = metres_per_foot * metres_per_foot;
constexpr double ten = 10;  // from here up one decimal is enough

std::string rounded(double x) { return number(x, x < ten ? 1 : 0); }

/// Within 0.4 %: a density may be far below 1.
std::string area(double square_feet, Measures measures) {
    return measures == Measures::us ? rounded(square_feet) + " sq ft"
                                    : rounded(square_feet * square_metres_per_square_foot) + " m²";
}

std::string length(double feet, Measures measures) {
    return measures == Measures::us ? rounded(feet) + " ft" : rounded(feet * metres_per_foot) + " m";
}

std::string per_bird(double inches, Measures measures) {
    return measures == Measures::us
               ? plain(inches) + " in a bird"
               : quantities::print_measured(inches * quantities::metres_per_inch * 100) + " cm a bird";
}

std::string density(double birds_per_square_foot, Measures measures) {
    return measures == Measures::us
               ? plain(birds_per_square_foot) + " birds a sq ft"
               : quantities::print_measured(birds_per_square_foot / square_metres_per_square_foot) + " birds a m²";
}

std::string degrees(rations::BroodingRow const& row, Measures measures) {
    auto const whole = [&](quantities::Temperature t) {
        return number(std::round(measures == Measures::us ? t.in_fahrenheit() : t.in_celsius()), 0);
    };
    std::string const low = whole(row.low), high = whole(row.high);
    return (low == high ? low : low + " to " + high) + (measures == Measures::us ? " °F" : " °C");
}

void add_warmth(Element& page, HatchPlan const& hatch, HatchSheet const& sheet, Measures measures) {
    HtmlTable table("Air at the height of the chicks", {"Days of life", "Dates", "Warmth"}, "fills");
    for (rations::BroodingRow const& row : sheet.warmth) {
        auto const from = hatch.hatch.date + days(row.first_day - 1), to = hatch.hatch.date + days(row.last_day - 1);
        bool const open = !(hatch.hatch.date + days(row.last_day) < hatch.hatch.date + hatch.hatch.until);
        std::string const first = std::to_string(row.first_day);
        table.row(open ? "from day " + first : "days " + first + " to " + std::to_string(row.last_day))
            .add(cell(open ? "from " + from.day() : from.day() + " to " + to.day()))
            .add(Element("td", "by", degrees(row, measures)));
    }
    page.add(section_heading("Keep them warm")).add(table.element());
    page.add(Element("p", "notes", "Lower it by steps, and go by the birds before the thermometer."));
}

std::string water_words(RoomNeeded const& room, Measures measures) {
    std::string words = length(room.water_trough_feet, measures) + " of trough";
    if (!room.founts) return words;
    return words + ", or " + plural(*room.founts, "fount") + (measures == Measures::us ? " of 1 gal" : " of 3.8 L");
}

void add_room(Element& page, HatchPlan const& hatch, HatchSheet const& sheet, Measures measures) {
    HtmlTable table("Room for the birds alive then", {"From", "Floor", "Feeder", "Water"});
    for (RoomNeeded const& room : sheet.room) {
        table
            .row(quantities::print_age(room.from) + ", " + (hatch.hatch.date + room.from).day() + ": " +
                 quantities::print(room.birds) + " birds")
            .add(cell(area(room.floor_square_feet, measures) + " (" + density(room.birds_per_square_foot, measures) +
                      ")"))
            .add(
                cell(length(room.feeder_feet, measures) + " (" + per_bird(room.feeder_inches_per_bird, measures) + ")"))
            .add(cell(water_words(room, measures)));
    }
    page.add(section_heading("Give them room")).add(table.element());
    if (sheet.room_note.empty()) return;
    page.add(Element("p", "notes", "Sources disagree: " + sheet.room_note + "."));
}

void add_signs(Element& page, rations::BrooderAdvice const& advice) {
    HtmlTable table("What the birds show", {"Sign", "You see", "You do"}, "signs");
    for (rations::Sign const& sign : advice.signs) table.row(sign.title).add(cell(sign.seen)).add(cell(sign.act));
    page.add(section_heading("Watch")).add(table.element());
    std::vector<std::string> rules;
    for (rations::LampRule const& rule : advice.lamp) rules.push_back(rule.text);
    page.add(section_heading("Heat lamps set barns on fire")).add(list_of(rules, "cautions"));
}

}  // namespace

void add_brooder(Element& page, engine::Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    HatchSheet const& its = sheet.hatches[number];
    Measures const measures = sheet.plan.farm.measures;
    add_warmth(page, hatch, its, measures);
    add_room(page, hatch, its, measures);
    add_signs(page, sheet.advice);
}

}  // namespace cropful::reports
