#include "cropful/reports/fills_part.hpp"

#include <algorithm>
#include <cmath>

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
    std::string const when = fold.fills.size() > 1 ? "from " + first.at.day() : short_moment(first.at, measures);
    std::string const at_first = quantities::print(first.birds), at_last = quantities::print(fold.fills.back().birds);
    return {when, fold.ages_words(), at_first == at_last ? at_first : at_first + "-" + at_last};
}

/// The vessels, and a row of `table` by `add` for each fold of their fills before a moment; of the fills all, one by
/// one, without one.
template <class Amount, class Add>
Page listed_fills(std::string const& verb, std::string const& words, engine::Vessels<Amount> const& vessels,
                  Duration last, std::optional<engine::Moment> const& before, Table const& table, Add const& add) {
    auto const title = [&](std::string const& more) {
        return wrap(words + more, "  " + strong(verb) + "  ", "        ");
    };
    auto const later = std::find_if(vessels.fills.begin(), vessels.fills.end(),
                                    [&](Fill<Amount> const& fill) { return before && fill.at >= *before; });
    std::vector<Fill<Amount>> const fills(vessels.fills.begin(), later);
    if (fills.empty()) return title("; filled from " + vessels.fills.front().at.day() + " on");
    auto const folds = fold(fills, later == vessels.fills.end() ? last : later->age, !before);
    for (auto const& one : folds) add(one);
    Page const page = title("") + table;
    if (folds.size() == fills.size()) return page;
    return page + wrap("(rows of several fills show the shortest time; --all lists every fill)", "    ", "      ");
}

}  // namespace

std::string hoppers_words(HatchPlan const& hatch, Measures measures) {
    auto const& hoppers = *hatch.hoppers;
    std::vector<std::pair<std::string, Mass>> held;  // by each feed, in the order fed
    for (Fill<Mass> const& fill : hoppers.fills) {
        std::string const feed = feed_at(hatch, fill.age);
        if (held.empty() || held.back().first != feed) held.emplace_back(feed, fill.content);
    }
    auto const same = [&](auto const& one) {
        return print_measured(one.second, measures) == print_measured(held.front().second, measures);
    };
    std::string const head = std::to_string(hoppers.count) + " x " + hoppers.key + ", ";
    if (std::all_of(held.begin(), held.end(), same))
        return head + print_measured(held.front().second, measures) + " each";
    std::vector<std::string> each;
    for (auto const& [feed, content] : held) each.push_back(print_measured(content, measures) + " of " + feed);
    return head + "each " + join(each, " or ");
}

std::string drinkers_words(HatchPlan const& hatch, Measures measures) {
    auto const& drinkers = *hatch.drinkers;
    return std::to_string(drinkers.count) + " x " + drinkers.key + ", " +
           print_measured(drinkers.fills.front().content, measures) + " each";
}

bool changed_before_dry(Fill<Volume> const& fill) { return by_change(fill); }

std::string fill_again_words(Fill<Mass> const& fill, HatchPlan const& hatch, Duration next, Measures measures) {
    std::string const feed = feed_from(hatch, next);
    bool const runs_out = fill.lasts.p05 && fill.age + *fill.lasts.p05 <= next + quantities::days(1e-6);
    if (runs_out) return short_moment(fill.at + *fill.lasts.p05, measures);
    if (!feed.empty()) return feed + " from " + (hatch.hatch.date + next).day();
    return "lasts to the end";
}

std::string roughly(std::optional<Duration> const& lasts) {
    if (!lasts) return "to the end";
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
    if (!hatch.hoppers || hatch.hoppers->fills.empty()) return {};
    Table table({Align::left, Align::left, Align::right, Align::right, Align::right, Align::left}, 4);
    table.head({"fill", "age", "birds", "sure for", "usually", "fill again by"});
    auto const add = [&](Fold<Mass> const& one) {
        auto cells = start_cells(one, measures);
        cells.emplace_back(or_to_the_end(one.shortest(safe_end)));
        cells.emplace_back(roughly(one.shortest(middle)));
        cells.emplace_back(one.fills.size() > 1 ? plural(static_cast<int>(one.fills.size()), "fill")
                                                : fill_again_words(one.fills.front(), hatch, one.next, measures));
        table.add(std::move(cells), bar(one.shortest(safe_end)));
    };
    return listed_fills("FILL", hoppers_words(hatch, measures), *hatch.hoppers, last_age(hatch), before, table, add);
}

Page drinkers_part(HatchPlan const& hatch, Measures measures, std::optional<engine::Moment> before) {
    if (!hatch.drinkers || hatch.drinkers->fills.empty()) return {};
    Table table({Align::left, Align::left, Align::right, Align::left, Align::right, Align::right}, 4);
    table.head({"fill", "age", "birds", "then", "sure for", "usually"});
    auto const add = [&](Fold<Volume> const& one) {
        auto cells = start_cells(one, measures);
        bool const several = one.fills.size() > 1, changed = changed_before_dry(one.fills.front());
        auto const& due = one.fills.front().change_after;
        if (changed) {
            cells.emplace_back((several ? "change every " : "change after ") + or_to_the_end(due));
        } else {
            cells.emplace_back(several ? plural(static_cast<int>(one.fills.size()), "fill") : "fill before it is dry");
        }
        cells.emplace_back(or_to_the_end(one.shortest(safe_end)));
        cells.emplace_back(roughly(one.shortest(middle)));
        table.add(std::move(cells), bar(changed ? due : one.shortest(safe_end)));
    };
    return listed_fills("WATER", drinkers_words(hatch, measures), *hatch.drinkers, last_age(hatch), before, table, add);
}

}  // namespace cropful::reports
