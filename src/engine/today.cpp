#include "cropful/engine/today.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "cropful/domain/ranges.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/make.hpp"
#include "engine/chores.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Deed;
using domain::Diary;

constexpr Duration carried_for = days(14);  // what nobody did or ticked in two weeks is not going to be

Diary written_before(Diary const& diary, Moment at) {
    Diary earlier = diary;
    std::erase_if(earlier, [&](domain::Entry const& entry) { return at <= entry.at; });
    return earlier;
}

/// The ids of the tasks ticked from the start of a day on.
std::set<std::string> ticked(Diary const& diary, Moment day) {
    std::set<std::string> ids;
    for (domain::Entry const& entry : diary) {
        if (entry.deed == Deed::done && day <= entry.at) ids.insert(entry.note);
    }
    return ids;
}

/// What is the same of a task when the plan is made again.
auto place_of(Task const& task) {
    return std::tie(task.work, task.hatch, task.house, task.vessel, task.what, task.of_eggs);
}

/// What today is asked about.
struct Barn {
    domain::Farm const& farm;
    Rations const& rations;
    Diary const& diary;
    Season season;  // with all of the diary
    HatchChoice const& hatches;
};

/// Whether somebody has ticked not long before a day that a thing other than feed was fetched: no store counts it.
bool was_fetched(Diary const& diary, std::string const& what, Moment day) {
    return ranges::any_of(diary, [&](domain::Entry const& entry) {
        bool const ticked = entry.deed == Deed::done && entry.note.starts_with(name(Work::fetch) + "/" + what + "/");
        return ticked && day + -carried_for <= entry.at && entry.at < day;
    });
}

/// What is to be brought home from a day on.
std::vector<Fetch> to_fetch(Plan const& plan, Diary const& diary, Moment day, Moment earliest) {
    auto all = fetches(plan, earliest);
    std::erase_if(all, [&](Fetch const& one) { return !one.feed && was_fetched(diary, one.what, day); });
    return all;
}

enum class Fetching { listed, left_out };

/// The tasks of a stretch of days as its first one began.
std::vector<Task> as_it_began(Barn const& barn, Moment day, Moment until, Fetching fetching) {
    auto const before = written_before(barn.diary, day);
    std::optional<Season> earlier;  // where something was written since
    try {
        if (before.size() < barn.diary.size()) earlier.emplace(barn.farm, barn.rations, before);
        Window const window{.from = day, .until = {}, .hatches = barn.hatches, .now = day};
        bool const listed = fetching == Fetching::listed;
        auto const plan = make_plan(earlier ? *earlier : barn.season, window, NeedScale::as_printed,
                                    {.as_of_farm = true, .shopping = listed, .notes = false});
        return agenda(plan, barn.rations, listed ? to_fetch(plan, barn.diary, day, day) : std::vector<Fetch>(), day,
                      until);
    } catch (NoAnswer const&) {
        return {};  // the birds of the day came later
    }
}

/// Whether a day is as it began: no chore has been, and nothing was written.
bool has_just_begun(Barn const& barn, Moment day, Moment now) {
    bool const written = ranges::any_of(barn.diary, [&](domain::Entry const& entry) { return day <= entry.at; });
    return !written && now <= Chores(barn.farm).first_from(day);
}

/// The tasks of the calendar day as it began; `open` are those from now on.
std::vector<Task> tasks_of_day(Barn const& barn, Moment day, Moment now, std::vector<Task> open) {
    if (!has_just_begun(barn, day, now)) return as_it_began(barn, day, day + days(1), Fetching::listed);
    std::erase_if(open, [&](Task const& task) { return !task.overdue && task.at.date() != now.date(); });
    return open;
}

/// Whether it is still to be done when its day is over; the rest is done anew by then, or makes no difference.
bool outlasts_its_day(Task const& task) {
    bool const moves = task.work == Work::move && task.why == Reason::of_age;  // chicks come untold
    bool const of_houses = moves || task.work == Work::ready || task.work == Work::clean;
    return of_houses || task.work == Work::remove || (task.work == Work::change_feed && !task.feed_left);
}

/// Whether the diary says birds left a hatch from a day on.
bool have_left(Diary const& diary, std::string const& hatch, Moment day) {
    return ranges::any_of(diary, [&](domain::Entry const& entry) {
        return entry.hatch == hatch && entry.deed == Deed::moved_out && day <= entry.at;
    });
}

/// What the days before left undone; nothing before the first tick, for who never ticks has done it all the same.
std::vector<Task> left_undone(Barn const& barn, Moment day) {
    Diary const& diary = barn.diary;
    auto const first = ranges::find(diary, Deed::done, &domain::Entry::deed);
    if (first == diary.end()) return {};
    Moment const since = std::max(day + -carried_for, Moment(first->at.date()));
    if (!(since < day)) return {};
    auto tasks = as_it_began(barn, since, day, Fetching::left_out);
    auto const done = ticked(diary, since), today = ticked(diary, day);
    std::erase_if(tasks, [&](Task const& task) {
        bool const sold = task.work == Work::remove && have_left(diary, task.hatch, Moment(task.at.date()));
        return !outlasts_its_day(task) || sold || (done.contains(task.id) && !today.contains(task.id));
    });
    for (Task& task : tasks) task.overdue = true;
    return tasks;
}

bool same_time(Task const& a, Task const& b) { return a.at.iso() == b.at.iso(); }

/// The tasks of one calendar day and their numbers.
class DayList {
  public:
    DayList(std::vector<Task> undone, std::vector<Task> morning, std::set<std::string> done) : done_(std::move(done)) {
        for (Task& task : undone) append(std::move(task), false);
        // fetches come and go with what is bought: they are numbered last
        std::stable_partition(morning.begin(), morning.end(),
                              [](Task const& task) { return task.work != Work::fetch; });
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
        auto const first = ranges::find_if(later, is);
        if (first == later.end()) continue;
        for (auto one = first; one != later.end() && same_time(*one, *first); ++one) {
            if (is(*one) && (one == first || work == Work::fetch)) coming.push_back(*one);
        }
    }
    ranges::stable_sort(coming, {}, [](Task const& task) { return task.at.iso(); });
    return coming;
}

}  // namespace

Today make_today(domain::Farm const& farm, Rations const& rations, Diary const& diary, Moment now, Duration ahead,
                 HatchChoice const& hatches, Progress const& progress) {
    Window const window{.from = now, .until = {}, .hatches = hatches, .now = now};
    Moment const day(now.date());
    Barn const barn{farm, rations, diary, Season(farm, rations, diary), hatches};
    Wanted const wanted{.as_of_farm = true, .progress = progress};
    Today today{now, now + ahead, make_plan(barn.season, window, NeedScale::as_printed, wanted), {}, {}, {}};
    Moment const end = now + domain::longest_life;
    auto const open = agenda(today.plan, rations, to_fetch(today.plan, diary, day, now), now, end, today.until);
    DayList list(left_undone(barn, day), tasks_of_day(barn, day, now, open), ticked(diary, day));
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
        bool const before = one.task.at < day;  // left undone then
        if (!missed || (one.task.overdue && !before)) continue;
        today.tasks.push_back(one);
        today.tasks.back().task.overdue = true;
    }
    ranges::stable_sort(today.tasks, {}, [](Numbered const& one) { return one.task.at.iso(); });
    for (Task& task : later) today.tasks.push_back({++last, std::move(task)});
    return today;
}

}  // namespace cropful::engine
