#include "blends/blend_analysis.hpp"

#include <algorithm>

#include "cropful/domain/nutrient.hpp"

namespace cropful::blends {

using namespace quantities;

namespace {

constexpr double tolerated = 1e-7;  // relative; a mix at its limit keeps it

struct Content {
    double least = 0, most = 0;
    std::vector<std::string> silent;
    double silent_share = 0;
    std::vector<std::string> only_least;
    bool stated = false;
};

Content content(std::vector<Ingredient> const& ingredients, std::string const& nutrient,
                std::vector<double> const& shares) {
    Content sum;
    bool const organic = domain::find_nutrient(nutrient)->organic;
    for (std::size_t j = 0; j < ingredients.size(); ++j) {
        if (shares[j] <= 0) continue;
        auto const found = ingredients[j].holds.find(nutrient);
        if (found == ingredients[j].holds.end()) {
            if (ingredients[j].mineral && organic) continue;
            sum.silent.push_back(ingredients[j].title);
            sum.silent_share += shares[j];
            continue;
        }
        sum.stated = true;
        sum.least += shares[j] * found->second.least;
        sum.most += shares[j] * found->second.most.value_or(found->second.least);
        if (!found->second.most) sum.only_least.push_back(ingredients[j].title);
    }
    return sum;
}

constexpr double much_silent = 0.1 - 1e-9;  // of the mix
bool much_unknown(BlendFinding const& finding) { return finding.silent_share > much_silent; }
bool below(double level, double floor) { return level < floor * (1 - tolerated); }
bool above(double level, double ceiling) { return level > ceiling * (1 + tolerated); }

/// What a nutrient was before rounding, and what was then asked: a need may go with the mix's energy.
struct Before {
    Content content;
    std::optional<double> floor, ceiling;
};

void judge_finding(BlendFinding& finding, Before const& before) {
    if (finding.floor && below(finding.level, *finding.floor)) {
        finding.verdict = Verdict::short_of;
        finding.shown = !much_unknown(finding);
        finding.off_by = *finding.floor - finding.level;
        finding.by_rounding = !below(before.content.least, before.floor.value_or(*finding.floor));
    } else if (finding.ceiling && above(finding.most, *finding.ceiling)) {
        finding.verdict = Verdict::over;
        finding.off_by = finding.most - *finding.ceiling;
        finding.by_rounding = !above(before.content.most, before.ceiling.value_or(*finding.ceiling));
    } else if (finding.ceiling) {
        finding.shown = !much_unknown(finding) && finding.only_least.empty();
    }
}

enum class Lowered { no, yes, unknown };

/// Lowers a ceiling to what a limit on the ratio to another nutrient leaves; where much of the mix does not state that
/// other one, and what is stated would leave less, nobody knows.
Lowered lower_ceiling(BlendFinding& finding, Before& before, BlendProblem const& problem,
                      std::vector<double> const& exact, std::vector<double> const& weighed) {
    for (BlendLimit const& limit : problem.limits) {
        if (limit.key != finding.nutrient || limit.per.empty()) continue;
        double const level = limit.level * held(problem.ingredients, limit.per, weighed);
        bool const lower = !finding.ceiling || level < *finding.ceiling;
        if (content(problem.ingredients, limit.per, weighed).silent_share > much_silent)
            return above(finding.most, level) ? Lowered::unknown : Lowered::no;
        if (!lower) continue;
        finding.ceiling = level;
        finding.ceiling_source = limit.source;
        before.ceiling = limit.level * held(problem.ingredients, limit.per, exact);
        return Lowered::yes;
    }
    return Lowered::no;
}

}  // namespace

double level_asked(BlendLimit const& limit, std::vector<Ingredient> const& ingredients,
                   std::vector<double> const& shares) {
    return limit.for_energy ? limit.level * energy_ratio(limit, ingredients, shares) : limit.level;
}

std::vector<BlendFinding> findings(BlendProblem const& problem, std::vector<double> const& exact,
                                   std::vector<double> const& weighed) {
    std::vector<BlendFinding> all;
    for (domain::Nutrient const& nutrient : domain::nutrients()) {
        std::string const key(nutrient.key);
        Content const sum = content(problem.ingredients, key, weighed);
        BlendFinding finding{.nutrient = key,
                             .level = sum.least,
                             .most = sum.most,
                             .floor = {},
                             .ceiling = {},
                             .floor_source = {},
                             .ceiling_source = {},
                             .silent = sum.silent,
                             .silent_share = sum.silent_share,
                             .only_least = sum.only_least};
        Before before{.content = content(problem.ingredients, key, exact), .floor = {}, .ceiling = {}};
        for (auto const* limits : {&problem.limits, &problem.unstated}) {
            for (BlendLimit const& limit : *limits) {
                if (limit.of != BlendLimit::Of::nutrient || limit.key != key || !limit.per.empty()) continue;
                (limit.floor ? finding.floor : finding.ceiling) = level_asked(limit, problem.ingredients, weighed);
                if (limit.floor) before.floor = level_asked(limit, problem.ingredients, exact);
                (limit.floor ? finding.floor_source : finding.ceiling_source) = limit.source;
                if (limit.floor) finding.floor_borrowed = limit.borrowed;
            }
        }
        before.ceiling = finding.ceiling;
        Lowered const ratio = lower_ceiling(finding, before, problem, exact, weighed);
        if (!sum.stated && !finding.floor && !finding.ceiling) continue;
        if (!sum.stated) {
            finding.verdict = Verdict::unstated;
        } else {
            judge_finding(finding, before);
            if (ratio == Lowered::unknown && finding.verdict == Verdict::meets) finding.shown = false;
        }
        all.push_back(std::move(finding));
    }
    return all;
}

std::vector<BlendClash> not_kept(BlendProblem const& problem, std::vector<double> const& shares, bool given) {
    std::vector<BlendClash> all;
    auto const look = [&](std::vector<BlendLimit> const& limits) {
        for (BlendLimit const& limit : limits) {
            if (limit.floor || limit.source.standing == domain::Standing::yours) continue;
            double const reached = level_reached(limit, problem.ingredients, shares);
            bool const known =
                limit.per.empty() || content(problem.ingredients, limit.per, shares).silent_share < much_silent;
            if (known && above(reached, limit.level)) all.push_back({limit, reached, true, {}});
        }
    };
    look(problem.set_aside);
    if (given) look(problem.limits);
    return all;
}

std::vector<BlendClash> shares_missed(BlendProblem const& problem, std::vector<double> const& shares, double slack) {
    std::vector<BlendClash> missed;
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        BlendLimit const& limit = problem.limits[i];
        if (limit.of != BlendLimit::Of::ingredient) continue;
        double const share = level_reached(problem, i, shares);
        bool const kept =
            limit.floor ? !below(share, limit.level * (1 - slack)) : !above(share, limit.level * (1 + slack));
        if (!kept) missed.push_back({limit, share, true, {}});
    }
    return missed;
}

}  // namespace cropful::blends
