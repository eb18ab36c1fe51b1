#include <utility>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/folding.hpp"
#include "reports/sheet_parts.hpp"

namespace cropful::reports {

namespace {

using engine::Fill;
using engine::HatchPlan;
using quantities::Duration;
using quantities::Mass;
using quantities::Measures;
using quantities::print;
using quantities::Volume;

constexpr std::size_t most_fill_rows = 100;     // more are shown week by week
constexpr std::size_t most_boxes_in_week = 14;  // more have one box a day

/// The week of life of every fill, those of one week together.
template <class Amount>
std::vector<std::vector<Fill<Amount>>> by_week(std::vector<Fill<Amount>> const& fills) {
    std::vector<std::vector<Fill<Amount>>> weeks;
    for (auto const& fill : fills) {
        bool const same = !weeks.empty() && Fold<Amount>::week(weeks.back().front()) == Fold<Amount>::week(fill);
        if (!same) weeks.emplace_back();
        weeks.back().push_back(fill);
    }
    return weeks;
}

Element labelled_box(std::string_view words) {
    Element item("span", "ticks");
    item.add(box()).text(" ");
    return item.text(words);
}

/// "Sat 20 Mar", then "Sun 21": the month is said when it is new.
std::string without_month(std::string const& words, std::string const& day, std::string& month) {
    std::string const its = day.substr(day.rfind(' '));
    if (std::exchange(month, its) != its) return words;
    return day.substr(0, day.size() - its.size()) + words.substr(day.size());
}

/// A box for every fill of a week, or for every day when there are many.
template <class Amount>
Element boxes(std::vector<Fill<Amount>> const& week, Measures measures) {
    Element cell("td");
    std::string last, month;
    for (auto const& fill : week) {
        std::string const day = fill.do_at.day();
        std::string const words = week.size() > most_boxes_in_week ? day : chore_words(fill.do_at, measures);
        if (words == last) continue;
        if (!last.empty()) cell.text(" ");
        cell.add(labelled_box(without_month(words, day, month)));
        last = words;
    }
    return cell;
}

/// "2 fills, sure for 5 d", "change every 24 h": fills that only a course cuts short follow the first of the week.
template <class Amount>
std::string rhythm_words(std::vector<Fill<Amount>> const& week) {
    if (by_change(week.front())) return "change every " + print(*week.front().change_after);
    auto const shortest = Fold<Amount>{week, {}}.shortest(safe_end);
    return plural(static_cast<int>(week.size()), "fill") + (shortest ? ", sure for " + print(*shortest) : "");
}

template <class Amount>
HtmlTable weekly_fills(std::string const& caption, std::vector<Fill<Amount>> const& fills, Measures measures) {
    HtmlTable table(caption, {"Week", "Do", "Tick when done"}, "weeks");
    for (auto const& week : by_week(fills)) {
        std::string const number = std::to_string(Fold<Amount>::week(week.front()));
        table.row(number + ": " + quantities::print(week.front().birds) + " birds")
            .add(cell(rhythm_words(week)))
            .add(boxes(week, measures));
    }
    return table;
}

HtmlTable fills_table(std::string const& caption, HatchPlan const& hatch, std::vector<Fill<Mass>> const& fills,
                      Measures measures) {
    HtmlTable table(caption, {"Fill", "Put in", "Level", "Until", "Birds, age"}, "fills");
    for (auto const& fill : fills) {
        table.row(tick_head(chore_words(fill.do_at, measures)))
            .add(figure_cell(print_measured(fill.put_in, measures)))
            .add(cell(level_words(fill.share_of_full)))
            .add(Element("td", "by", fill_again_words(fill, hatch, measures)))
            .add(cell(quantities::print(fill.birds) + ", " + quantities::print_age(fill.age)));
    }
    return table;
}

}  // namespace

void add_hopper_fills(Element& page, HatchPlan const& hatch, Measures measures) {
    bool any = false;
    for (engine::StagePlan const& stage : hatch.stages) {
        if (!stage.hoppers || stage.hoppers->fills.empty()) continue;
        auto const& fills = stage.hoppers->fills;
        if (!any) page.add(section_heading("Fill the hoppers"));
        any = true;
        std::string const caption = "Hoppers: " + of_houses(stage) + hoppers_words(hatch, *stage.hoppers, measures);
        page.add((fills.size() > most_fill_rows ? weekly_fills(caption, fills, measures)
                                                : fills_table(caption, hatch, fills, measures))
                     .element());
    }
    if (!any) return;
    page.add(Element("p", "notes",
                     "What is put in is for all the hoppers together. 19 times in 20 none is empty before somebody "
                     "is there again; look in every day all the same."));
}

void add_drinker_fills(Element& page, HatchPlan const& hatch, Measures measures) {
    bool any = false;
    for (engine::StagePlan const& stage : hatch.stages) {
        if (!stage.drinkers || stage.drinkers->fills.empty()) continue;
        if (!any) page.add(section_heading("Water"));
        any = true;
        std::string const caption = "Drinkers: " + of_houses(stage) + drinkers_words(*stage.drinkers, measures);
        page.add(weekly_fills(caption, stage.drinkers->fills, measures).element());
    }
}

void add_course(Element& page, HatchPlan const& hatch, domain::Farm const& farm) {
    bool any = false;
    for (engine::Mix const& mix : hatch.mixes) {
        if (mix.batches.empty()) continue;
        if (!any) page.add(section_heading("Stir into the water"));
        any = true;
        HtmlTable table(course_words(mix, farm), {"Mix", "Stir in", "Into water", "Pour into each"}, "fills");
        for (engine::Batch const& batch : mix.batches) {
            table.row(tick_head(chore_words(batch.at, farm.measures)))
                .add(Element("td", "by", dose_words(batch.dose, farm.measures)))
                .add(cell(print_measured(batch.dose.water, farm.measures)))
                .add(cell(print_measured(batch.each_drinker, farm.measures)));
        }
        table.sum("In all")
            .add(cell(dose_words(mix.total, farm.measures)))
            .add(cell(print_measured(mix.total.water, farm.measures)))
            .add(cell(""));
        page.add(table.element()).add(list_of(course_notes(mix, farm), "notes"));
    }
}

}  // namespace cropful::reports
