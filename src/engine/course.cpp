#include "engine/course.hpp"

#include <algorithm>
#include <optional>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr int most_batches = 20000;  // more is a slip, not a course

std::string words(domain::Supplement const& supplement) {
    if (supplement.rate) return supplement.rate->words;
    return "stock at 1:" + plain(supplement.stock->water_parts);
}

/// The safe end of what is drunk over the usual, at least 1; worked out once for each day of age.
class Thirst {
  public:
    explicit Thirst(BandedUsage<Volume> const& usage) : usage_(usage) {}

    double at(Duration age, Duration lasts, Volume drunk) {
        if (judged_ && age + instant < *judged_ + days(1)) return more_;
        judged_ = age;
        more_ = drunk > litres(0) ? std::max(1.0, ratio(usage_.band(age, age + lasts).p95 / drunk)) : 1;
        return more_;
    }

  private:
    BandedUsage<Volume> const& usage_;
    std::optional<Duration> judged_;
    double more_ = 1;
};

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
    Thirst thirst(usage);
    for (int i = 0; start + batch * static_cast<double>(i) + instant < end; ++i) {
        Duration const age = start + batch * static_cast<double>(i);
        Duration const lasts = std::min(batch, end - age);
        Volume const drunk = usage.central.between(age, age + lasts);
        Volume const water = std::max(drunk, least);
        mix.batches.push_back({hatch.date + age, age, lasts, drunk, dose(supplement, water)});
        mixed += water;
        safe += std::max(drunk * thirst.at(age, lasts, drunk), least);
    }
    mix.total = dose(supplement, mixed);
    mix.safe = dose(supplement, safe);
    return mix;
}

}  // namespace cropful::engine
