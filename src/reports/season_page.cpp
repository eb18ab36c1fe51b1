#include "cropful/reports/season_page.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/words.hpp"
#include "reports/brooders_part.hpp"
#include "reports/shopping.hpp"

namespace cropful::reports {

namespace {

using engine::Day;
using engine::Overview;
using quantities::in_birds;
using quantities::Measures;
using quantities::number;
using quantities::print;

constexpr std::size_t days_a_week = 7;

/// What some days use together.
struct Week {
    quantities::Heads birds = quantities::birds(0);  // the most on any day
    quantities::Volume water = quantities::litres(0);
    quantities::Mass feed = quantities::kilograms(0);
    std::map<std::string, quantities::Mass> feeds{};
};

Week week_from(std::vector<Day> const& days, std::size_t from) {
    Week sum;
    for (std::size_t i = from; i < std::min(days.size(), from + days_a_week); ++i) {
        sum.birds = std::max(sum.birds, days[i].birds);
        sum.water += days[i].water;
        for (engine::Eaten const& one : days[i].feeds) {
            sum.feeds.try_emplace(one.feed).first->second += one.amount;
            sum.feed += one.amount;
        }
    }
    return sum;
}

/// The feeds fed in these days.
std::vector<std::string> feeds_in(std::vector<Day> const& days) {
    std::set<std::string> keys;
    for (Day const& day : days) {
        for (engine::Eaten const& one : day.feeds) keys.insert(one.feed);
    }
    return {keys.begin(), keys.end()};
}

/// The feeds of a week in their columns, or all in one when none has a column.
std::vector<Styled> feed_cells(Week const& sum, std::vector<std::string> const& columns, Measures measures) {
    std::vector<Styled> cells;
    for (std::string const& feed : columns) {
        auto const found = sum.feeds.find(feed);
        cells.emplace_back(found == sum.feeds.end() ? "-" : print(found->second, measures));
    }
    if (!columns.empty()) return cells;
    std::vector<std::string> all;
    for (auto const& [feed, mass] : sum.feeds) all.push_back(feed + " " + print(mass, measures));
    return {join(all)};
}

Table weeks_table(Overview const& season, std::vector<std::string> const& columns) {
    auto const measures = season.plan.farm.measures;
    std::vector<Align> aligned{Align::left, Align::right, Align::right, Align::right};
    aligned.resize(4 + std::max<std::size_t>(1, columns.size()), columns.empty() ? Align::left : Align::right);
    std::vector<Styled> row{"week from", "birds", "water", "feed"};
    row.insert(row.end(), columns.begin(), columns.end());
    if (columns.empty()) row.emplace_back("of each kind");
    Table table(aligned, 2);
    table.head(row);
    for (std::size_t i = 0; i < season.days.size(); i += days_a_week) {
        Week const sum = week_from(season.days, i);
        std::size_t const length = std::min(days_a_week, season.days.size() - i);
        std::string const cut = length < days_a_week ? " (" + std::to_string(length) + " d)" : "";
        row = {season.days[i].at.day() + cut, quantities::print(sum.birds), print(sum.water, measures),
               print(sum.feed, measures)};
        auto const cells = feed_cells(sum, columns, measures);
        row.insert(row.end(), cells.begin(), cells.end());
        table.add(row);
    }
    return table;
}

/// A column for each feed, or one for all of them where they are many.
Page weeks_block(Overview const& season) {
    constexpr std::size_t most_columns = 4;  // beside date, birds, water and feed on 80 columns
    auto const feeds = feeds_in(season.days);
    return spaced(heading("WEEKS", ": the most birds on any day, and the usual use in the whole week")) +
           weeks_table(season, feeds.size() <= most_columns ? feeds : std::vector<std::string>{});
}

std::string cost_cell(std::optional<quantities::Money> const& cost) {
    return cost ? number(quantities::in_money(*cost), 2) : "-";
}

Page costs_part(Overview const& season) {
    auto const measures = season.plan.farm.measures;
    Table table({Align::right, Align::right, Align::right, Align::right, Align::right, Align::right, Align::left}, 2);
    table.head({"raised", "feed", "cost", "a bird", "a dozen", "week more", "hatch"});
    std::vector<std::string> unstated;
    for (engine::HatchCost const& one : season.costs) {
        table.add({quantities::print(one.raised), print(one.feed, measures), cost_cell(one.cost),
                   cost_cell(one.per_bird), cost_cell(one.per_dozen), cost_cell(one.week_more), one.hatch});
        if (one.lays_unstated) unstated.push_back(one.hatch);
    }
    Page page = Blank() +
                wrap(strong("FEED COSTS") + " in " + season.plan.farm.currency +
                         ", over each hatch's whole life, at the price of a bag by what it weighs, as eaten: "
                         "not what whole bags cost",
                     "", "  ") +
                table +
                wrap(
                    "Raised: alive at the end, and sold or moved before. A dozen: eggs, by the feed eaten in "
                    "lay. Week more: for those alive at the end, if kept 7 days longer. \"-\": a feed without a "
                    "price, or no eggs counted.",
                    "  ", "  ");
    if (unstated.empty()) return page;
    return page + wrap("No cost of a dozen for " + join(unstated) +
                           ": how many they lay is not stated (lays = \"70 %\" means 70 eggs a day from 100 birds).",
                       "  ", "  ");
}

Page readying_part(Overview const& season) {
    Table const table = shopping_table(engine::shopping_list(season.readying), season.plan.farm);
    if (table.empty()) return {};
    return spaced(heading("BUY BESIDE FEED", " (`cropful buy` counts the feed)") + table);
}

Page season_title(Overview const& season) {
    engine::Plan const& plan = season.plan;
    std::string const name = plan.farm.name.empty() ? season.costs.front().hatch : plan.farm.name;
    return Title{name, season.from.day_year() + " to " + season.to.day_year()};
}

}  // namespace

Page season_page(Overview const& season, Sources sources) {
    engine::Plan const& plan = season.plan;
    auto const measures = plan.farm.measures;
    return season_title(season) + spaced(alarms_part(plan.alarms, measures)) + unplaced_part(season) +
           first_week_part(season) + stays_part(season) + weeks_block(season) + costs_part(season) +
           readying_part(season) + spaced(learned_part(plan.learned, measures)) +
           notes_part(plan.cautions, season.assumptions, plan.farm.measures, sources);
}

}  // namespace cropful::reports
