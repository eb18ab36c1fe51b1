#include "cropful/engine/agenda.hpp"
#include "cropful/engine/level.hpp"

namespace cropful::engine {

namespace {

using domain::Deed;
using domain::Entry;

/// When all that is left was new: water that was topped up is as old as it was.
std::optional<domain::Moment> new_since(std::optional<Level> const& before, Entry const& entry) {
    if (!before || !entry.note.starts_with(name(Work::top_up) + "/")) return std::nullopt;
    return before->changed.value_or(before->at);
}

/// Takes in one entry about feed or about water.
void see(std::optional<Level>& level, Entry const& entry, double amount) {
    switch (entry.deed) {
        case Deed::topped_up:
            level = Level{.at = entry.at};
            break;
        case Deed::found_empty:
            level = Level{.at = entry.at, .full = false};
            break;
        case Deed::level_left:
            level = Level{.at = entry.at, .left = amount, .changed = new_since(level, entry)};
            break;
        case Deed::part_filled:
            // where nothing was known before, no more than that is sure to be there
            if (!level) level = Level{.at = entry.at, .left = 0};
            level->more += amount;
            break;
        case Deed::thrown_out:
            if (level) level->more -= amount;
            break;
        default:
            break;
    }
}

}  // namespace

std::vector<Levels> levels(domain::Farm const& farm, domain::Diary const& diary) {
    std::vector<Levels> all(farm.hatches.size());
    for (std::size_t i = 0; i < farm.hatches.size(); ++i) {
        for (Entry const& entry : diary) {
            if (domain::is_of_store(entry.deed) || entry.hatch != farm.hatches[i].name) continue;
            if (auto const* feed = std::get_if<quantities::Mass>(&entry.amount)) {
                see(all[i].feed, entry, quantities::in_kilograms(*feed));
                bool const put =
                    entry.deed == Deed::topped_up || entry.deed == Deed::part_filled || entry.deed == Deed::done;
                if (put) all[i].puts.push_back({entry.at, *feed});
            }
            if (auto const* water = std::get_if<quantities::Volume>(&entry.amount)) {
                see(all[i].water, entry, quantities::in_litres(*water));
            }
        }
    }
    return all;
}

std::map<std::string, StoreCount> store_counts(domain::Farm const& farm, domain::Diary const& diary) {
    std::map<std::string, StoreCount> all;
    for (auto const& [key, feed] : farm.feeds) all[key] = {feed.counted, feed.on_hand};
    for (Entry const& entry : diary) {
        auto const found = all.find(entry.hatch);
        if (!domain::is_of_store(entry.deed) || found == all.end()) continue;
        StoreCount& store = found->second;
        auto const amount = std::get<quantities::Mass>(entry.amount);
        bool const before = store.at && entry.at < *store.at;
        if (before) continue;
        if (entry.deed == Deed::stock_counted) {
            store = {entry.at, amount};
        } else {
            store.at = store.at.value_or(entry.at);  // never counted: what was on hand was there then
            store.amount += amount;
        }
    }
    return all;
}

}  // namespace cropful::engine
