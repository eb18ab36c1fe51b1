#include "cropful/reports/learned_part.hpp"

#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::Interval;
using engine::Learned;
using engine::Trait;
using quantities::Measures;

std::string look_at(Interval const& interval) {
    bool const feed = interval.what == Trait::feed;
    if (interval.ran_empty) {
        return feed ? "Fill sooner, or hang more hoppers." : "Fill sooner, or set out more drinkers.";
    }
    std::string const less =
        feed ? "feed bridged in the tube, a dry or blocked drinker" : "a blocked or frozen drinker";
    std::string const more = feed ? "spill, rats" : "a leak or spill";
    return interval.sds < 0 ? "Look at the birds now: heat, water and health first. Are they chilled or sick? " +
                                  std::string("Is there ") + less + "? Or are the birds fewer than were counted?"
                            : "Look now: is it hot? Is there " + more + "? Or are the birds more than were counted?";
}

/// "eat 12 % more than the table".
std::string factor_words(char const* verb, double factor) {
    double const off = std::round(100 * (factor - 1));
    if (off == 0) return std::string(verb) + " as the table says";
    return std::string(verb) + " " + quantities::number(std::abs(off), 0) + " % " + (off > 0 ? "more" : "less") +
           " than the table";
}

std::string top_ups(int count) { return " (" + plural(count, "top-up") + ")"; }

constexpr double worth_saying = 0.005;  // of a factor

/// What one trait was learned from: its own top-ups, the other trait's, or the farm's other birds'.
std::string trait_words(char const* verb, double factor, int own, bool other) {
    if (own > 0) return std::string("they ") + factor_words(verb, factor) + top_ups(own);
    if (std::abs(factor - 1) < worth_saying) return "";
    return "taken to " + factor_words(verb, factor) + (other ? "" : ", as others of this farm do");
}

}  // namespace

std::string alarm_words(Interval const& interval, Measures measures) {
    bool const feed = interval.what == Trait::feed;
    std::string const time =
        " from " + moment_words(interval.from, measures) + ", to " + moment_words(interval.to, measures);
    if (interval.ran_empty) {
        return interval.hatch + ": the " + (feed ? "hoppers" : "drinkers") + " were found empty by " +
               moment_words(interval.to, measures) + ". " + look_at(interval);
    }
    double const off = interval.used / interval.expected - 1;
    return interval.hatch + (feed ? " used " : " drank ") + quantities::number(100 * std::abs(off), 0) + " % " +
           (off < 0 ? "less" : "more") + (feed ? " feed" : " water") + " than foretold" + time + " (" +
           used_words(interval, interval.used, measures) + ", foretold " +
           used_words(interval, interval.expected, measures) + "). " + look_at(interval);
}

std::string learned_words(Learned const& learned, Measures measures) {
    std::vector<std::string> parts{
        trait_words("eat", learned.feed, learned.feed_top_ups, learned.water_top_ups > 0),
        trait_words("drink", learned.water, learned.water_top_ups, learned.feed_top_ups > 0)};
    if (learned.heads) {
        parts.push_back(quantities::print(*learned.heads) + " birds on " + moment_words(*learned.heads_at, measures));
    }
    std::erase(parts, "");
    return learned.hatch + ": " + join(parts, "; ");
}

std::string used_words(Interval const& interval, double amount, Measures measures) {
    return interval.what == Trait::feed ? quantities::print(quantities::kilograms(amount), measures)
                                        : quantities::print(quantities::litres(amount), measures);
}

Page alarms_part(std::vector<Interval> const& alarms, Measures measures) {
    Page page;
    for (Interval const& alarm : alarms) page += warning(alarm_words(alarm, measures));
    return page.empty() ? page : Heading{alarm("LOOK NOW")} + page;
}

Page learned_part(std::vector<Learned> const& learned, Measures measures) {
    Page page;
    for (Learned const& one : learned) page += wrap(learned_words(one, measures), "  ", "    ");
    return page.empty() ? page : heading("LEARNED", " from the diary") + page;
}

}  // namespace cropful::reports
