#include "cropful/reports/check_page.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/water_part.hpp"
#include "cropful/reports/words.hpp"
#include "reports/nutrient_words.hpp"

namespace cropful::reports {

namespace {

using engine::Check;
using engine::HatchPlan;
using engine::Verdict;

std::string label_words(Check const& check) {
    if (!check.label && !check.label_maximum) return "not stated";
    if (!check.label) return "at most " + level_words(check.nutrient, *check.label_maximum);
    std::string const least = level_words(check.nutrient, *check.label);
    return check.label_maximum ? least + " to " + level_words(check.nutrient, *check.label_maximum) : least;
}

std::string grams_words(quantities::Mass mass, int decimals) {
    return quantities::number(quantities::in_grams(mass), decimals) + " g";
}

/// "; 10.5 g of it a day (day 21) give a bird 2.51 g, needed 2.72 g"; protein only.
std::string daily_words(Check const& check) {
    if (!check.given_per_bird || !check.need_per_bird) return "";
    return "; " + grams_words(*check.eaten_per_bird, 1) + " of it a day (" +
           quantities::print_age(check.from + (check.to - check.from) / 2.0) + ") give a bird " +
           grams_words(*check.given_per_bird, 2) + ", needed " + grams_words(*check.need_per_bird, 2);
}

/// "; with 2 mL of water a g, up to 199 mg/L, 0.22 % of the diet, at most 0.3 %"; sodium only.
std::string diet_words(Check const& check) {
    if (!check.diet || !check.drunk_sodium) return "";
    std::string const most = check.ceiling ? ", at most " + level_words("sodium", check.ceiling->at_most) : "";
    return "; with " + quantities::plain(quantities::in_litres_per_kilogram(*check.thirst)) +
           " mL of water a g, up to " +
           quantities::number(quantities::in_milligrams_per_litre(*check.drunk_sodium), 0) + " mg/L, " +
           quantities::number(*check.diet, 2) + " % of the diet" + most;
}

/// "20 %"; "none known" where the table has no need.
std::string need_words(Check const& check) {
    return check.need > 0 ? level_words(check.nutrient, check.need) : "none known";
}

bool same_table(Check const& a, Check const& b) {
    return a.feed == b.feed && a.phase == b.phase && a.from == b.from && a.to == b.to;
}

/// Nutrients a label states and the table of the birds' needs does not.
std::vector<std::string> without_need(std::vector<Check> const& checks, domain::Feed const& feed) {
    std::vector<std::string> titles;
    for (auto const& [nutrient, guarantee] : feed.label) {
        bool const judged = std::any_of(checks.begin(), checks.end(),
                                        [&, n = nutrient](Check const& check) { return check.nutrient == n; });
        if (!judged && !domain::find_nutrient(nutrient)->label_only) titles.push_back(nutrient_title(nutrient));
    }
    return titles;
}

/// One feed in one phase: what is on the label in a table, the rest in a sentence.
Page table_part(std::vector<Check> const& checks, domain::Farm const& farm) {
    Check const& first = checks.front();
    Table table({Align::left, Align::left, Align::left, Align::left}, 2);
    table.head({"nutrient", "label", "need", ""});
    std::vector<std::string> unstated;
    for (Check const& check : checks) {
        if (check.verdict == Verdict::unstated && !check.label_maximum) {
            unstated.push_back(nutrient_title(check.nutrient) + " " + level_words(check.nutrient, check.need));
        } else {
            table.add({nutrient_title(check.nutrient), label_words(check), need_words(check),
                       alarm_capitals(verdict_words(check)) + daily_words(check) + diet_words(check)});
        }
    }
    Page page =
        wrap(feed_title(farm, first.feed) + ", " + ages_words(first.from, first.to) + " (needs: " + first.phase + ")");
    if (unstated.size() < checks.size()) page += table;
    auto const no_need = without_need(checks, farm.feeds.at(first.feed));
    if (!no_need.empty()) page += wrap("on the label, but no need of it is known: " + join(no_need), "  ", "    ");
    if (!unstated.empty()) page += wrap("not on the label, so not judged; needs: " + join(unstated), "  ", "    ");
    return page;
}

/// One feed in one phase, and the hatches of one kind it is judged alike for.
struct Judged {
    std::string kind;
    std::vector<Check> checks;
    std::vector<std::string> hatches;
};

bool judged_alike(std::vector<Check> const& a, std::vector<Check> const& b) {
    auto const alike = [](Check const& x, Check const& y) {
        return same_table(x, y) && x.nutrient == y.nutrient && daily_words(x) == daily_words(y) &&
               diet_words(x) == diet_words(y);
    };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), alike);
}

