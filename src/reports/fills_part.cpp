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

/// The fills before a moment, and the age at the fill after them.
template <class Amount>
std::pair<std::vector<Fill<Amount>>, Duration> fills_before(engine::Vessels<Amount> const& vessels,
                                                            HatchPlan const& hatch,
                                                            std::optional<engine::Moment> const& before) {
    auto const& fills = vessels.fills;
    auto const end = std::find_if(fills.begin(), fills.end(),
                                  [&](Fill<Amount> const& fill) { return before && fill.at >= *before; });
    return {{fills.begin(), end}, end == fills.end() ? last_age(hatch) : end->age};
}

Page fills_title(std::string const& verb, std::string const& vessels) {
    return wrap(vessels, "  " + strong(verb) + "  ", "        ");
}

template <class Amount>
std::string first_filled(engine::Vessels<Amount> const& vessels) {
    return "; filled from " + vessels.fills.front().at.day() + " on";
}

Page fold_note(bool folded) {
    if (!folded) return {};
    return wrap("(rows of several fills show the shortest time; --all lists every fill)", "    ", "      ");
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
    auto const [fills, end] = fills_before(*hatch.hoppers, hatch, before);
    std::string const words = hoppers_words(hatch, measures);
    if (fills.empty()) return fills_title("FILL", words + first_filled(*hatch.hoppers));
    auto const folds = fold(fills, end, !before);
    Table table({Align::left, Align::left, Align::right, Align::right, Align::right, Align::left}, 4);
    table.head({"fill", "age", "birds", "sure for", "usually", "fill again by"});
    for (auto const& one : folds) {
        auto cells = start_cells(one, measures);
        cells.emplace_back(or_to_the_end(one.shortest(safe_end)));
        cells.emplace_back(roughly(one.shortest(middle)));
        cells.emplace_back(one.fills.size() > 1 ? plural(static_cast<int>(one.fills.size()), "fill")
                                                : fill_again_words(one.fills.front(), hatch, one.next, measures));
        table.add(std::move(cells), bar(one.shortest(safe_end)));
    }
    return fills_title("FILL", words) + table + fold_note(folds.size() < fills.size());
}

Page drinkers_part(HatchPlan const& hatch, Measures measures, std::optional<engine::Moment> before) {
    if (!hatch.drinkers || hatch.drinkers->fills.empty()) return {};
    auto const [fills, end] = fills_before(*hatch.drinkers, hatch, before);
    std::string const words = drinkers_words(hatch, measures);
    if (fills.empty()) return fills_title("WATER", words + first_filled(*hatch.drinkers));
    auto const folds = fold(fills, end, !before);
    Table table({Align::left, Align::left, Align::right, Align::left, Align::right, Align::right}, 4);
    table.head({"fill", "age", "birds", "then", "sure for", "usually"});
    for (auto const& one : folds) {
        auto cells = start_cells(one, measures);
        bool const several = one.fills.size() > 1;
        if (changed_before_dry(one.fills.front())) {
            cells.emplace_back((several ? "change every " : "change after ") +
                               or_to_the_end(one.fills.front().change_after));
        } else {
            cells.emplace_back(several ? plural(static_cast<int>(one.fills.size()), "fill") : "fill before it is dry");
        }
        cells.emplace_back(or_to_the_end(one.shortest(safe_end)));
        cells.emplace_back(roughly(one.shortest(middle)));
        bool const changed = changed_before_dry(one.fills.front());
        table.add(std::move(cells), bar(changed ? one.fills.front().change_after : one.shortest(safe_end)));
    }
    return fills_title("WATER", words) + table + fold_note(folds.size() < fills.size());
}

}  // namespace cropful::reports
