#include "cropful/reports/plan_parts.hpp"

#include <algorithm>
#include <map>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"
#include "reports/sources.hpp"

namespace cropful::reports {

using engine::HatchPlan;
using engine::Moment;
using quantities::Duration;

Duration first_age(HatchPlan const& hatch) {
    return hatch.feeds.empty() ? hatch.hatch.first_age : hatch.feeds.front().from;
}

Duration last_age(HatchPlan const& hatch) { return hatch.feeds.empty() ? hatch.hatch.until : hatch.feeds.back().to; }

std::string plan_name(engine::Plan const& plan) {
    return plan.farm.name.empty() ? plan.hatches.front().hatch.name : plan.farm.name;
}

std::string plan_time(engine::Plan const& plan) {
    HatchPlan const& first = plan.hatches.front();
    Moment from = first.hatch.date + first_age(first), to = first.hatch.date + last_age(first);
    for (HatchPlan const& hatch : plan.hatches) {
        from = std::min(from, hatch.hatch.date + first_age(hatch));
        to = std::max(to, hatch.hatch.date + last_age(hatch));
    }
    return from.day_year() + " to " + to.day_year();
}

Page page_title(engine::Plan const& plan) { return Title{plan_name(plan), plan_time(plan)}; }

Page farm_and_parts(domain::Farm const& farm, std::vector<Page> const& parts) {
    std::vector<Page> all{farm.name.empty() ? Page() : wrap(farm.name)};
    all.insert(all.end(), parts.begin(), parts.end());
    return apart(all);
}

std::string hatch_words(HatchPlan const& hatch) {
    domain::Hatch const& its = hatch.hatch;
    std::string const count = quantities::print(hatch.chicks);
    std::string const& kind = hatch.kind_title;
    std::string const hatched = "; hatch " + its.date.day_year();
    if (its.first_age > quantities::days(0)) {
        return its.name + ": " + count + " " + kind + " birds; " + quantities::print_age(its.first_age) + " on " +
               (its.date + its.first_age).day_year();
    }
    if (!its.eggs) return its.name + ": " + count + " " + kind + " chicks" + hatched;
    return its.name + ": " + quantities::number(*its.eggs, 0) + " " + kind + " eggs, about " + count + " chicks" +
           hatched;
}

std::string moment_words(Moment moment, quantities::Measures measures) {
    if (moment == Moment(moment.date())) return moment.day();
    std::string hour = moment.about_hour(measures == quantities::Measures::us);
    // "midnight" can be read as the end of the day; 12 am is its start
    if (std::size_t const at = hour.find("midnight"); at != std::string::npos) hour.replace(at, 8, "12 am");
    return moment.day() + ", " + hour;
}

std::string moment_and_year(Moment moment, quantities::Measures measures) {
    return moment.day_year() + moment_words(moment, measures).substr(moment.day().size());
}

std::string short_moment(Moment moment, quantities::Measures measures) {
    std::string words = moment_words(moment, measures);
    constexpr std::string_view about = "about ";
    if (std::size_t const at = words.find(about); at != std::string::npos) words.erase(at, about.size());
    return words;
}

std::string chore_words(Moment moment, quantities::Measures measures) {
    return moment.day() + " " + chore_hour(moment, measures);
}

std::string chore_hour(Moment moment, quantities::Measures measures) {
    std::string const clock = moment.iso().substr(11);
    if (measures != quantities::Measures::us) return clock;
    int const hour = std::stoi(clock);
    std::string const minutes = clock.substr(2) == ":00" ? "" : clock.substr(2);
    return std::to_string((hour + 11) % 12 + 1) + minutes + (hour < 12 ? " am" : " pm");
}

std::string ages_words(Duration from, Duration to) {
    return quantities::print_age(from) + " to " + quantities::print_age(to);
}

std::vector<std::string> removals_words(HatchPlan const& hatch) {
    std::vector<std::string> all;
    for (domain::Removal const& removal : hatch.hatch.removed) {
        if (removal.at < first_age(hatch) || removal.at > last_age(hatch)) continue;
        all.push_back(quantities::print(removal.birds) + " birds at " + quantities::print_age(removal.at) + ", " +
                      (hatch.hatch.date + removal.at).day());
    }
    return all;
}

std::string how_sure_words() {
    return "\"Sure\" is 19 times in 20, for flocks as different as flocks are; \"usually\" is as often as not. Feed a "
           "day, water a day and what to stir in are the usual figures. Hours are rounded down: fill before, not at, "
           "the hour, and look in on hoppers and drinkers every day all the same.";
}

std::string bag_noun(domain::Feed const& feed) { return feed.in_lots ? "lot" : "bag"; }

std::string feed_title(domain::Farm const& farm, std::string const& key) {
    auto const feed = farm.feeds.find(key);
    return feed == farm.feeds.end() || feed->second.title.empty() ? key : feed->second.title;
}

std::string supplement_title(domain::Supplement const& supplement) {
    return supplement.title.empty() ? supplement.key : supplement.title;
}

std::string sourced(domain::Source const& source) {
    std::string const standing = domain::name(source.standing);
    bool const says_more = !source.text.empty() && source.text != standing;
    return "[" + standing + (says_more ? ": " + source.text : "") + "]";
}

Page cautions_part(std::vector<engine::Caution> const& cautions, quantities::Measures measures, Sources sources) {
    Page page;
    if (!cautions.empty()) page += spaced(heading("WATCH"));
    for (CautionLine const& caution : caution_lines(cautions, measures)) {
        bool const named = sources == Sources::named && !caution.source.empty();
        page += warning(caution.text + (named ? " [" + caution.source + "]" : ""));
    }
    return page;
}

std::string rests_on_words(std::vector<engine::Assumption> const& assumptions, quantities::Measures measures) {
    std::map<domain::Standing, int> counts;
    int all = 0;
    for (AssumptionLine const& one : assumption_lines(assumptions, measures)) {
        ++counts[one.source.standing];
        ++all;
    }
    std::vector<std::string> words;
    for (auto const& [standing, count] : counts) words.push_back(std::to_string(count) + " " + domain::name(standing));
    return "THIS RESTS ON " + plural(all, "figure") + ": " + join(words) +
           ". --sources lists them and where each comes from.";
}

Page notes_part(engine::Plan const& plan, Sources sources) {
    return notes_part(plan.cautions, plan.assumptions, plan.farm.measures, sources);
}

Page notes_part(std::vector<engine::Caution> const& cautions, std::vector<engine::Assumption> const& assumptions,
                quantities::Measures measures, Sources sources) {
    Page page = cautions_part(cautions, measures, sources);
    if (assumptions.empty()) return page;
    constexpr std::size_t heading_length = std::string_view("THIS RESTS ON").size();
    std::string const all = rests_on_words(assumptions, measures);
    if (sources == Sources::left_out) {
        return page + spaced(wrap(strong(all.substr(0, heading_length)) + all.substr(heading_length)));
    }
    page += spaced(heading(all.substr(0, heading_length)));
    std::vector<std::string> named;
    for (AssumptionLine const& one : assumption_lines(assumptions, measures)) {
        page += wrap(one.text + " [" + source_words(one.source, named) + "]", "  - ", "    ");
    }
    return page + sources_part(named);
}

}  // namespace cropful::reports
