#include "reports/task_words.hpp"

#include "cropful/quantities/make.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"

namespace cropful::reports {

namespace {

using engine::Reason;
using engine::Task;
using engine::Work;
using quantities::Measures;
using quantities::print;
using quantities::print_measured;

std::string vessels_of(Task const& task) { return std::to_string(task.vessels) + " x " + task.vessel; }

/// "5.4 lb Quail starter each, to 60 %"; of one hopper without "each".
std::string feed_words(Task const& task, domain::Farm const& farm) {
    auto const one = *task.feed * (1.0 / std::max(1, task.vessels));
    return print_measured(one, farm.measures) + " " + feed_title(farm, task.what) +
           (task.vessels > 1 ? " each, " : ", ") + level_words(task.share_of_full);
}

std::string each_words(Task const& task, domain::Farm const& farm) {
    return print_measured(*task.each, farm.measures) + (task.vessels > 1 ? " each" : "");
}

std::string tank_mixing_words(Task const& task, domain::Farm const& farm) {
    return "make " + print_measured(*task.water, farm.measures) + " of stock with " +
           product_words(*task.dose, farm.measures) + " of " + supplement_title(farm.supplements.at(task.what)) +
           " in it, for the proportioner" + (task.line.size() > 1 ? " of " + join(task.line) : std::string());
}

std::string stir_words(Task const& task, domain::Farm const& farm) {
    if (!task.line.empty()) return tank_mixing_words(task, farm);
    if (task.dose->stock) {
        return "have " + dose_words(*task.dose, farm.measures) + ", " +
               supplement_title(farm.supplements.at(task.what)) + ", for " +
               print_measured(*task.water, farm.measures) + " through the proportioner";
    }
    std::string words = "stir " + dose_words(*task.dose, farm.measures) + " of " +
                        supplement_title(farm.supplements.at(task.what)) + " into " +
                        print_measured(*task.water, farm.measures);
    if (!task.each) return words + " of water";
    return words + ", " + print_measured(*task.each, farm.measures) + " into each of " + vessels_of(task);
}

std::string change_feed_words(Task const& task, domain::Farm const& farm) {
    if (!task.feed) return "change to " + feed_title(farm, task.what);
    return "empty " + vessels_of(task) + ", then " + feed_words(task, farm);
}

/// " about 312", where it is known.
std::string about(Task const& task) { return task.birds ? "about " + print(*task.birds) + " " : ""; }

std::string move_words(Task const& task) {
    std::string const to = task_houses(task);
    if (task.why == Reason::hatching) return about(task) + "chicks come" + (to.empty() ? "" : ", into " + to);
    return "move " + about(task) + "birds" + (to.empty() ? "" : " to " + to);
}

std::string remove_words(Task const& task) {
    if (task.why == Reason::last_day) return "the last birds go" + (task.birds ? ", about " + print(*task.birds) : "");
    return print(*task.birds) + " birds go";
}

std::string ready_words(Task const& task, domain::Farm const& farm) {
    auto const sort = farm.brooders.find(task.house);
    std::string words = "make " + task_houses(task) + " ready";
    if (sort == farm.brooders.end()) return words;
    if (auto const& bedding = sort->second.bedding) {
        auto const each = quantities::box(bedding->depth, sort->second.floor->length, sort->second.floor->width);
        words += ": bed with " + quantities::print_bulk(each, farm.measures) + (task.houses > 1 ? " each" : "");
    }
    return words + (sort->second.bedding ? ", warm" : ": bed, warm");
}

std::string fetch_words(Task const& task, domain::Farm const& farm) {
    auto const feed = farm.feeds.find(task.what);
    auto const supplement = farm.supplements.find(task.what);
    std::string const title = feed != farm.feeds.end()               ? feed_title(farm, task.what)
                              : supplement != farm.supplements.end() ? supplement_title(supplement->second)
                                                                     : task.title;
    if (feed != farm.feeds.end() && task.feed) {
        return "fetch " +
               (task.packs ? plural(*task.packs, bag_noun(feed->second)) + " (" + print(*task.feed, farm.measures) + ")"
                           : print(*task.feed, farm.measures)) +
               " of " + title;
    }
    return "fetch " + (task.packs ? plural(*task.packs, "pack") + " of " : std::string()) + title;
}

}  // namespace

std::string warmth_words(rations::BroodingRow const& row, Measures measures) {
    std::string const low = print(row.low, measures), high = print(row.high, measures);
    return row.low < row.high ? low + " to " + high : low;
}

std::string task_houses(Task const& task) {
    return task.house.empty() ? "" : houses_words(task.house, task.houses, task.numbers);
}

std::string task_place(Task const& task) {
    bool const named = task.work == Work::move || task.work == Work::ready || task.work == Work::clean;
    std::string const houses = named ? "" : task_houses(task);
    if (task.line.size() > 1) return "";  // the words name them
    return task.hatch + (houses.empty() || task.hatch.empty() ? "" : ", ") + houses;
}

std::string task_words(Task const& task, domain::Farm const& farm) {
    switch (task.work) {
        case Work::look:
            return "look in, count the dead";
        case Work::top_up:
            if (task.feed) return "top up " + vessels_of(task) + ": " + feed_words(task, farm);
            return "top up " + vessels_of(task) + " with water, to " + each_words(task, farm);
        case Work::change_water:
            return "fresh water in " + vessels_of(task) + ": " + each_words(task, farm);
        case Work::stir:
            return stir_words(task, farm);
        case Work::change_feed:
            return change_feed_words(task, farm);
        case Work::warmth:
            return "air " + warmth_words(*task.warmth, farm.measures) + " at chick height";
        case Work::move:
            return move_words(task);
        case Work::ready:
            return ready_words(task, farm);
        case Work::clean:
            return "clean " + task_houses(task);
        case Work::remove:
            return remove_words(task);
        case Work::withdrawal_ends:
            return "not before now: " + print(*task.withdrawal) + " withdrawal of " +
                   (task.of_eggs ? "eggs after " : "") + task.title + " is over";
        case Work::fetch:
            break;
    }
    return fetch_words(task, farm);
}

std::string task_brief(Task const& task, domain::Farm const& farm) {
    constexpr std::size_t fetching = std::string_view("fetch ").size();
    switch (task.work) {
        case Work::look:
            return "";
        case Work::change_water:
            return vessels_of(task) + " " + each_words(task, farm);
        case Work::warmth:
            return warmth_words(*task.warmth, farm.measures);
        case Work::ready:
            return "make " + task_houses(task) + " ready";
        case Work::change_feed:
            return "change to " + feed_title(farm, task.what);
        case Work::fetch:
            return fetch_words(task, farm).substr(fetching);
        default:
            return task_words(task, farm);
    }
}

std::string task_until(Task const& task, Measures measures) {
    bool const lasts = task.work == Work::top_up || task.work == Work::change_feed || !task.line.empty();
    return lasts && task.until ? "until " + chore_words(*task.until, measures) : "";
}

std::string task_notes(Task const& task, domain::Farm const& farm) {
    std::string const short_of =
        task.would_do > 0
            ? "They do not last to the next chore: " + std::to_string(task.would_do) + " x " + task.vessel + " would."
            : "";
    switch (task.work) {
        case Work::stir:
            if (task.dose && task.dose->stock) {
                return "No stock that is older than it keeps: throw it away and rinse first. " + std::string(deferring);
            }
            return "Throw away what is left of the last, rinse, and do not top up. " + std::string(deferring);
        case Work::change_feed:
            if (auto const& medicated = farm.feeds.at(task.what).medicated) {
                return "It is medicated with " + medicated->drug + ". " + deferring + (short_of.empty() ? "" : " ") +
                       short_of;
            }
            return short_of;
        case Work::warmth:
            return "Go by the chicks more than by the thermometer: huddled they are cold, panting and far from the "
                   "lamp they are hot, and either kills.";
        case Work::ready:
            return "Everything warm, dry and filled before birds are in it.";
        case Work::clean:
            return "Birds and bedding out first. What the disinfectant's label says holds.";
        case Work::withdrawal_ends:
            return "Counted from the planned end of what was given; later if it was given longer, or any was left. "
                   "This says nothing of whether birds or eggs are fit to be eaten: the label, your veterinarian and "
                   "local law decide.";
        default:
            return short_of;
    }
}

}  // namespace cropful::reports
