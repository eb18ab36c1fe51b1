#include "cropful/engine/ended.hpp"

#include <algorithm>

#include "cropful/engine/season.hpp"
#include "engine/hatch_model.hpp"

namespace cropful::engine {

namespace {

using domain::Deed;

Mass thrown_out(domain::Diary const& diary, std::string const& hatch) {
    Mass sum = kilograms(0);
    for (domain::Entry const& entry : diary) {
        auto const* feed = std::get_if<Mass>(&entry.amount);
        if (entry.hatch == hatch && entry.deed == Deed::thrown_out && feed != nullptr) sum += *feed;
    }
    return sum;
}

}  // namespace

std::vector<Ended> ended(Lessons const& lessons, Rations const& rations, domain::Diary const& diary,
                         domain::Moment now) {
    std::vector<Ended> all;
    Season const by_tables(lessons.farm, rations);  // with the diary's heads, and nothing it taught
    for (std::size_t i = 0; i < lessons.farm.hatches.size(); ++i) {
        domain::Hatch const& hatch = lessons.farm.hatches[i];
        auto const& puts = lessons.levels[i].puts;
        domain::Moment const from = hatch.date + hatch.first_age, until = hatch.date + hatch.until;
        if (puts.empty() || now < until) continue;
        Ended one{hatch.name, from, until, -thrown_out(diary, hatch.name), kilograms(0), false};
        for (FeedPut const& put : puts) one.put_in += put.amount;
        one.expected = by_tables.hatch(i).feed().between(hatch.first_age, hatch.until);
        one.from_start = puts.front().at < from + days(2);
        all.push_back(std::move(one));
    }
    return all;
}

}  // namespace cropful::engine
