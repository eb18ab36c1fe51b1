#include "cropful/reports/plan_csv.hpp"

#include "cropful/domain/csv.hpp"
#include "cropful/engine/shopping.hpp"
#include "cropful/reports/fills_part.hpp"

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

std::string amount_cell(Mass mass, Measures measures) {
    return csv_number(measures == Measures::us ? quantities::in_pounds(mass) : quantities::in_kilograms(mass));
}

std::string amount_cell(Volume volume, Measures measures) {
    return csv_number(measures == Measures::us ? quantities::in_gallons(volume) : quantities::in_litres(volume));
}

std::string amount_cell(std::optional<Duration> const& time) { return time ? csv_number(in_days(*time)) : ""; }
std::string amount_cell(std::optional<quantities::Money> const& cost) {
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
            amount_cell(fill.age),
            csv_number(quantities::in_birds(fill.birds)),
            moment(fill.at, fill.lasts.p05),
            amount_cell(fill.lasts.p05),
            moment(fill.at, fill.lasts.p50),
            amount_cell(fill.lasts.p50),
            moment(fill.at, fill.change_after),
            amount_cell(fill.change_after)};
}

/// A row of the shopping table, cell by cell; what a sort does not have is left empty.
struct BuyRow {
    std::string sort, key, title, packs{}, bag{}, cost{}, usual{}, sure{}, on_hand{}, spare{}, from{}, to{}, grams{},
        millilitres{}, sure_grams{}, sure_millilitres{}, bedding_bag{}, bedding{};
    [[nodiscard]] Cells cells() const {
        return {sort,        key,    title, packs, bag,   cost,        usual,      sure,
                on_hand,     spare,  from,  to,    grams, millilitres, sure_grams, sure_millilitres,
                bedding_bag, bedding};
    }
};

std::string grams_cell(std::optional<Mass> const& mass) { return mass ? csv_number(quantities::in_grams(*mass)) : ""; }
std::string millilitres(std::optional<Volume> const& volume) {
    return volume ? csv_number(quantities::in_millilitres(*volume)) : "";
}

std::string bulk(Volume volume, Measures measures) {
    bool const us = measures == Measures::us;
    return csv_number(us ? quantities::in_litres(volume) / (1728 * quantities::litres_per_cubic_inch)
                         : quantities::in_litres(volume));
}

BuyRow row_of(engine::SupplementPurchase const& bought, Measures /*measures*/) {
    BuyRow row{"supplement", csv_name(bought.key), csv_name(bought.title)};
    if (bought.packs) row.packs = std::to_string(*bought.packs);
    row.cost = amount_cell(bought.cost);
    row.from = bought.first_needed.iso_date();
    row.grams = grams_cell(bought.by_weight);
    row.millilitres = millilitres(bought.by_volume);
    row.sure_grams = grams_cell(bought.by_weight);
    row.sure_millilitres = millilitres(bought.by_volume);
    return row;
}

BuyRow row_of(engine::Purchase const& feed, Measures measures) {
    BuyRow row{"feed", csv_name(feed.key), csv_name(feed.title)};
    if (feed.bag) {
        row.packs = std::to_string(feed.safe_bags.p95);
        row.bag = amount_cell(*feed.bag, measures);
    }
    row.cost = amount_cell(feed.safe_cost);
    row.usual = amount_cell(feed.need, measures);
    row.sure = amount_cell(feed.band.p95, measures);
    row.on_hand = amount_cell(feed.on_hand, measures);
    row.spare = amount_cell(feed.spare, measures);
    row.from = feed.first_needed.iso_date();
    row.to = feed.last_needed.iso_date();
    return row;
}

BuyRow row_of(engine::BeddingPurchase const& one, Measures measures) {
    BuyRow row{"bedding", csv_name(one.brooder), csv_name("bedding for " + one.brooder)};
    row.packs = std::to_string(one.bags);
    row.cost = amount_cell(one.cost);
    row.from = one.first.iso_date();
    row.bedding_bag = bulk(one.bag, measures);
    row.bedding = bulk(one.total, measures);
    return row;
}

BuyRow row_of(engine::DisinfectantPurchase const& one, Measures /*measures*/) {
    BuyRow row{"disinfectant", csv_name(one.key), csv_name(one.title)};
    if (one.packs) row.packs = std::to_string(*one.packs);
    row.cost = amount_cell(one.cost);
    row.from = one.first.iso_date();
    row.millilitres = row.sure_millilitres = millilitres(one.product);
    return row;
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
                              std::to_string(week.number), amount_cell(week.from),
                              csv_number(quantities::in_birds(week.birds)), csv_name(feed_at(hatch, week.from)),
                              amount_cell(week.feed, measures), amount_cell(week.water, measures)});
        }
    }
    return text;
}

std::string buy_csv(Plan const& plan) {
    Measures const measures = plan.farm.measures;
    std::string const unit = " (" + unit_of_feed(measures) + ")";
    std::string const bulk_unit = measures == Measures::us ? " (ft3)" : " (L)";
    std::string text =
        csv_line({"sort", "key", "title", "bags or packs", "bag" + unit, "cost (" + plan.farm.currency + ")",
                  "usually eaten" + unit, "sure to do" + unit, "on hand" + unit, "spare" + unit, "needed from",
                  "needed to", "product (g)", "product (mL)", "sure product (g)", "sure product (mL)",
                  "bedding bag" + bulk_unit, "bedding" + bulk_unit});
    for (engine::ShoppingItem const& item : engine::shopping_list(plan)) {
        text += csv_line(std::visit([&](auto const* one) { return row_of(*one, measures); }, item.what).cells());
    }
    return text;
}

std::string last_csv(Plan const& plan) {
    Measures const measures = plan.farm.measures;
    std::string text =
        csv_line({"hatch", "holds", "key", "count", "filled", "age (d)", "birds", "sure until", "sure (d)",
                  "usually until", "usually (d)", "change at", "change after (d)",
                  "feed each (" + unit_of_feed(measures) + ")", "water each (" + unit_of_water(measures) + ")"});
    for (engine::HatchPlan const& hatch : plan.hatches) {
        if (hatch.hoppers() && !hatch.hoppers()->fills.empty()) {
            Cells row = fill_row(hatch, *hatch.hoppers(), "feed");
            row.insert(row.end(), {amount_cell(hatch.hoppers()->fills.front().content, measures), ""});
            text += csv_line(row);
        }
        if (hatch.drinkers() && !hatch.drinkers()->fills.empty()) {
            Cells row = fill_row(hatch, *hatch.drinkers(), "water");
            row.insert(row.end(), {"", amount_cell(hatch.drinkers()->fills.front().content, measures)});
            text += csv_line(row);
        }
    }
    return text;
}

}  // namespace cropful::reports
