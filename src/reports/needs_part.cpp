#include "reports/needs_part.hpp"

#include <algorithm>

#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/table_page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/nutrient_words.hpp"
#include "reports/sources.hpp"

namespace cropful::reports {

namespace {

using rations::Need;
using rations::NeedsTable;
using rations::Phase;

std::string need_level(Need const& need) {
    return reports::level_words(need.nutrient, need.level) + (need.found ? " *" : "");
}

/// When a phase holds, where its name does not say it.
std::string ages_of(Phase const& phase) {
    if (phase.laying) return "once laying";
    return phase.to ? ages_words(phase.from, *phase.to) : "from " + quantities::print_age(phase.from);
}

/// Nutrients of any phase, each once, in the order of the table.
std::vector<std::string> nutrients_of(NeedsTable const& needs) {
    std::vector<std::string> all;
    for (Phase const& phase : needs.phases) {
        for (Need const& need : phase.needs) {
            if (std::find(all.begin(), all.end(), need.nutrient) == all.end()) all.push_back(need.nutrient);
        }
    }
    return all;
}

std::string phase_words(Phase const& phase) {
    double const energy = quantities::in_kilocalories_per_kilogram(phase.energy);
    return phase.name + ": " + ages_of(phase) + ", in a feed of " + quantities::number(energy, 0) + " kcal/kg";
}

bool any_found(NeedsTable const& needs) {
    auto const in = [](Phase const& phase) {
        return ranges::any_of(phase.needs, [](Need const& need) { return bool(need.found); });
    };
    return ranges::any_of(needs.phases, in);
}

/// A row for each nutrient, a column for each phase.
Page levels_part(NeedsTable const& needs) {
    std::vector<Align> columns(needs.phases.size() + 1, Align::right);
    columns.front() = Align::left;
    Table table(columns, 2);
    std::vector<Styled> head{""};
    for (Phase const& phase : needs.phases) head.emplace_back(phase.name);
    table.head(head);
    for (std::string const& nutrient : nutrients_of(needs)) {
        std::vector<Styled> cells{nutrient_title(nutrient)};
        for (Phase const& phase : needs.phases) {
            auto const same = [&](Need const& need) { return need.nutrient == nutrient; };
            auto const found = std::find_if(phase.needs.begin(), phase.needs.end(), same);
            cells.emplace_back(found == phase.needs.end() ? "" : need_level(*found));
        }
        table.add(cells);
    }
    return table;
}

}  // namespace

Page needs_body(NeedsTable const& needs, std::vector<std::string>& sources) {
    Page page = wrap(needs.title + ", " + needs.basis + " [" + source_words(needs.source, sources) + "]", "", "  ");
    for (Phase const& phase : needs.phases) page += wrap(phase_words(phase), "  ", "    ");
    page += levels_part(needs);
    if (any_found(needs)) page += wrap("* read in a second publication as well", "  ", "  ");
    if (!needs.notes.empty()) page += spaced(heading("OTHER PUBLICATIONS"));
    for (rations::NeedsNote const& note : needs.notes) {
        page += wrap(join({note.phase, nutrient_title(note.nutrient)}) + ": " + note.says + " [" +
                         source_words(note.source, sources) + "]",
                     "  - ", "    ");
    }
    return page;
}

Page needs_page(NeedsTable const& needs) {
    std::vector<std::string> sources;
    Page const body = needs_body(needs, sources);
    return heading("NEEDS") + body + sources_part(sources);
}

}  // namespace cropful::reports
