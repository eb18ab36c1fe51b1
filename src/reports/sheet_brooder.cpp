#include <cmath>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/sheet_parts.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::RoomNeeded;
using quantities::Measures;
using quantities::metres_per_foot;
using quantities::number;
using quantities::plain;

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

std::string water_words(RoomNeeded const& room, Measures measures) {
    std::string words = length(room.water_trough_feet, measures) + " of trough";
    if (!room.founts) return words;
    return words + ", or " + plural(*room.founts, "fount") + (measures == Measures::us ? " of 1 gal" : " of 3.8 L");
}

void add_room(Element& page, engine::Sheet const& sheet) {
    Measures const measures = sheet.plan.farm.measures;
    HtmlTable table("Room for the birds alive then", {"From", "Floor", "Feeder", "Water"}, "room");
    std::vector<std::string> notes;
    for (std::size_t i = 0; i < sheet.hatches.size(); ++i) {
        HatchPlan const& hatch = sheet.plan.hatches[i];
        for (RoomNeeded const& room : sheet.hatches[i].room) {
            if (sheet.until && !(hatch.hatch.date + room.from < *sheet.until)) continue;
            table
                .row(hatch.hatch.name + ", " + quantities::print_age(room.from) + ", " +
                     (hatch.hatch.date + room.from).day() + ": " + quantities::print(room.birds) + " birds")
                .add(cell(area(room.floor_square_feet, measures) + " (" +
                          density(room.birds_per_square_foot, measures) + ")"))
                .add(cell(length(room.feeder_feet, measures) + " (" + per_bird(room.feeder_inches_per_bird, measures) +
                          ")"))
                .add(cell(water_words(room, measures)));
        }
        std::string const& note = sheet.hatches[i].room_note;
        bool const there = !sheet.until || hatch.hatch.date < *sheet.until;
        if (there && !note.empty() && !ranges::contains(notes, note)) notes.push_back(note);
    }
    page.add(section_heading("Give them room")).add(table.element());
    for (std::string const& note : notes) page.add(Element("p", "notes", "Sources disagree: " + note + "."));
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

Element watch_page(engine::Sheet const& sheet) {
    Element page("div", "page watch");
    page.add(Element("h2", "", "Watch").set("id", "watch-title"));
    add_signs(page, sheet.advice);
    add_cautions(page, "Cautions", sheet.plan.cautions, sheet.plan.farm.measures);
    add_room(page, sheet);
    page.add(Element("p", "notes", how_sure_words()));
    page.add(Element("p", "notes", rests_on_words(sheet.assumptions, sheet.plan.farm.measures)));
    page.add(Element("p", "notes",
                     "Made with cropful. Where a label, a veterinarian or local law says otherwise, they decide."));
    return section({"watch", "Watch", std::move(page)}, sheet.plan);
}

}  // namespace cropful::reports
