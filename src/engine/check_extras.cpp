#include "engine/check_extras.hpp"

#include <algorithm>
#include <iterator>

#include "cropful/rations/limits.hpp"

namespace cropful::engine {

using namespace quantities;

DailyProtein daily_protein(Check const& check, Intake const& intake, Duration age) {
    Mass const eaten = intake.feed(age) * birds(1) * days(1);
    DailyProtein protein{eaten, {}, eaten * (check.need / 100)};
    if (check.label) protein.given = eaten * (*check.label / 100);
    return protein;
}

void add_daily_protein(std::vector<Check>& checks, Intake const& intake) {
    for (Check& check : checks) {
        if (check.nutrient != "protein" || !check.label) continue;
        Duration const age = check.from + (check.to - check.from) / 2.0;
        if (!intake.known(age)) continue;
        DailyProtein const middle = daily_protein(check, intake, age);
        check.eaten_per_bird = middle.eaten;
        check.given_per_bird = middle.given;
        check.need_per_bird = middle.need;
    }
}

double most_stated(Check const& check) { return std::max(check.label.value_or(0), check.label_maximum.value_or(0)); }

void mark_excess(std::vector<Check>& checks, std::vector<Limit> const& limits, std::optional<Duration> laying_from) {
    for (Check& check : checks) {
        bool const growing = !laying_from || check.from < *laying_from;
        if (check.nutrient == "calcium" && !growing) continue;
        if (!passed(limits, check.nutrient + "_feed", most_stated(check)).empty()) check.verdict = Verdict::over;
    }
}

void add_excess_without_need(std::vector<Check>& checks, domain::Feed const& feed, std::vector<Limit> const& limits) {
    std::vector<Check> more;
    for (auto phase = checks.begin(); phase != checks.end();) {
        auto const end = std::find_if(phase, checks.end(), [&](Check const& one) { return one.phase != phase->phase; });
        for (auto const& [nutrient, guarantee] : feed.label) {
            bool const judged =
                nutrient == "salt" ||  // judged whatever the phase: feed_cautions
                std::any_of(phase, end, [&, n = nutrient](Check const& one) { return one.nutrient == n; });
            if (judged) continue;
            Check check;
            check.feed = phase->feed;
            check.phase = phase->phase;
            check.from = phase->from;
            check.to = phase->to;
            check.nutrient = nutrient;
            check.label = guarantee.minimum;
            check.label_maximum = guarantee.maximum;
            auto const limit = passed(limits, nutrient + "_feed", most_stated(check));
            if (limit.empty()) continue;
            check.verdict = Verdict::over;
            check.source = limit.back()->source;
            more.push_back(std::move(check));
        }
        phase = end;
    }
    std::move(more.begin(), more.end(), std::back_inserter(checks));
    std::stable_sort(checks.begin(), checks.end(), [](Check const& a, Check const& b) { return a.from < b.from; });
}

}  // namespace cropful::engine
