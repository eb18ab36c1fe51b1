#include "cropful/reports/plan_csv.hpp"

#include "cropful/domain/csv.hpp"
#include "cropful/reports/fills_text.hpp"

namespace cropful::reports {

namespace {

using domain::csv_line;
using domain::csv_name;
using domain::csv_number;
using engine::Moment;
using engine::Plan;
using quantities::Duration;
using quantities::in_days;
using quantities::Mass;
using quantities::Measures;
using quantities::Volume;
using Cells = std::vector<std::string>;

std::string unit_of_feed(Measures measures) { return measures == Measures::us ? "lb" : "kg"; }
std::string unit_of_water(Measures measures) { return measures == Measures::us ? "gal" : "L"; }

std::string number(Mass mass, Measures measures) {
    return csv_number(measures == Measures::us ? quantities::in_pounds(mass) : quantities::in_kilograms(mass));
}

std::string number(Volume volume, Measures measures) {
    return csv_number(measures == Measures::us ? quantities::in_gallons(volume) : quantities::in_litres(volume));
}

std::string number(std::optional<Duration> const& time) { return time ? csv_number(in_days(*time)) : ""; }
std::string number(std::optional<quantities::Money> const& cost) {
    return cost ? csv_number(quantities::in_money(*cost)) : "";
}

/// A day and a time of day as spreadsheets know them.
std::string moment(Moment at) { return at.iso_date() + " " + at.iso().substr(at.iso_date().size() + 1); }
std::string moment(Moment at, std::optional<Duration> const& after) { return after ? moment(at + *after) : ""; }

template <class Amount>
Cells fill_row(engine::HatchPlan const& hatch, engine::Vessels<Amount> const& vessels, std::string const& what) {
    engine::Fill<Amount> const& fill = vessels.fills.front();
    return {csv_name(hatch.hatch.name),
            what,
            csv_name(vessels.key),
            std::to_string(vessels.count),
            moment(fill.at),
            number(fill.age),
            csv_number(quantities::in_birds(fill.birds)),
            moment(fill.at, fill.lasts.p05),
            number(fill.lasts.p05),
            moment(fill.at, fill.lasts.p50),
            number(fill.lasts.p50),
            moment(fill.at, fill.change_after),
            number(fill.change_after)};
}

Cells supplement_row(engine::SupplementPurchase const& bought) {
    auto const grams = bought.by_weight ? csv_number(quantities::in_grams(*bought.by_weight)) : "";
    auto const millilitres = bought.by_volume ? csv_number(quantities::in_millilitres(*bought.by_volume)) : "";
    return {"supplement",
            csv_name(bought.key),
            csv_name(bought.title),
            bought.packs ? std::to_string(*bought.packs) : "",
            "",
            number(bought.cost),
            "",
            "",
            "",
            "",
            "",
            "",
            grams,
            millilitres};
}

Cells feed_row(engine::Purchase const& feed, Measures measures) {
    return {"feed",
            csv_name(feed.key),
            csv_name(feed.title),
            feed.bag ? std::to_string(feed.safe_bags.p95) : "",
            feed.bag ? number(*feed.bag, measures) : "",
            number(feed.safe_cost),
            number(feed.band.p50, measures),
            number(feed.band.p95, measures),
            number(feed.on_hand, measures),
            number(feed.spare, measures),
            feed.first_needed.iso_date(),
            feed.last_needed.iso_date(),
            "",
            ""};
}

}  // namespace

std::string plan_csv(Plan const& plan) {
    Measures const measures = plan.farm.measures;
    std::string text =
        csv_line({"hatch", "kind", "date", "week", "age (d)", "birds", "feed",
                  "feed (" + unit_of_feed(measures) + "/d)", "water (" + unit_of_water(measures) + "/d)"});
    for (engine::HatchPlan const& hatch : plan.hatches) {
        for (engine::Week const& week : hatch.weeks) {
            text += csv_line({csv_name(hatch.hatch.name), hatch.hatch.kind, (hatch.hatch.date + week.from).iso_date(),
                              std::to_string(week.number), number(week.from),
                              csv_number(quantities::in_birds(week.birds)), csv_name(feed_at(hatch, week.from)),
                              number(week.feed, measures), number(week.water, measures)});
        }
    }
    return text;
}

std::string buy_csv(Plan const& plan) {
    Measures const measures = plan.farm.measures;
    std::string const unit = " (" + unit_of_feed(measures) + ")";
    std::string text =
        csv_line({"sort", "key", "title", "bags or packs", "bag" + unit, "cost (" + plan.farm.currency + ")",
                  "usually eaten" + unit, "sure to do" + unit, "on hand" + unit, "spare" + unit, "needed from",
                  "needed to", "product (g)", "product (mL)"});
    for (engine::Purchase const& feed : plan.feeds) text += csv_line(feed_row(feed, measures));
    for (engine::SupplementPurchase const& bought : plan.supplements) text += csv_line(supplement_row(bought));
    return text;
}

std::string last_csv(Plan const& plan) {
    Measures const measures = plan.farm.measures;
    std::string text =
        csv_line({"hatch", "holds", "key", "count", "filled", "age (d)", "birds", "sure until", "sure (d)",
                  "usually until", "usually (d)", "change at", "change after (d)",
                  "feed each (" + unit_of_feed(measures) + ")", "water each (" + unit_of_water(measures) + ")"});
    for (engine::HatchPlan const& hatch : plan.hatches) {
        if (hatch.hoppers && !hatch.hoppers->fills.empty()) {
            Cells row = fill_row(hatch, *hatch.hoppers, "feed");
            row.insert(row.end(), {number(hatch.hoppers->fills.front().content, measures), ""});
            text += csv_line(row);
        }
        if (hatch.drinkers && !hatch.drinkers->fills.empty()) {
            Cells row = fill_row(hatch, *hatch.drinkers, "water");
            row.insert(row.end(), {"", number(hatch.drinkers->fills.front().content, measures)});
            text += csv_line(row);
        }
    }
    return text;
}

}  // namespace cropful::reports