/// Each once, in the order in which it is first fed.
std::vector<Judged> judged(engine::Plan const& plan) {
    std::vector<Judged> all;
    for (HatchPlan const& hatch : plan.hatches) {
        for (auto start = hatch.checks.begin(); start != hatch.checks.end();) {
            auto const end =
                std::find_if_not(start, hatch.checks.end(), [&](Check const& c) { return same_table(*start, c); });
            std::vector<Check> checks(start, end);
            auto const same = ranges::find_if(all, [&](Judged const& one) {
                return one.kind == hatch.kind_title && judged_alike(one.checks, checks);
            });
            if (same == all.end()) {
                all.push_back({hatch.kind_title, std::move(checks), {hatch.hatch.name}});
            } else {
                same->hatches.push_back(hatch.hatch.name);
            }
            start = end;
        }
    }
    return all;
}

}  // namespace

std::string verdict_words(Check const& check) {
    switch (check.verdict) {
        case Verdict::meets:
            return "meets";
        case Verdict::over:
            return check.nutrient == "calcium" ? "OVER: more than growing birds should have"
                                               : "OVER: more than birds should have";
        case Verdict::unstated:
            return "no minimum on the label";
        case Verdict::short_of:
            break;
    }
    std::string const relative = quantities::number(100 * check.short_by / check.need, 1) + " %";
    if (check.nutrient != "protein") return "SHORT by " + relative;
    return "SHORT by " + quantities::plain(std::round(check.short_by * 100) / 100) + " points (" + relative + ")";
}

std::vector<std::string> label_faults(HatchPlan const& hatch) {
    std::vector<std::string> all;
    for (Check const& check : hatch.checks) {
        if (check.verdict != Verdict::short_of && check.verdict != Verdict::over) continue;
        all.push_back(check.feed + ", " + ages_words(check.from, check.to) + ": " + nutrient_title(check.nutrient) +
                      " " + label_words(check) + ", needs " + need_words(check) + ": " + verdict_words(check));
    }
    return all;
}

std::vector<std::string> labels_words(HatchPlan const& hatch) {
    std::vector<std::string> all = label_faults(hatch);
    if (hatch.checks.empty()) return all;
    std::set<std::pair<std::string, std::string>> met, unstated;
    for (Check const& check : hatch.checks) {
        if (check.verdict == Verdict::meets) met.emplace(check.feed, check.nutrient);
        if (check.verdict == Verdict::unstated) unstated.emplace(check.feed, check.nutrient);
    }
    std::string const rest = all.empty() ? "nothing stated is short; " : "else ";
    all.push_back(rest + std::to_string(met.size()) + " met, " + std::to_string(unstated.size()) +
                  " not stated (`cropful check` lists them)");
    return all;
}

Page labels_part(HatchPlan const& hatch, bool faults_alone) {
    auto const all = faults_alone ? label_faults(hatch) : labels_words(hatch);
    if (all.empty()) return {};
    Table table({Align::left, Align::left});
    for (std::string const& words : all) table.add({"  " + strong("LABEL"), words});
    return table;
}

Page check_page(engine::Plan const& plan, Sources sources) {
    std::vector<Page> parts;
    Judged const* before = nullptr;
    auto const all = judged(plan);
    for (Judged const& one : all) {
        bool const same = before != nullptr && before->kind == one.kind && before->hatches == one.hatches;
        if (!same) parts.push_back(wrap(join(one.hatches) + ": " + one.kind, "", "  "));
        parts.back() += table_part(one.checks, plan.farm);
        before = &one;
    }
    Page const water = water_part(plan);
    if (!water.empty()) parts.push_back(water);
    Page const learned = learned_part(plan.learned, plan.farm.measures);
    if (!learned.empty()) parts.push_back(learned);
    return farm_and_parts(plan.farm, parts) + notes_part(plan, sources);
}

}  // namespace cropful::reports
