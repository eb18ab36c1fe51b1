#include "cropful/reports/away_page.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::Away;
using engine::Holding;
using quantities::Measures;

bool is_feed(Holding const& holding) { return std::holds_alternative<quantities::Mass>(holding.content); }

std::string amount_of_entry(domain::Amount const& amount, Measures measures) {
    if (auto const* mass = std::get_if<quantities::Mass>(&amount)) return print_measured(*mass, measures);
    return print_measured(std::get<quantities::Volume>(amount), measures);
}

/// So that what print_measured takes off, 0.4 % at most, does not make it too few.
domain::Amount a_little_more(domain::Amount const& amount) {
    return std::visit([](auto const& one) { return domain::Amount(one * 1.005); }, amount);
}

std::string vessels(Holding const& holding) {
    return std::to_string(holding.count) + " x " + holding.vessel + (is_feed(holding) ? " (feed)" : " (water)");
}

/// As asked: in hundredths where it is one of them.
std::string sure_words(double sure) {
    bool const hundredths = std::abs(100 * sure - std::round(100 * sure)) < 1e-9;
    return hundredths ? chance_words(sure) : quantities::number(1000 * sure, 0) + " times in 1,000";
}

/// What hatches, sits under heat or leaves in that time: no vessel makes up for nobody being there.
Page errands_part(Away const& away) {
    if (away.errands.empty()) return {};
    std::vector<std::string> hatching, heat, leaving;
    for (engine::Errand const& errand : away.errands) {
        std::string const when = errand.hatch + " (" + chore_words(errand.at, away.farm.measures) + ")";
        if (errand.call == engine::Call::hatching) hatching.push_back(when);
        if (errand.call == engine::Call::under_heat) heat.push_back(errand.hatch);
        if (errand.call == engine::Call::leaving) leaving.push_back(when);
    }
    std::vector<std::string> parts;
    if (!hatching.empty()) parts.push_back("chicks hatch: " + join(hatching, ", "));
    if (!heat.empty()) parts.push_back("chicks sit under heat, to be looked at every few hours: " + join(heat, ", "));
    if (!leaving.empty()) parts.push_back("birds are to move or leave: " + join(leaving, ", "));
    return wrap("SOMEBODY MUST BE THERE whatever the vessels hold. In this time " + join(parts, "; ") + ".");
}

/// How the vessels are at the start.
std::string start_words(Away const& away) {
    auto const known = ranges::count_if(away.holdings, [](Holding const& one) { return one.known; });
    if (known == 0) return "all full at the start";
    return known == std::ssize(away.holdings) ? "with what the diary says is in them now"
                                              : "with what the diary says is in them now, the others full";
}

Page answer_part(Away const& away) {
    auto const measures = away.farm.measures;
    auto const& absence = away.absence;
    Page page = wrap("Nobody there for " + quantities::print(absence.until - absence.from) + ", " + start_words(away) +
                     ": everything holds " + chance_words(away.chance) + ".");
    std::string const sure = sure_words(absence.sure);
    page += errands_part(away);
    if (away.come_by && *away.come_by < absence.until) {
        page += wrap(alarm("SOMEBODY MUST COME") + " by " + chore_words(*away.come_at, measures) + ", to be sure " +
                     sure + ".");
    } else if (away.come_by) {
        std::string const nobody =
            away.errands.empty() ? "Nobody need come before you are back" : "For feed and water alone nobody need come";
        page +=
            wrap(nobody + "; at the latest by " + chore_words(*away.come_at, measures) + ", to be sure " + sure + ".");
    }
    if (away.first) {
        Holding const& first = away.holdings[*away.first];
        page += wrap("First to run out: " + first.hatch + ", " + vessels(first) + ".");
    }
    return page;
}

