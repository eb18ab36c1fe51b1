
#include "cropful/domain/ranges.hpp"
#include "engine/check_extras.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

void add_thirst(std::vector<Check>& checks, Intake const& intake) {
    for (Check& check : checks) {
        if (check.nutrient != "sodium") continue;
        Duration const age = check.from + (check.to - check.from) / 2.0;
        auto const eaten = intake.feed(age);
        if (eaten > eaten * 0.0) check.thirst = intake.water(age) / eaten;
    }
}

namespace {

/// The most sodium drunk at any time between two ages.
std::optional<MassPerVolume> most_drunk(std::vector<SodiumSum> const& sums, HatchPlan const& part, Check const& check) {
    std::optional<MassPerVolume> most;
    for (SodiumSum const& sum : sums) {
        bool const then = sum.hatch == part.hatch.name && sum.from < check.to && check.from < sum.to;
        if (then && sum.well && (!most || *most < sum.sum)) most = sum.sum;
    }
    return most;
}

}  // namespace

void add_diet_sodium(Plan& plan, WaterTable const& table) {
    for (HatchPlan& part : plan.hatches) {
        for (Check& check : part.checks) {
            if (check.nutrient != "sodium" || !check.thirst) continue;
            double const feed = most_stated(check);
            check.drunk_sodium = most_drunk(plan.sodium, part, check);
            if (!(feed > 0) || !check.drunk_sodium) continue;
            check.diet = feed + 100 * ratio(*check.drunk_sodium * *check.thirst);
            bool const laying = part.hatch.laying_from && check.from >= *part.hatch.laying_from;
            auto const ceiling = ranges::find(table.ceilings, laying, &SodiumCeiling::laying);
            if (ceiling != table.ceilings.end()) check.ceiling = *ceiling;
        }
    }
}

}  // namespace cropful::engine
