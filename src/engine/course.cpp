#include "engine/course.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

std::string words(domain::Supplement const& supplement) {
    if (supplement.rate) return supplement.rate->words;
    return "stock at 1:" + plain(supplement.stock->water_parts);
}

}  // namespace

Mix course(domain::Hatch const& hatch, domain::Supplement const& supplement, domain::Drinker const* drinker,
           Flock const& flock, Intake const& intake, Duration from, Duration to) {
    auto const usage = water_usage(flock, intake, drinker ? drinker->spill : 0);
    Volume const least = drinker ? drinker->least * static_cast<double>(hatch.drinkers) : litres(0);
    Duration const batch = std::min(days(1), supplement.keeps.value_or(days(1)));
    Duration const end = std::min(to, course_ends(supplement));

    Mix mix{supplement.key, words(supplement), {}, {}, strength(supplement), sodium(supplement)};
    Volume mixed = litres(0);
    for (Duration age = std::max(from, supplement.from); age < end;) {
        Duration const lasts = std::min(batch, end - age);
        Volume const drunk = usage.between(age, age + lasts);
        Volume const water = std::max(drunk, least);
        mix.batches.push_back({hatch.date + age, age, lasts, drunk, dose(supplement, water)});
        mixed += water;
        age += lasts;
    }
    mix.total = dose(supplement, mixed);
    return mix;
}

}  // namespace cropful::engine
