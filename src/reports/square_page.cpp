#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/blend_page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/json_parts.hpp"
#include "reports/mixing_sheet.hpp"

namespace cropful::reports {

namespace {

using namespace quantities;
using blends::Square;
using blends::SquarePart;

constexpr double coarse = 0.1;  // per cent of protein

std::string pct(double x) { return plain(x) + " %"; }

/// The two that are balanced, the richer first.
std::vector<SquarePart> pair_of(Square const& square) {
    std::vector<SquarePart> pair;
    for (SquarePart const& part : square.parts) {
        if (!part.feed.fixed) pair.push_back(part);
    }
    if (pair[0].feed.protein < pair[1].feed.protein) std::swap(pair[0], pair[1]);
    return pair;
}

Page working(Square const& square) {
    auto const pair = pair_of(square);
    double const whole = pair[0].parts + pair[1].parts;
    Page page = heading("THE SQUARE");
    if (std::abs(square.balanced - square.question.protein) > 1e-9) {
        page += wrap("The two must hold " + pct(square.balanced) +
                         " together, so that the whole batch, with what is kept "
                         "or fixed, holds " +
                         pct(square.question.protein) + ".",
                     "  ", "  ");
    }
    if (whole == 0) return page + wrap("Both hold " + pct(square.balanced) + ": any shares of them do.", "  ", "    ");
    Table table({Align::left, Align::right, Align::right, Align::left}, 2);
    for (std::size_t i = 0; i < pair.size(); ++i) {
        SquarePart const& part = pair[i];
        SquarePart const& other = pair[1 - i];
        table.add({part.feed.name, pct(part.feed.protein), plain(part.parts) + " parts",
                   "the difference of " + pct(square.balanced) + " and " + pct(other.feed.protein) + " of the " +
                       other.feed.name});
    }
    return page + table + wrap("together " + plain(whole) + " parts", "  ", "    ");
}

}  // namespace

Page square_page(Square const& square, Measures measures) {
    auto const& question = square.question;
    Page page =
        Title{"Two feeds to " + pct(question.protein) + " protein", on_scale(question.batch, question.scale, measures)};
    if (!square.possible) {
        page += Blank() + wrap(alarm("NOT POSSIBLE") + ": " + impossible_words(square) + ". The nearest mix:");
    }
    Table table({Align::right, Align::right, Align::right, Align::left}, 2);
    table.head({"weigh", "share", "protein", "feed"});
    for (SquarePart const& part : square.parts) {
        table.add({on_scale(part.amount, question.scale, measures), number(100 * part.share, 2) + " %",
                   pct(part.feed.protein), part.feed.name + (part.feed.fixed ? " (fixed)" : "")});
    }
    if (question.keep > 0) {
        table.add({on_scale(square.kept, question.scale, measures), number(100 * question.keep, 2) + " %", "0 %",
                   "kept for minerals, salt and premix"});
    }
    page += spaced(heading("WEIGH") + table +
                   wrap("As weighed this holds " + number(square.protein, 2) + " % protein.", "  ", "    "));
    if (square.possible && std::abs(square.protein - question.protein) > coarse) {
        page += warning("Rounding to the scale moved it from " + pct(question.protein) +
                        ": weigh on a finer scale (--scale), or mix more.");
    }
    if (square.possible) page += Blank() + working(square);
    return page +
           spaced(heading("WATCH") +
                  warning(
                      "Protein alone makes no feed: amino acids, calcium, phosphorus, salt and vitamins are not looked "
                      "at here. `cropful blend FILE` does that.") +
                  warning("Never dilute a medicated feed, and never give whole or cracked grain to small chicks. The "
                          "label, your veterinarian and local law come first."));
}

std::string impossible_words(Square const& square) {
    auto const pair = pair_of(square);
    bool const over = square.balanced > pair[0].feed.protein;
    return "the two must hold " + pct(square.balanced) + " together, which is " + (over ? "more" : "less") +
           " than either of them holds (" + pair[0].feed.name + " " + pct(pair[0].feed.protein) + ", " +
           pair[1].feed.name + " " + pct(pair[1].feed.protein) + ")";
}

std::string square_json(Square const& square) {
    Json parts = Json::array();
    for (SquarePart const& part : square.parts) {
        parts.push_back({{"feed", part.feed.name},
                         {"protein_pct", part.feed.protein},
                         {"parts", part.parts},
                         {"share_pct", 100 * part.share},
                         {"amount_kg", in_kilograms(part.amount)},
                         {"fixed", part.feed.fixed.has_value()}});
    }
    return printed({{"possible", square.possible},
                    {"target_pct", square.question.protein},
                    {"balanced_pct", square.balanced},
                    {"keep_pct", 100 * square.question.keep},
                    {"kept_kg", in_kilograms(square.kept)},
                    {"batch_kg", in_kilograms(square.question.batch)},
                    {"scale_kg", in_kilograms(square.question.scale)},
                    {"protein_pct", square.protein},
                    {"feeds", parts}});
}

}  // namespace cropful::reports
