#include <algorithm>
#include <utility>

#include "cropful/domain/nutrient.hpp"
#include "cropful/quantities/print.hpp"
#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using namespace rations;

Need read_need(Table& table, std::string const& key, std::vector<std::string> const& found) {
    domain::Nutrient const& nutrient = *domain::find_nutrient(key);
    auto const a_level = [&](Value const& value) { return parse_level(nutrient, a_text(value)); };
    bool const elsewhere = std::find(found.begin(), found.end(), key) != found.end();
    return {.nutrient = key, .level = table.need(key, a_level), .found = elsewhere};
}

/// Protein first, then in the order of the file; what is no nutrient is left for `done` to judge.
std::vector<Need> read_levels(Table& table) {
    auto const found = table.maybe("found", list_of(a_text), std::vector<std::string>{});
    std::vector<Need> needs{read_need(table, "protein", found)};
    for (std::string const& key : table.keys()) {
        if (key == "protein" || key == "energy" || !domain::find_nutrient(key)) continue;
        needs.push_back(read_need(table, key, found));
    }
    for (std::string const& key : found) {
        auto const same = [&](Need const& need) { return need.nutrient == key; };
        if (std::none_of(needs.begin(), needs.end(), same)) throw table.refuse("found", "nutrients of this phase");
    }
    return needs;
}

Phase read_phase(Table& table) {
    Phase phase{.name = table.need("name", a_text),
                .laying = table.maybe("laying", a_yes_or_no, false),
                .from = table.maybe("from", a_time, quantities::days(0)),
                .to = table.maybe("to", a_time),
                .energy = table.need("energy", more_than_none(an_energy)),
                .needs = read_levels(table)};
    if (phase.to && *phase.to <= phase.from) throw table.refuse("to", "an age later than `from`");
    return phase;
}

/// Growing phases leave no age without needs.
void check_follows(Table const& table, Phase const& phase, std::vector<Phase> const& earlier) {
    if (phase.laying) return;
    quantities::Duration end = quantities::days(0);
    for (Phase const& one : earlier) {
        if (!one.laying) end = one.to.value_or(end);
    }
    if (phase.from != end)
        throw table.refuse("from", "the age at which the phase before it ends, " + quantities::print_age(end));
}

NeedsNote read_note(Table& table) {
    return {.phase = table.need("phase", a_text),
            .nutrient = table.need("nutrient", a_text),
            .says = table.need("says", a_passage),
            .source = read_source(table)};
}

void check_note(Table const& table, NeedsNote const& note, std::vector<Phase> const& phases) {
    std::vector<std::string> names;
    names.reserve(phases.size());
    for (Phase const& phase : phases) names.push_back(phase.name);
    if (std::find(names.begin(), names.end(), note.phase) == names.end()) {
        throw table.refuse("phase", one_of(note.phase, names));
    }
    if (!domain::find_nutrient(note.nutrient)) throw table.refuse("nutrient", "a nutrient's key, such as \"protein\"");
}

}  // namespace

rations::NeedsTable read_needs(std::string const& key, Document document) {
    Table root = Table::root(std::move(document));
    NeedsTable needs{.key = key,
                     .title = root.need("title", a_text),
                     .basis = root.need("basis", a_passage),
                     .source = read_source(root),
                     .phases = {},
                     .notes = {}};
    for (Table& table : root.array("phase")) {
        Phase phase = read_phase(table);
        check_follows(table, phase, needs.phases);
        needs.phases.push_back(std::move(phase));
        table.done();
    }
    if (needs.phases.empty()) throw root.missing("phase", "at least one table [[phase]]");
    for (Table& table : root.array("note")) {
        needs.notes.push_back(read_note(table));
        check_note(table, needs.notes.back(), needs.phases);
        table.done();
    }
    root.done();
    return needs;
}

}  // namespace cropful::readers
