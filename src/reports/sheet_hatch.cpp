#include "cropful/quantities/print.hpp"
#include "cropful/reports/check_page.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/sheet_parts.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::Sheet;
using quantities::Measures;
using quantities::print;

/// One thing to know now: what, in big type, and how it is meant. An hour is not parted from its "am".
Element fact(std::string_view what, std::string big, std::string_view small) {
    constexpr char no_break_space[] = "\xC2\xA0";
    if (auto const last = big.rfind(' '); last != std::string::npos) big.replace(last, 1, no_break_space);
    Element fact("div");
    fact.add(Element("dt", "", what)).add(Element("dd", "big", big));
    return fact.add(Element("dd", "small", small));
}

/// The next fill after the one that starts the plan with the birds.
template <class Amount>
engine::Fill<Amount> const& next_fill(HatchPlan const& hatch, std::vector<engine::Fill<Amount>> const& fills) {
    bool const starts = fills.front().age < first_age(hatch) + quantities::days(1e-6);
    return starts && fills.size() > 1 ? fills[1] : fills.front();
}

void add_hopper_fact(Element& facts, HatchPlan const& hatch, Measures measures) {
    if (!hatch.hoppers() || hatch.hoppers()->fills.empty()) return;
    auto const& fill = next_fill(hatch, hatch.hoppers()->fills);
    facts.add(fact("Fill the hoppers by", chore_words(fill.do_at, measures),
                   print_measured(fill.put_in, measures) + " into " + std::to_string(hatch.hoppers()->count) + " x " +
                       hatch.hoppers()->key + ", " + level_words(fill.share_of_full)));
}

void add_drinker_fact(Element& facts, HatchPlan const& hatch, Measures measures) {
    if (!hatch.drinkers() || hatch.drinkers()->fills.empty()) return;
    auto const& fill = next_fill(hatch, hatch.drinkers()->fills);
    facts.add(fact(fill.fresh ? "Change the water by" : "Fill the drinkers by", chore_words(fill.do_at, measures),
                   std::to_string(hatch.drinkers()->count) + " x " + hatch.drinkers()->key + ", " +
                       print_measured(fill.content, measures) + " each"));
}

void add_mix_fact(Element& facts, HatchPlan const& hatch, domain::Farm const& farm) {
    if (!hatch.mix() || hatch.mix()->batches.empty()) return;
    auto const& batch = hatch.mix()->batches.front();
    facts.add(fact("Stir in on " + chore_words(batch.at, farm.measures), dose_words(batch.dose, farm.measures),
                   course_words(*hatch.mix(), farm) + ", into " + print_measured(batch.dose.water, farm.measures)));
}

void add_bag_facts(Element& facts, Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    domain::Farm const& farm = sheet.plan.farm;
    for (std::size_t i = 0; i < hatch.feeds.size(); ++i) {
        engine::FeedNeed const& need = hatch.feeds[i];
        auto const& bags = sheet.hatches[number].bags[i];
        std::string const big =
            bags ? plural(*bags, bag_noun(farm.feeds.at(need.feed))) : print(need.band.p95, farm.measures);
        facts.add(fact("Have for " + ages_words(need.from, need.to), big,
                       feed_title(farm, need.feed) +
                           (bags ? ", " + print(*farm.feeds.at(need.feed).bag, farm.measures) : std::string())));
    }
}

Element facts_of(Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    Element facts("dl", "facts");
    add_hopper_fact(facts, hatch, sheet.plan.farm.measures);
    add_drinker_fact(facts, hatch, sheet.plan.farm.measures);
    add_mix_fact(facts, hatch, sheet.plan.farm);
    add_bag_facts(facts, sheet, number);
    return facts;
}

/// What the diary wants looked at, and what it taught, of this hatch.
void add_diary(Element& page, Sheet const& sheet, HatchPlan const& hatch) {
    Measures const measures = sheet.plan.farm.measures;
    std::vector<std::string> alarms, learned;
    for (auto const& alarm : sheet.plan.alarms) {
        if (alarm.hatch == hatch.hatch.name) alarms.push_back(alarm_words(alarm, measures));
    }
    for (auto const& one : sheet.plan.learned) {
        if (one.hatch == hatch.hatch.name) learned.push_back(learned_words(one, measures));
    }
    if (!alarms.empty()) page.add(section_heading("Look now")).add(list_of(alarms, "cautions"));
    if (!learned.empty()) page.add(section_heading("Learned from the diary")).add(list_of(learned));
}

/// A starter that is short kills chicks: it stands above all times and amounts.
void add_label_faults(Element& page, HatchPlan const& hatch) {
    auto const faults = label_faults(hatch);
    if (!faults.empty()) page.add(section_heading("Look at the label")).add(list_of(faults, "cautions"));
}

void add_feeds(Element& page, Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    domain::Farm const& farm = sheet.plan.farm;
    HtmlTable table("What the flock eats of each feed", {"Feed", "Ages, from", "Usually", "Sure with", "Whole bags"},
                    "feeds");
    for (std::size_t i = 0; i < hatch.feeds.size(); ++i) {
        engine::FeedNeed const& need = hatch.feeds[i];
        auto const& bags = sheet.hatches[number].bags[i];
        domain::Feed const& feed = farm.feeds.at(need.feed);
        std::string const lots = bags && feed.in_lots ? " " + nouns(*bags, "lot") : "";
        std::string const of = bags ? lots + " of " + print(*feed.bag, farm.measures) : "";
        table.row(feed_title(farm, need.feed))
            .add(cell(ages_words(need.from, need.to) + ", " + (hatch.hatch.date + need.from).day()))
            .add(figure_cell(print(need.amount, farm.measures)))
            .add(figure_cell(print(need.band.p95, farm.measures)))
            .add(figure_cell(bags             ? std::to_string(*bags) + of
                             : feed.by_weight ? "sold by weight"
                                              : "no bag size stated"));
    }
    page.add(section_heading("Feed")).add(table.element());
    std::vector<std::string> notes{"The shopping page counts what is on hand and shares bags between hatches."};
    for (std::string const& words : removals_words(hatch)) notes.push_back("Leaving: " + words);
    for (std::string const& words : labels_words(hatch)) notes.push_back("Label: " + words);
    page.add(list_of(notes, "notes"));
}

}  // namespace

std::string hatch_id(std::size_t number) { return "hatch-" + std::to_string(number + 1); }

Element hatch_page(Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    Measures const measures = sheet.plan.farm.measures;
    std::string const id = hatch_id(number);
    Element page("div", "page");
    page.add(Element("h2", "", hatch.hatch.name).set("id", id + "-title"));
    std::string const all = hatch_words(hatch);
    page.add(Element("p", "about",
                     all.substr(hatch.hatch.name.size() + 2) + ", kept to " + quantities::print_age(hatch.hatch.until) +
                         " (" + (hatch.hatch.date + hatch.hatch.until).day_year() + ")"));
    page.add(facts_of(sheet, number));
    add_label_faults(page, hatch);
    add_diary(page, sheet, hatch);
    add_hopper_fills(page, hatch, measures);
    add_drinker_fills(page, hatch, measures);
    add_course(page, hatch, sheet.plan.farm);
    add_feeds(page, sheet, number);
    add_brooder(page, sheet, number);
    add_cautions(page, "Cautions", sheet.hatches[number].cautions, sheet.plan.farm.measures);
    add_charts(page, sheet, number);
    return section({id, hatch.hatch.name, std::move(page)}, sheet.plan);
}

}  // namespace cropful::reports
