#include "engine/course.hpp"

#include <algorithm>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

constexpr int most_batches = 20000;  // more is a slip, not a course

std::string words(domain::Supplement const& supplement) {
    if (supplement.rate) return supplement.rate->words;
    return "stock at 1:" + plain(supplement.stock->water_parts);
}

}  // namespace

Mix course(domain::Hatch const& hatch, domain::Supplement const& supplement, domain::Drinker const* drinker,
           BandedUsage<Volume> const& usage, Duration from, Duration to) {
    Volume const least = drinker ? drinker->least * static_cast<double>(hatch.drinkers) : litres(0);
    Duration const batch = batch_life(supplement);
    Duration const start = std::max(from, supplement.from);
    Duration const end = std::min(to, course_ends(supplement));
    if (ratio((end - start) / batch) > most_batches) {
        throw NoAnswer(supplement.key + ": keeps so little that it would be mixed more than " +
                       std::to_string(most_batches) + " times");
    }

    Mix mix{supplement.key, words(supplement), {}, {}, {}, strength(supplement), sodium(supplement)};
    Volume mixed = litres(0), safe = litres(0);
    double thirst = 1;        // the safe end of what is drunk over the usual
    Duration judged = start;  // at this age: once a day is often enough
    for (int i = 0; start + batch * static_cast<double>(i) + instant < end; ++i) {
        Duration const age = start + batch * static_cast<double>(i);
        Duration const lasts = std::min(batch, end - age);
        Volume const drunk = usage.central.between(age, age + lasts);
        Volume const water = std::max(drunk, least);
        mix.batches.push_back({hatch.date + age, age, lasts, drunk, dose(supplement, water)});
        mixed += water;
        if (i == 0 || age + instant >= judged + days(1)) {
            thirst = drunk > litres(0) ? std::max(1.0, ratio(usage.band(age, age + lasts).p95 / drunk)) : 1;
            judged = age;
        }
        safe += std::max(drunk * thirst, least);
    }
    mix.total = dose(supplement, mixed);
    mix.safe = dose(supplement, safe);
    return mix;
}

}  // namespace cropful::engine
