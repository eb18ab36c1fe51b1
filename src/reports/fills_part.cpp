#include "cropful/reports/fills_part.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/folding.hpp"

namespace cropful::reports {

namespace {

using engine::Fill;
using engine::HatchPlan;
using quantities::Duration;
using quantities::Mass;
using quantities::Measures;
using quantities::print;
using quantities::Volume;

std::string or_to_the_end(std::optional<Duration> const& lasts) { return lasts ? print(*lasts) : "to the end"; }

/// Days until somebody must be there; none for a vessel that outlasts its birds.
std::optional<double> bar(std::optional<Duration> const& lasts) {
    return lasts ? std::optional(quantities::in_days(*lasts)) : std::nullopt;
}

/// First cells of a row: when, age and birds.
template <class Amount>
std::vector<Styled> start_cells(Fold<Amount> const& fold, Measures measures) {
    Fill<Amount> const& first = fold.fills.front();
    std::string const when = fold.fills.size() > 1 ? "from " + first.do_at.day() : chore_words(first.do_at, measures);
    std::string const at_first = quantities::print(first.birds), at_last = quantities::print(fold.fills.back().birds);
    return {when, fold.ages_words(), at_first == at_last ? at_first : at_first + "-" + at_last};
}

/// Nothing is to be put in: enough is left, but somebody looks in.
bool looks_in(Fill<Mass> const& fill) { return !(fill.put_in > quantities::kilograms(0.001)); }

/// "5.2 lb", or "5.2-6 lb" of several fills.
template <class Amount, class Of>
std::string range_words(std::vector<Fill<Amount>> const& fills, Of const& of, Measures measures) {
    auto const [least, most] = std::minmax_element(fills.begin(), fills.end(), ranges::by(of, std::less<>()));
    std::string const low = print_measured(of(*least), measures), high = print_measured(of(*most), measures);
    if (low == high) return low;
    std::string const unit = high.substr(high.find(' '));
    return (low.ends_with(unit) ? low.substr(0, low.size() - unit.size()) + "-" : low + "-") + high;
}

/// The vessels of a stage, and a row of `table` by `add` for each fold of their fills before a moment; of the fills
/// all, one by one, without one.
template <class Amount, class Add>
Page listed_fills(std::string const& verb, std::string const& words, engine::Vessels<Amount> const& vessels,
                  Duration last, std::optional<engine::Moment> const& before, Table const& table, Add const& add) {
    auto const title = [&](std::string const& more) {
        return wrap(words + more, "  " + strong(verb) + "  ", "        ");
    };
    auto const later = std::find_if(vessels.fills.begin(), vessels.fills.end(),
                                    [&](Fill<Amount> const& fill) { return before && fill.at >= *before; });
    std::vector<Fill<Amount>> const fills(vessels.fills.begin(), later);
    if (fills.empty()) return {};
    auto const folds = fold(fills, later == vessels.fills.end() ? last : later->age, !before);
    for (auto const& one : folds) add(one);
    Page const page = title("") + table;
    if (folds.size() == fills.size()) return page;
    return page + wrap("(rows of several fills show the shortest time; --all lists every fill)", "    ", "      ");
}

Page stage_hoppers(HatchPlan const& hatch, engine::StagePlan const& stage, Measures measures,
                   std::optional<engine::Moment> before) {
    Table table({Align::left, Align::left, Align::right, Align::right, Align::left, Align::left}, 4);
    table.head({"fill", "age", "birds", "put in", "level", "until"});
    auto const add = [&](Fold<Mass> const& one) {
        auto cells = start_cells(one, measures);
        bool const several = one.fills.size() > 1;
        bool const nothing = ranges::all_of(one.fills, looks_in);
        cells.emplace_back(nothing ? "look in"
                                   : range_words(
                                         one.fills, [](Fill<Mass> const& fill) { return fill.put_in; }, measures));
        cells.emplace_back(several ? "" : level_words(one.fills.front().share_of_full));
        cells.emplace_back(several ? plural(static_cast<int>(one.fills.size()), "fill")
                                   : fill_again_words(one.fills.front(), hatch, measures));
        table.add(std::move(cells), bar(one.shortest(safe_end)));
    };
    return listed_fills("FILL", of_houses(stage) + hoppers_words(hatch, *stage.hoppers, measures), *stage.hoppers,
                        stage.to, before, table, add);
}

Page stage_drinkers(engine::StagePlan const& stage, Measures measures, std::optional<engine::Moment> before) {
    Table table({Align::left, Align::left, Align::right, Align::left, Align::left, Align::right}, 4);
    table.head({"fill", "age", "in each", "until", "then", "sure for"});
    auto const add = [&](Fold<Volume> const& one) {
        auto cells = start_cells(one, measures);
        cells.pop_back();  // the birds stand under FILL
        Fill<Volume> const& first = one.fills.front();
        bool const several = one.fills.size() > 1, changed = changed_before_dry(first);
        cells.emplace_back(range_words(
            one.fills, [](Fill<Volume> const& fill) { return fill.content; }, measures));
        if (several) {
            cells.emplace_back(plural(static_cast<int>(one.fills.size()), "fill"));
            cells.emplace_back(changed ? "change every " + or_to_the_end(first.change_after) : "top up");
        } else {
            cells.emplace_back(chore_words(first.until, measures));
            cells.emplace_back(changed ? "change" : "top up");
        }
        cells.emplace_back(or_to_the_end(one.shortest(safe_end)));
        table.add(std::move(cells), bar(changed ? first.change_after : one.shortest(safe_end)));
    };
    return listed_fills("WATER", of_houses(stage) + drinkers_words(*stage.drinkers, measures), *stage.drinkers,
                        stage.to, before, table, add);
}

}  // namespace

std::string house_words(engine::StagePlan const& stage) {
    return stage.house ? houses_words(*stage.house, stage.houses, stage.numbers) : "";
}

std::string of_houses(engine::StagePlan const& stage) {
    std::string const houses = house_words(stage);
    return houses.empty() ? "" : houses + ": ";
}

std::string hoppers_words(HatchPlan const& hatch, engine::Vessels<Mass> const& hoppers, Measures measures) {
    std::vector<std::pair<std::string, Mass>> held;  // by each feed, in the order fed
    for (Fill<Mass> const& fill : hoppers.fills) {
        std::string const feed = feed_at(hatch, fill.age);
        if (held.empty() || held.back().first != feed) held.emplace_back(feed, fill.brim);
    }
    auto const same = [&](auto const& one) {
        return print_measured(one.second, measures) == print_measured(held.front().second, measures);
    };
    std::string const head = std::to_string(hoppers.count) + " x " + hoppers.key + ", ";
    if (std::all_of(held.begin(), held.end(), same))
        return head + print_measured(held.front().second, measures) + " each when full";
    std::vector<std::string> each;
    for (auto const& [feed, content] : held) each.push_back(print_measured(content, measures) + " of " + feed);
    return head + "each full with " + join(each, " or ");
}

std::string drinkers_words(engine::Vessels<Volume> const& drinkers, Measures measures) {
    return std::to_string(drinkers.count) + " x " + drinkers.key + ", " +
           print_measured(drinkers.fills.front().brim, measures) + " each when full";
}

std::string level_words(double share_of_full) {
    if (share_of_full > 0.995) return "to the brim";
    return "to " + quantities::number(std::max(1.0, 100 * share_of_full), 0) + " %";
}

bool changed_before_dry(Fill<Volume> const& fill) { return by_change(fill); }

std::string fill_again_words(Fill<Mass> const& fill, HatchPlan const& hatch, Measures measures) {
    Duration const next = fill.until - hatch.hatch.date;
    std::string const feed = feed_from(hatch, next);
    if (!feed.empty()) return feed + " from " + fill.until.day();
    if (next + quantities::days(1e-6) > last_age(hatch)) return "the end";
    for (engine::StagePlan const& stage : hatch.stages) {
        bool const moved = std::abs(quantities::in_days(stage.from - next)) < 1e-6;
        if (moved && stage.house) return "the move to " + house_words(stage);
    }
    return chore_words(fill.until, measures);
}

std::string roughly(std::optional<Duration> const& lasts) {
    if (!lasts) return "the end";
    double const length = quantities::in_days(*lasts);
    return print(length < 3 ? *lasts : quantities::days(std::floor(length)));
}

std::string feed_at(HatchPlan const& hatch, Duration age) {
    Duration const just_after = age + quantities::days(1e-6);
    for (engine::FeedNeed const& feed : hatch.feeds) {
        if (feed.from < just_after && just_after < feed.to) return feed.feed;
    }
    return "";
}

std::string feed_from(HatchPlan const& hatch, Duration age) {
    for (engine::FeedNeed const& feed : hatch.feeds) {
        bool const here = std::abs(quantities::in_days(feed.from - age)) < 1e-6;
        if (here && age > first_age(hatch)) return feed.feed;
    }
    return "";
}

Page hoppers_part(HatchPlan const& hatch, Measures measures, std::optional<engine::Moment> before) {
    Page page;
    for (engine::StagePlan const& stage : hatch.stages) {
        bool const ahead = stage.hoppers && !stage.hoppers->fills.empty();
        if (ahead) page += stage_hoppers(hatch, stage, measures, before);
    }
    return page;
}

Page drinkers_part(HatchPlan const& hatch, Measures measures, std::optional<engine::Moment> before) {
    Page page;
    for (engine::StagePlan const& stage : hatch.stages) {
        bool const ahead = stage.drinkers && !stage.drinkers->fills.empty();
        if (ahead) page += stage_drinkers(stage, measures, before);
    }
    return page;
}

}  // namespace cropful::reports