/// How full to leave a vessel, or how many more it takes.
std::string leave_words(Holding const& holding, Away const& away) {
    auto const measures = away.farm.measures;
    if (holding.more > 0) {
        return "Full is not enough: " + std::to_string(holding.more) + " more of them.";
    }
    return "Leave at least " + amount_of_entry(a_little_more(holding.leave), measures) +
           (holding.count > 1 ? " in each" : "") + " (" + quantities::number(std::ceil(100 * holding.full), 0) +
           " % of full).";
}

Page holding_part(Holding const& holding, Away const& away) {
    auto const measures = away.farm.measures;
    std::string words = vessels(holding) + ", " + amount_of_entry(holding.content, measures) +
                        (holding.count > 1 ? " each" : "") + (holding.of_batch ? " of its batch" : " when full") +
                        (holding.known ? "; as it is now it" : ":") + " holds " + chance_words(holding.chance) + ". " +
                        leave_words(holding, away);
    if (holding.safe_for) {
        words += std::string(holding.known ? " As it is" : " Full") + ", it is good until " +
                 moment_words(holding.from + *holding.safe_for, measures) + ".";
    }
    return wrap(words, "    " + (holding.chance >= away.absence.sure ? Styled("ok") : alarm("NO")) + "  ", "        ");
}

Page hatches_part(Away const& away) {
    Page page;
    std::string hatch;
    for (Holding const& holding : away.holdings) {
        if (holding.hatch != hatch) {
            hatch = holding.hatch;
            std::string const later =
                holding.from > away.absence.from ? ", in from " + chore_words(holding.from, away.farm.measures) : "";
            page += Blank() + wrap(hatch + ": " + quantities::print(holding.birds) + " birds, " +
                                       quantities::print_age(holding.age) + later,
                                   "  ", "    ");
        }
        page += holding_part(holding, away);
    }
    return page;
}

/// How long each vessel is good for, beside how long nobody is there.
Page away_picture(Away const& away) {
    std::vector<std::pair<quantities::Duration, std::vector<std::string>>> rows;
    rows.push_back({away.absence.until - away.absence.from, {"nobody there", ""}});
    for (Holding const& one : away.holdings) {
        if (one.safe_for) rows.push_back({*one.safe_for + (one.from - away.absence.from), {one.hatch, one.vessel}});
    }
    std::stable_sort(rows.begin(), rows.end(), [](auto const& a, auto const& b) { return a.first < b.first; });
    Table table({Align::left, Align::left, Align::right}, 2);
    table.head({"good for", "", sure_words(away.absence.sure)});
    for (auto& [lasts, cells] : rows) {
        table.add({cells[0], cells[1], quantities::print(lasts)}, quantities::in_days(lasts));
    }
    return Picture{table};
}

}  // namespace

std::string chance_words(double chance) {
    if (chance > 0.9991) return "more than 999 times in 1,000";
    if (chance < 0.001) return "less than once in 1,000 times";
    if (std::abs(chance - 0.95) < 1e-9) return "19 times in 20";
    if (chance > 0.99 || chance < 0.01)
        return quantities::number(std::floor(chance * 1000 + 1e-6), 0) + " times in 1,000";
    return quantities::number(std::floor(chance * 100 + 1e-6), 0) + " times in 100";
}

Page away_page(Away const& away, Sources sources) {
    auto const measures = away.farm.measures;
    std::string const name = away.farm.name.empty() ? away.holdings.front().hatch : away.farm.name;
    Page page = Title{
        name, moment_and_year(away.absence.from, measures) + " to " + moment_and_year(away.absence.until, measures)};
    page += Blank();
    Page const alarms = alarms_part(away.alarms, measures);
    if (!alarms.empty()) page += alarms + Blank();
    page += answer_part(away) + away_picture(away) + hatches_part(away);
    page += spaced(learned_part(away.learned, measures));
    page += spaced(
        wrap("Each vessel's figures are for it alone; the first lines are for all of them at once. Hours are rounded "
             "down."));
    return page + notes_part(away.cautions, away.assumptions, away.farm.measures, sources);
}

}  // namespace cropful::reports
