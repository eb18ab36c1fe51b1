#include "cropful/engine/withdrawals.hpp"

#include <algorithm>

#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::optional<Duration> some_time(std::optional<Duration> const& stated) {
    return stated && *stated > days(0) ? stated : std::nullopt;
}

void add_waiting(std::vector<Withdrawal>& all, Withdrawal one, domain::Hatch const& hatch) {
    auto const& lay = hatch.laying_from;
    bool const laid = one.eggs && lay && *lay < std::min(hatch.until, one.to + *one.eggs);
    if (!laid) one.eggs.reset();
    bool const given = one.from < one.to && one.from < hatch.until;
    if (given && (one.birds || one.eggs)) all.push_back(std::move(one));
}

/// Birds that leave while it is given or before it is over.
void about_birds_for_slaughter(CautionList& list, HatchPlan const& part, Withdrawal const& one) {
    Duration const clear = one.to + *one.birds;
    auto const warn = [&](Duration at, std::string const& deed) {
        if (at <= one.from || at >= clear || at < part.feeds.front().from) return;
        Caution caution{.id = "drug-withdrawal",
                        .hatches = {part.hatch.name},
                        .with = {{"form", deed}, {"at", Age{at}}, {"withdrawal", *one.birds}, {"feed", one.title}},
                        .source = "the label's withdrawal"};
        if (!one.drug.empty()) caution.with["drug"] = one.drug;
        list.add(std::move(caution));
    };
    for (domain::Removal const& removal : part.hatch.removed) warn(removal.at, "removed");
    warn(part.hatch.until, "sold");
}

void about_eggs_withheld(CautionList& list, HatchPlan const& part, Withdrawal const& one) {
    Duration const clear = one.to + *one.eggs;
    bool const planned = part.feeds.front().from < clear && one.from < part.feeds.back().to;
    if (!planned) return;
    Caution caution{.id = "eggs-withdrawal",
                    .hatches = {part.hatch.name},
                    .with = {{"product", one.title}, {"withdrawal", *one.eggs}, {"until", part.hatch.date + clear}},
                    .source = "the label's withdrawal of eggs"};
    if (!one.drug.empty()) caution.with["drug"] = one.drug;
    list.add(std::move(caution));
}

}  // namespace

std::vector<Withdrawal> withdrawals_of(domain::Hatch const& hatch, domain::Farm const& farm) {
    std::vector<Withdrawal> all;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        domain::FeedingStep const& step = hatch.feeding[i];
        domain::Feed const& feed = farm.feeds.at(step.feed);
        if (!feed.medicated) continue;
        auto const& [drug, level, birds, eggs] = *feed.medicated;
        add_waiting(
            all, {feed.key, feed.title, drug, false, step.from, fed_until(hatch, i), some_time(birds), some_time(eggs)},
            hatch);
    }
    for (domain::Course const& course : domain::courses_of(hatch, farm)) {
        domain::Supplement const& given = farm.supplements.at(course.supplement);
        add_waiting(all,
                    {given.key, given.title, given.drug, true, course.from, course_ends(course),
                     some_time(given.withdrawal), some_time(given.eggs_withdrawal)},
                    hatch);
    }
    return all;
}

void withdrawal_cautions(CautionList& list, Plan const& plan, HatchPlan const& part) {
    for (Withdrawal const& one : withdrawals_of(part.hatch, plan.farm)) {
        if (one.birds) about_birds_for_slaughter(list, part, one);
        if (one.eggs) about_eggs_withheld(list, part, one);
    }
}

}  // namespace cropful::engine
