#include "cropful/engine/today.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "cropful/fault.hpp"
#include "cropful/quantities/make.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Deed;
using domain::Diary;

Diary written_before(Diary const& diary, Moment at) {
    Diary earlier = diary;
    std::erase_if(earlier, [&](domain::Entry const& entry) { return at <= entry.at; });
    return earlier;
}

/// The ids of the tasks ticked on a calendar day.
std::set<std::string> ticked(Diary const& diary, Moment day) {
    std::set<std::string> ids;
    for (domain::Entry const& entry : diary) {
        if (entry.deed == Deed::done && entry.at.date() == day.date()) ids.insert(entry.note);
    }
    return ids;
}

/// What is the same of a task when the plan is made again.
auto place_of(Task const& task) {
    return std::tie(task.work, task.hatch, task.house, task.vessel, task.what, task.of_eggs);
}

/// The tasks of a calendar day as it began.
std::vector<Task> as_it_began(domain::Farm const& farm, Rations const& rations, Diary const& diary, Moment day,
                              HatchChoice const& hatches) {
    try {
        Window const window{.from = day, .until = {}, .hatches = hatches, .now = day};
        auto const plan =
            make_plan(farm, rations, window, written_before(diary, day), NeedScale::as_printed, {.as_of_farm = true});
        return agenda(plan, rations, fetches(plan, day), day, day + days(1));
    } catch (NoAnswer const&) {
        return {};  // the birds of the day came later
    }
}

bool same_time(Task const& a, Task const& b) { return a.at.iso() == b.at.iso(); }

/// The tasks of one calendar day and their numbers.
class DayList {
  public:
    DayList(std::vector<Task> morning, std::set<std::string> done) : done_(std::move(done)) {
        // fetches come and go with what is bought: they are numbered last
        std::ranges::stable_partition(morning, [](Task const& task) { return task.work != Work::fetch; });
        for (Task& task : morning) append(std::move(task), false);
    }

    /// Puts a task of the plan as it is now in the place of the same one, or at the end.
    Numbered const& take(Task task) {
        std::optional<std::size_t> place;
        for (std::size_t i = 0; i < all_.size() && !place; ++i) {
            bool const late = (task.overdue && !all_[i].done) || task.work == Work::fetch;  // at any hour of its day
            bool const when = late || same_time(all_[i].task, task);
            if (!taken_[i] && when && place_of(all_[i].task) == place_of(task)) place = i;
        }
        if (!place) return append(std::move(task), true);
        Numbered& found = all_[*place];
        task.id = found.task.id;
        found.task = std::move(task);
        taken_[*place] = true;
        return found;
    }

    [[nodiscard]] std::vector<Numbered> const& all() const { return all_; }

  private:
    Numbered const& append(Task task, bool taken) {
        bool const over = done_.contains(task.id);
        all_.push_back({static_cast<int>(all_.size()) + 1, std::move(task), over});
        taken_.push_back(taken);
        return all_.back();
    }

    std::set<std::string> done_;
    std::vector<Numbered> all_;
    std::vector<bool> taken_;  // by a task of the plan as it is now
};

/// Done as planned whether or not anybody ticks it, or seen to by the next look.
bool needs_a_tick(Task const& task) {
    bool const vessels = task.feed_left || task.water_left;  // the level tells
    return !vessels && task.work != Work::look && task.work != Work::fetch;
}

/// The next of each sort that a person makes ready for; of a day to fetch all that is to be fetched.
std::vector<Task> next_of_each(std::vector<Task> const& later) {
    std::vector<Task> coming;
    for (Work const work :
         {Work::fetch, Work::ready, Work::move, Work::change_feed, Work::remove, Work::withdrawal_ends}) {
        auto const is = [&](Task const& task) { return task.work == work; };
        auto const first = std::ranges::find_if(later, is);
        if (first == later.end()) continue;
        for (auto one = first; one != later.end() && same_time(*one, *first); ++one) {
            if (is(*one) && (one == first || work == Work::fetch)) coming.push_back(*one);
        }
    }
    std::ranges::stable_sort(coming, {}, [](Task const& task) { return task.at.iso(); });
    return coming;
}

}  // namespace

Today make_today(domain::Farm const& farm, Rations const& rations, Diary const& diary, Moment now, Duration ahead,
                 HatchChoice const& hatches) {
    Window const window{.from = now, .until = {}, .hatches = hatches, .now = now};
    Moment const day(now.date());
    Today today{now, now + ahead, make_plan(farm, rations, window, diary, NeedScale::as_printed, {.as_of_farm = true}),
                {},  {},          {}};
    auto const to_buy = fetches(today.plan, now);
    Moment const end = now + domain::longest_life;
    auto const open = agenda(today.plan, rations, to_buy, now, end);
    DayList list(as_it_began(farm, rations, diary, day, hatches), ticked(diary, now));
    std::vector<Task> later;
    int last = 0;  // number given
    for (Task const& task : open) {
        if (task.overdue || task.at.date() == now.date()) {
            Numbered const& one = list.take(task);
            if (!one.done) today.tasks.push_back(one);
        } else if (task.at < today.until) {
            later.push_back(task);
        } else {
            today.coming.push_back(task);
        }
    }
    today.coming = next_of_each(today.coming);
    today.day = list.all();
    for (Numbered const& one : today.day) {
        last = std::max(last, one.number);
        bool const missed = !diary.empty() && one.task.at < now && !one.done && needs_a_tick(one.task);
        if (!missed || one.task.overdue) continue;
        today.tasks.push_back(one);
        today.tasks.back().task.overdue = true;
    }
    std::ranges::stable_sort(today.tasks, {}, [](Numbered const& one) { return one.task.at.iso(); });
    for (Task& task : later) today.tasks.push_back({++last, std::move(task)});
    return today;
}

}  // namespace cropful::engine
