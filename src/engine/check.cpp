#include "cropful/engine/check.hpp"

#include <algorithm>

namespace cropful::engine {

namespace {

constexpr double rounding = 1e-9;  // relative; a label that equals the need meets it

domain::Guarantee guarantee(domain::Feed const& feed, std::string const& nutrient) {
    if (nutrient == "protein") {
        return feed.protein > 0 ? domain::Guarantee{feed.protein * 100, {}} : domain::Guarantee{};
    }
    auto const found = feed.label.find(nutrient);
    return found == feed.label.end() ? domain::Guarantee{} : found->second;
}

Check judge(domain::Feed const& feed, Need const& need, double scale, Source const& table) {
    auto const label = guarantee(feed, need.nutrient);
    Check check;
    check.feed = feed.key;
    check.nutrient = need.nutrient;
    check.need = need.level * scale;
    check.label = label.minimum;
    check.label_maximum = label.maximum;
    check.source = table;
    if (need.found) check.source.standing = domain::Standing::published;
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

std::vector<Check> check(domain::Feed const& feed, Kind const&, NeedsTable const& needs, Duration from, Duration to,
                         std::optional<Duration> laying_from, NeedScale scale) {
    std::vector<Check> checks;
    for (Phase const& phase : needs.phases) {
        if (phase.laying && !laying_from) continue;
        auto const [start, end] = overlap(phase, from, to, laying_from);
        if (!(start < end)) continue;
        bool const scaled = scale == NeedScale::by_energy && feed.energy;
        double const factor = scaled ? ratio(*feed.energy / phase.energy) : 1;
        for (Need const& need : phase.needs) {
            Check check = judge(feed, need, factor, needs.source);
            check.phase = phase.name;
            check.from = start;
            check.to = end;
            checks.push_back(std::move(check));
        }
    }
    return checks;
}

}  // namespace cropful::engine
