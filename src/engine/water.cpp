#include "cropful/engine/water.hpp"

#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "engine/refills.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::optional<MassPerVolume> found(domain::WaterReport const& report, std::string const& item) {
    auto const one = report.found.find(item);
    return one == report.found.end() ? std::nullopt : std::optional(one->second);
}

/// Between the sample and the birds; behind it hardness is 0.
bool softener_between(domain::WaterReport const& report) { return report.softened && !report.sampled_after; }

/// What the softener puts in; none without one, unknown where the hardness is.
std::optional<MassPerVolume> softener_sodium(domain::WaterReport const& report, WaterTable const& table) {
    if (!softener_between(report)) return MassPerVolume();
    auto const hardness = found(report, "hardness");
    return hardness ? std::optional(*hardness * table.softener.factor) : std::nullopt;
}

std::optional<double> value_of(domain::WaterReport const& report, std::string const& item, WaterTable const& table) {
    auto const of = [](std::optional<MassPerVolume> const& content) {
        return content ? std::optional(in_milligrams_per_litre(*content)) : std::nullopt;
    };
    if (item == "ph") return report.ph;
    if (item == "coliforms") return report.coliforms;
    if (item == "tds" && report.conductivity) {
        return in_milligrams_per_litre(rations::solids_of(*report.conductivity, table));
    }
    if (item == "nitrate" && report.nitrate_n) {
        return in_milligrams_per_litre(*report.nitrate_n) * table.nitrate.factor;
    }
    auto content = found(report, item);
    if (item == "sodium" && content) *content += softener_sodium(report, table).value_or(MassPerVolume());
    if (item == "hardness" && content && softener_between(report)) content = MassPerVolume();
    return of(content);
}

struct Worst {
    Graded graded;
    Duration age;
};

/// The worst that holds of a value between two ages of a hatch, and the earliest age at which it does.
Worst worst_between(WaterTable const& table, std::string const& item, double value, domain::Hatch const& hatch,
                    Duration from, Duration to) {
    std::vector<Duration> ages{from};
    auto const add = [&](Duration age) {
        if (from < age && age < to) ages.push_back(age);
    };
    for (WaterRow const& row : table.rows) {
        if (row.item == item) add(row.from);
    }
    if (hatch.laying_from) add(*hatch.laying_from);
    std::sort(ages.begin(), ages.end());
    Worst worst{{}, from};
    for (Duration const& age : ages) {
        bool const laying = hatch.laying_from && age >= *hatch.laying_from;
        Graded const one = graded(table, item, value, {hatch.kind, age, laying});
        if (one.grade > worst.graded.grade || (!worst.graded.row && one.row)) worst = {one, age};
    }
    return worst;
}

std::optional<WaterRow> copy_of(WaterRow const* row) { return row ? std::optional(*row) : std::nullopt; }

std::vector<WaterFinding> findings(Plan const& plan, WaterTable const& table) {
    std::vector<WaterFinding> all;
    for (WaterFigure const& figure : as_drunk(*plan.farm.water, table)) {
        std::optional<WaterFinding> worst;
        for (HatchPlan const& part : plan.hatches) {
            Worst const one = worst_between(table, figure.item, figure.value, part.hatch, part.feeds.front().from,
                                            part.feeds.back().to);
            if (worst && one.graded.grade <= worst->grade) continue;
            worst = WaterFinding{figure,          one.graded.grade, copy_of(one.graded.row),
                                 part.hatch.name, part.hatch.kind,  one.age};
        }
        if (worst) all.push_back(std::move(*worst));
    }
    ranges::stable_sort(all, std::greater<>(), &WaterFinding::grade);
    return all;
}

void grade_sum(SodiumSum& sum, WaterTable const& table, domain::Hatch const& hatch, Duration from, Duration to) {
    auto const worst = worst_between(table, "sodium", in_milligrams_per_litre(sum.sum), hatch, from, to);
    sum.grade = worst.graded.grade;
    sum.row = copy_of(worst.graded.row);
    sum.hatch = hatch.name;
    sum.from = from;
    sum.to = to;
}

/// Of plain water, and of every course that is not over.
std::vector<SodiumSum> sums_of(HatchPlan const& part, domain::Farm const& farm, WaterTable const& table) {
    Duration const from = part.feeds.front().from, to = part.feeds.back().to;
    std::vector<SodiumSum> all;
    auto const take = [&](SodiumSum sum, Duration start, Duration end) {
        if (!sum.is_known() || !(start + instant < end)) return;
        grade_sum(sum, table, part.hatch, start, end);
        all.push_back(std::move(sum));
    };
    if (farm.water) take(sodium_sum(farm.water, nullptr, table), from, to);
    for (domain::Course const& course : domain::courses_of(part.hatch, farm)) {
        auto const& supplement = farm.supplements.at(course.supplement);
        take(sodium_sum(farm.water, &supplement, table), std::max(from, course.from),
             std::min(to, course_ends(course)));
    }
    return all;
}

/// Of the same course, where it is planned for.
void give_to_mixes(HatchPlan& part, std::vector<SodiumSum> const& sums) {
    for (Mix& mix : part.mixes) {
        for (SodiumSum const& sum : sums) {
            if (sum.supplement == mix.supplement && mix.from <= sum.from && sum.to <= mix.to) mix.sum = sum;
        }
    }
}

bool is_old(domain::WaterReport const& report, Moment now) {
    if (!report.sampled) return false;
    return std::chrono::sys_days(now.date()) > std::chrono::sys_days(report.sampled->date() + std::chrono::years(1));
}

}  // namespace

std::vector<WaterFigure> as_drunk(domain::WaterReport const& report, WaterTable const& table) {
    std::vector<WaterFigure> all;
    for (domain::WaterItem const& item : domain::water_items()) {
        std::string const key(item.key);
        if (auto const value = value_of(report, key, table)) all.push_back({key, *value});
    }
    return all;
}

SodiumSum sodium_sum(std::optional<domain::WaterReport> const& report, domain::Supplement const* supplement,
                     WaterTable const& table) {
    SodiumSum sum;
    if (report) {
        sum.well = found(*report, "sodium");
        sum.softener = softener_sodium(*report, table);
    }
    sum.product = supplement ? sodium(*supplement) : std::optional(MassPerVolume());
    sum.sum = sum.before() + sum.product.value_or(MassPerVolume());
    if (supplement) sum.supplement = supplement->key;
    return sum;
}

SodiumSum sodium_for_all(std::optional<domain::WaterReport> const& report, domain::Supplement const& supplement,
                         WaterTable const& table) {
    SodiumSum sum = sodium_sum(report, &supplement, table);
    Graded const one = graded(table, "sodium", in_milligrams_per_litre(sum.sum), {});
    sum.grade = one.grade;
    sum.row = copy_of(one.row);
    return sum;
}

void add_water(Plan& plan, Rations const& rations, Moment now) {
    WaterTable const& table = rations.water;
    for (HatchPlan& part : plan.hatches) {
        auto const sums = sums_of(part, plan.farm, table);
        give_to_mixes(part, sums);
        plan.sodium.insert(plan.sodium.end(), sums.begin(), sums.end());
    }
    ranges::stable_sort(plan.sodium, [](SodiumSum const& a, SodiumSum const& b) {
        return a.grade > b.grade || (a.grade == b.grade && a.sum > b.sum);
    });
    if (!plan.farm.water) return;
    plan.water = findings(plan, table);
    plan.old_water = is_old(*plan.farm.water, now);
    add_diet_sodium(plan, table);
}

}  // namespace cropful::engine
