#include <algorithm>
#include <cmath>
#include <functional>
#include <span>

#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/agenda.hpp"

namespace cropful::reports {

namespace {

using engine::Fill;
using engine::HatchPlan;
using engine::Moment;
using quantities::Duration;
using quantities::Mass;
using quantities::Measures;
using quantities::print;
using quantities::Volume;

constexpr double instant_days = 1e-6;  // 0.1 s: two moments no further apart are one
constexpr int longest_rhythm = 31;     // days until a rhythm is back at the same hour
constexpr int most_a_round = 4;        // times in that many days; what comes oftener is no series

bool same(Duration a, Duration b) { return std::abs(quantities::in_days(a - b)) < instant_days; }
bool same(Moment a, Moment b) { return same(a - b, quantities::days(0)); }

/// "14:00 and 20:10".
template <class Item>
std::string hours(std::vector<Item> const& items) {
    std::string words;
    for (std::size_t i = 0; i < items.size(); ++i) {
        words += (i == 0 ? "" : i + 1 == items.size() ? " and " : ", ") + items[i].at.iso().substr(11);
    }
    return words;
}

/// " by 2 pm".
std::string by_hour(Moment at, Measures measures) {
    return " by " + chore_words(at, measures).substr(at.day().size() + 1);
}

/// Items of one calendar day together.
template <class Item>
std::vector<std::vector<Item>> by_day(std::vector<Item> const& items) {
    std::vector<std::vector<Item>> all;
    for (Item const& item : items) {
        if (all.empty() || all.back().front().at.date() != item.at.date()) all.emplace_back();
        all.back().push_back(item);
    }
    return all;
}

template <class Amount>
std::string lasting_words(Fill<Amount> const& fill) {
    std::string words = quantities::print(fill.birds) + " birds, " + quantities::print_age(fill.age) + ".";
    if (fill.lasts.p05) words += " Sure for " + print(*fill.lasts.p05) + ", 19 times in 20";
    if (fill.lasts.p05 && fill.lasts.p50) words += "; usually " + print(*fill.lasts.p50);
    return words + (fill.lasts.p05 ? "." : "");
}

/// What is put in at one fill, and what it is for.
std::string fill_words(Fill<Mass> const& fill, Measures measures) {
    return print_measured(fill.put_in, measures) + " in all, " + level_words(fill.share_of_full) + "; " +
           lasting_words(fill);
}

std::string fill_words(Fill<Volume> const& fill, Measures measures) {
    return print_measured(fill.content, measures) + " each; " + lasting_words(fill) +
           (fill.change_after ? " Change it after " + print(*fill.change_after) + " at the latest." : "");
}

/// One event for the fills of a day. `vessels` says with what they are filled, where that is not plain.
template <class Amount>
Event filling(HatchPlan const& hatch, std::vector<Fill<Amount>> const& fills, std::string const& what,
              std::string const& vessels, std::string const& words, Measures measures) {
    Moment const at = fills.front().do_at;
    std::string const often = fills.size() > 1 ? ", " + std::to_string(fills.size()) + " times" : "";
    std::string const when = fills.size() > 1 ? "At " + hours(fills) + ".\n" : "";
    return {"",          what, hatch.hatch.name,
            "",          at,   "Fill " + vessels + by_hour(at, measures) + often + ": " + hatch.hatch.name,
            when + words};
}

/// A stretch of fills at one distance, as series that come back at the same hour every so many days.
struct Rhythm {
    int every_days;
    int series;  // so many in that time
};

/// Empty where the distance is no handy part of some days.
std::optional<Rhythm> rhythm(Duration distance) {
    for (int round = 1; round <= longest_rhythm; ++round) {
        double const times = round / quantities::in_days(distance);
        if (times < 1 - instant_days || std::abs(times - std::round(times)) > instant_days) continue;
        int const series = quantities::whole_number(std::round(times));
        return series <= most_a_round ? std::optional(Rhythm{round, series}) : std::nullopt;
    }
    return std::nullopt;
}

using WaterFills = std::vector<Fill<Volume>>;

/// How many fills from `from` on follow each other because the water is due after one and the same time.
std::size_t steady(WaterFills const& fills, std::size_t from) {
    auto const first = fills[from].change_after;
    std::size_t end = from + 1;
    for (; first && end < fills.size(); ++end) {
        auto const due = fills[end - 1].change_after;
        bool const alike = due && same(fills[end].at, fills[end - 1].at + *first) && same(*due, *first);
        if (!alike) break;
    }
    return end - from;
}

void add_series(std::vector<Event>& events, HatchPlan const& hatch, std::string const& vessels,
                std::span<Fill<Volume> const> fills, Rhythm const& one, Measures measures) {
    int const count = static_cast<int>(fills.size());
    for (int i = 0; i < one.series && i < count; ++i) {
        Fill<Volume> const& fill = fills[static_cast<std::size_t>(i)];
        events.push_back(
            {"", "Water", hatch.hatch.name, "", fill.do_at, "Change water, " + vessels + ": " + hatch.hatch.name,
             "Throw the old water away, rinse, and fill afresh: " + print_measured(fill.content, measures) +
                 " each. Look in every day all the same.",
             one.every_days, (count - i + one.series - 1) / one.series});
    }
}

/// Whether a fill falls at the start of a batch, or after it as long as it lasts.
bool with_batch(engine::Batch const& batch, Fill<Volume> const& fill) { return same(batch.at, fill.at); }

/// Takes those out of `fills` that any batch of the hatch claims.
template <class Claims>
WaterFills take(WaterFills& fills, HatchPlan const& hatch, Claims claims) {
    auto const claimed = [&](Fill<Volume> const& fill) {
        return std::ranges::any_of(hatch.mixes, [&](engine::Mix const& mix) {
            return std::ranges::any_of(mix.batches, [&](engine::Batch const& batch) { return claims(batch, fill); });
        });
    };
    auto const middle = std::stable_partition(fills.begin(), fills.end(), std::not_fn(claimed));
    WaterFills taken(middle, fills.end());
    fills.erase(middle, fills.end());
    return taken;
}

/// What to stir in for one day.
std::string batch_words(engine::Batch const& batch, HatchPlan const& hatch, Measures measures) {
    std::string words = "Stir " + dose_words(batch.dose, measures) + " into " +
                        print_measured(batch.dose.water, measures) + " of water";
    for (engine::StagePlan const& stage : hatch.stages) {
        bool const here = stage.from <= batch.age + quantities::days(1e-6) && batch.age < stage.to;
        if (here && stage.drinkers) {
            words +=
                ", " + print_measured(batch.each_drinker, measures) + " into each of " + vessels_words(*stage.drinkers);
        }
    }
    return words + ".";
}

/// The fills of one stage's drinkers that no batch fills.
void add_stage_drinkers(std::vector<Event>& events, HatchPlan const& hatch, engine::Vessels<Volume> const& drinkers,
                        Measures measures) {
    WaterFills fills = drinkers.fills;
    take(fills, hatch, with_batch);  // part of mixing it
    std::string const vessels = vessels_words(drinkers);
    WaterFills others;
    for (std::size_t i = 0; i < fills.size();) {
        std::size_t const count = steady(fills, i);
        auto const found = count > 1 ? rhythm(*fills[i].change_after) : std::nullopt;
        // The last of a stretch without a rhythm may be the first of the next stretch.
        std::size_t const taken = found ? count : std::max<std::size_t>(1, count - 1);
        auto const these = std::span(fills).subspan(i, taken);
        if (found) {
            add_series(events, hatch, vessels, these, *found, measures);
        } else {
            others.insert(others.end(), these.begin(), these.end());
        }
        i += taken;
    }
    for (auto const& day : by_day(others)) {
        events.push_back(
            filling(hatch, day, "Water", vessels + " with fresh water", fill_words(day.front(), measures), measures));
    }
}

}  // namespace

Fill<Mass> const* fill_at(engine::Vessels<Mass> const& hoppers, Duration age) {
    auto const fill = std::ranges::find_if(hoppers.fills, [&](Fill<Mass> const& one) { return same(one.age, age); });
    return fill == hoppers.fills.end() ? nullptr : &*fill;
}

std::string refill_words(engine::Vessels<Mass> const& hoppers, Fill<Mass> const* fill, Measures measures) {
    std::string const words = "Empty " + vessels_words(hoppers) + " and fill with it";
    if (!fill) return words + ".";
    return words + ": " + print_measured(fill->put_in, measures) + " in all, " + level_words(fill->share_of_full) + ".";
}

void add_hoppers(std::vector<Event>& events, HatchPlan const& hatch, domain::Farm const& farm) {
    for (engine::StagePlan const& stage : hatch.stages) {
        if (!stage.hoppers) continue;
        std::vector<Fill<Mass>> fills = stage.hoppers->fills;
        std::erase_if(fills, [&](Fill<Mass> const& fill) { return !feed_from(hatch, fill.age).empty(); });
        for (auto const& day : by_day(fills)) {
            std::string const feed = feed_title(farm, feed_at(hatch, day.front().age));
            events.push_back(filling(hatch, day, "Fill", vessels_words(*stage.hoppers),
                                     feed + ", " + fill_words(day.front(), farm.measures), farm.measures));
        }
    }
}

void add_drinkers(std::vector<Event>& events, HatchPlan const& hatch, domain::Farm const& farm) {
    for (engine::StagePlan const& stage : hatch.stages) {
        if (stage.drinkers) add_stage_drinkers(events, hatch, *stage.drinkers, farm.measures);
    }
}

void add_mixing(std::vector<Event>& events, HatchPlan const& hatch, domain::Farm const& farm) {
    for (engine::Mix const& mix : hatch.mixes) {
        domain::Supplement const& supplement = farm.supplements.at(mix.supplement);
        std::string const title = supplement_title(supplement);
        for (auto const& day : by_day(mix.batches)) {
            engine::Batch const& first = day.front();
            std::string const often = day.size() > 1 ? ", " + std::to_string(day.size()) + " times" : "";
            std::string words;
            for (engine::Batch const& batch : day) {
                std::string const at = day.size() > 1 ? batch.at.iso().substr(11) + ": " : "";
                words += at + batch_words(batch, hatch, farm.measures) + "\n";
            }
            int const age = quantities::whole_number(std::floor(quantities::in_days(first.age) + instant_days));
            events.push_back({"", "Mix", hatch.hatch.name, supplement.key + " day " + std::to_string(age), first.at,
                              "Mix " + title + often + ": " + hatch.hatch.name,
                              words + "At " + mix.words +
                                  ". Throw away what is left of the last, rinse, and do not top up. The product's "
                                  "label and your veterinarian decide."});
        }
    }
}

}  // namespace cropful::reports
