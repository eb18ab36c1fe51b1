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

/// What the diary taught of this hatch.
void add_learned(Element& page, Sheet const& sheet, HatchPlan const& hatch) {
    std::vector<std::string> learned;
    for (auto const& one : sheet.plan.learned) {
        if (one.hatch == hatch.hatch.name) learned.push_back(learned_words(one, sheet.plan.farm.measures));
    }
    if (!learned.empty()) page.add(section_heading("Learned from the diary")).add(list_of(learned));
}

void add_feeds(Element& page, Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    domain::Farm const& farm = sheet.plan.farm;
    HtmlTable table("What the flock eats of each feed", {"Feed", "Ages, from", "Usually", "Sure with", "Whole bags"},
                    "feeds");
    for (std::size_t i = 0; i < hatch.feeds.size(); ++i) {
        engine::FeedNeed const& need = hatch.feeds[i];
        auto const& bags = sheet.hatches[number].bags[i];
        std::string const of = bags ? " of " + print(*farm.feeds.at(need.feed).bag, farm.measures) : "";
        table.row(feed_title(farm, need.feed))
            .add(cell(ages_words(need.from, need.to) + ", " + (hatch.hatch.date + need.from).day()))
            .add(figure_cell(print(need.amount, farm.measures)))
            .add(figure_cell(print(need.band.p95, farm.measures)))
            .add(figure_cell(bags ? std::to_string(*bags) + of : "no bag size stated"));
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
    std::string const id = hatch_id(number), title = hatch.hatch.name + ": charts";
    Element page("div", "page");
    page.add(Element("h2", "", title).set("id", id + "-title"));
    std::string const all = hatch_words(hatch);
    page.add(Element("p", "about",
                     all.substr(hatch.hatch.name.size() + 2) + ", kept to " + quantities::print_age(hatch.hatch.until) +
                         " (" + (hatch.hatch.date + hatch.hatch.until).day_year() + ")"));
    add_learned(page, sheet, hatch);
    add_feeds(page, sheet, number);
    add_charts(page, sheet, number);
    return section({id, title, std::move(page)}, sheet.plan);
}

}  // namespace cropful::reports
