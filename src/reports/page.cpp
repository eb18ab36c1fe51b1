#include "cropful/reports/page.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

using engine::HatchPlan;
using engine::Moment;
using quantities::Duration;

Duration first_age(HatchPlan const& hatch) {
    return hatch.feeds.empty() ? hatch.hatch.first_age : hatch.feeds.front().from;
}

Duration last_age(HatchPlan const& hatch) { return hatch.feeds.empty() ? hatch.hatch.until : hatch.feeds.back().to; }

std::string page_title(engine::Plan const& plan) {
    HatchPlan const& first = plan.hatches.front();
    Moment from = first.hatch.date + first_age(first), to = first.hatch.date + last_age(first);
    for (HatchPlan const& hatch : plan.hatches) {
        from = std::min(from, hatch.hatch.date + first_age(hatch));
        to = std::max(to, hatch.hatch.date + last_age(hatch));
    }
    std::string const name = plan.farm.name.empty() ? first.hatch.name : plan.farm.name;
    return both_ends(name, from.day_year() + " to " + to.day_year()) + std::string(page_width, '=') + "\n";
}

std::string hatch_words(HatchPlan const& hatch) {
    domain::Hatch const& its = hatch.hatch;
    std::string const birds = quantities::number(quantities::in_birds(hatch.chicks), 0);
    std::string words = its.name + ": ";
    if (its.first_age > quantities::days(0)) {
        return words + birds + " " + hatch.kind_title + ", counted at " + quantities::print_age(its.first_age) +
               " on " + (its.date + its.first_age).day_year();
    }
    if (its.eggs) {
        words += quantities::number(*its.eggs, 0) + " " + hatch.kind_title + " eggs, about " + birds + " chicks";
    } else {
        words += birds + " " + hatch.kind_title + " chicks";
    }
    return words + ", hatch " + its.date.day_year();
}

std::string moment_words(Moment moment, quantities::Measures measures) {
    if (moment == Moment(moment.date())) return moment.day();
    return moment.day() + ", " + moment.about_hour(measures == quantities::Measures::us);
}

std::string ages_words(Duration from, Duration to) {
    return quantities::print_age(from) + " to " + quantities::print_age(to);
}

std::string feed_title(domain::Farm const& farm, std::string const& key) {
    auto const feed = farm.feeds.find(key);
    return feed == farm.feeds.end() || feed->second.title.empty() ? key : feed->second.title;
}

std::string supplement_title(domain::Supplement const& supplement) {
    return supplement.title.empty() ? supplement.key : supplement.title;
}

std::string cautions_text(std::vector<engine::Caution> const& cautions) {
    std::string text;
    if (!cautions.empty()) text += "\nWATCH\n";
    for (engine::Caution const& caution : cautions) {
        text += wrap(caution.text + (caution.source.empty() ? "" : " [" + caution.source + "]"), "  ! ", "    ");
    }
    return text;
}

std::string notes_text(engine::Plan const& plan) {
    std::string text = cautions_text(plan.cautions);
    if (!plan.assumptions.empty()) text += "\nTHIS RESTS ON\n";
    for (engine::Assumption const& one : plan.assumptions) {
        text +=
            wrap(one.text + " [" + domain::name(one.source.standing) + ": " + one.source.text + "]", "  - ", "    ");
    }
    return text;
}

}  // namespace cropful::reports
