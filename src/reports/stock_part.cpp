#include "cropful/quantities/print.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::StockFill;
using engine::StockLine;

Table days_on_line(StockLine const& line, quantities::Measures measures) {
    Table table({Align::left, Align::right, Align::right}, 4);
    table.head({"day", "water of all", "stock"});
    for (engine::StockDay const& day : line.days) {
        table.add(
            {engine::Moment(day.day).day(), print_measured(day.water, measures), print_measured(day.stock, measures)});
    }
    return table;
}

Table tank_fills(StockLine const& line, domain::Supplement const& given, quantities::Measures measures) {
    Table table({Align::left, Align::right, Align::left, Align::left}, 4);
    table.head({"mix", "stock", "product in it", "lasts until"});
    for (StockFill const& fill : line.fills) {
        table.add({chore_words(fill.at, measures), print_measured(fill.put_in, measures),
                   product_words(engine::product_in_stock(given, fill.put_in), measures),
                   chore_words(fill.until, measures)});
    }
    return table;
}

std::string tank_words(StockLine const& line, domain::Supplement const& given, quantities::Measures measures) {
    auto const& empty = line.fills.front().empty_at;
    std::string const full = "a full tank of " + print_measured(*given.stock->tank, measures);
    std::string const lasts =
        empty ? " lasts for certain until " + moment_words(*empty, measures) : " outlasts the course";
    return full + lasts +
           "; mix no more than is needed until somebody makes it fresh, throw out what is left, and rinse";
}

}  // namespace

Page stock_part(engine::Plan const& plan, StockLine const& line) {
    domain::Supplement const& given = plan.farm.supplements.at(line.supplement);
    quantities::Measures const measures = plan.farm.measures;
    if (line.hatches.size() < 2 && line.fills.empty()) return {};
    Page page = wrap(supplement_title(given) + ", for all on the line (" + join(line.hatches) +
                         "): " + print(given.stock->proportioner),
                     "  " + strong("STOCK") + "  ", "         ");
    page += days_on_line(line, measures);
    if (line.fills.empty()) return page;
    return page + tank_fills(line, given, measures) + wrap(tank_words(line, given, measures), "    ", "    ");
}

Json stocks_json(engine::Plan const& plan) {
    using quantities::in_litres;
    Json all = Json::array();
    for (StockLine const& line : plan.stocks) {
        domain::Supplement const& given = plan.farm.supplements.at(line.supplement);
        domain::Stock const& stock = *given.stock;
        auto const litre = engine::product_in_stock(given, quantities::litres(1));
        Json json{{"supplement", line.supplement},
                  {"hatches", line.hatches},
                  {"parts", stock.proportioner.parts},
                  {"counts", stock.proportioner.added ? "added" : "in all"},
                  {"stock_g_per_l", or_null(litre.by_weight, quantities::in_grams)},
                  {"stock_ml_per_l", or_null(litre.by_volume, quantities::in_millilitres)},
                  {"tank_l", or_null(stock.tank, in_litres)},
                  {"days", Json::array()},
                  {"fills", Json::array()}};
        for (engine::StockDay const& day : line.days) {
            json["days"].push_back({{"day", engine::Moment(day.day).iso().substr(0, 10)},
                                    {"water_l", in_litres(day.water)},
                                    {"stock_ml", quantities::in_millilitres(day.stock)}});
        }
        for (StockFill const& fill : line.fills) {
            auto const product = engine::product_in_stock(given, fill.put_in);
            json["fills"].push_back({{"do_at", fill.at.iso()},
                                     {"put_in_l", in_litres(fill.put_in)},
                                     {"product_g", or_null(product.by_weight, quantities::in_grams)},
                                     {"product_ml", or_null(product.by_volume, quantities::in_millilitres)},
                                     {"until", fill.until.iso()},
                                     {"empty_at", fill.empty_at ? Json(fill.empty_at->iso()) : Json(nullptr)}});
        }
        all.push_back(std::move(json));
    }
    return all;
}

}  // namespace cropful::reports
