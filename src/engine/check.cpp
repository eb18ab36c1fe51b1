#include "cropful/engine/check.hpp"

#include <algorithm>

#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

domain::Guarantee guarantee(domain::Feed const& feed, std::string const& nutrient) {
    auto const found = feed.label.find(nutrient);
    return found == feed.label.end() ? domain::Guarantee{} : found->second;
}

/// The table, and for a figure read elsewhere too the publication that has it.
Source source_of(Need const& need, Phase const& phase, NeedsTable const& needs) {
    Source source = needs.source;
    if (!need.found) return source;
    source.standing = domain::Standing::published;
    for (NeedsNote const& note : needs.notes) {
        if (note.phase != phase.name || note.nutrient != need.nutrient) continue;
        source.text += "; the figure was read in " + note.source.text;
        break;
    }
    return source;
}

Check judge_label(domain::Feed const& feed, Need const& need, double scale) {
    auto const label = guarantee(feed, need.nutrient);
    Check check;
    check.feed = feed.key;
    check.nutrient = need.nutrient;
    check.printed = need.level;
    check.need = need.level * scale;
    check.label = label.minimum;
    check.label_maximum = label.maximum;
    if (!check.label) return check;
    bool const meets = *check.label >= check.need * (1 - rounding);
    check.verdict = meets ? Verdict::meets : Verdict::short_of;
    check.short_by = meets ? 0 : check.need - *check.label;
    return check;
}

/// The ages from `from` to `to` during which a phase holds; empty (from >= to) when it does not.
std::pair<Duration, Duration> overlap(Phase const& phase, Duration from, Duration to,
                                      std::optional<Duration> laying_from) {
    Duration const lay = laying_from.value_or(to);
    if (phase.laying) return {std::max(from, lay), to};
    return {std::max(from, phase.from), std::min({to, lay, phase.to.value_or(to)})};
}

}  // namespace

std::vector<Check> check(domain::Feed const& feed, NeedsTable const& needs, Duration from, Duration to,
                         std::optional<Duration> laying_from, NeedScale scale) {
    std::vector<Check> checks;
    for (Phase const& phase : needs.phases) {
        if (phase.laying && !laying_from) continue;
        auto const [start, end] = overlap(phase, from, to, laying_from);
        if (!(start < end)) continue;
        bool const scaled = scale == NeedScale::by_energy && feed.energy;
        double const factor = scaled ? ratio(*feed.energy / phase.energy) : 1;
        for (Need const& need : phase.needs) {
            Check check = judge_label(feed, need, factor);
            check.source = source_of(need, phase, needs);
            check.phase = phase.name;
            check.from = start;
            check.to = end;
            checks.push_back(std::move(check));
        }
    }
    return checks;
}

}  // namespace cropful::engine
